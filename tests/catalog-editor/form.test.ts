/** The form has every field of the schema, with words, a place in a section, and numbers that come back as they went in. */
import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import de from '../../public/words/de.json' with { type: 'json' }
import es from '../../public/words/es.json' with { type: 'json' }
import fr from '../../public/words/fr.json' with { type: 'json' }
import { CatalogSchema } from '../../rules/catalog/schema.ts'
import { demoCatalog, ENGLISH, languageOf } from '../../rules/index.ts'
import hints from '../../rules/words/en/catalog-hints.json' with { type: 'json' }
import type { JsonObject } from '../../src/catalog-editor/draft.ts'
import {
  CATALOG_FORM,
  leavesOf,
  SECTION_NAMES,
  SECTIONS,
  sectionOf,
} from '../../src/catalog-editor/form/catalog-form.ts'
import { hintIn } from '../../src/catalog-editor/form/hint.ts'
import { labelOf } from '../../src/catalog-editor/form/label.ts'
import { numberIn, readIn, shownIn } from '../../src/catalog-editor/form/measure.ts'
import { type Node, nodeOf } from '../../src/catalog-editor/form/node.ts'
import { metricCatalog } from '../support/catalogs.ts'

type Keys = readonly (string | number)[]
const reader = { language: ENGLISH, units: 'imperial' } as const

/** Paths of all fields, walked over the schema itself and not over the form: lists by their first entry, records by a name `any`. */
function schemaPaths(schema: v.GenericSchema, path: Keys = []): Keys[] {
  const s = schema as v.GenericSchema & Record<string, unknown>
  const inner = (key: string): v.GenericSchema => s[key] as v.GenericSchema
  if ('wrapped' in s) return schemaPaths(inner('wrapped'), path)
  switch (s.type) {
    case 'array':
      return schemaPaths(inner('item'), [...path, 0])
    case 'tuple':
      return (s.items as v.GenericSchema[]).flatMap((item, i) => schemaPaths(item, [...path, i]))
    case 'record':
      return schemaPaths(inner('value'), [...path, 'any'])
    case 'variant':
      return (s.options as v.GenericSchema[]).flatMap((option) => schemaPaths(option, path))
    case 'loose_object':
      return Object.entries(s.entries as Record<string, v.GenericSchema>).flatMap(([key, entry]) =>
        schemaPaths(entry, [...path, key]),
      )
    default:
      return [path]
  }
}

/** The same over the form. */
function formPaths(node: Node, path: Keys = []): Keys[] {
  switch (node.kind) {
    case 'list':
      return formPaths(node.item, [...path, 0])
    case 'tuple':
      return node.items.flatMap((item, i) => formPaths(item, [...path, i]))
    case 'record':
      return formPaths(node.value, [...path, 'any'])
    case 'variant':
      return Object.values(node.options).flatMap((option) => formPaths(option, path))
    case 'object':
      return Object.entries(node.fields).flatMap(([key, field]) => formPaths(field, [...path, key]))
    default:
      return [path]
  }
}
const text = (path: Keys): string => path.join('/')

describe('the form of a catalog', () => {
  const fields = schemaPaths(CatalogSchema)

  it('has every field of the schema, and no other', () => {
    expect(fields.length).toBeGreaterThan(350)
    expect(formPaths(CATALOG_FORM).map(text)).toEqual(fields.map(text))
  })

  it('shows each in one section', () => {
    expect(fields.filter((path) => sectionOf(path) === null)).toEqual([])
    const places = SECTION_NAMES.flatMap((name) => SECTIONS[name] as readonly string[])
    expect(new Set(places).size).toBe(places.length)
    // Each place that a section names is one of the schema.
    const all = fields.map((path) => path.join('.'))
    expect(
      places.filter((place) => !all.some((one) => one === place || one.startsWith(`${place}.`))),
    ).toEqual([])
  })

  it('has words for each, and for all that they stand in', () => {
    const named = new Set(fields.flatMap((path) => path.map((_, i) => text(path.slice(0, i + 1)))))
    const without = [...named].filter((one) => {
      const path = one.split('/').map((key) => (/^\d+$/.test(key) ? Number(key) : key))
      const last = path.at(-1)
      const own = last === 'any' || (typeof last === 'number' && path.at(-2) !== 'size')
      return !own && labelOf(path, reader) === undefined
    })
    expect(without).toEqual([])
  })

  it('says what each field is in the reader’s language, where the schema says it in English', () => {
    const said = new Set<string>()
    const walk = (node: Node, path: Keys): void => {
      const last = path.at(-1)
      // Codes, names and prices are not explained at each of forty parts.
      if (
        hintIn(node.says, reader) !== '' &&
        typeof last === 'string' &&
        !/^(?:code|id|name|price|bag)$/.test(last)
      )
        said.add(node.says)
      if (node.kind === 'object')
        for (const [key, field] of Object.entries(node.fields)) walk(field, [...path, key])
      if (node.kind === 'list') walk(node.item, [...path, 0])
      if (node.kind === 'tuple') for (const [i, item] of node.items.entries()) walk(item, [...path, i])
      if (node.kind === 'record') walk(node.value, [...path, 'any'])
      if (node.kind === 'variant') for (const option of Object.values(node.options)) walk(option, path)
    }
    walk(CATALOG_FORM, [])
    for (const [tag, { words }] of Object.entries({ de, es, fr })) {
      const other = { units: 'metric' as const, language: languageOf(tag, words) }
      expect(
        [...said].filter((one) => hintIn(one, other) === hintIn(one, reader)),
        tag,
      ).toEqual([])
    }
    expect(said.size).toBeGreaterThan(180)
    const german = { units: 'metric' as const, language: languageOf('de', de.words) }
    expect(hintIn('Up to this mass, kg', german)).toBe('Bis zu diesem Gewicht')
    expect(hintIn('Up to this mass, kg', reader)).toBe('Up to this mass')
    // What the schema says no more is no hint.
    expect(Object.keys(hints).filter((one) => !said.has(one))).toEqual([])
  })

  it('tells a field that the schema gets later, and one that it cannot show', () => {
    const more = v.looseObject({ ...CatalogSchema.entries, berths: v.array(v.string()) })
    expect(formPaths(nodeOf(more)).map(text)).toContain('berths/0')
    expect(sectionOf(['berths', 0])).toBeNull()
    expect(() => nodeOf(v.looseObject({ when: v.date() }))).toThrow('date')
  })

  it.each(
    ['en', 'de', 'fr', 'es', 'de-CH'].flatMap((tag) =>
      (['imperial', 'metric'] as const).map((units) => [units, tag] as const),
    ),
  )('reads every number of both shops as it shows it, %s, %s', (units, tag) => {
    const language = languageOf(tag)
    let numbers = 0
    let parted = 0
    for (const catalog of [demoCatalog, metricCatalog])
      for (const { node, value, path } of leavesOf(CATALOG_FORM, catalog as unknown as JsonObject)) {
        if (node.kind !== 'number' || typeof value !== 'number') continue
        const scale = { measure: node.measure, units, most: node.max, currency: catalog.currency, language }
        const shown = shownIn(scale, value)
        const read = readIn(scale, shown)
        numbers++
        if (shown.includes(language.decimal)) parted++
        // Never the other mark.
        expect(shown).not.toContain(language.decimal === ',' ? '.' : ',')
        // Shown to a ten-thousandth of an inch, and to six digits in units that are not the file's.
        const error = node.measure === 'length' ? 2e-6 : Math.abs(value) * 6e-6
        expect(
          Math.abs((read ?? Number.NaN) - value),
          `${text(path)} ${shownIn(scale, value)}`,
        ).toBeLessThanOrEqual(error)
      }
    expect(numbers).toBeGreaterThan(600)
    expect(parted).toBeGreaterThan(200)
  })

  it.each([
    // A point or a comma parts decimals in any language; of both the last does.
    ['de', 'density', '7,85', 7.85],
    ['de', 'density', '7.85', 7.85],
    ['de', 'density', '1.234,5', 1234.5],
    ['de', 'density', '1,234.5', 1234.5],
    ['en', 'density', '1.234,5', 1234.5],
    ['fr', 'density', '1 234,5', 1234.5],
    ['fr', 'density', '1\u202f234,5', 1234.5],
    // One alone before three digits is what it is in the reader's language.
    ['de', 'density', '7.850', 7850],
    ['es', 'density', '7.850', 7850],
    ['en', 'density', '7,850', 7850],
    ['de', 'density', '7,850', 7.85],
    ['en', 'density', '7.850', 7.85],
    ['fr', 'density', '7.850', 7.85],
    // Lengths as on the dock's page.
    ['de', 'length', '2,438 m', 2.438],
    ['de', 'length', '2.438 m', 2.438],
    ['de', 'length', '1.234,5 mm', 1.2345],
    ['en', 'length', '1,234.5 mm', 1.2345],
    ['es', 'length', '1.234,5 mm', 1.2345],
    ['de', 'money', '1.249,50 €', 124950],
    ['de', 'money', '1.249', 124900],
    ['de', 'share', '5,5 %', 0.055],
    ['de', 'density', 'schwer', null],
    ['de', 'length', '1.2.3 m', null],
  ] as const)('in %s a %s typed as %s is %s', (tag, measure, typed, value) => {
    const scale = { measure, units: 'metric', most: 20, currency: 'EUR', language: languageOf(tag) } as const
    const read = readIn(scale, typed)
    if (value === null) expect(read).toBeNull()
    else expect(read).toBeCloseTo(value, 9)
  })

  it.each([
    ['$1,249.50', 1249.5],
    ['1.249,50 €', 1249.5],
    ['1 249,50', 1249.5],
    ['1,249', 1249],
    ['12,5', 12.5],
    ['0,125', 0.125],
    ['1.249.000', 1249000],
    ['389', 389],
    ['call', null],
    ['', null],
    ['4x8', null],
  ])('reads the amount %s', (typed, value) => {
    expect(numberIn(typed)).toBe(value)
  })

  it('takes plain numbers in the unit that stands in the field', () => {
    const of = (most: number, typed: string) =>
      readIn({ measure: 'length', units: 'imperial', most, currency: 'USD', language: ENGLISH }, typed)
    expect(of(20, '8')).toBeCloseTo(8 * 0.3048, 9)
    expect(of(1, '2 3/8')).toBeCloseTo(2.375 * 0.0254, 9)
    expect(of(1, '60.3 mm')).toBeCloseTo(0.0603, 9)
    const other = (measure: 'money' | 'share', typed: string, currency = 'USD') =>
      readIn({ measure, units: 'imperial', most: 1e8, currency, language: ENGLISH }, typed)
    expect(other('money', '$389')).toBe(38900)
    expect(other('money', '389', 'JPY')).toBe(389)
    expect(other('money', '3.895')).toBeNull()
    expect(other('share', '5.5 %')).toBeCloseTo(0.055, 12)
  })
})
