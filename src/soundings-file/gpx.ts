/** Points of a GPX file (waypoints, routes, tracks), each with what may tell its depth. */
import { XMLParser, XMLValidator } from 'fast-xml-parser'
import { readCell } from './cell.ts'
import { faulty, MOST_ROWS, type TableRead } from './table.ts'

/** Deeper than this no logger nests. */
const DEEP = 40
const HEAD = ['lat', 'lon', 'depth', 'ele', 'name'] as const

export function readGpx(text: string): TableRead {
  try {
    const valid = XMLValidator.validate(text)
    if (valid !== true) return faulty('not-xml', valid.err.line)
    const parser = new XMLParser({
      ignoreAttributes: false,
      attributeNamePrefix: '@',
      parseTagValue: false,
      processEntities: false,
    })
    const points: Record<string, unknown>[] = []
    collect(parser.parse(text), points, 0)
    if (points.length === 0) return faulty('no-points')
    const all = points.slice(0, MOST_ROWS).map((point, i) => ({ at: i + 1, cells: cellsOf(point) }))
    // What no point has is no column.
    const kept = HEAD.map((_, k) => k).filter((k) => k < 2 || all.some(({ cells }) => cells[k] !== ''))
    return {
      ok: true,
      table: {
        format: 'gpx',
        parted: null,
        head: kept.map((k) => HEAD[k]!),
        rows: all.map(({ at, cells }) => ({ at, cells: kept.map((k) => cells[k]!) })),
        passed: Math.max(0, points.length - MOST_ROWS),
      },
    }
  } catch {
    return faulty('not-xml')
  }
}

function collect(node: unknown, into: Record<string, unknown>[], depth: number): void {
  if (depth > DEEP || typeof node !== 'object' || node === null) return
  if (Array.isArray(node)) {
    for (const one of node) collect(one, into, depth + 1)
    return
  }
  const item = node as Record<string, unknown>
  if (typeof item['@lat'] === 'string' && typeof item['@lon'] === 'string') {
    into.push(item)
    return
  }
  for (const key of Object.keys(item)) if (!key.startsWith('@')) collect(item[key], into, depth + 1)
}

function cellsOf(point: Record<string, unknown>): string[] {
  // A sounding is often kept in a waypoint's name.
  const named = ['name', 'cmt', 'desc']
    .map((key) => textOf(point[key]))
    .find((text) => readCell(text, 'm').ok)
  return [textOf(point['@lat']), textOf(point['@lon']), depthIn(point, 0), textOf(point.ele), named ?? '']
}

const textOf = (value: unknown): string => (typeof value === 'string' ? value.trim() : '')

/** Loggers keep it in extensions of their own, each under another prefix. */
function depthIn(node: unknown, depth: number): string {
  if (depth > DEEP || typeof node !== 'object' || node === null) return ''
  for (const [key, value] of Object.entries(node)) {
    if (/(?:^|:)depth$/i.test(key) && textOf(value) !== '') return textOf(value)
    const within = depthIn(value, depth + 1)
    if (within !== '') return within
  }
  return ''
}
