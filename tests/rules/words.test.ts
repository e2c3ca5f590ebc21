/** Figures in words. */
import { describe, expect, it } from 'vitest'
import {
  CHECKS,
  feetInches,
  fill,
  findingText,
  formatMass,
  formatMoney,
  formatSlope,
  wordsIn,
} from '../../rules/index.ts'
import { paperWords } from '../../rules/papers.ts'
import { inLanguage } from '../../rules/words/words.ts'

describe('feet, inches and fractions', () => {
  // 1 in = 0.0254 m exactly (NIST Special Publication 811, 2008, appendix B.8).
  it.each([
    [0, '0 in'],
    [0.0254, '1 in'],
    [0.3048, '1 ft'],
    [1.2192, '4 ft'],
    [1.27, '4 ft 2 in'],
    [1.2763, '4 ft 2 1/4 in'],
    [0.00635, '1/4 in'],
    [0.3048 - 0.003175, '1 ft'],
    [0.3048 + 0.00635, '1 ft 1/4 in'],
    [-0.3556, '-1 ft 2 in'],
    [-0.001, '0 in'],
    [3.6576, '12 ft'],
  ])('of %d m are %s', (meters, words) => expect(feetInches(meters)).toBe(words))

  it('go to the fraction that is asked for', () => {
    expect(feetInches(0.0254 * 10.5, 2)).toBe('10 1/2 in')
    expect(feetInches(0.0254 * 10.6875, 16)).toBe('10 11/16 in')
  })
})

/** What `lang` says on pages: they are free to say anything. */
describe('a language', () => {
  const finding = { code: 'leg-none-long-enough', values: { leg: { value: 's2.end.left', unit: 'text' } } }
  it.each([
    'en_US',
    '',
    'constructor',
    '__proto__',
    'toString',
    'x',
    'de-',
    'zz-ZZ',
    '\ud800',
    'en-x-\u202e',
  ])('of %j is English', (lang) => {
    expect(wordsIn(lang)).toBe(wordsIn('en'))
    expect(findingText(finding, 'plain', 'metric', lang)).toBe(findingText(finding, 'plain'))
    expect(paperWords(lang, 'metric')('set-up')).toBe(paperWords('en', 'metric')('set-up'))
    expect(formatMoney(500, 'USD', lang)).toMatch(/5/)
  })

  it('is read by its base, however it is parted', () => {
    const german = { de: 'ja', en: 'yes' }
    expect(['de', 'DE', 'de-AT', 'de_AT', 'fr'].map((lang) => inLanguage(german, lang))).toEqual([
      'ja',
      'ja',
      'ja',
      'ja',
      undefined,
    ])
  })
})

describe('words', () => {
  it('of mass, slope and money', () => {
    expect(formatMass(0.45359237, 'imperial')).toBe('1.0 lb')
    expect(formatMass(31.25, 'metric')).toBe('31.3 kg')
    expect(formatSlope(-1 / 12)).toBe('1 in 12.0')
    expect(formatSlope(0.001)).toBe('level')
    expect(formatMoney(568_600, 'USD')).toBe('$5,686.00')
    expect(formatMoney(584_495, 'EUR', 'de')).toBe('5.844,95\u00a0€')
    expect(formatMoney(1500, 'JPY')).toBe('¥1,500')
  })

  it('take the form that the count asks for', () => {
    const template = wordsIn('en').remedies['fewer-sections']
    expect(fill(template, { sections: { value: 1, unit: 'count' } })).toBe('End the dock after 1 section')
    expect(fill(template, { sections: { value: 3, unit: 'count' } })).toBe('End the dock after 3 sections')
  })

  it('of a list are the first few and how many more, of a key those of the table that has its name', () => {
    const legs = (...value: string[]) => fill('Legs {legs}.', { legs: { value, unit: 'text' } })
    expect(legs('a')).toBe('Legs a.')
    expect(legs('a', 'b', 'c', 'd')).toBe('Legs a, b, c, d.')
    expect(legs('a', 'b', 'c', 'd', 'e')).toBe('Legs a, b, c and 2 more.')
    expect(legs()).toBe('Legs none.')
    expect(fill('{a}', { a: { value: [0.3048, 0.6096], unit: 'm' } }, 'imperial')).toBe('1 ft, 2 ft')
    expect(fill('{what}', { what: { value: 'foot-pad', unit: 'key' } })).toBe('foot pad')
    expect(fill('{why}', { why: { value: 'no-legs', unit: 'key' } })).toBe('no-legs')
  })

  it('exist for every check, plain and with figures, and for no other', () => {
    expect(Object.keys(wordsIn('en').findings).sort()).toEqual(CHECKS.map((check) => check.code).sort())
  })

  it('fall back to English', () => {
    expect(wordsIn('xx')).toBe(wordsIn('en'))
    expect(wordsIn('en-US')).toBe(wordsIn('en'))
  })
})
