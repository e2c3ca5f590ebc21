/** All parts of one kind and code as instances of their shape. */
import {
  DynamicDrawUsage,
  InstancedBufferAttribute,
  InstancedMesh,
  type Material,
  Matrix4,
  Quaternion,
  Vector3,
} from 'three'
import type { Look } from '../../../geometry/index.ts'
import type { Placement } from '../../../rules/index.ts'
import type { Mark } from './marks.ts'
import { geometriesOf, type Shape } from './shape.ts'

const _matrix = /*@__PURE__*/ new Matrix4()
const _at = /*@__PURE__*/ new Vector3()
const _turn = /*@__PURE__*/ new Quaternion()
const _one = /*@__PURE__*/ new Vector3(1, 1, 1)

export interface Instanced {
  readonly meshes: readonly InstancedMesh[]
  /** How many are drawn. */
  count(): number
  place(placements: readonly Placement[]): void
  mark(placements: readonly Placement[], markOf: (placement: Placement) => Mark): void
  dispose(): void
}

/** Rooms for instances are made in these steps, so that a dock growing by a section seldom needs new ones. */
const capacityFor = (count: number): number => Math.max(8, 2 ** Math.ceil(Math.log2(count)))

export function makeInstanced(
  shape: Shape,
  count: number,
  materialOf: (surface: Look) => Material,
  castShadow: boolean,
): Instanced {
  const geometries = geometriesOf(shape)
  let capacity = capacityFor(count)
  let matrices = new InstancedBufferAttribute(new Float32Array(capacity * 16), 16)
  let marks = new InstancedBufferAttribute(new Float32Array(capacity * 3), 3)
  const meshes = geometries.map(({ surface, geometry }) => {
    const mesh = new InstancedMesh(geometry, materialOf(surface), 0)
    mesh.castShadow = castShadow
    mesh.receiveShadow = true
    // The dock is in view as a whole or not at all; bounds would have to be made anew with each change (three #29349).
    mesh.frustumCulled = false
    return mesh
  })
  const attach = (): void => {
    matrices.setUsage(DynamicDrawUsage)
    for (const mesh of meshes) {
      mesh.instanceMatrix = matrices
      mesh.instanceColor = marks
    }
  }
  attach()
  return {
    meshes,
    count: () => meshes[0]?.count ?? 0,
    place(placements) {
      if (placements.length > capacity) {
        for (const mesh of meshes) mesh.dispose()
        capacity = capacityFor(placements.length)
        matrices = new InstancedBufferAttribute(new Float32Array(capacity * 16), 16)
        marks = new InstancedBufferAttribute(new Float32Array(capacity * 3), 3)
        attach()
      }
      placements.forEach(({ at, turn }, i) => {
        _matrix.compose(_at.set(at[0], at[1], at[2]), _turn.set(turn[0], turn[1], turn[2], turn[3]), _one)
        _matrix.toArray(matrices.array, i * 16)
      })
      matrices.needsUpdate = true
      for (const mesh of meshes) mesh.count = placements.length
    },
    mark(placements, markOf) {
      placements.forEach((placement, i) => {
        const [r, g, b] = markOf(placement)
        marks.setXYZ(i, r, g, b)
      })
      marks.needsUpdate = true
    },
    dispose() {
      for (const mesh of meshes) mesh.dispose()
      for (const { geometry } of geometries) geometry.dispose()
    },
  }
}
