/** Sky, ground, water, and the face of the cut. */
import { ScreenQuad } from '@react-three/drei/core/ScreenQuad'
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo } from 'react'
import { BufferAttribute, BufferGeometry, type Material } from 'three'
import { type Cut, onCut } from '../cut.ts'
import { makeGridGeometry } from '../grid-geometry.ts'
import { makeEdgeMaterial } from '../materials/edge.ts'
import { makeGroundMaterial } from '../materials/ground.ts'
import { makeSectionMaterial } from '../materials/section.ts'
import { makeSkyMaterial } from '../materials/sky.ts'
import { makeWaterMaterial } from '../materials/water.ts'
import type { World } from '../materials/world.ts'
import { makeScenery } from '../scenery.ts'
import type { Land } from '../terrain.ts'
import { HORIZON } from '../water/surface-mesh.ts'
import type { SceneData } from './use-scene-data.ts'

/** The cut face of the ground reaches this far down, m: below any picture. */
const DOWN = 60

interface Props {
  readonly world: World
  readonly data: SceneData
  /** Null where the lake is whole. */
  readonly cut: Cut | null
  /** The water's surface while it has waves; null where it lies flat. */
  readonly sea: BufferGeometry | null
  /** The same where the lake is cut. */
  readonly edge: BufferGeometry | null
}

/** Opaque meshes are drawn front to back, so that hidden pixels cost nothing. */
export function Lake({ world, data, cut, sea, edge }: Props) {
  const { land, level, design } = data
  const invalidate = useThree((s) => s.invalidate)
  const sky = useMade(() => makeSkyMaterial(world), [world])
  const ground = useMade(() => makeGroundMaterial(world), [world])
  const water = useMade(() => makeWaterMaterial(world), [world])
  const section = useMade(() => makeSectionMaterial(world), [world])
  const edged = useMade(() => makeEdgeMaterial(world), [world])
  const surface = useMade(
    () =>
      flat([-HORIZON, -HORIZON, HORIZON, -HORIZON, -HORIZON, HORIZON, HORIZON, HORIZON], [0, 1, 2, 1, 3, 2]),
    [],
  )
  const bed = useMemo(makeGridGeometry, [])
  const face = useMemo(makeGridGeometry, [])
  useEffect(() => () => [bed, face].forEach(({ geometry }) => void geometry.dispose()), [bed, face])
  useLayoutEffect(() => {
    const { positions, normals, indices } = land.mesh
    bed.fill(
      {
        position: [positions, 3],
        normal: [normals, 3],
        aTint: [land.tints, 3],
        aStone: [land.stones, 2],
      },
      indices,
    )
    invalidate()
  }, [bed, land, invalidate])
  const scenery = useMemo(() => makeScenery(world), [world])
  useEffect(() => () => scenery.dispose(), [scenery])
  const { high } = design.site.levels
  const { bottom } = design.site
  useLayoutEffect(() => {
    scenery.grow(land, Math.max(level, high), bottom)
    invalidate()
  }, [scenery, land, level, high, bottom, invalidate])
  useLayoutEffect(() => {
    if (!cut) return
    const strip = faceOf(land, cut)
    face.fill({ position: [strip.positions, 3], aTint: [strip.tints, 3] }, strip.indices)
    invalidate()
  }, [face, land, cut, invalidate])
  return (
    <>
      <ScreenQuad material={sky} renderOrder={4} />
      <mesh geometry={bed.geometry} material={ground} frustumCulled={false} receiveShadow renderOrder={3} />
      <mesh
        geometry={face.geometry}
        material={section}
        frustumCulled={false}
        visible={cut !== null}
        renderOrder={-1}
      />
      <primitive object={scenery.group} />
      <mesh geometry={sea ?? surface} material={water} frustumCulled={false} renderOrder={5} />
      {edge && <mesh geometry={edge} material={edged} frustumCulled={false} renderOrder={6} />}
    </>
  )
}

/** Created once for the inputs and disposed with them: R3F disposes only what it created itself. */
export function useMade<T extends Material | BufferGeometry>(make: () => T, inputs: readonly unknown[]): T {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what it is made from.
  const made = useMemo(make, inputs)
  useEffect(() => () => made.dispose(), [made])
  return made
}

function flat(xy: readonly number[], index?: readonly number[]): BufferGeometry {
  const geometry = new BufferGeometry()
  const positions = Float32Array.from({ length: (xy.length / 2) * 3 }, (_, i) =>
    i % 3 === 2 ? 0 : xy[Math.floor(i / 3) * 2 + (i % 3)]!,
  )
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setAttribute('aSea', new BufferAttribute(new Float32Array((xy.length / 2) * 2), 2))
  if (index) geometry.setIndex([...index])
  return geometry
}

/** The ground's face along a plane: place along it, elevation of the ground, own elevation. */
function faceOf(
  land: Land,
  cut: Cut,
): { positions: Float32Array; tints: Float32Array; indices: Uint32Array } {
  const list = cut.across ? land.mesh.ys : land.mesh.xs
  const n = list.length
  const positions = new Float32Array(n * 6)
  const tints = new Float32Array(n * 6)
  const indices = new Uint32Array((n - 1) * 6)
  list.forEach((along, i) => {
    const [x, y] = onCut(cut, along)
    const z = land.at(x, y)
    positions.set([along, z, z, along, z, z - DOWN], 6 * i)
    const tint = land.tintAt(x, y)
    tints.set([...tint, ...tint], 6 * i)
    if (i + 1 < n)
      indices.set(
        [0, 2, 1, 1, 2, 3].map((k) => 2 * i + k),
        6 * i,
      )
  })
  return { positions, tints, indices }
}
