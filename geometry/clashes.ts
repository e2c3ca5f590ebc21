/** Clashes as findings: data to list and to light up. Their words are in the language files under `clash`. */
import type { Dock, Figure, Finding } from '../rules/index.ts'
import type { Clearance } from './clearance.ts'

/** A finding as the engine gives them, but for its English text, which is made from the words of its code. */
export type ClashFinding = Omit<Finding, 'text'>

/** Does a finding of the dock say of these very things that they are in each other's way? */
function toldAlready({ a, b }: Clearance, dock: Dock): boolean {
  const told = (code: string, ...ids: string[]): boolean =>
    dock.findings.some((f) => f.code === code && ids.every((id) => f.parts.includes(id)))
  if (!b) return a.kind === 'frame' && told('frame-in-bed', a.section)
  if (a.section !== b.section && told('sections-overlap', a.section, b.section)) return true
  if (told('pads-overlap', a.of, b.of)) return true
  const [frame, pad] = a.kind === 'frame' ? [a, b] : [b, a]
  return frame.kind === 'frame' && pad.kind === 'foot-pad' && told('leg-below-frame', pad.of)
}

const text = (value: string): Figure => ({ value, unit: 'text' })
const meters = (value: number): Figure => ({ value: Math.round(value * 1e6) / 1e6, unit: 'm' })

/**
 * One finding for each two things (sections, legs, pairs, extras, the ground) that clash, of the first of their parts that do; `values` has
 * the kinds of these parts (`a`, `b`; `bed` is the ground), the ids and the place. What the dock's own findings say of the same is left out.
 */
export function clashFindings(clearances: readonly Clearance[], dock: Dock): ClashFinding[] {
  const findings = new Map<string, ClashFinding>()
  for (const clearance of clearances) {
    const { a, b, at, clash } = clearance
    if (!clash || toldAlready(clearance, dock)) continue
    const parts = b && b.of !== a.of ? [a.of, b.of] : [a.of]
    const key = [...parts, b ? '' : 'bed'].join(' ')
    if (findings.has(key)) continue
    findings.set(key, {
      code: 'clash',
      severity: 'stop',
      parts,
      values: {
        a: text(a.kind),
        b: text(b?.kind ?? 'bed'),
        aOf: text(a.of),
        bOf: text(b?.of ?? ''),
        x: meters(at[0]),
        y: meters(at[1]),
        z: meters(at[2]),
      },
      basis: 'Geometry',
      remedy: null,
    })
  }
  return [...findings.values()]
}
