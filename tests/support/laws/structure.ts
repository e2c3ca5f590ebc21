/** What the structure tells, against the parts that it is about. */
import type { Law } from './law.ts'

/**
 * The structure tells of every leg, brace, foot and section once, in finite figures; past buckling of none, and a stop says so; without
 * one a finding says why, or it is to come.
 */
export const structureIsWhole: Law = (dock) => {
  const { structure } = dock
  if (structure === null)
    return dock.pending || dock.findings.some((f) => f.code === 'not-judged' || f.code === 'unstable')
      ? []
      : ['no structure, and no word why']
  const out: string[] = []
  const same = (what: string, told: readonly string[], there: readonly string[]): void => {
    if ([...told].sort().join() !== [...there].sort().join()) out.push(what)
  }
  const past = structure.railUse === null
  if (past && !dock.findings.some((f) => f.code === 'does-not-stand')) out.push('no figures, and no stop')
  const legs = past ? [] : dock.legs.map((l) => l.id)
  same(
    'legs',
    structure.legs.map((l) => l.leg),
    legs,
  )
  same(
    'feet',
    structure.feet.map((f) => f.leg),
    legs,
  )
  same(
    'braces',
    structure.braces.map((b) => b.pair),
    past ? [] : dock.pairs.filter((p) => p.brace).map((p) => p.id),
  )
  same(
    'rails',
    structure.rails.map((r) => r.section),
    past ? [] : dock.sections.map((x) => x.id),
  )
  same(
    'hooks',
    structure.hooks.map((h) => h.joint),
    past ? [] : dock.joints.filter((j) => j.kind !== 'tie').map((j) => j.id),
  )
  const figures = [
    ...structure.legs.map((l) => l.use),
    ...structure.braces.map((b) => b.use),
    ...structure.feet.flatMap((f) => [f.load, f.pressure, f.push]),
    ...structure.rails.flatMap((r) => [r.use, r.deflection]),
    structure.sway,
    structure.swayUnbraced,
  ]
  if (!figures.every((n) => Number.isFinite(n) && n >= 0)) out.push('a figure')
  if (structure.legs.some((l) => l.use > 1) !== dock.findings.some((f) => f.code === 'leg-overloaded'))
    out.push('a leg over its use without a finding, or the reverse')
  return out
}
