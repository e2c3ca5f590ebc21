/**
 * Which entries hold. All of it follows from the entries alone, and not from the order in which they came together: two phones that have
 * the same entries say the same.
 */
import type { Entry } from './schema.ts'

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** By `n`, then device, then id: what a wrong clock says is of no account. Of equal ones the text decides (`textOf`). */
export const byOrder = (a: Entry, b: Entry): number =>
  a.n - b.n || compare(a.device, b.device) || compare(a.id, b.id)

/**
 * What an entry is about, within its season, where only one can hold: a later one stands in its place. Null: each stands for itself
 * (notes, wear, checks, soundings away from legs).
 */
export function subjectOf(entry: Entry): string | null {
  switch (entry.kind) {
    case 'level':
      return `${entry.season} level`
    case 'set':
      return `${entry.season} set ${entry.leg}`
    case 'sounding':
      return entry.leg === undefined ? null : `${entry.season} sounding ${entry.leg}`
    case 'step':
      return `${entry.season} step ${entry.key}`
    case 'out':
      return `${entry.season} out ${entry.leg ?? ''}/${entry.section ?? ''}`
    default:
      return null
  }
}

/** Entries that no later one took back. What took something back can be taken back itself. */
export function liveEntries(entries: readonly Entry[]): Entry[] {
  const gone = new Map<string, number>()
  const live: Entry[] = []
  for (let i = entries.length - 1; i >= 0; i--) {
    const entry = entries[i]!
    if (gone.has(entry.id)) continue
    live.push(entry)
    if (entry.kind === 'void') for (const id of entry.voids) gone.set(id, i)
  }
  return live.reverse()
}

/**
 * Of the entries of one subject those that no other live one saw, itself or through others: one where all is agreed, more where phones
 * set it without knowing of each other. In their order.
 *
 * @param all of the subject in their order, those that were taken back among them: who saw one that is gone saw what that one saw
 */
export function headsOf(all: readonly Entry[], isLive: (entry: Entry) => boolean): Entry[] {
  const places = new Map<string, number[]>()
  all.forEach(({ id }, i) => {
    places.set(id, [...(places.get(id) ?? []), i])
  })
  const seen = new Uint8Array(all.length)
  const heads: Entry[] = []
  for (let i = all.length - 1; i >= 0; i--) {
    const entry = all[i]!
    const counts = isLive(entry)
    if (counts && !seen[i]) heads.push(entry)
    if (!counts && !seen[i]) continue
    // Only what comes before: entries that claim to have seen each other hide nothing.
    for (const id of entry.saw ?? []) for (const at of places.get(id) ?? []) if (at < i) seen[at] = 1
  }
  return heads.reverse()
}
