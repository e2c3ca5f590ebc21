/** Price lists and files of any kind: nothing is thrown, no row is lost, and what is taken in is a catalog that is right. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { demoCatalog, parseCatalog } from '../../rules/index.ts'
import { changesBetween } from '../../src/catalog-editor/changes.ts'
import { isObject, type Json, type JsonObject, type Path } from '../../src/catalog-editor/draft.ts'
import { readCatalogFile, writtenFile } from '../../src/catalog-editor/file.ts'
import { CATALOG_FORM, leavesOf } from '../../src/catalog-editor/form/catalog-form.ts'
import { doubtsOf } from '../../src/catalog-editor/price-list/doubts.ts'
import { firstReading, readRows } from '../../src/catalog-editor/price-list/read-row.ts'
import { guessRoles, ROLES, readPriceTable } from '../../src/catalog-editor/price-list/table.ts'
import { TAKEN_LISTS, takePriceList } from '../../src/catalog-editor/price-list/take.ts'
import { createEditor } from '../../src/catalog-editor/store.ts'
import { catalogs } from '../support/catalogs.ts'
import { runs } from '../support/runs.ts'
import { PRICE_ROWS } from './sample-price-list.ts'

const seed = Number(process.env.LEADLINE_SEED ?? 416)
const sold = [
  'Frame',
  'Leg',
  'Brace',
  'Bench',
  'Anchor post',
  'Deck panel',
  'Delivery',
  'Foot pad',
  'Set bolt',
  'Bumper',
  '',
]
const sizes = [
  '4 x 8 ft',
  '5 ft',
  '7\' 6"',
  '2.5 x 1,0 m',
  '1/4 x 10 x 6 in',
  '9999 x 1 m',
  '0 ft',
  '4 x 4 x 4 x 4',
  '6',
]
const cell = fc.oneof(
  fc.constantFrom(
    ...sold,
    ...sizes,
    '$1,249.50',
    '1.249,50',
    'call',
    '-5',
    '1e9',
    '"',
    '\u202e',
    '__proto__',
  ),
  fc.string({ maxLength: 12 }),
  fc.tuple(fc.constantFrom(...sold), fc.constantFrom(...sizes)).map((both) => both.join(' ')),
)
/** As a list has them, most cells with what their heading says. */
const likely = fc.tuple(
  fc.oneof({ weight: 3, arbitrary: fc.stringMatching(/^[A-Z]-[0-9]{1,2}$/) }, cell),
  fc.oneof(
    {
      weight: 4,
      arbitrary: fc.tuple(fc.constantFrom(...sold), fc.constantFrom(...sizes)).map((two) => two.join(' ')),
    },
    cell,
  ),
  fc.oneof({ weight: 4, arbitrary: fc.constantFrom('$412.00', '19.5', '$1,480.00', '0') }, cell),
  fc.oneof({ weight: 3, arbitrary: fc.constantFrom('', ...sizes) }, cell),
  fc.oneof({ weight: 3, arbitrary: fc.constantFrom('', '12', '12 kg', '7.5') }, cell),
)
const rowsOf = fc.oneof(
  { weight: 3, arbitrary: fc.array(likely, { minLength: 1, maxLength: 12 }) },
  fc.array(fc.array(cell, { minLength: 1, maxLength: 6 }), { maxLength: 12 }),
)
/** Columns that somebody takes as something else. */
const said = fc.array(fc.constantFrom(undefined, ...ROLES), { maxLength: 6 })
const table = fc
  .tuple(rowsOf, fc.constantFrom('\t', ';', '|'), fc.boolean())
  .map(([rows, mark, headed]) =>
    [...(headed ? [PRICE_ROWS[0]!] : []), ...rows].map((row) => row.join(mark)).join('\n'),
  )

it('any price list leaves a catalog that is right, with each of its rows taken or told', () => {
  let taken = 0
  let doubts = 0
  fc.assert(
    fc.property(table, fc.nat(catalogs.length - 1), fc.subarray([...TAKEN_LISTS]), said, (...given) => {
      const [text, shop, replace, roles] = given
      const catalog = catalogs[shop]!
      const read = readPriceTable(text)
      if (!read) return
      const reading = firstReading(guessRoles(read), 'imperial', catalog.currency, read.head)
      const rows = readRows(read.rows, reading)
      const {
        catalog: made,
        left,
        did,
        guessed,
      } = takePriceList(catalog, rows, { replace, panelName: () => 'Panel' })
      // Columns taken as anything: what is told of them is of a line of the list.
      const other = { ...reading, roles: reading.roles.map((role, k) => roles[k] ?? role) }
      const others = readRows(read.rows, other)
      const of = takePriceList(catalog, others, { replace, panelName: () => 'Panel' })
      const lines = new Set(read.rows.map(({ at }) => at))
      for (const doubt of doubtsOf(read, other, others, of)) {
        if ('at' in doubt) expect(lines).toContain(doubt.at)
        doubts++
      }
      const wanted = rows.filter(({ kind }) => kind !== 'leave')
      expect(left.length + Object.keys(did).length).toBe(wanted.length)
      taken += Object.keys(did).length
      const parsed = parseCatalog(JSON.parse(JSON.stringify(made)))
      expect(parsed.ok ? [] : parsed.issues).toEqual([])
      const places = new Set(
        leavesOf(CATALOG_FORM, made as unknown as JsonObject).map(({ path }) => path.join('/')),
      )
      expect(guessed.filter((path) => !places.has(path.join('/')))).toEqual([])
    }),
    { seed, numRuns: runs(150) },
  )
  expect(taken).toBeGreaterThan(runs(100))
  expect(doubts).toBeGreaterThan(runs(50))
})

it('any file, and any value anywhere in a catalog, is opened or told, kept as it was, and undone', () => {
  const demo = demoCatalog as unknown as JsonObject
  const places = leavesOf(CATALOG_FORM, demo).flatMap(({ path }) => path.map((_, i) => path.slice(0, i + 1)))
  const value = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom(null, -1, 1e300, '', [], {}),
  ) as fc.Arbitrary<Json>
  fc.assert(
    fc.property(fc.constantFrom<Path>(...places), value, fc.boolean(), (path, put, out) => {
      const store = createEditor(demoCatalog)
      store.getState().set(path, out ? undefined : put)
      const { draft, good } = store.getState()
      expect(parseCatalog(good).ok).toBe(true)
      const file = JSON.stringify(draft)
      const opened = readCatalogFile(file)
      if (opened.ok) expect(JSON.parse(writtenFile(opened.draft))).toEqual(JSON.parse(file))
      else expect(isObject(draft) && path[0] === 'format').toBe(true)
      changesBetween(demo, draft)
      leavesOf(CATALOG_FORM, draft)
      store.getState().undo()
      expect(store.getState().draft).toEqual(demo)
    }),
    { seed, numRuns: runs(150) },
  )
})
