/**
 * The table of contents. A Design and a Catalog become the whole Dock:
 *
 *     deriveKit   placing, fitting, counting                      kit.ts
 *     assess      waves, what was found, why, the check code      assess-kit.ts: checks/, reasons.ts, fingerprint.ts
 *                 and whether it stands                           stand.ts: structure/dock/, checks/structure/
 *                 and what is in each other's way                 clearance/clashes.ts
 *                 and how surely the legs fit                     fit/
 *                 and which remedies help                         remedies/prove.ts
 *
 * Pure. Never throws on a valid Design and Catalog: what cannot be built is a `stop` among the findings.
 */
import { assessKit, proposeKit, withoutRemedies } from './assess-kit.ts'
import type { Catalog } from './catalog/index.ts'
import { clashesOf, withClashes } from './clearance/clashes.ts'
import { withWaysRound } from './clearance/ways-round.ts'
import type { Design } from './design/index.ts'
import type { Dock } from './dock.ts'
import { doubtsOf, fitOf } from './fit/fit.ts'
import { withFit } from './fit/with-fit.ts'
import { deriveKit, type Kit } from './kit.ts'
import { proveRemedies } from './remedies/prove.ts'
import { stand } from './stand.ts'
import { withStructure } from './with-structure.ts'

/** The whole dock of a design: every part placed, counted and priced, judged, with findings and the remedies that are enough. Never throws at what `parseDesign` and `parseCatalog` gave. */
export const derive = (design: Design, catalog: Catalog): Dock => assess(deriveKit(design, catalog))

/** How much of a dock is worked out. */
export interface AssessOptions {
  /** False: no remedy is tried, so none is offered, and it takes a part of the time. */
  readonly remedies?: boolean
}

/** The kit judged and published: plain data, numbers rounded to 1e-6. */
export function assess(kit: Kit, { remedies = true }: AssessOptions = {}): Dock {
  const { found, whole } = assessInSteps(kit)
  return remedies ? whole() : found
}

/** For a page that shows the first while it waits for the second: all that is found, and the same with the remedies that help. */
export function assessInSteps(kit: Kit): { readonly found: Dock; readonly whole: () => Dock } {
  const placed = proposeKit(kit)
  const standing = stand(kit, placed.waves)
  const proposed = withClashes(withStructure(placed, standing), clashesOf(placed, kit))
  // A remedy is not asked what it does to these: none of them is mended by another dock.
  const fit = fitOf(kit)
  const fitted = (dock: Dock): Dock => withFit(dock, fit, doubtsOf(fit, kit))
  return {
    found: fitted(withoutRemedies(proposed)),
    whole: () => fitted(proveRemedies(withWaysRound(proposed, kit), kit, standing)),
  }
}

/** What follows an edit soon: the dock with its structure, but for what takes longer (buckling, sleeves), clashes and remedies. */
export function assessQuickly(kit: Kit): Dock {
  const placed = assessKit(kit)
  return withoutRemedies(withStructure(placed, stand(kit, placed.waves, { deep: false })))
}
