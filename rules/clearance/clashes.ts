/**
 * Clashes as findings: parts of the dock in each other's way or in the ground, measured on their true shapes. They come after the dock's
 * own findings, for they take a hundred times as long as one of those; `withClashes` puts them among them. Words: `clashes` in the
 * language files.
 */
import { meters, text } from '../checks/check.ts'
import { inOrder } from '../checks/index.ts'
import type { Dock, Figure, Finding } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { findingIn } from '../words/finding-words.ts'
import { english } from '../words/language.ts'
import { boatsByBraces } from './boats-by-braces.ts'
import { clearancesWithDepth, type Found, TOUCHING } from './clearance.ts'
import { leaveOutExtra } from './leave-out.ts'
import { obstructionsOf } from './obstructions.ts'

/** Does a finding of the dock say of these very things that they are in each other's way? */
function toldAlready({ a, b }: Found, dock: Dock): boolean {
  const told = (code: string, ...ids: string[]): boolean =>
    dock.findings.some((f) => f.code === code && ids.every((id) => f.parts.includes(id)))
  if (!b) return a.kind === 'frame' && told('frame-in-bed', a.section)
  if (a.section !== b.section && told('sections-overlap', a.section, b.section)) return true
  if (told('pads-overlap', a.of, b.of)) return true
  const [frame, other] = a.kind === 'frame' ? [a, b] : [b, a]
  if (frame.kind !== 'frame') return false
  if (other.kind === 'leg') return told('ramp-in-legs', frame.section, other.of)
  return other.kind === 'foot-pad' && told('leg-below-frame', other.of)
}

const kind = (value: string): Figure => ({ value, unit: 'kind' })

/**
 * One finding for each two things (sections, legs, pairs, extras, the ground) that clash, of the first of their parts that do. `values` has
 * the kinds of these parts (`a`, `b`), whose they are (`aOf`, `bOf`), how far they are in each other (`depth`) and the place (`x`, `y`,
 * `z`). What the dock's own findings say of the same is left out. Then what lies on the bed in the dock's way (`obstructions.ts`), and braces in a boat's (`boats-by-braces.ts`). `dock` is that of the kit, as it is placed.
 */
export function clashesOf(dock: Dock, kit: Kit): readonly Finding[] {
  const found = clearancesWithDepth(dock, kit.shop.catalog, kit.bed, { within: TOUCHING })
  const findings = new Map<string, Finding>()
  for (const clearance of found) {
    const { a, b, from, clash, depth } = clearance
    if (!clash || toldAlready(clearance, dock)) continue
    const parts = b && b.of !== a.of ? [a.of, b.of] : [a.of]
    const key = [...parts, b ? '' : 'bed'].join(' ')
    if (findings.has(key)) continue
    const code = b ? 'parts-clash' : 'part-in-bed'
    const values = {
      a: kind(a.kind),
      aOf: text(a.of),
      ...(b && { b: kind(b.kind), bOf: text(b.of) }),
      depth: meters(depth()),
      x: meters(from[0]),
      y: meters(from[1]),
      z: meters(from[2]),
    }
    findings.set(key, {
      code,
      severity: 'stop',
      parts,
      values,
      text: findingIn({ code, values }, 'text', english('metric')),
      basis: 'Geometry',
      remedy: leaveOutExtra([a, b], kit),
    })
  }
  return [...findings.values(), ...obstructionsOf(dock, kit), ...boatsByBraces(dock, kit)]
}

/** The dock with its clashes among its findings: the same object where there are none. They come last of what must not be built so. */
export function withClashes(dock: Dock, clashes: readonly Finding[]): Dock {
  if (clashes.length === 0) return dock
  const stops = dock.findings.filter((f) => f.severity === 'stop')
  const others = dock.findings.filter((f) => f.severity !== 'stop')
  return Object.freeze({ ...dock, findings: inOrder([...stops, ...clashes, ...others]) })
}
