/** What lies on the bed as triangles: the very solids that it is measured with. */
import type { Bed, Design } from '../../../rules/index.ts'
import { obstacleSolid } from '../../../rules/site/obstacles.ts'

type Obstacles = NonNullable<Design['site']['obstacles']>
type Vec3 = readonly [number, number, number]
/** A place of the unit solid, and its normal there. */
type Corner = readonly [at: Vec3, normal: Vec3]
/** Rows of corners, each joined with the next. */
type Strip = readonly (readonly Corner[])[]

/** Linear color, share and size of the stones that the ground's material strews, m. Looks only. */
const LOOKS: Readonly<Record<Obstacles[number]['kind'], readonly [number, number, number, number, number]>> =
  {
    boulder: [0.3, 0.295, 0.285, 0.5, 0.09],
    stump: [0.2, 0.13, 0.075, 0, 0.1],
    other: [0.3, 0.28, 0.22, 0, 0.1],
  }
const ROUND = 24
const RINGS = 8

const circle = Array.from({ length: ROUND + 1 }, (_, k) => {
  const turn = (2 * Math.PI * k) / ROUND
  return [Math.cos(turn), Math.sin(turn)] as const
})

const ball: readonly Strip[] = [
  Array.from({ length: RINGS + 1 }, (_, i) => {
    const lift = -Math.PI / 2 + (Math.PI * i) / RINGS
    return circle.map(([u, v]): Corner => {
      const at: Vec3 = [u * Math.cos(lift), v * Math.cos(lift), Math.sin(lift)]
      return [at, at]
    })
  }),
]

type Rim = readonly (readonly [u: number, v: number, out: Vec3])[]
/** An upright side along a rim, and its share of the top. */
const upright = (rim: Rim): readonly Strip[] => [
  [-1, 1].map((z) => rim.map(([u, v, out]): Corner => [[u, v, z], out])),
  [rim.map(([u, v]): Corner => [[u, v, 1], UP]), rim.map((): Corner => [UP, UP])],
]
const UP: Vec3 = [0, 0, 1]

const drum = upright(circle.map(([u, v]) => [u, v, [u, v, 0]]))
/** Its sides have edges: each by itself. */
const box = (
  [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ] as const
).flatMap(([u, v]) => {
  const out: Vec3 = [(u - v) / 2, (u + v) / 2, 0]
  return upright([
    [u, v, out],
    [-v, u, out],
  ])
})

const STRIPS = { ellipsoid: ball, drum, box } as const

export function obstacleMesh(obstacles: Obstacles, bed: Bed) {
  const [positions, normals, tints, stones, indices]: number[][] = [[], [], [], [], []] as number[][]
  for (const obstacle of obstacles) {
    const solid = obstacleSolid(obstacle, bed)
    const [r, g, b, share, size] = LOOKS[obstacle.kind]
    const put = putOn(solid)
    for (const rows of STRIPS[solid.shape]) {
      const first = positions!.length / 3
      const wide = rows[0]!.length
      for (const corner of rows.flat()) {
        const [at, normal] = put(corner)
        positions!.push(...at)
        normals!.push(...normal)
        tints!.push(r, g, b)
        stones!.push(share, size)
      }
      for (let i = 0; i + 1 < rows.length; i++)
        for (let k = 0; k + 1 < wide; k++) {
          const q = first + i * wide + k
          indices!.push(q, q + 1, q + wide, q + 1, q + wide + 1, q + wide)
        }
    }
  }
  return {
    positions: Float32Array.from(positions!),
    normals: Float32Array.from(normals!),
    tints: Float32Array.from(tints!),
    stones: Float32Array.from(stones!),
    indices: Uint32Array.from(indices!),
  }
}

/** Across a stretched surface the normal is shortened where that is long. */
const putOn = ({ middle, edges }: ReturnType<typeof obstacleSolid>): ((corner: Corner) => [Vec3, Vec3]) => {
  const squares = edges.map((e) => e[0] ** 2 + e[1] ** 2 + e[2] ** 2)
  const sum = (of: Vec3, part: (i: number) => number, k: 0 | 1 | 2): number =>
    edges.reduce((all, edge, i) => all + of[i]! * edge[k] * part(i), 0)
  return ([at, normal]) => {
    const place = ([0, 1, 2] as const).map((k) => middle[k] + sum(at, () => 1, k))
    const up = ([0, 1, 2] as const).map((k) => sum(normal, (i) => 1 / squares[i]!, k))
    const long = Math.hypot(...up) || 1
    return [place, up.map((v) => v / long)] as unknown as [Vec3, Vec3]
  }
}
