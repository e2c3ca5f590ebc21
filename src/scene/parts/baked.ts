/** Parts that occur only a few times, merged into one mesh a material; their vertices are transformed here at every change. */
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, type Material, Mesh } from 'three'
import type { Look } from '../../../geometry/index.ts'
import type { Placement } from '../../../rules/index.ts'
import type { Mark } from './marks.ts'
import type { Shape } from './shape.ts'

export interface BakedItem {
  readonly placement: Placement
  readonly shape: Shape
}

export interface Baked {
  readonly mesh: Mesh
  count(): number
  /** Only the bodies of this material are taken of each item. */
  place(items: readonly BakedItem[]): void
  mark(markOf: (placement: Placement) => Mark): void
  dispose(): void
}

export const LOOKS: readonly Look[] = ['aluminum', 'steel', 'wood', 'plastic', 'rubber', 'decking']

/** Attributes and how many numbers each has. */
const LAYOUT = { position: 3, normal: 3, aLocal: 3, aAlong: 3, aGrain: 3, aMark: 3 } as const
const NAMES = Object.keys(LAYOUT) as (keyof typeof LAYOUT)[]

export function makeBaked(surface: Look, material: Material): Baked {
  const mesh = new Mesh(new BufferGeometry(), material)
  mesh.castShadow = true
  mesh.receiveShadow = true
  mesh.frustumCulled = false
  let ranges: { placement: Placement; from: number; to: number }[] = []

  return {
    mesh,
    count: () => ranges.length,
    place(items) {
      const taken = items.flatMap(({ placement, shape }) => {
        const part = shape.parts.find((p) => p.surface === surface)
        return part ? [{ placement, shape, indices: part.indices }] : []
      })
      let vertices = 0
      let indices = 0
      for (const item of taken) {
        vertices += item.shape.positions.length / 3
        indices += item.indices.length
      }
      const geometry = withRoom(mesh.geometry, vertices, indices)
      mesh.geometry = geometry
      const to = arraysOf(geometry)
      const index = geometry.index!.array as Uint32Array
      ranges = []
      let v = 0
      let i = 0
      for (const { placement, shape, indices: own } of taken) {
        const first = v
        v = putVertices(placement, shape, to, v)
        for (const vertex of own) index[i++] = first + vertex
        ranges.push({ placement, from: first, to: v })
      }
      geometry.setDrawRange(0, i)
      mesh.visible = i > 0
      for (const name of NAMES) geometry.attributes[name]!.needsUpdate = true
      geometry.index!.needsUpdate = true
    },
    mark(markOf) {
      const attribute = mesh.geometry.attributes.aMark
      if (!attribute) return
      for (const { placement, from, to } of ranges) {
        const [r, g, b] = markOf(placement)
        for (let v = from; v < to; v++) (attribute as BufferAttribute).setXYZ(v, r, g, b)
      }
      attribute.needsUpdate = true
    },
    dispose() {
      mesh.geometry.dispose()
    },
  }
}

type Arrays = Record<keyof typeof LAYOUT, Float32Array>

const arraysOf = ({ attributes }: BufferGeometry): Arrays =>
  Object.fromEntries(NAMES.map((name) => [name, attributes[name]!.array])) as unknown as Arrays

/** Arrays large enough; new ones are twice as large as asked for. */
function withRoom(now: BufferGeometry, vertices: number, indices: number): BufferGeometry {
  if ((now.attributes.position?.count ?? -1) >= vertices && (now.index?.count ?? -1) >= indices) return now
  now.dispose()
  const geometry = new BufferGeometry()
  for (const name of NAMES) {
    const attribute = new BufferAttribute(new Float32Array(vertices * 2 * LAYOUT[name]), LAYOUT[name])
    attribute.setUsage(DynamicDrawUsage)
    geometry.setAttribute(name, attribute)
  }
  geometry.setIndex(new BufferAttribute(new Uint32Array(indices * 2), 1))
  return geometry
}

const AXES = new Float32Array([1, 0, 0, 0, 1, 0, 0, 0, 1])

/** The vertices of one part in their place, from `v` on. Gives the next one. */
function putVertices({ at, turn }: Placement, shape: Shape, to: Arrays, v: number): number {
  const { positions, normals, grain } = shape
  const n = positions.length / 3
  for (let k = 0; k < n; k++, v++) {
    turned(turn, positions, 3 * k, to.position, 3 * v)
    to.position[3 * v]! += at[0]
    to.position[3 * v + 1]! += at[1]
    to.position[3 * v + 2]! += at[2]
    turned(turn, normals, 3 * k, to.normal, 3 * v)
    for (let c = 0; c < 3; c++) to.aLocal[3 * v + c] = positions[3 * k + c]!
    for (let c = 0; c < 3; c++) to.aGrain[3 * v + c] = grain[3 * k + c]!
    turned(turn, AXES, 3 * grain[3 * k + 1]!, to.aAlong, 3 * v)
  }
  return v
}

/** A vector of one array turned by a unit quaternion into another array. */
function turned(
  [qx, qy, qz, qw]: Placement['turn'],
  from: Float32Array,
  f: number,
  to: Float32Array,
  t: number,
): void {
  const [x, y, z] = [from[f]!, from[f + 1]!, from[f + 2]!]
  const tx = 2 * (qy * z - qz * y)
  const ty = 2 * (qz * x - qx * z)
  const tz = 2 * (qx * y - qy * x)
  to[t] = x + qw * tx + qy * tz - qz * ty
  to[t + 1] = y + qw * ty + qz * tx - qx * tz
  to[t + 2] = z + qw * tz + qx * ty - qy * tx
}
