/** Hostile tables: whatever comes, nothing is thrown, each row is told of, and what is taken in is what the Design takes. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { demoDesign, parseDesign } from '../../rules/index.ts'
import { UNITS } from '../../src/soundings-file/cell.ts'
import { fitPlacing } from '../../src/soundings-file/fit-placing.ts'
import { guessReading, type Reading, ROLES } from '../../src/soundings-file/guess.ts'
import { readTable } from '../../src/soundings-file/table.ts'
import { understand } from '../../src/soundings-file/understand.ts'
import { runs } from '../support/runs.ts'

const cell = fc.oneof(
  fc.double().map(String),
  fc.integer({ min: -200, max: 200 }).map(String),
  fc.constantFrom(
    '',
    '"',
    '7\'2"',
    '1,5',
    '-',
    '1e309',
    'NaN',
    'Infinity',
    '0x10',
    '١٢',
    '-0',
    '½',
    '=1+1',
    'lat',
    'depth (ft)',
    '\u0000',
    '  ',
  ),
  fc.string(),
)
const text = fc
  .tuple(
    fc.constantFrom(',', ';', '\t', '|', ' ', '  '),
    fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 12 }),
    fc.constantFrom('\n', '\r\n', '\r'),
  )
  .map(([mark, rows, end]) => rows.map((row) => row.join(mark)).join(end))
/** As people have them, with a cell gone wrong here and there. */
const ordinary = fc
  .tuple(
    fc.constantFrom(',', ';', '\t'),
    fc.array(
      fc.tuple(
        fc.integer({ min: -50, max: 4000 }),
        fc.integer({ min: -300, max: 300 }),
        fc.oneof(
          { weight: 9, arbitrary: fc.integer({ min: -40, max: 90 }).map((n) => String(n / 10)) },
          { weight: 1, arbitrary: cell },
        ),
      ),
      { minLength: 1, maxLength: 30 },
    ),
    fc.constantFrom('', 'x{}y{}z\n', 'dist ft{}left ft{}depth in\n', 'east{}north{}depth (fathoms)\n'),
  )
  .map(([mark, rows, head]) => head.replaceAll('{}', mark) + rows.map((row) => row.join(mark)).join('\n'))
const number = fc.oneof(fc.double(), fc.double({ min: -180, max: 180, noNaN: true }))
const position = fc.oneof(
  fc.array(number, { maxLength: 4 }),
  fc.array(fc.array(number, { maxLength: 3 }), { maxLength: 4 }),
  fc.jsonValue(),
)
const geojson = fc
  .array(
    fc.record({
      geometry: fc.record({ coordinates: position }),
      properties: fc.dictionary(
        fc.constantFrom('depth', 'z', '__proto__', 'dist'),
        fc.oneof(number, fc.string()),
      ),
    }),
  )
  .map((features) => JSON.stringify({ type: 'FeatureCollection', features }))
const gpx = fc
  .array(fc.tuple(cell, cell, cell))
  .map(
    (points) =>
      `<gpx>${points.map(([a, b, c]) => `<wpt lat="${a}" lon="${b}"><ele>${c}</ele><x:depth>${c}</x:depth></wpt>`).join('')}</gpx>`,
  )
const hostile = fc.constantFrom(
  `${'['.repeat(50_000)}`,
  `${'{"features":['.repeat(2_000)}`,
  `<gpx>${'<a>'.repeat(5_000)}`,
  '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]><gpx><wpt lat="&b;" lon="1"><ele>&b;</ele></wpt></gpx>',
  '{"coordinates":[1e308,-1e308],"properties":{"depth":1e308}}',
  `${'"'.repeat(10_000)},1\n2,3`,
  `1${','.repeat(100_000)}`,
)

const reading = (columns: number): fc.Arbitrary<Partial<Reading>> =>
  fc.record({
    roles: fc.array(fc.constantFrom(...ROLES), { minLength: columns, maxLength: columns }),
    unit: fc.record({ place: fc.constantFrom(...UNITS), depth: fc.constantFrom(...UNITS) }),
    sign: fc.constantFrom('up', 'down'),
    surface: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
    placing: fc.option(fc.record({ latitude: number, longitude: number, bearing: number }), { nil: null }),
  })

it('no table throws, and no row is lost', async () => {
  let taken = 0
  await fc.assert(
    fc.asyncProperty(
      fc.oneof(text, ordinary, geojson, gpx, hostile, fc.string()),
      fc.infiniteStream(fc.nat()),
      async (input, seeds) => {
        const read = await readTable(input)
        if (!read.ok) return
        const { table } = read
        const guessed = guessReading(table, 'imperial')
        const [any] = fc.sample(reading(table.head.length), { numRuns: 1, seed: seeds.next().value! })
        for (const one of [
          guessed,
          { ...guessed, placing: fitPlacing(table, guessed) },
          { ...guessed, ...any },
        ]) {
          const { soundings, left } = understand(table, one)
          if (soundings.length + left.length > 0)
            expect(soundings.length + left.length).toBe(table.rows.length)
          if (soundings.length === 0) continue
          taken++
          const parsed = parseDesign({ ...demoDesign, site: { ...demoDesign.site, soundings } })
          expect(parsed.ok ? [] : parsed.issues).toEqual([])
        }
      },
    ),
    { seed: 77_120, numRuns: runs(600) },
  )
  expect(taken).toBeGreaterThan(runs(60))
}, 120_000)
