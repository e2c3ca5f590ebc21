/** Language files: what they may be, and what is said of one against English. */
import { describe, expect, it } from 'vitest'
import { againstEnglish, parseLanguage, parseLanguageText } from '../../rules/words/language-file.ts'
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
    const { issues, notices } = againstEnglish({ words }, english)
    expect(issues.map(({ path, message }) => `${path}: ${message}`)).toEqual([
      'words.papers["lift"]: {weight}; expected {who}, {mass}',
    ])
    expect(notices.map(({ path, message }) => `${path}: ${message}`)).toEqual([
      'words.papers["rien"]: not a key; it is never said',
      'words.others: not a subject; it is never said',
      'words.papers: 1 of 3 are said in English',
    ])
  })

  it('of English against itself lacks nothing, and has each subject that there is a file of', async () => {
    expect(againstEnglish({ words: ENGLISH_WORDS }, ENGLISH_WORDS)).toEqual({ issues: [], notices: [] })
    const { readdirSync } = await import('node:fs')
    expect(Object.keys(ENGLISH_WORDS).sort()).toEqual(
      readdirSync('rules/words/en')
        .map((name) => name.replace('.json', ''))
        .sort(),
    )
  })
})
