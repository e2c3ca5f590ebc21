/** What is highlighted together: from one id that is pointed at to the ids of everything it is about. */
import type { Dock, Finding } from '../../rules/index.ts'

/** Id of a row of the parts list, for `hover` and `selection`. */
export const rowId = (row: { readonly kind: string; readonly code: string }): string =>
  `part:${row.kind}\n${row.code}`

/** Id of a finding, for the same. Made from its content, not its index: other findings may come before it while it is selected. */
export const findingId = ({ code, parts }: Finding): string => `finding:${code} ${parts.join(' ')}`

/** The finding that an id names, if it names one. */
export const findingOf = (dock: Dock, id: string | null): Finding | null =>
  id?.startsWith('finding:') ? (dock.findings.find((finding) => findingId(finding) === id) ?? null) : null

const none: ReadonlySet<string> = new Set()

/**
 * Ids of sections, legs, pairs, joints and extras. A finding lights the parts that it names, a row of the parts list all that its
 * pieces belong to, a pair its two legs too.
 */
export function litIds(id: string | null, dock: Dock): ReadonlySet<string> {
  if (id === null) return none
  const ids = new Set<string>()
  const add = (part: string): void => {
    ids.add(part)
    for (const leg of dock.pairs.find((pair) => pair.id === part)?.legs ?? []) ids.add(leg)
  }
  if (id.startsWith('finding:')) for (const part of findingOf(dock, id)?.parts ?? []) add(part)
  else if (id.startsWith('part:')) {
    const key = id.slice(5)
    for (const piece of dock.placements) if (`${piece.kind}\n${piece.code}` === key) ids.add(piece.of)
  } else add(id)
  return ids
}
