/** Tables of soundings as they come: what is guessed of them, what they give, and what of each row that gives nothing. */
import { describe, expect, it } from 'vitest'
import { fitPlacing } from '../../src/soundings-file/fit-placing.ts'
import { guessReading, type Reading } from '../../src/soundings-file/guess.ts'
import { readTable, type Table } from '../../src/soundings-file/table.ts'
import { missingIn, understand } from '../../src/soundings-file/understand.ts'

const FOOT = 0.3048

async function tableOf(text: string): Promise<Table> {
  const read = await readTable(text)
  if (!read.ok) throw new Error(JSON.stringify(read.fault))
  return read.table
}

/** By what is guessed alone, a change of it apart: distance, offset, depth in m; and why rows were left out. */
async function got(text: string, units: 'imperial' | 'metric' = 'imperial', change: Partial<Reading> = {}) {
  const table = await tableOf(text)
  const reading = { ...guessReading(table, units), ...change }
  const { soundings, left } = understand(table, reading)
  expect(soundings.length + left.length).toBe(table.rows.length)
  return {
    table,
    reading,
    points: soundings.map((s) => [s.distance, s.offset, s.depth].map((v) => Number(v.toFixed(4)))),
    left: left.map(({ row, why, column }) => [row.at, why, column]),
    soundings,
  }
}
const feet = (...rows: number[][]) => rows.map((row) => row.map((v) => Number((v * FOOT).toFixed(4))))

describe('a pasted table', () => {
  it('in feet, with elevations: negative under water', async () => {
    const { points, reading, table } = await got(
      'Distance (ft)\tBed elev. (ft)\n0\t0\n10\t-2.5\n20\t-4\n-6\t3\n',
    )
    expect(points).toEqual(feet([0, 0, 0], [10, 0, 2.5], [20, 0, 4], [-6, 0, -3]))
    expect(reading).toMatchObject({
      sign: 'up',
      unit: { place: 'ft', depth: 'ft' },
      roles: ['distance', 'depth'],
    })
    expect(table).toMatchObject({ parted: 'tab', head: ['Distance (ft)', 'Bed elev. (ft)'] })
  })

  it.each([
    ['tab', '0\t0\t1\n3\t0\t2\n'],
    ['comma', '0,0,1\n3,0,2\n'],
    ['semicolon', '0;0;1\n3;0;2\n'],
    ['bar', '0|0|1\n3|0|2\n'],
    ['blank', '0 0 1\n3  0  2\n'.replaceAll('  ', ' ')],
    ['blank', '0   0   1\n3   0   2\n'],
    ['comma', '"0","0","1"\r\n"3","0","2"\r\n'],
  ])('parted by %s', async (parted, text) => {
    const { points, table } = await got(text, 'metric')
    expect(table.parted).toBe(parted)
    expect(points).toEqual([
      [0, 0, 1],
      [3, 0, 2],
    ])
  })

  it('with decimal commas, whatever parts its columns', async () => {
    const want = [
      [0.5, 0, 1.25],
      [3, 0, 2.5],
    ]
    expect((await got('0,5;1,25\n3,0;2,5', 'metric')).points).toEqual(want)
    expect((await got('0,5 1,25\n3,0 2,5', 'metric')).points).toEqual(want)
    expect((await got('"0,5","1,25"\n"3,0","2,5"', 'metric')).points).toEqual(want)
  })

  it('in inches, fathoms, centimeters, and with units of its own in a cell', async () => {
    expect((await got('out ft,depth in\n10,30\n20,48')).points).toEqual(feet([10, 0, 2.5], [20, 0, 4]))
    expect((await got('dist (m);depth (fathoms)\n10;1\n20;1.5')).points).toEqual([
      [10, 0, 1.8288],
      [20, 0, 2.7432],
    ])
    expect((await got('dist_m;depth_cm\n10;120\n20;250', 'imperial')).points).toEqual([
      [10, 0, 1.2],
      [20, 0, 2.5],
    ])
    expect((await got(`10 ft;7'2"\n20 ft;1 fathom\n30;2 m`)).points).toEqual([
      [3.048, 0, 2.1844],
      [6.096, 0, 1.8288],
      [9.144, 0, 2],
    ])
  })

  it('by the names of its columns, in any order; a number of a point is none', async () => {
    const { points, soundings } = await got(
      'Pt;Depth m;Firm bottom m;Right of line m;Chainage m\n1;0.8;1.1;2;5\n2;1.2;;-2;9',
      'imperial',
    )
    expect(points).toEqual([
      [5, -2, 0.8],
      [9, 2, 1.2],
    ])
    expect(soundings.map(({ firm }) => firm)).toEqual([1.1, undefined])
  })

  it('with two lines of heading, remarks and empty lines, keeping the lines of the file', async () => {
    const { points, left } = await got('# by rod\ndist;depth\n(m);(m)\n\n1;0.5\n2;?\n3;0.9\n', 'imperial')
    expect(points).toEqual([
      [1, 0, 0.5],
      [3, 0, 0.9],
    ])
    expect(left).toEqual([[6, 'not-a-length', 1]])
  })

  it('in heights of its own, with where the water stood', async () => {
    const { points } = await got('dist m;elevation m\n5;311.2\n9;310.4', 'metric', { surface: 312 })
    expect(points).toEqual([
      [5, 0, 0.8],
      [9, 0, 1.6],
    ])
  })

  it('says of each row that gives nothing why', async () => {
    const { points, left } = await got(
      'dist (m);offset;depth;firm\n1;0;1;\n1;0;1;\n1;0;2;\n;0;1;\n4;0;x;\n5;0;900;\n90000;0;1;\n6;0;2;1\n7;0;2;2.5',
      'metric',
    )
    expect(points).toEqual([
      [1, 0, 1],
      [7, 0, 2],
    ])
    expect(left).toEqual([
      [3, 'again', null],
      [4, 'taken', null],
      [5, 'empty', 0],
      [6, 'not-a-length', 2],
      [7, 'too-deep', 2],
      [8, 'too-far', 0],
      [9, 'firm-above', 3],
    ])
  })

  it('of more than a site may have is thinned, from first to last', async () => {
    const text = Array.from({ length: 20_500 }, (_, i) => `${i / 100}\t1`).join('\n')
    const { soundings, left } = await got(text, 'metric')
    expect(soundings.length).toBe(20_000)
    expect(soundings[0]!.distance).toBe(0)
    expect(soundings.at(-1)!.distance).toBeGreaterThan(204.9)
    expect(left.every(([, why]) => why === 'thinned')).toBe(true)
  })

  it('beside soundings that stay: none at their places', async () => {
    const table = await tableOf('1;1\n2;1\n3;1')
    const known = [
      { distance: 1, offset: 0, depth: 1 },
      { distance: 2, offset: 0, depth: 1.5 },
    ]
    const { soundings, left } = understand(table, guessReading(table, 'metric'), known)
    expect(soundings).toEqual([{ distance: 3, offset: 0, depth: 1 }])
    expect(left.map(({ why }) => why)).toEqual(['again', 'taken'])
  })

  it.each([
    ['', 'empty'],
    [' \n \n', 'empty'],
    ['1\n2\n3', 'one-column'],
    ['<gpx><wpt', 'not-xml'],
    ['<gpx></gpx>', 'no-points'],
    ['{"type": "FeatureCollection"', 'not-json'],
    ['{"type":"FeatureCollection","features":[]}', 'no-points'],
  ])('that is none, %j: %s', async (text, why) => {
    expect(await readTable(text)).toMatchObject({ ok: false, fault: { why } })
  })
})

const GPX = `<?xml version="1.0"?>
<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1" xmlns:d="urn:d"><wpt lat="46.5" lon="-88.4"><ele>0</ele><name>1.5</name></wpt>
<trk><trkseg><trkpt lat="46.5001" lon="-88.4"><extensions><d:TPX><d:depth>2.25</d:depth></d:TPX></extensions></trkpt></trkseg></trk></gpx>`

describe('places on earth', () => {
  const placing = { latitude: 46.5, longitude: -88.4, bearing: 0 }

  it('of a GPX file: waypoints and tracks, depths in extensions', async () => {
    const table = await tableOf(GPX)
    expect(table.head).toEqual(['lat', 'lon', 'depth', 'ele', 'name'])
    const reading = guessReading(table, 'imperial')
    expect(reading.roles.slice(0, 3)).toEqual(['lat', 'lon', 'depth'])
    expect(missingIn(reading)).toBe('placing')
    const { soundings, left } = understand(table, { ...reading, placing })
    expect(left.map(({ row, why }) => [row.at, why])).toEqual([[1, 'empty']])
    // 1e-4 degrees of latitude at 46.5 N are 11.115 m.
    expect(soundings[0]!.distance).toBeCloseTo(11.115, 2)
    expect(soundings[0]!.offset).toBeCloseTo(0, 4)
    expect(soundings[0]!.depth).toBe(2.25)
  })

  it('of GeoJSON: points with a depth, and corners of lines of one depth', async () => {
    const json = {
      type: 'FeatureCollection',
      features: [
        {
          type: 'Feature',
          geometry: { type: 'Point', coordinates: [-88.4, 46.5] },
          properties: { depth: 0.5 },
        },
        {
          type: 'Feature',
          geometry: {
            type: 'LineString',
            coordinates: [
              [-88.4, 46.5001],
              [-88.3999, 46.5001],
            ],
          },
          properties: { depth: 1, name: 'contour' },
        },
        {
          type: 'Feature',
          geometry: { type: 'MultiLineString', coordinates: [[[-88.4, 46.5002]], [[-88.3999, 46.5002]]] },
          properties: { depth: 2 },
        },
      ],
    }
    const { soundings } = await got(JSON.stringify(json), 'imperial', { placing })
    expect(soundings.map(({ depth }) => depth)).toEqual([0.5, 1, 1, 2, 2])
    // East is to the right of one who looks north.
    expect(soundings[2]!.offset).toBeLessThan(-7)
    expect(soundings[4]!.distance).toBeCloseTo(22.23, 2)
  })

  it('in meters of a grid', async () => {
    const { points } = await got('Easting;Northing;Depth m\n500100;5150000;1\n500100;5150010;2', 'metric', {
      placing: { latitude: 5_150_000, longitude: 500_100, bearing: 0 },
    })
    expect(points).toEqual([
      [0, 0, 1],
      [10, 0, 2],
    ])
  })

  it('lie by a plane through their depths: the way it falls, and where it is at the surface', async () => {
    // Falls 1 in 20 to the south-east, at the surface along the line through 3000 / 7000.
    const [s, c] = [Math.SQRT1_2, -Math.SQRT1_2]
    const rows = [0, 10, 20, 35].flatMap((out) =>
      [-15, 0, 15].map((aside) => {
        const [east, north] = [7000 + out * s - aside * c, 3000 + out * c + aside * s]
        return `${east};${north};${out / 20}`
      }),
    )
    const table = await tableOf(`east;north;depth (m)\n${rows.join('\n')}`)
    const reading = guessReading(table, 'metric')
    const fitted = fitPlacing(table, reading)!
    expect(fitted.bearing).toBeCloseTo(135, 6)
    const { soundings } = understand(table, { ...reading, placing: fitted })
    for (const { distance, depth } of soundings) expect(distance / 20).toBeCloseTo(depth, 6)
    expect(Math.min(...soundings.map(({ offset }) => offset))).toBeCloseTo(-15, 6)
    // On even ground none.
    const even = await tableOf('east;north;depth m\n1000;1000;2\n2000;1000;2\n1000;2000;2')
    expect(fitPlacing(even, guessReading(even, 'metric'))).toBe(null)
  })
})
