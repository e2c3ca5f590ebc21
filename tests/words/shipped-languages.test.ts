/** Every language that is shipped says all that English says, with the same figures in it and in each of its own forms by number. */
import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { demoCatalog, demoDesign, languageOf, type Named, nameIn } from '../../rules/index.ts'
import {
  type Difference,
  differenceLine,
  differencesFromEnglish,
  type LanguageFile,
  parseLanguageFile,
} from '../../rules/words/language-file.ts'
import { dockIn } from '../../rules/words/part-names.ts'
import { ENGLISH_WORDS } from '../../src/words/english.ts'
import { SHIPPED_LANGUAGES } from '../../src/words/shipped-names.ts'
import { placedDock } from '../support/placed-dock.ts'

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

it.each(shipped)('%s has names for all that the demo shop sells, and a shop’s own go before them', (tag) => {
  const named = new Map<string, Named>()
  JSON.stringify(demoCatalog, (_, value: unknown) => {
    if (typeof value === 'object' && value !== null && 'code' in value && 'name' in value) {
      const one = value as Named
      named.set(one.name, one)
    }
    return value
  })
  expect(Object.keys(ENGLISH_WORDS['usual-names']!).sort()).toEqual([...named.keys()].sort())
  const language = languageOf(tag, fileOf(tag).words)
  const same = [...named.values()].filter((one) => nameIn(demoCatalog, one, language) === one.name)
  expect(same).toEqual([])
  const leg = named.get('Leg 3 ft')!
  const own = { words: { [tag]: { [leg.code]: 'Own' } } }
  expect(nameIn(own, leg, language)).toBe('Own')
  // Another name is another part, whatever its code.
  expect(nameIn({}, { ...leg, name: 'Leg 3 ft, tall' }, language)).toBe('Leg 3 ft, tall')
})

it('a part of the demo shop stands on a list in German', () => {
  const german = languageOf('de', fileOf('de').words)
  const dock = placedDock(demoDesign, demoCatalog)
  const told = dockIn(dock, demoCatalog, german).parts.map(({ name }) => name)
  expect(told).toContain('Stütze 3 ft')
  expect(told).toContain('Pfahlschelle')
  expect(told.filter((name) => dock.parts.some((one) => one.name === name))).toEqual([])
})
