/** Grass, reeds, stones and trees along the shore beside the dock, where nobody measured: only for the eye. The same for the same shore. */
import {
  BufferAttribute,
  BufferGeometry,
  Group,
  InstancedBufferAttribute,
  InstancedMesh,
  type Material,
  Matrix4,
  Quaternion,
  Vector3,
} from 'three'
import type { BottomKind } from '../../rules/index.ts'
import { makePartMaterial, type Surface } from './materials/part.ts'
import type { World } from './materials/world.ts'
import type { Land } from './terrain.ts'

export interface Scenery {
  readonly group: Group
  /** `high`: level below which nothing dry grows, m. */
  grow(land: Land, high: number, bottom: BottomKind): void
  dispose(): void
}

/** Nearest and farthest distance of plants and stones from the measured strip, m. */
const BESIDE = 0.4
const FAR = 46
const MOST = { tuft: 900, stone: 160, tree: 90 } as const

/** Evenly spread numbers in 0 to 1 that depend on the place alone. */
function random(i: number, k: number): number {
  let n = Math.imul(i + 1, 0x9e3779b1) ^ Math.imul(k + 7, 0x85ebca77)
  n = Math.imul(n ^ (n >>> 15), 0xc2b2ae3d)
  return ((n ^ (n >>> 13)) >>> 0) / 4294967296
}

const _matrix = /*@__PURE__*/ new Matrix4()
const _at = /*@__PURE__*/ new Vector3()
const _turn = /*@__PURE__*/ new Quaternion()
const _size = /*@__PURE__*/ new Vector3()
const _up = /*@__PURE__*/ new Vector3(0, 0, 1)

export function makeScenery(world: World): Scenery {
  const group = new Group()
  const batch = (surface: Surface, geometry: BufferGeometry, most: number) => {
    const material = makePartMaterial(world, surface, false)
    const mesh = new InstancedMesh(geometry, material, most)
    mesh.instanceColor = new InstancedBufferAttribute(new Float32Array(most * 3), 3)
    mesh.frustumCulled = false
    mesh.count = 0
    group.add(mesh)
    return mesh
  }
  const tufts = batch('leaf', tuftGeometry(), MOST.tuft)
  const stones = batch('stone', stoneGeometry(), MOST.stone)
  const trees = batch('needle', treeGeometry(), MOST.tree)
  const all = [tufts, stones, trees]
  let grown: { readonly shore: Shore; readonly high: number; readonly bottom: BottomKind } | null = null
  return {
    group,
    grow(land, high, bottom) {
      // A sounding dragged in deep water leaves the shore as it is.
      const shore = shoreOf(land, Math.min(0, high - 0.25))
      if (grown?.high === high && grown.bottom === bottom && sameShore(grown.shore, shore)) return
      grown = { shore, high, bottom }
      for (const mesh of all) mesh.count = 0
      growGrass(land, high, (tuft) => put(tufts, tuft))
      if (bottom !== 'rock') growReeds(land, high, (tuft) => put(tufts, tuft))
      layStones(land, bottom, (stone) => put(stones, stone))
      growTrees(land, high, (tree) => put(trees, tree))
      for (const mesh of all) mesh.instanceMatrix.needsUpdate = true
    },
    dispose() {
      for (const mesh of all) {
        mesh.geometry.dispose()
        ;(mesh.material as Material).dispose()
        mesh.dispose()
      }
    },
  }
}

function put(mesh: InstancedMesh, { x, y, z, turn, wide, tall }: Planted): void {
  if (mesh.count >= mesh.instanceMatrix.count) return
  _matrix.compose(_at.set(x, y, z), _turn.setFromAxisAngle(_up, turn), _size.set(wide, wide, tall))
  mesh.setMatrixAt(mesh.count++, _matrix)
}

interface Planted {
  readonly x: number
  readonly y: number
  readonly z: number
  /** rad */
  readonly turn: number
  readonly wide: number
  readonly tall: number
}

/** Where plant or stone number `i` stands beside the measured strip: its y, and its distance from the strip, m. */
function aside({ y0, y1 }: Land, i: number): { y: number; far: number } {
  const far = BESIDE + random(i, 1) ** 1.6 * FAR
  return { far, y: random(i, 2) < 0.5 ? y0 - far : y1 + far }
}

/** On the green, thickest at its edge. */
function growGrass(land: Land, high: number, plant: (tuft: Planted) => void): void {
  const green = shoreline(land, high + 0.1)
  for (let i = 0; i < 620; i++) {
    const { y } = aside(land, i)
    const shore = green(y)
    if (Number.isNaN(shore)) continue
    const x = shore - 0.9 - random(i, 3) ** 2.2 * 9
    const z = land.at(x, y)
    const size = 0.5 + 0.6 * random(i, 4)
    if (z > high + 0.22) plant({ x, y, z: z - 0.02, turn: random(i, 5) * 7, wide: size * 0.8, tall: size })
  }
}

/** Clumps with their feet in the water. */
function growReeds(land: Land, high: number, plant: (tuft: Planted) => void): void {
  const wet = shoreline(land, high - 0.25)
  for (let i = 0; i < 46; i++) {
    const { y: middle, far } = aside(land, i + 5000)
    const edge = wet(middle)
    if (far < 3 || Number.isNaN(edge)) continue
    for (let k = 9 * i; k < 9 * i + 9; k++) {
      const x = edge + (random(k, 6) - 0.45) * 1.3
      const y = middle + (random(k, 7) - 0.5) * 1.8
      const z = land.at(x, y) - 0.02
      plant({ x, y, z, turn: random(k, 8) * 7, wide: 0.65, tall: 2.1 + 1.1 * random(k, 9) })
    }
  }
}

/** Back from the shore on either side of the dock, behind whoever looks from there; the dock's own way is free. */
function growTrees(land: Land, high: number, plant: (tree: Planted) => void): void {
  const green = shoreline(land, high + 0.1)
  for (let i = 0; i < MOST.tree; i++) {
    const left = random(i, 31) < 0.6
    const far = 7 + random(i, 32) ** 1.3 * 60
    const y = left ? land.y1 + far : land.y0 - 14 - far
    const shore = green(y)
    if (Number.isNaN(shore)) continue
    const x = shore - 2.5 - random(i, 33) ** 1.5 * 30
    const tall = 3.5 + 6.5 * random(i, 34)
    plant({
      x,
      y,
      z: land.at(x, y) - 0.1,
      turn: random(i, 35) * 7,
      wide: tall * (0.8 + 0.5 * random(i, 36)),
      tall,
    })
  }
}

function layStones(land: Land, bottom: BottomKind, plant: (stone: Planted) => void): void {
  const low = shoreline(land, 0)
  const many = bottom === 'rock' || bottom === 'gravel' ? MOST.stone : 60
  for (let i = 0; i < many; i++) {
    const { y } = aside(land, i + 9000)
    const edge = low(y)
    if (Number.isNaN(edge)) continue
    const x = edge + (random(i, 11) - 0.35) * 2.4
    const size = 0.06 + 0.26 * random(i, 12) ** 3
    plant({
      x,
      y,
      z: land.at(x, y) + size * 0.1,
      turn: random(i, 13) * 7,
      wide: size,
      tall: size * (0.5 + 0.4 * random(i, 14)),
    })
  }
}

/** The ground that decides where something grows. */
interface Shore {
  readonly y0: number
  readonly y1: number
  /** Columns and rows of the mesh, m. */
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  /** Elevations, m, row by row from the land to a little beyond the last place over a level. */
  readonly heights: readonly number[]
}

/** How far beyond, m: nothing grows farther out. */
const LAKEWARD = 3

function shoreOf({ y0, y1, mesh: { positions, xs, ys } }: Land, level: number): Shore {
  const nx = xs.length
  const heights: number[] = []
  for (let j = 0; j < ys.length; j++) {
    const height = (i: number): number => positions[3 * (j * nx + i) + 2]!
    let last = nx - 1
    while (last > 0 && height(last) < level) last--
    const edge = xs[last]!
    for (let i = 0; i < nx && (i === 0 || xs[i - 1]! < edge + LAKEWARD); i++) heights.push(height(i))
  }
  return { y0, y1, xs, ys, heights }
}

function sameShore(a: Shore, b: Shore): boolean {
  const same = (m: readonly number[], n: readonly number[]): boolean =>
    m.length === n.length && m.every((value, i) => value === n[i])
  return a.y0 === b.y0 && a.y1 === b.y1 && same(a.xs, b.xs) && same(a.ys, b.ys) && same(a.heights, b.heights)
}

/** Distance of the shoreline of an elevation by offset, read off the rows of the mesh; NaN where there is none. */
function shoreline({ mesh: { positions, xs, ys } }: Land, z: number): (y: number) => number {
  const nx = xs.length
  const at = ys.map((_, j) => {
    const height = (i: number): number => positions[3 * (j * nx + i) + 2]!
    for (let i = nx - 1; i > 0; i--) {
      const [za, zb] = [height(i - 1), height(i)]
      if (za >= z && zb < z) return xs[i - 1]! + ((xs[i]! - xs[i - 1]!) * (za - z)) / (za - zb)
    }
    return Number.NaN
  })
  return (y) => {
    let j = 1
    while (j + 1 < ys.length && ys[j]! < y) j++
    const t = (y - ys[j - 1]!) / (ys[j]! - ys[j - 1]!)
    return at[j - 1]! + (at[j]! - at[j - 1]!) * t
  }
}

/** Blades in a bunch, 1 unit wide about half, 0.5 m tall at size 1. The length along a blade goes first in `vGrain` (axis z). */
function tuftGeometry(): BufferGeometry {
  const positions: number[] = []
  const normals: number[] = []
  const index: number[] = []
  const blades = 11
  for (let k = 0; k < blades; k++) {
    const a = (k * 2.39996) % (2 * Math.PI)
    const lean = 0.06 + 0.2 * random(k, 21)
    const tall = 0.26 + 0.24 * random(k, 22)
    const [c, s] = [Math.cos(a), Math.sin(a)]
    const foot = 0.05 * random(k, 23)
    const half = 0.011
    const first = positions.length / 3
    for (const [t, w] of [
      [0, 1],
      [0.55, 0.8],
      [1, 0],
    ] as const) {
      const out = foot + lean * t * t
      for (const side of w === 0 ? [0] : [-1, 1]) {
        positions.push(c * out - s * half * w * side, s * out + c * half * w * side, tall * t)
        normals.push(c, s, 0.4)
      }
    }
    index.push(first, first + 1, first + 3, first, first + 3, first + 2, first + 2, first + 3, first + 4)
  }
  return shaped(positions, normals, index)
}

/** A conifer 1 m tall: skirts of ragged branches over one another. */
function treeGeometry(): BufferGeometry {
  const tiers = 9
  const round = 13
  const positions: number[] = []
  const normals: number[] = []
  const index: number[] = []
  for (let t = 0; t < tiers; t++) {
    const foot = 0.06 + (0.86 * t) / tiers
    const wide = 0.2 * (1 - foot) ** 0.8
    const first = positions.length / 3
    positions.push(0, 0, Math.min(1, foot + 0.2))
    normals.push(0, 0, 1)
    for (let k = 0; k < round; k++) {
      const a = (2 * Math.PI * (k + 0.5 * t)) / round
      const out = wide * (k % 2 ? 0.5 : 0.85 + 0.3 * random(13 * t + k, 37))
      positions.push(Math.cos(a) * out, Math.sin(a) * out, foot + (k % 2 ? 0.03 : -0.02))
      normals.push(Math.cos(a), Math.sin(a), 0.5)
      index.push(first, first + 1 + k, first + 1 + ((k + 1) % round))
    }
  }
  return shaped(positions, normals, index)
}

/** A rounded lump of 1 m radius. */
function stoneGeometry(): BufferGeometry {
  const rings = 6
  const round = 9
  const positions: number[] = []
  const normals: number[] = []
  const index: number[] = []
  for (let r = 0; r <= rings; r++)
    for (let k = 0; k < round; k++) {
      const [a, e] = [(2 * Math.PI * k) / round, Math.PI * (r / rings - 0.5)]
      const n = [Math.cos(a) * Math.cos(e), Math.sin(a) * Math.cos(e), Math.sin(e)] as const
      const bump =
        0.86 + 0.16 * Math.sin(n[0] * 3.1 + 1) * Math.cos(n[1] * 2.7) + 0.1 * Math.sin(n[2] * 4 + n[0] * 2)
      positions.push(n[0] * bump, n[1] * bump, n[2] * bump)
      normals.push(...n)
    }
  for (let r = 0; r < rings; r++)
    for (let k = 0; k < round; k++) {
      const [a, b] = [r * round + k, r * round + ((k + 1) % round)]
      index.push(a, b, b + round, a, b + round, a + round)
    }
  return shaped(positions, normals, index)
}

function shaped(positions: readonly number[], normals: readonly number[], index: number[]): BufferGeometry {
  const n = positions.length / 3
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3))
  geometry.setAttribute('normal', new BufferAttribute(Float32Array.from(normals), 3))
  // Tone 0, axis z.
  geometry.setAttribute(
    'aGrain',
    new BufferAttribute(
      Float32Array.from({ length: 2 * n }, (_, i) => (i % 2) * 2),
      2,
    ),
  )
  geometry.setIndex(index)
  return geometry
}
