/** Laws of the pairs: which legs belong together, and what they are called. */
import type { Leg } from '../../../rules/dock.ts'
import { expectNear, isEdgePair, type Law, legsById } from './law.ts'

/** Legs exist, a leg is in one pair at most, the spacing is that of its axes. */
export const pairsOfLegs: Law = (dock) => {
  const out: string[] = []
  const by = legsById(dock)
  const seen = new Set<string>()
  for (const pair of dock.pairs) {
    const [a, b] = pair.legs.map((id) => by.get(id))
    if (pair.along) continue
    if (a === undefined || b === undefined) {
      out.push(`${pair.id} has a leg that is not there`)
      continue
    }
    for (const id of pair.legs) {
      if (seen.has(id)) out.push(`${id} is in two pairs`)
      seen.add(id)
    }
    expectNear(out, `${pair.id} spacing`, pair.spacing, Math.hypot(a.x - b.x, a.y - b.y), 5e-6)
  }
  return out
}

/** Two legs of one end edge are a pair; others only in line and within a stock brace's reach; nearest first leaves none that could be. */
export const pairsByRule: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const by = legsById(dock)
  const align = catalog.rules.pairAlign.value
  const across = dock.pairs.filter((p) => !p.along)
  const braces = catalog.braces.filter((s) => !s.along)
  const paired = new Map(across.flatMap((p) => p.legs.map((id) => [id, p] as const)))
  for (const section of dock.sections)
    for (const edge of ['start', 'end'] as const) {
      const [l, r] = [`${section.id}.${edge}.left`, `${section.id}.${edge}.right`]
      if (
        by.has(l) &&
        by.has(r) &&
        (paired.get(l) !== paired.get(r) || paired.get(l)?.id !== `${section.id}.${edge}`)
      )
        out.push(`${l} and ${r} stand at one edge and are not its pair`)
    }
  // In line as either leg's section lies: along its heading, or square to that.
  const headings = new Map(dock.sections.map(({ id, heading }) => [id, (heading * Math.PI) / 180]))
  const inLine = (a: Leg, b: Leg, slack: number) => {
    const far = Math.hypot(a.x - b.x, a.y - b.y)
    const way = Math.atan2(b.y - a.y, b.x - a.x)
    return [a, b].some((leg) => {
      const off = way - headings.get(leg.section)!
      return far * Math.min(Math.abs(Math.sin(off)), Math.abs(Math.cos(off))) <= align + slack
    })
  }
  const nearest = Math.min(Infinity, ...braces.map((s) => s.spacing.from))
  const farthest = Math.max(0, ...braces.map((s) => s.spacing.to))
  for (const pair of across) {
    const [a, b] = pair.legs.map((id) => by.get(id))
    if (a === undefined || b === undefined || isEdgePair(pair)) continue
    if (!inLine(a, b, 1e-5)) out.push(`${pair.id}: its legs are not in line`)
    if (pair.spacing > farthest + 1e-5) out.push(`${pair.id}: no stock brace reaches over ${pair.spacing}`)
  }
  const alone = dock.legs.filter((l) => !paired.has(l.id)).sort((a, b) => a.x - b.x)
  for (let i = 0; i < alone.length; i++)
    for (let j = i + 1; j < alone.length && alone[j]!.x - alone[i]!.x <= farthest; j++) {
      const [a, b] = [alone[i]!, alone[j]!]
      const spacing = Math.hypot(a.x - b.x, a.y - b.y)
      if (inLine(a, b, -1e-5) && spacing > nearest + 1e-5 && spacing < farthest - 1e-5)
        out.push(`${a.id} and ${b.id} could be a pair and are in none`)
    }
  return out
}

/** `s3.end` for the legs of one edge, else both leg ids joined by `~`; `s3.left` is of a lengthwise brace (`alongPairs`). */
export const pairIds: Law = (dock) =>
  dock.pairs
    .filter((p) => {
      const [a, b] = p.legs
      return (
        !p.along &&
        !(isEdgePair(p) ? [a.replace(/\.(left|right)$/, '')] : [`${a}~${b}`, `${b}~${a}`]).includes(p.id)
      )
    })
    .map((p) => `pair ${p.id} of ${p.legs}`)
