/** Language files: what they may be, and what is said of one against English. */
import { describe, expect, it } from 'vitest'
import {
  againstEnglish,
  differencesFromEnglish,
  formsOf,
  parseLanguage,
  parseLanguageText,
} from '../../rules/words/language-file.ts'
import { ENGLISH_WORDS } from '../../src/words/english.ts'

const file = (words: unknown, lang: unknown = 'fr-CA') => ({
  format: 'leadline/words',
  version: 1,
  lang,
  words,
})
const english = {
  papers: {
    quote: 'Quote',
    lift: '{who} lifts {mass}',
    legs: { count: 'n', one: '{n} leg', other: '{n} legs' },
  },
}

describe('a language file', () => {
  it('is a language, with its numbers by its tag', () => {
    const read = parseLanguageText(JSON.stringify(file({ papers: { quote: 'Devis' } })))
    expect(read).toMatchObject({
      ok: true,
      value: { tag: 'fr-CA', decimal: ',', words: { papers: { quote: 'Devis' } } },
    })
  })

  it.each([
    ['a sentence that is a number', file({ papers: { quote: 3 } }), 'words.papers.quote'],
    [
      'forms without the last of them',
      file({ papers: { legs: { count: 'n', one: 'x' } } }),
      'words.papers.legs',
    ],
    ['a tag that is none', file({}, 'no language!'), 'lang'],
    ['another format', { ...file({}), format: 'leadline/design' }, 'format'],
    ['nothing', null, ''],
  ])('with %s is refused with its place', (_, input, path) => {
    const read = parseLanguage(input)
    expect(read.ok).toBe(false)
    expect(read.ok ? [] : read.issues.map((issue) => issue.path)[0]).toContain(path)
  })

  it('is told what it lacks, has too much of, and names wrongly', () => {
    const words = {
      papers: {
        lift: '{who} soulève {weight}',
        legs: { count: 'n', one: '{n} patte', other: '{n} pattes' },
        rien: 'x',
      },
      others: {},
    }
    const { issues, notices } = againstEnglish({ tag: 'fr-CA', words }, english)
    expect(issues.map(({ path, message }) => `${path}: ${message}`)).toEqual([
      'words.papers["lift"]: {weight}; expected {who}, {mass}',
    ])
    expect(notices.map(({ path, message }) => `${path}: ${message}`)).toEqual([
      'words.papers["lift"]: {mass} is in the English and not here',
      'words.papers["rien"]: not a key; it is never said',
      'words.others: not a subject; it is never said',
      'words.papers: 1 of 3 are said in English: quote',
    ])
  })

  // Of CLDR's table of plural rules for whole numbers: Polish has few and many, Arabic all six, Japanese none but other. Of French and
  // Spanish `many` is for whole millions.
  it.each([
    ['de', 'one other'],
    ['fr', 'one other'],
    ['es', 'one other'],
    ['pl', 'one few many other'],
    ['ar', 'zero one two few many other'],
    ['ja', 'other'],
  ])('in %s has the forms %s', (tag, forms) => {
    expect(formsOf(tag).join(' ')).toBe(forms)
  })

  it('has the forms by number that its language has', () => {
    const told = (tag: string, legs: unknown) =>
      differencesFromEnglish({ tag, words: { papers: { ...english.papers, legs } as never } }, english).map(
        (one) => ('form' in one ? `${one.kind} ${one.form}` : one.kind),
      )
    expect(told('de', { count: 'n', one: '{n} Bein', other: '{n} Beine' })).toEqual([])
    expect(told('pl', { count: 'n', one: '{n} a', other: '{n} b' })).toEqual(['no-form few', 'no-form many'])
    expect(told('de', '{n} Beine')).toEqual(['no-form one', 'no-form other'])
    expect(told('de', { count: 'n', one: '{n}', some: '{n}', other: '{n}' })).toEqual(['wrong-form some'])
    expect(told('de', { count: 'm', one: 'eins', other: 'alle' })).toEqual(['wrong-name', 'no-name'])
  })

  it('of English against itself lacks nothing, and has each subject that there is a file of', async () => {
    expect(againstEnglish({ tag: 'en', words: ENGLISH_WORDS }, ENGLISH_WORDS)).toEqual({
      issues: [],
      notices: [],
    })
    const { readdirSync } = await import('node:fs')
    expect(Object.keys(ENGLISH_WORDS).sort()).toEqual(
      readdirSync('rules/words/en')
        .map((name) => name.replace('.json', ''))
        .sort(),
    )
  })
})
