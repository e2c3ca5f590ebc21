/** A kit judged and published, but for its structure, clashes and remedies: all that can be told in the frame of a drag. */
import { findAll } from './checks/index.ts'
import type { Dock } from './dock.ts'
import type { Kit } from './kit.ts'
import { publishKit } from './publish-kit.ts'
import { explain } from './reasons.ts'

/**
 * Plain data, numbers rounded to 1e-6. `structure` is null and `pending` true until `withStructure`, and no finding has a remedy: whether
 * one helps takes longer to tell (`remedies/`).
 *
 * @param placed the same kit as `publishKit` gives it, where it is at hand
 */
export const assessKit = (kit: Kit, placed?: Dock): Dock => withoutRemedies(proposeKit(kit, placed))

/** The same with remedies as the checks propose them, none of them tried. */
export function proposeKit(kit: Kit, placed: Dock = publishKit(kit)): Dock {
  const { waves } = placed
  return Object.freeze({ ...placed, findings: findAll(kit, waves), reasons: explain(kit, waves) })
}

export const withoutRemedies = (dock: Dock): Dock =>
  Object.freeze({
    ...dock,
    findings: dock.findings.map((finding) => (finding.remedy ? { ...finding, remedy: null } : finding)),
  })
