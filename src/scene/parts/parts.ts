/** All parts of the dock in the scene: one object that follows the Dock's placements, in place. */
import { Group, type Material } from 'three'
import { groupPlacements, type Look, solidOf } from '../../../geometry/index.ts'
import type { Catalog, Dock, Placement } from '../../../rules/index.ts'
import { factsOf } from '../../../rules/part-kinds.ts'
import { makePartMaterial } from '../look/part.ts'
import type { World } from '../look/world.ts'
import { type Baked, type BakedItem, makeBaked } from './baked.ts'
import { type Instanced, makeInstanced } from './instanced.ts'
import { markerOf } from './marks.ts'
import { planInstanced } from './plan.ts'
import { type Shape, shapeOf } from './shape.ts'

const LOOKS: readonly Look[] = ['aluminum', 'steel', 'wood', 'plastic', 'rubber']

export interface Item {
  readonly placement: Placement
  readonly shape: Shape
}

export interface Parts {
  readonly group: Group
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
    const known = materials.get(name)
    if (known) return known
    const material = makePartMaterial(world, surface, baked)
    materials.set(name, material)
    return material
  }
  const instanced = new Map<string, { shape: Shape; batch: Instanced; placements: readonly Placement[] }>()
  const baked = new Map<Look, Baked>()
  let items: Item[] = []
  let bakedItems: readonly BakedItem[] = []

  const drop = (key: string): void => {
    const known = instanced.get(key)
    if (!known) return
    for (const mesh of known.batch.meshes) group.remove(mesh)
    known.batch.dispose()
    instanced.delete(key)
  }

  return {
    group,
    update(dock, catalog) {
      const groups = [...groupPlacements(dock)].map(([key, placements]) => {
        const { kind, code } = placements[0]!
        return { key, kind, placements, shape: shapeOf(solidOf(kind, code, catalog)) }
      })
      items = groups.flatMap(({ placements, shape }) => placements.map((placement) => ({ placement, shape })))
      const many = planInstanced(
        groups.map(({ key, placements, shape }) => ({
          key,
          count: placements.length,
          vertices: shape.positions.length / 3,
          looks: shape.parts.length,
        })),
      )
      const few: BakedItem[] = []
      const shapes = new Map(groups.map((g) => [g.key, g.shape]))
      for (const [key, { shape }] of instanced) if (!many.has(key) || shapes.get(key) !== shape) drop(key)
      for (const { key, kind, placements, shape } of groups) {
        if (!many.has(key)) {
          for (const placement of placements) few.push({ placement, shape })
          continue
        }
        let known = instanced.get(key)
        if (!known) {
          const batch = makeInstanced(
            shape,
            placements.length,
            (surface) => materialOf(surface, false),
            factsOf(kind).shadow,
          )
          // The deck first: it covers most of what is under it.
          for (const mesh of batch.meshes)
            mesh.renderOrder = kind === 'deck-panel' ? 0 : kind === 'frame' ? 1 : 2
          group.add(...batch.meshes)
          known = { shape, batch, placements }
          instanced.set(key, known)
        }
        known.batch.place(placements)
        known.placements = placements
      }
      bakedItems = few
      for (const look of LOOKS) {
        const own = few.filter(({ shape }) => shape.parts.some((part) => part.surface === look))
        let mesh = baked.get(look)
        if (!mesh && own.length > 0) {
          mesh = makeBaked(look, materialOf(look, true))
          mesh.mesh.renderOrder = 2
          group.add(mesh.mesh)
          baked.set(look, mesh)
        }
        mesh?.place(own)
      }
    },
    mark(dock, selection, hover) {
      const markOf = markerOf(dock, selection, hover)
      for (const { batch, placements } of instanced.values()) batch.mark(placements, markOf)
      for (const mesh of baked.values()) mesh.mark(markOf)
    },
    items: () => items,
    instances() {
      let sum = 0
      for (const { batch } of instanced.values()) sum += batch.count()
      // A baked item of two looks is drawn in two meshes and is still one.
      const drawn = new Set<Placement>()
      for (const { placement, shape } of bakedItems)
        if (shape.parts.every(({ surface }) => baked.get(surface)?.mesh.visible)) drawn.add(placement)
      return sum + drawn.size
    },
    dispose() {
      for (const key of [...instanced.keys()]) drop(key)
      for (const mesh of baked.values()) mesh.dispose()
      for (const material of materials.values()) material.dispose()
      group.clear()
    },
  }
}
