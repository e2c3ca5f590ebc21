/**
 * One value for all that shows, prints or exports a dock: made once a change, so that nobody prepares shop or bed again.
 * Plain values and no cache: whoever makes it passes it on.
 */
import type { Catalog } from './catalog/index.ts'
import { type Shop, shopOf } from './catalog-index.ts'
import type { Design } from './design/index.ts'
import type { Dock } from './dock.ts'
import { type Bed, makeBed } from './site/index.ts'

/** A design with all that belongs to it, for whatever shows a dock. */
export interface Project {
  readonly design: Design
  readonly catalog: Catalog
  readonly shop: Shop
  /** The ground of `design.site`. */
  readonly bed: Bed
  /** As far as it is worked out; of an earlier design while the one in hand is being placed. */
  readonly dock: Dock
}

/** Puts a design and its dock together with the shop and the ground, neither of which is made twice. @param bed of the same site, where it is at hand: off a line it is dear to make. */
export const projectOf = (
  design: Design,
  catalog: Catalog,
  dock: Dock,
  bed: Bed = makeBed(design.site),
): Project => ({ design, catalog, shop: shopOf(catalog), bed, dock })
