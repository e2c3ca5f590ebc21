/** Days, lists and names of the shop's own parts as a language has them; expected by hand, of CLDR's tables for the four languages. */
import { expect, it } from 'vitest'
import {
  demoCatalog,
  demoDesign,
  derive,
  ENGLISH,
  languageOf,
  nameIn,
  packingList,
  parseCatalog,
  projectOf,
} from '../../rules/index.ts'
import { quote } from '../../rules/papers.ts'
import { dayIn } from '../../rules/words/days.ts'
import { listOf } from '../../rules/words/language.ts'
import { dockIn, projectIn, remedyNamed } from '../../rules/words/part-names.ts'
import { readLanguage } from '../../src/cli/files.ts'

it.each([
  ['en', 'May 1, 2026', 'a, b, c'],
  ['de', '01.05.2026', 'a, b und c'],
  ['fr', '1 mai 2026', 'a, b et c'],
  ['es', '1 may 2026', 'a, b, c'],
])('a day and a list in %s', (tag, day, list) => {
  const language = languageOf(tag)
  expect(dayIn('2026-05-01', language)).toBe(day)
  expect(dayIn('spring', language)).toBe('spring')
  expect(dayIn('', language)).toBe('')
  expect(listOf(['a', 'b', 'c'], language)).toBe(list)
})

const frame = demoCatalog.frames[0]!
const mud = demoCatalog.pads.at(-1)!
const parsed = parseCatalog({
  ...demoCatalog,
  words: { fr: { [frame.code]: 'Cadre' }, 'fr-CA': { [mud.code]: 'Semelle' } },
})
if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))
const shop = parsed.value
const told = (part: { code: string; name: string }, tag: string) => nameIn(shop, part, languageOf(tag))

it('a part is called what its shop calls it there, by region, then by language, else as in the catalog', () => {
  expect(told(frame, 'fr-CA')).toBe('Cadre')
  expect(told(mud, 'fr-CA')).toBe('Semelle')
  expect(told(mud, 'fr')).toBe(mud.name)
  expect(told(frame, 'de')).toBe(frame.name)
  expect(nameIn(shop, frame, ENGLISH)).toBe(frame.name)
  expect(told({ code: 'constructor', name: 'T' }, 'fr')).toBe('T')
})

it('on lists and papers too, with the check codes that the dock has in any language', () => {
  const french = languageOf('fr-CA')
  const dock = derive(demoDesign, shop)
  const said = projectIn(projectOf(demoDesign, shop, dock), french)
  const names = (list: readonly { code: string | null; name: string }[]) =>
    list.filter(({ code }) => code === frame.code).map(({ name }) => name)
  expect(names(dock.parts)).toEqual([frame.name])
  expect(names(said.dock.parts)).toEqual(['Cadre'])
  const list = packingList(dockIn(dock, shop, french), shop)
  expect(names(list.groups.flatMap(({ rows }) => rows))).toEqual(['Cadre'])
  expect(said.dock.fingerprint).toEqual(dock.fingerprint)
  const asked = { date: '2026-05-01' }
  const [own, theirs] = [
    quote(dock, demoDesign, shop, asked),
    quote(said.dock, demoDesign, said.catalog, asked),
  ]
  expect(names(theirs.lines)).toEqual(['Cadre'])
  expect(theirs.check).toBe(own.check)
  const pad = { value: mud.name, unit: 'text' }
  const remedy = { key: 'mud-pads', patch: [], values: { pad } }
  expect(remedyNamed(remedy, shop, french).values.pad?.value).toBe('Semelle')
  expect(remedyNamed({ ...remedy, steps: [remedy] }, shop, french).steps?.[0]?.values.pad?.value).toBe(
    'Semelle',
  )
})

it('the terminal finds the shipped words of a language, and of a region’s language; what nobody shipped is told', () => {
  expect(readLanguage({ lang: 'fr-CA' })).toMatchObject({ tag: 'fr-CA', decimal: ',', dir: 'ltr' })
  expect(readLanguage({ lang: 'de_AT' }).words.figures).toEqual(readLanguage({ lang: 'de' }).words.figures)
  expect(readLanguage({ lang: 'en-GB' })).toMatchObject({ tag: 'en-GB', words: {} })
  expect(readLanguage({})).toBe(ENGLISH)
  for (const lang of ['fi', 'no language!', ''])
    expect(() => readLanguage({ lang })).toThrow(new RegExp(`--lang: "${lang}"; expected en, de, es, fr`))
})

it('words of a script that runs from right to left do so, with a minus before its number; English in their place does not', () => {
  expect(languageOf('he', { screen: { undo: 'x' } }).dir).toBe('rtl')
  expect(languageOf('he').dir).toBe('ltr')
  expect(languageOf('uz-Arab', { screen: {} }).dir).toBe('rtl')
  expect(languageOf('de', { screen: {} }).dir).toBe('ltr')
})
