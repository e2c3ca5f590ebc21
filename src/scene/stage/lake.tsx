/** Sky, ground, water, and the face of the cut. */
import { ScreenQuad } from '@react-three/drei/core/ScreenQuad'
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo } from 'react'
import { BufferAttribute, BufferGeometry, type Material } from 'three'
import type { Land } from '../land.ts'
import { makeEdgeMaterial } from '../look/edge.ts'
import { makeGroundMaterial } from '../look/ground.ts'
import { makeSectionMaterial } from '../look/section.ts'
import { makeSkyMaterial } from '../look/sky.ts'
import { makeWaterMaterial } from '../look/water.ts'
import type { World } from '../look/world.ts'
import { makeScenery } from '../scenery.ts'
import { HORIZON } from '../water/mesh.ts'
import type { Facts } from './facts.ts'

/** The cut ground goes down this far, m: out of any picture. */
const DOWN = 60

interface Props {
  readonly world: World
  readonly facts: Facts
  /** Where the lake is cut: offset of the plane, m; null where it is not. */
  readonly plane: number | null
  /** The water's surface while it has waves; null where it lies flat. */
  readonly sea: BufferGeometry | null
  /** The same where the lake is cut. */
  readonly edge: BufferGeometry | null
}

/** Opaque things are drawn from what mostly covers to what is mostly covered: what is hidden then costs nothing. */
export function Lake({ world, facts, plane, sea, edge }: Props) {
  const { land, level, design } = facts
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
  const bed = useMade(() => new BufferGeometry(), [])
  const face = useMade(() => new BufferGeometry(), [])
  useLayoutEffect(() => {
    fill(bed, {
      position: [land.mesh.positions, 3],
      normal: [land.mesh.normals, 3],
      aTint: [land.tints, 3],
      aStone: [land.stones, 2],
    })
    fillIndex(bed, land.mesh.indices)
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
    if (plane === null) return
    const strip = faceOf(land, plane)
    fill(face, { position: [strip.positions, 3], aTint: [strip.tints, 3] })
    fillIndex(face, strip.indices)
    invalidate()
  }, [face, land, plane, invalidate])
  return (
    <>
      <ScreenQuad material={sky} renderOrder={4} />
      <mesh geometry={bed} material={ground} frustumCulled={false} receiveShadow renderOrder={3} />
      <mesh
        geometry={face}
        material={section}
        frustumCulled={false}
        visible={plane !== null}
        renderOrder={-1}
      />
      <primitive object={scenery.group} />
      <mesh geometry={sea ?? surface} material={water} frustumCulled={false} renderOrder={5} />
      {edge && <mesh geometry={edge} material={edged} frustumCulled={false} renderOrder={6} />}
    </>
  )
}

/** Made once for the inputs, and disposed with them: R3F frees what it made, not what it was given. */
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

/** What an attribute holds a copy of: arrays are shared by all scenes of a page. */
const copied = new WeakMap<BufferAttribute, Float32Array>()

/** Into the attributes that are there where the sizes agree: while a sounding is dragged they do. */
function fill(geometry: BufferGeometry, arrays: Record<string, readonly [Float32Array, number]>): void {
  for (const [name, [array, size]] of Object.entries(arrays)) {
    const known = geometry.attributes[name] as BufferAttribute | undefined
    if (known && copied.get(known) === array) continue
    if (known?.array.length === array.length) {
      known.set(array)
      known.needsUpdate = true
      copied.set(known, array)
    } else {
      // What the card holds of the old ones goes with them.
      if (known) geometry.dispose()
      const made = new BufferAttribute(array.slice(), size)
      geometry.setAttribute(name, made)
      copied.set(made, array)
    }
  }
}

function fillIndex(geometry: BufferGeometry, indices: Uint32Array): void {
  if (geometry.index?.array.length === indices.length) {
    ;(geometry.index as BufferAttribute).set(indices)
    geometry.index.needsUpdate = true
  } else geometry.setIndex(new BufferAttribute(indices, 1))
}

/** The ground's face along a plane: x, elevation of the ground, own elevation. */
function faceOf(
  land: Land,
  y: number,
): { positions: Float32Array; tints: Float32Array; indices: Uint32Array } {
  const { xs } = land.mesh
  const n = xs.length
  const positions = new Float32Array(n * 6)
  const tints = new Float32Array(n * 6)
  const indices = new Uint32Array((n - 1) * 6)
  xs.forEach((x, i) => {
    const z = land.at(x, y)
    positions.set([x, z, z, x, z, z - DOWN], 6 * i)
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
