/** The tangent plane against GeographicLib's geodesics; what is written is read again as the same. */
import fc from 'fast-check'
import geodesic from 'geographiclib-geodesic'
import { describe, expect, it } from 'vitest'
import { guessReading } from '../../src/soundings-file/guess.ts'
import { readTable } from '../../src/soundings-file/table.ts'
import { type Placing, tangentPlane } from '../../src/soundings-file/tangent-plane.ts'
import { understand } from '../../src/soundings-file/understand.ts'
import { soundingsCsv, soundingsGeoJson } from '../../src/soundings-file/write.ts'
import { runs } from '../support/runs.ts'

const anyPlacing: fc.Arbitrary<Placing> = fc.record({
  latitude: fc.double({ min: -80, max: 80, noNaN: true }),
  longitude: fc.double({ min: -179, max: 179, noNaN: true }),
  bearing: fc.double({ min: 0, max: 360, noNaN: true }),
})

describe('the plane at an origin', () => {
  it('has distances and bearings of geodesics within 1 mm to 2 km', () => {
    const wgs84 = geodesic.Geodesic.WGS84
    fc.assert(
      fc.property(
        anyPlacing,
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0.5, max: 2000, noNaN: true }),
        (placing, azimuth, far) => {
          const { lat2, lon2 } = wgs84.Direct(placing.latitude, placing.longitude, azimuth, far)
          const [x, y] = tangentPlane(placing).toPlan(lat2!, lon2!)
          const turn = ((azimuth - placing.bearing) * Math.PI) / 180
          // To the right of lakeward is negative.
          expect(Math.hypot(x - far * Math.cos(turn), y + far * Math.sin(turn))).toBeLessThan(1e-3)
        },
      ),
      { seed: 3_311, numRuns: runs(400) },
    )
  })

  it('takes places back to where they came from', () => {
    fc.assert(
      fc.property(
        anyPlacing,
        fc.double({ min: -3000, max: 3000, noNaN: true }),
        fc.double({ min: -3000, max: 3000, noNaN: true }),
        (placing, x, y) => {
          const plane = tangentPlane(placing)
          const [u, v] = plane.toPlan(...plane.toEarth(x, y))
          expect(Math.hypot(u - x, v - y)).toBeLessThan(2e-3)
        },
      ),
      { seed: 3_312, numRuns: runs(200) },
    )
  })
})

describe('what is written', () => {
  const soundings = [
    { distance: -2.5, offset: 0, depth: -0.4 },
    { distance: 3.048, offset: 1.25, depth: 0.7, firm: 0.95 },
    { distance: 12.3456789, offset: -4, depth: 2.1 },
  ]

  it('as CSV is read again as the same, in either units', async () => {
    for (const units of ['metric', 'imperial'] as const) {
      const read = await readTable(soundingsCsv(soundings))
      if (!read.ok) throw new Error(read.fault.why)
      expect(understand(read.table, guessReading(read.table, units)).soundings).toEqual(
        soundings.map((s) => ({ ...s, distance: Number(s.distance.toFixed(7)) })),
      )
    }
  })

  it('as GeoJSON is read again at the same places within 0.1 mm', async () => {
    const placing = { latitude: 46.51234, longitude: -88.43, bearing: 212 }
    const read = await readTable(soundingsGeoJson(soundings, placing))
    if (!read.ok) throw new Error(read.fault.why)
    const reading = guessReading(read.table, 'imperial')
    // It has distances of its own, and places: both say the same.
    expect(understand(read.table, reading).soundings).toEqual(
      soundings.map((s) => expect.objectContaining({ depth: s.depth })),
    )
    const roles = reading.roles.map((role) => (role === 'distance' || role === 'offset' ? 'none' : role))
    const back = understand(read.table, { ...reading, roles, placing }).soundings
    back.forEach((s, i) => {
      expect(Math.hypot(s.distance - soundings[i]!.distance, s.offset - soundings[i]!.offset)).toBeLessThan(
        1e-4,
      )
      expect(s.firm).toBe(soundings[i]!.firm)
    })
  })
})
