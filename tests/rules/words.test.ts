/** Figures in words. */
import { describe, expect, it } from 'vitest'
import {
  CHECKS,
  ENGLISH,
  english,
  feetInches,
  fill,
  findingText,
  formatFigure,
  formatLength,
  formatMass,
  formatSlope,
  kindWord,
  languageOf,
  moneyIn,
  remedyText,
  say,
  spokenIn,
} from '../../rules/index.ts'
import { PAPERS } from '../../rules/papers.ts'
import { PART_KINDS } from '../../rules/part-kinds.ts'
import { FINDINGS } from '../../rules/words/finding-words.ts'
import { DOCK } from '../../rules/words/messages.ts'

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
  ])('of %d m are %s', (meters, words) => expect(feetInches(meters, english('imperial'))).toBe(words))

  it('go to the fraction that is asked for', () => {
    expect(feetInches(0.0254 * 10.5, english('imperial'), 2)).toBe('10 1/2 in')
    expect(feetInches(0.0254 * 10.6875, english('imperial'), 16)).toBe('10 11/16 in')
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
  ])('of %j that brings no words is told in English', (tag) => {
    const reader = { language: languageOf(tag), units: 'metric' } as const
    expect(findingText(finding, 'plain', reader)).toBe(findingText(finding, 'plain'))
    expect(say(PAPERS, reader, 'set-up')).toBe('Set-up sheet')
    expect(moneyIn('USD', reader.language)(500)).toMatch(/5/)
    expect(spokenIn(reader.language)).toMatch(/^en/)
  })

  const french = languageOf('fr_CA', {
    papers: { 'set-up': 'Feuille de montage' },
    findings: { 'leg-none-long-enough.plain': 'Aucune patte assez longue.' },
    figures: { ft: '{n} pi', in: '{n} po' },
    structure: { 'remedy.more-posts': { count: 'posts', one: '{posts} poteau', other: '{posts} poteaux' } },
  })
  it('says its own words, and in English what it lacks', () => {
    const reader = { language: french, units: 'imperial' } as const
    expect(french.tag).toBe('fr-CA')
    expect(say(PAPERS, reader, 'set-up')).toBe('Feuille de montage')
    expect(say(PAPERS, reader, 'autumn')).toBe('Autumn sheet')
    expect(findingText(finding, 'plain', reader)).toBe('Aucune patte assez longue.')
    expect(formatLength(1.2763, reader)).toBe('4 pi 2 1/4 po')
    const remedy = (posts: number) => ({
      key: 'more-posts',
      patch: [],
      values: { posts: { value: posts, unit: 'count' } },
    })
    // French takes one for nought and for one and a half (Unicode CLDR, plural rules).
    expect([0, 1, 2].map((n) => remedyText(remedy(n), reader))).toEqual(['0 poteau', '1 poteau', '2 poteaux'])
  })

  it('writes its numbers and lists its own way', () => {
    expect(formatMass(31.25, { language: french, units: 'metric' })).toBe('31,3 kg')
    expect(fill('{a}', { a: { value: [1.5, 2], unit: 'm' } }, { language: french, units: 'metric' })).toBe(
      '1,50 m et 2,00 m',
    )
    const arabic = languageOf('ar-EG')
    expect(formatMass(31.25, { language: arabic, units: 'metric' })).toBe('٣١٫٣ kg')
  })
})

describe('words', () => {
  it('of mass, slope and money', () => {
    expect(formatMass(0.45359237, english('imperial'))).toBe('1.0 lb')
    expect(formatMass(31.25, english('metric'))).toBe('31.3 kg')
    expect(formatSlope(-1 / 12, english('metric'))).toBe('1 in 12.0')
    expect(formatSlope(0.001, english('metric'))).toBe('level')
    expect(moneyIn('USD', ENGLISH)(568_600)).toBe('$5,686.00')
    expect(moneyIn('EUR', languageOf('de'))(584_495)).toBe('5.844,95\u00a0€')
    expect(moneyIn('JPY', ENGLISH)(1500)).toBe('¥1,500')
  })

  it('of a share are told as finely as it is worth', () => {
    const told = (value: number, unit: string) => formatFigure({ value, unit }, english('metric'))
    expect([0.06875, 0.07].map((tax) => told(tax, 'share-fine'))).toEqual(['6.875 %', '7 %'])
    expect([0.5, 0.996, 1.004, 1.26].map((use) => told(use, 'use'))).toEqual([
      '50 %',
      '99.6 %',
      '100.4 %',
      '126 %',
    ])
    expect([1.26, 12.6].map((factor) => told(factor, 'factor-rough'))).toEqual(['1.3', '13'])
  })

  const metric = english('metric')
  it('take the form that the count asks for', () => {
    const remedy = (sections: number) =>
      remedyText({
        key: 'fewer-sections',
        patch: [],
        values: { sections: { value: sections, unit: 'count' } },
      })
    expect(remedy(1)).toBe('End the dock after 1 section')
    expect(remedy(3)).toBe('End the dock after 3 sections')
  })

  it('of a list are the first few and how many more, of a key those of the table that has its name', () => {
    const legs = (...value: string[]) => fill('Legs {legs}.', { legs: { value, unit: 'text' } }, metric)
    expect(legs('a')).toBe('Legs a.')
    expect(legs('a', 'b', 'c', 'd')).toBe('Legs a, b, c, d.')
    expect(legs('a', 'b', 'c', 'd', 'e')).toBe('Legs a, b, c and 2 more.')
    expect(legs()).toBe('Legs none.')
    expect(fill('{ids}', { ids: { value: ['a', 'b', 'c', 'd', 'e'], unit: 'list' } }, metric)).toBe(
      'a, b, c, d, e',
    )
    expect(fill('{a}', { a: { value: [0.3048, 0.6096], unit: 'm' } }, english('imperial'))).toBe('1 ft, 2 ft')
    expect(fill('{what}', { what: { value: 'foot-pad', unit: 'key' } }, metric, [FINDINGS])).toBe('foot pad')
    expect(fill('{why}', { why: { value: 'no-legs', unit: 'key' } }, metric, [FINDINGS])).toBe('no-legs')
  })

  it('exist for every check and clash, plain and with figures, and for no other', () => {
    const codes = (form: string) =>
      Object.keys(FINDINGS.english)
        .filter((key) => key.endsWith(`.${form}`))
        .map((key) => key.slice(0, -form.length - 1))
        .sort()
    const known = [...CHECKS.map(({ code }) => code), 'parts-clash', 'part-in-bed'].sort()
    expect(codes('plain')).toEqual(known)
    expect(codes('text')).toEqual(known)
  })

  it('of parts exist as a heading and within a sentence, where nothing is made small that a language writes large', () => {
    for (const kind of Object.keys(PART_KINDS)) {
      expect(kindWord(kind, metric)).not.toBe(kind)
      expect(Object.keys(DOCK.english)).toContain(`kind-in-sentence.${kind}`)
    }
  })
})
