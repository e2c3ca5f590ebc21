/**
 * A file or a pasted text as a table: rows of cells as they came, whatever the format. What its columns mean is guessed after that
 * (`guess.ts`) and shown, so that nothing hangs on where the numbers came from.
 */
import { LIMITS } from '../../rules/index.ts'
import type { Separator } from '../../rules/pasted-table.ts'

export interface Row {
  /** Its line in a text, else the number of its point. From 1. */
  readonly at: number
  readonly cells: readonly string[]
}

export interface Table {
  readonly format: 'text' | 'gpx' | 'geojson'
  /** What parts the columns of a text. */
  readonly parted: Separator | null
  /** Of each column, as it stands in the file; empty where it has none. */
  readonly head: readonly string[]
  readonly rows: readonly Row[]
  /** So many rows more than are taken in. */
  readonly passed: number
}

/** Why nothing of a file can be used; `line` where a line is to blame. */
export interface TableFault {
  readonly why: 'empty' | 'too-large' | 'not-xml' | 'not-json' | 'no-points' | 'one-column'
  readonly line?: number
}

export type TableRead =
  | { readonly ok: true; readonly table: Table }
  | { readonly ok: false; readonly fault: TableFault }

/** More rows than a site may have soundings are read all the same: many may be left out. */
export const MOST_ROWS = 5 * LIMITS.soundings

export const faulty = (why: TableFault['why'], line?: number): TableRead => ({
  ok: false,
  fault: { why, ...(line !== undefined && { line }) },
})

/** Never throws. Formats are known by how a text begins; a reader of each is fetched when it is needed. */
export async function readTable(text: string): Promise<TableRead> {
  if (text.length > LIMITS.textBytes) return faulty('too-large')
  const clean = text.replace(/^\uFEFF/, '').replaceAll('\0', '')
  const first = clean.trimStart()[0]
  if (first === undefined) return faulty('empty')
  if (first === '<') return (await import('./gpx.ts')).readGpx(clean)
  if (first === '{' || first === '[') return (await import('./geojson.ts')).readGeoJson(clean)
  return (await import('./text-table.ts')).readTextTable(clean)
}
