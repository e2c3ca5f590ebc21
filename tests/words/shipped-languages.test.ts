/** Every language that is shipped says all that English says, with the same figures in it and in each of its own forms by number. */
import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import {
  type Difference,
  differenceLine,
  differencesFromEnglish,
  type LanguageFile,
  parseLanguageFile,
} from '../../rules/words/language-file.ts'
import { ENGLISH_WORDS } from '../../src/words/english.ts'
import { SHIPPED_LANGUAGES } from '../../src/words/shipped-names.ts'

const FOLDER = 'public/words'
const shipped = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace(/\.json$/, ''))

function fileOf(tag: string): LanguageFile {
  const read = parseLanguageFile(JSON.parse(readFileSync(`${FOLDER}/${tag}.json`, 'utf8')))
  if (!read.ok) throw new Error(read.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))
  return read.value
}

const differences = ({ lang, words }: LanguageFile): Difference[] =>
  differencesFromEnglish({ tag: lang, words }, ENGLISH_WORDS)
const linesOf = (file: LanguageFile): string[] =>
  differences(file).map((one) => `${one.path}: ${differenceLine(one)}`)

it('there are German, French and Spanish', () => {
  expect(shipped).toEqual(expect.arrayContaining(['de', 'es', 'fr']))
})

it.each(shipped)('%s says all of it, each message by its place where it does not', (tag) => {
  const file = fileOf(tag)
  expect(file.lang).toBe(tag)
  expect(linesOf(file)).toEqual([])
})

it.each(shipped)('%s is not English, but for what is the same in both', (tag) => {
  const { words } = fileOf(tag)
  // Sentences of four words and more are the same in no two languages.
  const long = Object.entries(ENGLISH_WORDS).flatMap(([subject, known]) =>
    Object.entries(known).flatMap(([key, english]) => {
      const same = JSON.stringify(english) === JSON.stringify(words[subject]?.[key])
      return same && (JSON.stringify(english).match(/[A-Za-z]{3,}/g) ?? []).length > 4
        ? [`${subject} ${key}`]
        : []
    }),
  )
  expect(long).toEqual([])
})

it.each(shipped)('of %s one message taken out, one figure, one form is told by its place alone', (tag) => {
  const file = fileOf(tag)
  const without = (change: (words: Record<string, Record<string, unknown>>) => void): string[] => {
    const words = structuredClone(file.words)
    change(words)
    const before = new Set(linesOf(file))
    return linesOf({ ...file, words }).filter((line) => !before.has(line))
  }
  expect(without(({ screen }) => delete screen!.undo)).toEqual([
    'words.screen["undo"]: missing; it is said in English',
  ])
  expect(
    without(({ depths }) => {
      depths!['depths.pasted'] = { count: 'rows', one: 'x', other: 'y' }
    }),
  ).toEqual([])
  expect(
    without(({ figures }) => {
      figures!.m = 'm'
    }),
  ).toEqual(['words.figures["m"]: {n} is in the English and not here'])
  expect(
    without((words) => {
      words['whole-docks']!.sections = { count: 'sections', other: '{sections}' }
    }),
  ).toEqual(['words.whole-docks["sections"]: no form "one", which the language has'])
  expect(
    without((words) => {
      words['whole-docks']!.sections = '{secions}'
    })[0],
  ).toBe('words.whole-docks["sections"]: {secions} is no name there; expected {sections}')
})

it('the catalog editor knows of each', () => {
  expect([...SHIPPED_LANGUAGES].sort()).toEqual([...shipped].sort())
})
