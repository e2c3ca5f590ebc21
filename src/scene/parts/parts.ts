/** All parts of the dock in the scene: one object that follows the Dock's placements, in place. */
import { Group, type Material } from 'three'
import { groupPlacements, type Look, type Solid, solidOf } from '../../../geometry/index.ts'
import type { Catalog, Dock, Placement } from '../../../rules/index.ts'
import { makePartMaterial } from '../materials/part.ts'
import type { World } from '../materials/world.ts'
import { makeBakedBatches } from './baked-batches.ts'
import { makeInstancedBatches } from './instanced-batches.ts'
import { markerOf } from './marks.ts'
import type { PartGroup } from './part-group.ts'
import { planInstanced } from './plan.ts'
import { makeShapes, type Shape } from './shape.ts'

export interface Item {
  readonly placement: Placement
  readonly shape: Shape
}

export interface Parts {
  readonly group: Group
  /** The shape of a solid, made once for all that draw it in this scene. */
  readonly shapeOf: (solid: Solid) => Shape
  update(dock: Dock, catalog: Catalog): void
  mark(dock: Dock, selection: string | null, hover: string | null): void
  /** Everything drawn, to pick from. */
  items(): readonly Item[]
  /** Placements drawn, counted from what the renderer is given. */
  instances(): number
  dispose(): void
}

export function makeParts(world: World): Parts {
  const group = new Group()
  const materials = new Map<string, Material>()
  const materialOf = (surface: Look, baked: boolean): Material => {
    const name = `${surface}${baked}`
    const known = materials.get(name) ?? makePartMaterial(world, surface, baked)
    materials.set(name, known)
    return known
  }
  const instanced = makeInstancedBatches(group, (surface) => materialOf(surface, false))
  const baked = makeBakedBatches(group, (surface) => materialOf(surface, true))
  const shapeOf = makeShapes()
  let items: readonly Item[] = []

  return {
    group,
    shapeOf,
    update(dock, catalog) {
      const groups = [...groupPlacements(dock)].map(([key, placements]): PartGroup => {
        const { kind, code } = placements[0]!
        const solid = solidOf(kind, code, catalog)
        // A dock has one decking.
        if (solid.color) world.uDecking.value.set(solid.color)
        return { key, kind, placements, shape: shapeOf(solid) }
      })
      items = groups.flatMap(itemsOf)
      const many = planInstanced(
        groups.map(({ key, placements, shape }) => ({
          key,
          count: placements.length,
          vertices: shape.positions.length / 3,
          looks: shape.parts.length,
        })),
      )
      instanced.update(groups.filter(({ key }) => many.has(key)))
      baked.update(groups.filter(({ key }) => !many.has(key)).flatMap(itemsOf))
    },
    mark(dock, selection, hover) {
      const markOf = markerOf(dock, selection, hover)
      instanced.mark(markOf)
      baked.mark(markOf)
    },
    items: () => items,
    instances: () => instanced.count() + baked.count(),
    dispose() {
      instanced.dispose()
      baked.dispose()
      for (const material of materials.values()) material.dispose()
      group.clear()
    },
  }
}

const itemsOf = ({ placements, shape }: PartGroup): Item[] =>
  placements.map((placement) => ({ placement, shape }))
