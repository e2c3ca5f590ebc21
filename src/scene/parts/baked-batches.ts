/** Parts that occur only a few times, in one merged mesh for each material. */
import type { Group, Material } from 'three'
import type { Look } from '../../../geometry/index.ts'
import type { Placement } from '../../../rules/index.ts'
import { type Baked, type BakedItem, LOOKS, makeBaked } from './baked.ts'
import type { Mark } from './marks.ts'

export interface BakedBatches {
  update(items: readonly BakedItem[]): void
  mark(markOf: (placement: Placement) => Mark): void
  count(): number
  dispose(): void
}

/** Their meshes stand in `parent`. */
export function makeBakedBatches(parent: Group, materialOf: (surface: Look) => Material): BakedBatches {
  const batches = new Map<Look, Baked>()
  let items: readonly BakedItem[] = []
  return {
    update(wanted) {
      items = wanted
      for (const look of LOOKS) {
        const own = items.filter(({ shape }) => shape.parts.some((part) => part.surface === look))
        let batch = batches.get(look)
        if (!batch && own.length > 0) {
          batch = makeBaked(look, materialOf(look))
          batch.mesh.renderOrder = 2
          parent.add(batch.mesh)
          batches.set(look, batch)
        }
        batch?.place(own)
      }
    },
    mark(markOf) {
      for (const batch of batches.values()) batch.mark(markOf)
    },
    count() {
      // One of two looks is drawn in two meshes and is still one.
      const drawn = new Set<Placement>()
      for (const { placement, shape } of items)
        if (shape.parts.every(({ surface }) => batches.get(surface)?.mesh.visible)) drawn.add(placement)
      return drawn.size
    },
    dispose() {
      for (const batch of batches.values()) batch.dispose()
    },
  }
}
