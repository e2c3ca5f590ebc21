/** Puts pasted rows into the soundings: those that can be read are taken in, the others come back to be put right. */
import type { Design } from '../../rules/index.ts'
import type { PastedRow } from './paste.ts'

type Sounding = Design['site']['soundings'][number]

/** A row that counts for nothing yet: a pasted one that waits to be put right, or one that was added and is still empty. */
export interface Draft {
  readonly key: number
  readonly distance: string
  readonly depth: string
  /** The place is taken by a sounding that says otherwise. */
  readonly taken: boolean
  /** Added by hand: it begins empty, which is no fault. */
  readonly added?: true
}

export interface Taken {
  readonly design: Design
  readonly rows: number
  readonly drafts: readonly Omit<Draft, 'key'>[]
}

/**
 * `from`: the row that the cursor is in; rows from there on are written over, more are added. A single column pasted into the
 * depths leaves the distances as they are.
 */
export function takePaste(
  design: Design,
  rows: readonly PastedRow[],
  from: number,
  column: 'distance' | 'depth',
): Taken {
  const soundings: Sounding[] = [...design.site.soundings]
  const drafts: Omit<Draft, 'key'>[] = []
  const single = rows.every((row) => row.depth.text === '')
  const places = new Map<string, number>()
  const place = (s: Pick<Sounding, 'distance' | 'offset'>): string => `${s.distance},${s.offset}`
  const overwritten = new Set(single ? [] : rows.map((_, i) => from + i))
  soundings.forEach((s, i) => {
    if (!overwritten.has(i)) places.set(place(s), s.depth)
  })
  let taken = 0
  rows.forEach((row, i) => {
    const old = soundings[from + i]
    const distance = single && column === 'depth' ? (old?.distance ?? null) : row.distance.meters
    const depth = single
      ? column === 'depth'
        ? row.distance.meters
        : (old?.depth ?? null)
      : row.depth.meters
    const draft = single && column === 'depth' ? { distance: '', depth: row.distance.text } : texts(row)
    if (distance === null || depth === null) {
      drafts.push({ ...draft, taken: false })
      return
    }
    const { assumed: _, ...known } = old ?? {}
    const next: Sounding = { ...known, offset: old?.offset ?? 0, distance, depth }
    // Firm ground above the new bottom was measured with the old depth, so it no longer holds.
    if (next.firm !== undefined && next.firm < depth) delete next.firm
    const there = places.get(place(next))
    if (there !== undefined && there !== depth && !(single && old?.distance === distance)) {
      drafts.push({ ...draft, taken: true })
      return
    }
    places.set(place(next), depth)
    if (old) soundings[from + i] = next
    else soundings.push(next)
    taken++
  })
  return { design: { ...design, site: { ...design.site, soundings } }, rows: taken, drafts }
}

const texts = (row: PastedRow) => ({ distance: row.distance.text, depth: row.depth.text })
