/** Which parts are highlighted: selected, hovered, warned of. */
import type { Dock, Placement } from '../../../rules/index.ts'
import { litIds } from '../../state/highlight.ts'

/** Picked, pointed at, warned of (0.5 a warning, 1 a stop). */
export type Mark = readonly [picked: number, pointed: number, warned: number]

export const NO_MARK: Mark = [0, 0, 0]

/** Ids that findings of weight are about, with how grave. */
export function warnedParts(dock: Dock): ReadonlyMap<string, number> {
  const warned = new Map<string, number>()
  for (const { severity, parts } of dock.findings) {
    if (severity === 'note') continue
    const grade = severity === 'stop' ? 1 : 0.5
    for (const id of parts) warned.set(id, Math.max(grade, warned.get(id) ?? 0))
  }
  return warned
}

/**
 * How each placement is marked. A section is lit with all that is carried with it, a row of the list by its own pieces,
 * anything else by what belongs to it. A section that is warned of shows it on its frame: a whole dock in warning color says
 * nothing.
 */
export function markerOf(
  dock: Dock,
  selection: string | null,
  hover: string | null,
): (placement: Placement) => Mark {
  const sections = new Set(dock.sections.map((s) => s.id))
  const warned = warnedParts(dock)
  if (selection === null && hover === null && warned.size === 0) return () => NO_MARK
  const picked = holderOf(selection, dock)
  const pointed = holderOf(hover, dock)
  return (placement) => {
    const shown = !sections.has(placement.of) || placement.kind === 'frame'
    return [
      picked(placement) ? 1 : 0,
      pointed(placement) ? 1 : 0,
      shown ? (warned.get(placement.of) ?? 0) : 0,
    ]
  }
}

function holderOf(id: string | null, dock: Dock): (placement: Placement) => boolean {
  if (id === null) return () => false
  if (id.startsWith('part:')) {
    const key = id.slice(5)
    return ({ kind, code }) => `${kind}\n${code}` === key
  }
  const ids = litIds(id, dock)
  return ({ of, section }) => ids.has(of) || ids.has(section)
}
