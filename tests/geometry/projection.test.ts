/** Where places fall on a picture: eyes whose directions stand square to each other, and what each of them shows. */
import { describe, expect, it } from 'vitest'
import {
  ABOVE,
  type Eye,
  inDock,
  levelEye,
  nearness,
  obliqueEye,
  SIDE,
  seenFrom,
} from '../../geometry/projection.ts'
import { cross, dot } from '../../geometry/vec.ts'

const EYES: readonly (readonly [string, Eye])[] = [
  ['from above', ABOVE],
  ['from the side', SIDE],
  ['level, along the shore', levelEye([0, 1, 0])],
  ['from beside and above', obliqueEye(0.4, 0.5)],
]

describe.each(EYES)('an eye %s', (_, { right, up, toward }) => {
  it('has directions of length 1 that stand square to each other, right-handed', () => {
    for (const direction of [right, up, toward]) expect(dot(direction, direction)).toBeCloseTo(1, 12)
    const third = cross(right, up)
    for (const k of [0, 1, 2] as const) expect(third[k]).toBeCloseTo(toward[k], 12)
  })
})

it('From the side distance goes right and elevation up, and the right side of the dock is near', () => {
  expect(seenFrom(SIDE, [3, 5, 0.4])).toEqual([3, 0.4])
  expect(nearness(SIDE, [3, -1, 0])).toBeGreaterThan(nearness(SIDE, [3, 1, 0]))
})

it('From beside and above the left side of the dock is farther, and so higher in the picture', () => {
  const eye = obliqueEye((24 * Math.PI) / 180, (27 * Math.PI) / 180)
  const [near, far] = [seenFrom(eye, [3, -1, 0]), seenFrom(eye, [3, 1, 0])]
  expect(far[1]).toBeGreaterThan(near[1])
  expect(nearness(eye, [3, -1, 0])).toBeGreaterThan(nearness(eye, [3, 1, 0]))
})

it('A place of a part is turned with it, then moved', () => {
  const h = Math.SQRT1_2
  const [x, y, z] = inDock({ at: [10, 0, 1], turn: [0, 0, h, h] }, [2, 0, 0])
  expect([x, y, z].map((n) => Math.round(n * 1e9) / 1e9)).toEqual([10, 2, 1])
})
