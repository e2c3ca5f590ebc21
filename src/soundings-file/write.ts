/** Soundings as files: what is written here is read again as the same soundings. */
import Papa from 'papaparse'
import type { Design } from '../../rules/index.ts'
import { type Placing, tangentPlane } from './tangent-plane.ts'
import type { Sounding } from './understand.ts'

/** 1e-7 m in meters, and a hundredth of that in degrees. */
const METERS = 7
const DEGREES = 10

const round = (value: number, digits: number): number => Number(value.toFixed(digits))

/** Distance, offset (left positive), depth (down positive), firm bottom where it was sounded; m. */
export function soundingsCsv(soundings: readonly Sounding[]): string {
  const firm = soundings.some((s) => s.firm !== undefined)
  const rows = soundings.map((s) => [
    round(s.distance, METERS),
    round(s.offset, METERS),
    round(s.depth, METERS),
    ...(firm ? [s.firm === undefined ? '' : round(s.firm, METERS)] : []),
  ])
  const fields = ['distance_m', 'offset_left_m', 'depth_m', ...(firm ? ['firm_m'] : [])]
  return `${Papa.unparse({ fields, data: rows }, { newline: '\r\n' })}\r\n`
}

/** Null where nobody has said where on earth the site is. */
export function placingOf({ origin, bearing }: Design['site']): Placing | null {
  return origin && bearing !== undefined ? { ...origin, bearing } : null
}

/** RFC 7946: a point for each, with depth, distance and offset as properties, m. */
export function soundingsGeoJson(soundings: readonly Sounding[], placing: Placing): string {
  const { toEarth } = tangentPlane(placing)
  const features = soundings.map(({ distance, offset, depth, firm }) => {
    const [lat, lon] = toEarth(distance, offset)
    return {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: [round(lon, DEGREES), round(lat, DEGREES)] },
      properties: { depth, distance, offset, ...(firm !== undefined && { firm }) },
    }
  })
  return `${JSON.stringify({ type: 'FeatureCollection', features }, null, 1)}\n`
}
