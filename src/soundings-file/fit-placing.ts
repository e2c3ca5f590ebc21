/**
 * Where places on earth lie in the plan, fitted to the depths themselves: a plane is laid through them by least squares. Lakeward is the way
 * it falls, and the water's edge is where it is at the surface, opposite the middle of what was sounded. A shore is seldom as even: it is a
 * first guess for somebody who knows the shore.
 */
import { readNumber } from './cell.ts'
import type { Reading } from './guess.ts'
import type { Table } from './table.ts'
import { type Placing, tangentPlane, turn } from './tangent-plane.ts'
import { understand } from './understand.ts'

/** Falls less than this over its length it tells no way, rise over run. */
const LEVEL = 1e-4

/** Null where a file has no such places, or the ground falls no way. */
export function fitPlacing(table: Table, reading: Reading): Placing | null {
  const inDegrees = reading.roles.includes('lat')
  const [a, b] = inDegrees ? (['lat', 'lon'] as const) : (['north', 'east'] as const)
  const [ka, kb] = [reading.roles.indexOf(a), reading.roles.indexOf(b)]
  const places = table.rows.flatMap(({ cells }) => {
    const [p, q] = [readNumber(cells[ka] ?? ''), readNumber(cells[kb] ?? '')]
    return p.ok && q.ok ? [[p.value, q.value] as const] : []
  })
  if (places.length === 0) return null
  const mean = (k: 0 | 1): number => places.reduce((sum, place) => sum + place[k], 0) / places.length
  // Seen from their middle, x is east and y north.
  const middle = { latitude: mean(0), longitude: mean(1), bearing: 90 }
  const { soundings } = understand(table, { ...reading, placing: middle })
  const fall = fallOf(soundings.map(({ distance, offset, depth }) => [distance, offset, depth] as const))
  if (!fall) return null
  const { east, north, depth } = fall
  const slope = Math.hypot(east, north)
  const bearing = ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360
  // No farther back than what was sounded is wide.
  const wide = soundings.reduce((most, s) => Math.max(most, Math.hypot(s.distance, s.offset)), 0)
  const back = Math.min(Math.max(depth / slope, 0), 2 * wide)
  const edge = { x: fall.x - (back * east) / slope, y: fall.y - (back * north) / slope }
  if (!inDegrees) {
    const [e, n] = turn(90).toGrid(edge.x, edge.y)
    return { latitude: middle.latitude + n, longitude: middle.longitude + e, bearing }
  }
  const [latitude, longitude] = tangentPlane(middle).toEarth(edge.x, edge.y)
  return { latitude, longitude, bearing }
}

/** The plane's slopes, and its depth at the middle of the places. */
function fallOf(points: readonly (readonly [x: number, y: number, z: number])[]) {
  if (points.length < 2) return null
  const mean = (k: 0 | 1 | 2): number => points.reduce((sum, p) => sum + p[k], 0) / points.length
  const [x, y, depth] = [mean(0), mean(1), mean(2)]
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0]
  for (const p of points) {
    const [u, v, w] = [p[0] - x, p[1] - y, p[2] - depth]
    xx += u * u
    xy += u * v
    yy += v * v
    xz += u * w
    yz += v * w
  }
  const det = xx * yy - xy * xy
  // In one line: its own way is all that they tell.
  const inLine = det < 1e-9 * (xx + yy) ** 2
  const [east, north] = inLine
    ? [xz / (xx + yy || 1), yz / (xx + yy || 1)]
    : [(xz * yy - yz * xy) / det, (yz * xx - xz * xy) / det]
  return Math.hypot(east, north) < LEVEL ? null : { x, y, depth, east, north }
}
