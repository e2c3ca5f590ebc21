/** What a table's columns seem to be. A guess and no more: all of it is shown, and can be changed, before anything is taken in. */
import type { Units } from '../../rules/index.ts'
import { readCell, readNumber, type Unit } from './cell.ts'
import type { Table } from './table.ts'
import type { Placing } from './tangent-plane.ts'

export const ROLES = ['distance', 'offset', 'depth', 'firm', 'lat', 'lon', 'north', 'east', 'none'] as const
export type Role = (typeof ROLES)[number]

export interface Reading {
  /** Of each column. */
  readonly roles: readonly Role[]
  /** Of plain numbers: distances and offsets, and depths. */
  readonly unit: { readonly place: Unit; readonly depth: Unit }
  /** `down`: depths, positive under water; `up`: elevations. */
  readonly sign: 'down' | 'up'
  /** Which way offsets are positive. */
  readonly aside: 'left' | 'right'
  /** Elevation of the water's surface in the file's own heights, m; of elevations only. */
  readonly surface: number
  /** Where degrees, or meters of a grid (`latitude` north, `longitude` east), lie in the plan. */
  readonly placing: Placing | null
}

/** First match of the first that fits; a heading's words, in the languages of the waters that these come from. */
const NAMES: readonly (readonly [Role, RegExp])[] = [
  ['lat', /^lat/],
  ['lon', /^(?:lon|lng)/],
  ['firm', /firm|hard|refusal|probe/],
  ['depth', /depth|deep|sounding|tiefe|profond|prof\b|djup|syvyys/],
  ['distance', /^x\b|dist|chain|station|along|\bout\b|from shore|range/],
  ['offset', /^y\b|offset|aside|left|right|lateral|across/],
  ['east', /^east|^utm ?e|rechts/],
  ['north', /^north|^utm ?n|hoch/],
  ['depth', /elev|^ele$|^z\b|height|altitude|\bbed\b|bottom/],
]
const UP = /elev|^ele$|^z\b|height|altitude/

const UNIT_NAMES: readonly (readonly [Unit, RegExp])[] = [
  ['fathom', /fathom|\bfms?\b|\bfth\b/],
  ['ft', /\b(?:ft|feet|foot)\b|\('\)/],
  ['in', /\b(?:in|inch|inches)\b|\("\)/],
  ['cm', /\b(?:cm|centimet(?:er|re)s?)\b/],
  ['m', /\b(?:m|met(?:er|re)s?|mtr)\b/],
]

/** Rows that tell. */
const SAMPLE = 500
/** A column of figures has them in so many of its rows. */
const SHARE = 0.6

const plain = (head: string): string =>
  head
    .toLowerCase()
    .replace(/[_\-./[\]:]+/g, ' ')
    .trim()

export function guessReading(table: Table, units: Units): Reading {
  const heads = table.head.map(plain)
  const roles = rolesOf(table, heads)
  const of = (role: Role): number => roles.indexOf(role)
  const own: Unit = table.format === 'text' && units === 'imperial' ? 'ft' : 'm'
  const unitOf = (role: Role, otherwise: Unit): Unit =>
    UNIT_NAMES.find(([, name]) => name.test(heads[of(role)] ?? ''))?.[0] ?? otherwise
  const depth = unitOf('depth', own)
  const place = unitOf('distance', unitOf('offset', depth === 'in' || depth === 'fathom' ? own : depth))
  return {
    roles,
    unit: { place, depth },
    sign: signOf(table, of('depth'), heads[of('depth')] ?? '', depth),
    aside: /right/.test(heads[of('offset')] ?? '') ? 'right' : 'left',
    surface: 0,
    placing: null,
  }
}

function rolesOf({ rows, head }: Table, heads: readonly string[]): Role[] {
  const roles: Role[] = head.map(() => 'none')
  const put = (column: number, role: Role): void => {
    if (column >= 0 && roles[column] === 'none' && !roles.includes(role)) roles[column] = role
  }
  for (const [role, name] of NAMES)
    put(
      heads.findIndex((text, i) => roles[i] === 'none' && text !== '' && name.test(text)),
      role,
    )
  const has = (...wanted: Role[]): boolean => wanted.every((role) => roles.includes(role))
  const placed = has('distance') || has('lat', 'lon') || has('east', 'north')
  const sample = rows.slice(0, SAMPLE)
  const figures = roles.flatMap((role, k) => {
    const read = sample.filter(({ cells }) => readCell(cells[k] ?? '', 'm').ok).length
    return role === 'none' && read >= SHARE * sample.length ? [k] : []
  })
  if (placed || roles.some((role) => role === 'lat' || role === 'east')) {
    if (!has('depth')) put(figures.at(-1) ?? -1, 'depth')
    return roles
  }
  // Without names: degrees have many digits; else how far, how far aside, how deep.
  const inDegrees = figures.filter((k) => isDegrees(sample.map(({ cells }) => cells[k] ?? '')))
  if (inDegrees.length >= 2) {
    put(inDegrees[0]!, 'lat')
    put(inDegrees[1]!, 'lon')
    put(figures.find((k) => roles[k] === 'none') ?? -1, 'depth')
    return roles
  }
  put(figures[0] ?? -1, 'distance')
  if (!has('depth')) put(figures.length > 2 ? figures[2]! : (figures[1] ?? -1), 'depth')
  if (figures.length > 2 && !has('offset')) put(figures[1]!, 'offset')
  return roles
}

/** Plain numbers within 180, of which most have four decimals and more. */
function isDegrees(cells: readonly string[]): boolean {
  const fine = cells.filter((text) => {
    const read = readNumber(text)
    return read.ok && Math.abs(read.value) <= 180 && /[.,]\d{4,}$/.test(text.trim())
  })
  return fine.length >= SHARE * cells.length
}

/** Elevations by name, or where most of what is given is under nothing: nobody sounds a bank more often than a lake. */
function signOf({ rows }: Table, column: number, head: string, unit: Unit): Reading['sign'] {
  const values = rows.slice(0, SAMPLE).flatMap(({ cells }) => {
    const read = readCell(cells[column] ?? '', unit)
    return read.ok && read.value !== 0 ? [read.value] : []
  })
  const below = values.filter((value) => value < 0).length
  if (below > values.length / 2) return 'up'
  return UP.test(head) && below > 0 ? 'up' : UP.test(head) && !/^z\b/.test(head) ? 'up' : 'down'
}
