/**
 * Legs, braces and frames in the colors of their use: the same solids once more over the real ones, where they are seen in full color, and
 * where deck, ground or water hide them faintly through these. Instances of each shape; made when asked for, gone with it.
 */
import {
  BufferAttribute,
  BufferGeometry,
  DynamicDrawUsage,
  GreaterDepth,
  Group,
  InstancedBufferAttribute,
  InstancedMesh,
  LessEqualDepth,
  Matrix4,
  Quaternion,
  type ShaderMaterial,
  Vector3,
} from 'three'
import { groupPlacements, solidOf } from '../../../geometry/index.ts'
import type { Catalog, Dock, PartKind } from '../../../rules/index.ts'
import { colorOf } from '../../utilization/utilization-colors.ts'
import { makeMaterial } from '../materials/make-material.ts'
import type { World } from '../materials/world.ts'

/** After the water, whose render order is 5. */
const ORDER = 6

export interface Paint {
  readonly group: Group
  /** Nothing is painted of a dock whose structure is not known. */
  show(dock: Dock, catalog: Catalog): void
  /** Pieces painted. */
  count(): number
  dispose(): void
}

/** Use of what a placement of a kind belongs to: a leg, a pair, a section. */
function usesOf({ structure }: Dock): ReadonlyMap<PartKind, ReadonlyMap<string, number>> {
  return new Map<PartKind, ReadonlyMap<string, number>>([
    ['leg', new Map(structure?.legs.map(({ leg, use }) => [leg, use]))],
    ['brace', new Map(structure?.braces.map(({ pair, use }) => [pair, use]))],
    ['frame', new Map(structure?.rails.map(({ section, use }) => [section, use]))],
  ])
}

const _matrix = /*@__PURE__*/ new Matrix4()
const _at = /*@__PURE__*/ new Vector3()
const _turn = /*@__PURE__*/ new Quaternion()
const _one = /*@__PURE__*/ new Vector3(1, 1, 1)

export function makePaint(world: World): Paint {
  const group = new Group()
  const seen = paintMaterial(world, false)
  const hidden = paintMaterial(world, true)
  const geometries: BufferGeometry[] = []
  let painted = 0
  const clear = (): void => {
    for (const mesh of group.children) (mesh as InstancedMesh).dispose()
    group.clear()
    for (const geometry of geometries.splice(0)) geometry.dispose()
    painted = 0
  }
  return {
    group,
    count: () => painted,
    show(dock, catalog) {
      clear()
      const uses = usesOf(dock)
      for (const placements of groupPlacements(dock).values()) {
        const { kind, code } = placements[0]!
        const known = uses.get(kind)
        const own = placements.filter(({ of }) => known?.has(of))
        if (own.length === 0) continue
        const solid = solidOf(kind, code, catalog)
        const geometry = new BufferGeometry()
        geometry.setAttribute('position', new BufferAttribute(solid.positions, 3))
        geometry.setAttribute('normal', new BufferAttribute(solid.normals, 3))
        geometry.setIndex(new BufferAttribute(solid.indices, 1))
        geometries.push(geometry)
        const matrices = new InstancedBufferAttribute(new Float32Array(own.length * 16), 16)
        const colors = new InstancedBufferAttribute(new Float32Array(own.length * 3), 3)
        own.forEach(({ of, at, turn }, i) => {
          _matrix.compose(_at.set(...at), _turn.set(...turn), _one)
          _matrix.toArray(matrices.array, i * 16)
          colors.setXYZ(i, ...colorOf(known!.get(of)!))
        })
        painted += own.length
        for (const material of [hidden, seen]) {
          const mesh = new InstancedMesh(geometry, material, own.length)
          mesh.instanceMatrix = matrices.setUsage(DynamicDrawUsage)
          mesh.instanceColor = colors
          mesh.frustumCulled = false
          mesh.renderOrder = ORDER
          group.add(mesh)
        }
      }
    },
    dispose() {
      clear()
      seen.dispose()
      hidden.dispose()
    },
  }
}

/** Screen colors, as the legend has them; only shaded enough to be read as a body. */
const paintMaterial = (world: World, hidden: boolean): ShaderMaterial =>
  makeMaterial(world, {
    name: hidden ? 'paint-hidden' : 'paint',
    options: {
      defines: { OPACITY: hidden ? '0.34' : '1.0' },
      // After the water, which would tint it: colors are read against the legend.
      transparent: true,
      depthWrite: false,
      depthFunc: hidden ? GreaterDepth : LessEqualDepth,
      polygonOffset: true,
      polygonOffsetFactor: -1,
      polygonOffsetUnits: -4,
    },
    vertex: /* glsl */ `
varying vec3 vNormal, vColor, vWorld;
void main() {
  vColor = instanceColor;
  mat4 place = modelMatrix * instanceMatrix;
  vNormal = mat3(place) * normal;
  vec4 worldPosition = place * vec4(position, 1.0);
  vWorld = worldPosition.xyz;
  gl_Position = projectionMatrix * viewMatrix * worldPosition;
}`,
    fragment: /* glsl */ `
varying vec3 vNormal, vColor, vWorld;
void main() {
  vec3 n = normalize(vNormal);
  float shade = 0.86 + 0.08 * n.z + 0.06 * abs(dot(n, normalize(cameraPosition - vWorld)));
  gl_FragColor = vec4(vColor * shade, OPACITY);
}`,
  })
