/** A table, read as it is said to be: soundings, and every row that gives none with the reason. Figures in m. */
import { type Design, LIMITS } from '../../rules/index.ts'
import { readCell, readNumber } from './cell.ts'
import type { Reading, Role } from './guess.ts'
import type { Row, Table } from './table.ts'
import { tangentPlane, turn } from './tangent-plane.ts'

export type Sounding = Design['site']['soundings'][number]

/** Why a row gives no sounding. */
export type LeftWhy =
  | 'empty'
  | 'not-a-length'
  | 'inches-over'
  | 'units-mixed'
  | 'not-degrees'
  | 'too-far'
  | 'too-deep'
  | 'firm-above'
  | 'again'
  | 'taken'
  | 'thinned'

export interface Left {
  readonly row: Row
  /** Which column is to blame, where one is; from 0. */
  readonly column: number | null
  readonly why: LeftWhy
}

export interface Understood {
  /** In the order of the file. */
  readonly soundings: readonly Sounding[]
  readonly left: readonly Left[]
  /** Of each of the first rows what it gives; null: none. */
  readonly first: readonly (Sounding | null)[]
}

/** What is missing before anything can be read: a column, or where the degrees lie. */
export type Missing = 'depth' | 'place' | 'placing'

/** As in the Design's schema, m. */
const FAR = 20_000
const DEEP = [-100, 300] as const
const SHOWN = 8

export function missingIn({ roles, placing }: Reading): Missing | null {
  const has = (...wanted: Role[]): boolean => wanted.every((role) => roles.includes(role))
  if (!has('depth')) return 'depth'
  if (has('distance')) return null
  if (!has('lat', 'lon') && !has('east', 'north')) return 'place'
  return placing ? null : 'placing'
}

/** Nothing is read while something is missing. Never throws. @param known soundings that stay: at their places none is put */
export function understand(table: Table, reading: Reading, known: readonly Sounding[] = []): Understood {
  if (missingIn(reading)) return { soundings: [], left: [], first: [] }
  const read = makeReader(reading)
  const places = new Map(known.map((one) => [placeOf(one), one.depth]))
  const got: { readonly row: Row; readonly sounding: Sounding }[] = []
  const left: Left[] = []
  const first: (Sounding | null)[] = []
  table.rows.forEach((row, i) => {
    const one = read(row)
    const there = 'sounding' in one ? places.get(placeOf(one.sounding)) : undefined
    if (i < SHOWN) first.push('sounding' in one ? one.sounding : null)
    if (!('sounding' in one)) left.push({ row, ...one })
    else if (there !== undefined)
      left.push({ row, column: null, why: there === one.sounding.depth ? 'again' : 'taken' })
    else {
      places.set(placeOf(one.sounding), one.sounding.depth)
      got.push({ row, sounding: one.sounding })
    }
  })
  const most = LIMITS.soundings - known.length
  if (got.length <= most) return { soundings: got.map(({ sounding }) => sounding), left, first }
  // Evenly from first to last: what is left tells of the same ground.
  const kept = new Set(
    Array.from({ length: Math.max(0, most) }, (_, i) => Math.floor((i * got.length) / most)),
  )
  return {
    soundings: got.filter((_, i) => kept.has(i)).map(({ sounding }) => sounding),
    left: [
      ...left,
      ...got.filter((_, i) => !kept.has(i)).map(({ row }): Left => ({ row, column: null, why: 'thinned' })),
    ],
    first,
  }
}

const placeOf = ({ distance, offset }: Sounding): string => `${distance},${offset}`
/** As the Design keeps lengths, so that alike places are alike; and no -0. */
const kept = (value: number): number => Math.round(value * 1e7) / 1e7 + 0

type OneRow = { readonly sounding: Sounding } | Omit<Left, 'row'>

function makeReader({ roles, unit, sign, aside, surface, placing }: Reading): (row: Row) => OneRow {
  const column = Object.fromEntries(roles.map((role, k) => [role, k])) as Partial<Record<Role, number>>
  const depthOf = (value: number): number => kept(sign === 'down' ? value : surface - value)
  const placeIn = placer(
    placing,
    roles.includes('distance') ? null : roles.includes('lat') ? 'earth' : 'grid',
  )
  return ({ cells }) => {
    const faults: Omit<Left, 'row'>[] = []
    const figure = (role: Role): number | null => {
      const k = column[role]
      if (k === undefined) return null
      const place = role === 'distance' || role === 'offset'
      const inNumbers = role === 'lat' || role === 'lon' || role === 'north' || role === 'east'
      const text = cells[k] ?? ''
      const read = inNumbers ? readNumber(text) : readCell(text, place ? unit.place : unit.depth)
      if (read.ok) return read.value
      faults.push({ column: k, why: inNumbers && read.why !== 'empty' ? 'not-degrees' : read.why })
      return null
    }
    const [first, second] = placeIn
      ? [figure(roles.includes('lat') ? 'lat' : 'north'), figure(roles.includes('lat') ? 'lon' : 'east')]
      : [figure('distance'), figure('offset')]
    const down = figure('depth')
    // A rod is not pushed everywhere.
    const hasFirm = column.firm !== undefined && (cells[column.firm] ?? '').trim() !== ''
    const firm = hasFirm ? figure('firm') : null
    if (faults[0]) return faults[0]
    const at = placeIn
      ? placeIn(first!, second!)
      : [first!, aside === 'left' ? (second ?? 0) : -(second ?? 0)]
    if (!at) return { column: column.lat ?? null, why: 'not-degrees' }
    const [distance, offset] = [kept(at[0]!), kept(at[1]!)]
    const depth = depthOf(down!)
    if (Math.abs(distance) > FAR || Math.abs(offset) > FAR)
      return { column: column.distance ?? column.lat ?? column.north ?? null, why: 'too-far' }
    if (depth < DEEP[0] || depth > DEEP[1]) return { column: column.depth ?? null, why: 'too-deep' }
    if (firm === null) return { sounding: { distance, offset, depth } }
    const hard = depthOf(firm)
    if (hard < depth || hard > DEEP[1]) return { column: column.firm ?? null, why: 'firm-above' }
    return { sounding: { distance, offset, depth, firm: hard } }
  }
}

/** Null where the file has distances of its own. */
function placer(placing: Reading['placing'], by: 'earth' | 'grid' | null) {
  if (!placing || by === null) return null
  if (by === 'grid') {
    const { toPlan } = turn(placing.bearing)
    return (north: number, east: number) => toPlan(east - placing.longitude, north - placing.latitude)
  }
  const { toPlan } = tangentPlane(placing)
  return (lat: number, lon: number) => (Math.abs(lat) > 90 || Math.abs(lon) > 360 ? null : toPlan(lat, lon))
}
