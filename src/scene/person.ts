/** A plain figure, to see how large things are. Our own few lofted bodies; z up, feet at 0, looking along x. */
import { BufferAttribute, BufferGeometry } from 'three'
import { PERSON_HEIGHT } from '../../rules/person.ts'

/** One ring of a body: center x, y, z, half widths along x and y, m. */
type Ring = readonly [x: number, y: number, z: number, rx: number, ry: number]

const ROUND = 14

interface Body {
  /** Picks the cloth (`materials/part.ts`): trousers below 0.25, shirt below 0.5, skin below 0.95, hair. */
  readonly tone: number
  readonly rings: readonly Ring[]
}

const BODIES: readonly Body[] = [
  ...[1, -1].flatMap((s): Body[] => [
    // shoe and leg
    {
      tone: 0.1,
      rings: [
        [0.05, s * 0.095, 0, 0.115, 0.045],
        [0.04, s * 0.095, 0.05, 0.11, 0.045],
        [0.0, s * 0.095, 0.09, 0.062, 0.047],
        [0.0, s * 0.095, 0.28, 0.062, 0.054],
        [0.012, s * 0.092, 0.47, 0.064, 0.06],
        [0.0, s * 0.09, 0.7, 0.083, 0.077],
        [-0.005, s * 0.082, 0.9, 0.1, 0.09],
      ],
    },
    // arm and hand
    {
      tone: 0.4,
      rings: [
        [0.0, s * 0.178, 1.452, 0.035, 0.025],
        [0.0, s * 0.208, 1.38, 0.05, 0.042],
        [-0.012, s * 0.232, 1.15, 0.043, 0.04],
        [0.003, s * 0.244, 1.05, 0.039, 0.036],
      ],
    },
    {
      tone: 0.9,
      rings: [
        [0.003, s * 0.244, 1.06, 0.034, 0.03],
        [0.03, s * 0.252, 0.88, 0.027, 0.025],
        [0.04, s * 0.255, 0.8, 0.04, 0.022],
        [0.045, s * 0.252, 0.73, 0.018, 0.014],
      ],
    },
  ]),
  {
    tone: 0.1,
    rings: [
      [-0.005, 0, 0.86, 0.1, 0.155],
      [-0.005, 0, 0.98, 0.105, 0.16],
      [0, 0, 1.03, 0.098, 0.15],
    ],
  },
  {
    tone: 0.4,
    rings: [
      [0, 0, 0.99, 0.108, 0.163],
      [0.004, 0, 1.12, 0.1, 0.152],
      [0.01, 0, 1.3, 0.115, 0.185],
      [0.002, 0, 1.42, 0.098, 0.2],
      [-0.005, 0, 1.475, 0.07, 0.12],
      [-0.005, 0, 1.5, 0.052, 0.062],
    ],
  },
  {
    tone: 0.9,
    rings: [
      [0, 0, 1.47, 0.05, 0.05],
      [0.012, 0, 1.54, 0.05, 0.049],
      [0.022, 0, 1.57, 0.078, 0.062],
      [0.02, 0, 1.64, 0.092, 0.074],
      [0.008, 0, 1.7, 0.088, 0.072],
      [0, 0, 1.738, 0.055, 0.046],
      [0, 0, PERSON_HEIGHT, 0.01, 0.01],
    ],
  },
  // hair
  {
    tone: 0.97,
    rings: [
      [-0.045, 0, 1.575, 0.03, 0.045],
      [-0.03, 0, 1.62, 0.062, 0.079],
      [-0.016, 0, 1.675, 0.082, 0.083],
      [-0.006, 0, 1.72, 0.08, 0.07],
      [-0.004, 0, PERSON_HEIGHT + 0.004, 0.035, 0.03],
    ],
  },
]

/** For a baked part material; the caller places the mesh and disposes the geometry. */
export function personGeometry(): BufferGeometry {
  const positions: number[] = []
  const normals: number[] = []
  const tones: number[] = []
  const indices: number[] = []
  for (const { tone, rings: given } of BODIES) {
    // From below upward, so that all faces are wound outward.
    const rings = given[0]![2] < given.at(-1)![2] ? given : [...given].reverse()
    const first = positions.length / 3
    rings.forEach(([x, y, z, rx, ry], r) => {
      const below = rings[Math.max(0, r - 1)]!
      const above = rings[Math.min(rings.length - 1, r + 1)]!
      // How much the body narrows upward tilts its side up.
      const rise = Math.max(0.01, above[2] - below[2])
      for (let k = 0; k < ROUND; k++) {
        const a = (2 * Math.PI * k) / ROUND
        const [c, s] = [Math.cos(a), Math.sin(a)]
        positions.push(x + rx * c, y + ry * s, z)
        const shrink = ((below[3] - above[3]) * c * c + (below[4] - above[4]) * s * s) / rise
        const n = [c / rx, s / ry, 0]
        const long = Math.hypot(n[0]!, n[1]!)
        const [nx, ny, nz] = [n[0]! / long, n[1]! / long, Math.max(-2, Math.min(2, shrink))]
        const all = Math.hypot(nx, ny, nz)
        normals.push(nx / all, ny / all, nz / all)
        tones.push(tone)
      }
    })
    for (let r = 0; r + 1 < rings.length; r++)
      for (let k = 0; k < ROUND; k++) {
        const a = first + r * ROUND + k
        const b = first + r * ROUND + ((k + 1) % ROUND)
        indices.push(a, b, b + ROUND, a, b + ROUND, a + ROUND)
      }
    for (const [ring, flip] of [
      [first, true],
      [first + (rings.length - 1) * ROUND, false],
    ] as const)
      for (let k = 1; k + 1 < ROUND; k++)
        indices.push(ring, ring + (flip ? k + 1 : k), ring + (flip ? k : k + 1))
  }
  const n = positions.length / 3
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3))
  geometry.setAttribute('normal', new BufferAttribute(Float32Array.from(normals), 3))
  geometry.setAttribute('aLocal', new BufferAttribute(Float32Array.from(positions), 3))
  const grain = new Float32Array(n * 2)
  const along = new Float32Array(n * 3)
  for (let v = 0; v < n; v++) {
    grain[2 * v] = tones[v]!
    grain[2 * v + 1] = 2
    along[3 * v + 2] = 1
  }
  geometry.setAttribute('aGrain', new BufferAttribute(grain, 2))
  geometry.setAttribute('aAlong', new BufferAttribute(along, 3))
  geometry.setAttribute('aMark', new BufferAttribute(new Float32Array(n * 3), 3))
  geometry.setIndex(indices)
  return geometry
}
