/** The dock's parts as bodies that sway: vertices in place, each with its own movement; one mesh a material. */
import { BufferAttribute, Group, type IUniform, type Material } from 'three'
import { groupPlacements, type Solid, solidOf } from '../../../geometry/index.ts'
import type { Catalog, Dock } from '../../../rules/index.ts'
import { factsOf } from '../../../rules/part-kinds.ts'
import type { SwayShape } from '../../../rules/structure/dock/sway-shape.ts'
import { makePartMaterial } from '../materials/part.ts'
import type { World } from '../materials/world.ts'
import { type Baked, type BakedItem, LOOKS, makeBaked } from '../parts/baked.ts'
import { NO_MARK } from '../parts/marks.ts'
import type { Shape } from '../parts/shape.ts'
import { fieldOf } from './displacement.ts'

export interface Model {
  readonly group: Group
  show(dock: Dock, catalog: Catalog, shape: SwayShape): void
  dispose(): void
}

/** @param uSway by what the movements are multiplied: as far as they are shown, and when */
export function makeModel(world: World, uSway: IUniform<number>, shapeOf: (solid: Solid) => Shape): Model {
  const group = new Group()
  let made: { readonly baked: Baked; readonly material: Material }[] = []
  const clear = (): void => {
    for (const { baked, material } of made) {
      baked.dispose()
      material.dispose()
    }
    made = []
    group.clear()
  }
  return {
    group,
    show(dock, catalog, shape) {
      clear()
      const moverOf = fieldOf(shape, dock)
      const items: BakedItem[] = []
      for (const placements of groupPlacements(dock).values()) {
        const { kind, code } = placements[0]!
        const { sways, layer } = factsOf(kind)
        if (!sways || (!shape.braces && layer === 'BRACE')) continue
        const body = shapeOf(solidOf(kind, code, catalog))
        for (const placement of placements) items.push({ placement, shape: body })
      }
      for (const look of LOOKS) {
        const own = items.filter(({ shape }) => shape.parts.some(({ surface }) => surface === look))
        if (own.length === 0) continue
        const material = makePartMaterial(world, look, true, uSway)
        const baked = makeBaked(look, material)
        baked.place(own)
        baked.mark(() => NO_MARK)
        const { geometry } = baked.mesh
        const position = geometry.attributes.position as BufferAttribute
        const sway = new BufferAttribute(new Float32Array(position.array.length), 3)
        // In the order in which `place` wrote the vertices.
        let v = 0
        for (const { placement, shape: body } of own) {
          const move = moverOf(placement)
          for (let k = body.positions.length / 3; k > 0; k--, v++)
            sway.setXYZ(v, ...move(position.getX(v), position.getY(v), position.getZ(v)))
        }
        geometry.setAttribute('aSway', sway)
        // The shadow on the bed stays that of the dock at rest: a moving one would have to be drawn every frame.
        baked.mesh.castShadow = false
        baked.mesh.renderOrder = 2
        made.push({ baked, material })
        group.add(baked.mesh)
      }
    },
    dispose: clear,
  }
}
