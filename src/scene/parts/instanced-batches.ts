/** Groups of parts that are drawn as instances: a batch for each, kept while its group is there with the same shape. */
import type { Group, Material } from 'three'
import type { Look } from '../../../geometry/index.ts'
import type { Placement } from '../../../rules/index.ts'
import { factsOf } from '../../../rules/part-kinds.ts'
import { type Instanced, makeInstanced } from './instanced.ts'
import type { Mark } from './marks.ts'
import type { PartGroup } from './part-group.ts'
import type { Shape } from './shape.ts'

export interface InstancedBatches {
  update(groups: readonly PartGroup[]): void
  mark(markOf: (placement: Placement) => Mark): void
  count(): number
  dispose(): void
}

/** Their meshes stand in `parent`. */
export function makeInstancedBatches(
  parent: Group,
  materialOf: (surface: Look) => Material,
): InstancedBatches {
  const batches = new Map<string, { shape: Shape; batch: Instanced; placements: readonly Placement[] }>()
  const drop = (key: string): void => {
    const { batch } = batches.get(key)!
    parent.remove(...batch.meshes)
    batch.dispose()
    batches.delete(key)
  }
  const begin = ({ kind, placements, shape }: PartGroup): Instanced => {
    const batch = makeInstanced(shape, placements.length, materialOf, factsOf(kind).shadow)
    // The deck first: it covers most of what is under it.
    for (const mesh of batch.meshes) mesh.renderOrder = kind === 'deck-panel' ? 0 : kind === 'frame' ? 1 : 2
    parent.add(...batch.meshes)
    return batch
  }
  return {
    update(groups) {
      const shapes = new Map(groups.map(({ key, shape }) => [key, shape]))
      for (const [key, { shape }] of batches) if (shapes.get(key) !== shape) drop(key)
      for (const group of groups) {
        const { key, shape, placements } = group
        const batch = batches.get(key)?.batch ?? begin(group)
        batch.place(placements)
        batches.set(key, { shape, batch, placements })
      }
    },
    mark(markOf) {
      for (const { batch, placements } of batches.values()) batch.mark(placements, markOf)
    },
    count() {
      let sum = 0
      for (const { batch } of batches.values()) sum += batch.count()
      return sum
    },
    dispose() {
      for (const key of [...batches.keys()]) drop(key)
    },
  }
}
