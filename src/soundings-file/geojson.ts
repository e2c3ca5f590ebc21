/** Places of a GeoJSON file (RFC 7946): points as soundings, and lines of one depth, of which each corner is one. */
import { faulty, MOST_ROWS, type Row, type TableRead } from './table.ts'

/** Collections within collections no deeper than this. */
const DEEP = 40
/** Columns that properties may make. */
const MOST_PROPERTIES = 12

type Plain = Readonly<Record<string, unknown>>
const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

interface Place {
  readonly position: readonly number[]
  readonly properties: Plain
}

export function readGeoJson(text: string): TableRead {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch {
    return faulty('not-json')
  }
  const places: Place[] = []
  collect(json, {}, places, 0)
  if (places.length === 0) return faulty('no-points')
  const taken = places.slice(0, MOST_ROWS)
  const properties = [
    ...new Set(
      taken.flatMap((place) =>
        Object.keys(place.properties).filter((key) => figureOf(place.properties[key]) !== ''),
      ),
    ),
  ].slice(0, MOST_PROPERTIES)
  const high = taken.some(({ position }) => position.length > 2)
  // Degrees, unless an older file has meters of some grid.
  const grid = taken.some(({ position: [a, b] }) => Math.abs(a!) > 360 || Math.abs(b!) > 90)
  const rows = taken.map(
    ({ position, properties: own }, i): Row => ({
      at: i + 1,
      cells: [
        String(position[1]),
        String(position[0]),
        ...(high ? [position[2] === undefined ? '' : String(position[2])] : []),
        ...properties.map((key) => figureOf(own[key])),
      ],
    }),
  )
  return {
    ok: true,
    table: {
      format: 'geojson',
      parted: null,
      head: [...(grid ? ['north', 'east'] : ['lat', 'lon']), ...(high ? ['z'] : []), ...properties],
      rows,
      passed: Math.max(0, places.length - MOST_ROWS),
    },
  }
}

/** A figure among the properties, as a cell; others tell nothing of a depth. */
const figureOf = (value: unknown): string =>
  typeof value === 'number' && Number.isFinite(value)
    ? String(value)
    : typeof value === 'string' && value.length < 40 && /\d/.test(value)
      ? value.trim()
      : ''

function collect(node: unknown, properties: Plain, into: Place[], depth: number): void {
  if (depth > DEEP || !isPlain(node)) return
  const own = isPlain(node.properties) ? node.properties : properties
  if (Array.isArray(node.features)) for (const one of node.features) collect(one, own, into, depth + 1)
  if (Array.isArray(node.geometries)) for (const one of node.geometries) collect(one, own, into, depth + 1)
  if (isPlain(node.geometry)) collect(node.geometry, own, into, depth + 1)
  positions(node.coordinates, own, into, 0)
}

/** Of points, lines and areas alike: a position is a list that begins with two numbers. */
function positions(node: unknown, properties: Plain, into: Place[], depth: number): void {
  if (depth > 5 || !Array.isArray(node)) return
  const [a, b, c] = node as unknown[]
  if (typeof a === 'number' && typeof b === 'number') {
    if (Number.isFinite(a) && Number.isFinite(b))
      into.push({ position: typeof c === 'number' && Number.isFinite(c) ? [a, b, c] : [a, b], properties })
    return
  }
  for (const one of node) positions(one, properties, into, depth + 1)
}
