/**
 * The table of contents. A Design and a Catalog become the whole Dock:
 *
 *     deriveKit   placing, fitting, counting                      kit.ts
 *     assess      waves, what was found, why, the check code      assess-kit.ts: checks/, reasons.ts, fingerprint.ts
 *                 and whether it stands                           structure/stand.ts: structure/dock/, checks/structure/
 *
 * Pure. Never throws on a valid Design and Catalog: what cannot be built is a `stop` among the findings.
 */
import { assessKit } from './assess-kit.ts'
import type { Catalog } from './catalog/index.ts'
import type { Design } from './design/index.ts'
import type { Dock } from './dock.ts'
import { deriveKit, type Kit } from './kit.ts'
import { stand } from './structure/stand.ts'
import { withStructure } from './with-structure.ts'

export const derive = (design: Design, catalog: Catalog): Dock => assess(deriveKit(design, catalog))

/** The kit judged and published: plain data, numbers rounded to 1e-6. */
export function assess(kit: Kit): Dock {
  const dock = assessKit(kit)
  return withStructure(dock, stand(kit, dock.waves))
}
