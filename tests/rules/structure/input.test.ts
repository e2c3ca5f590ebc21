/** Frames that cannot be meant are refused by name. */
import { describe, expect, it } from 'vitest'
import { type FrameModel, solveFrame } from '../../../rules/structure/index.ts'

const TUBE = { E: 70e9, G: 26e9, A: 1e-3, Iy: 4e-7, Iz: 9e-7, J: 6e-7 }
const ALL = [true, true, true, true, true, true] as const

describe('input that cannot be meant', () => {
  const good: FrameModel = {
    nodes: [
      { x: 0, y: 0, z: 0, fixed: ALL },
      { x: 0, y: 0, z: 2 },
    ],
    members: [{ from: 0, to: 1, ...TUBE }],
    loads: [],
  }
  const member = good.members[0]!

  it('is solved where it can be', () => {
    expect(solveFrame(good).displacements[1]).toEqual([0, 0, 0, 0, 0, 0])
    expect(solveFrame({ nodes: [], members: [], loads: [] }).displacements).toEqual([])
  })

  it.each<[string, FrameModel, RegExp]>([
    [
      'up parallel to its member',
      { ...good, members: [{ ...member, up: [0, 0, -3] }] },
      /member 0: up .* parallel/,
    ],
    ['up without length', { ...good, members: [{ ...member, up: [0, 0, 0] }] }, /member 0: up/],
    ['a member to nowhere', { ...good, members: [{ ...member, to: 2 }] }, /member 0: there is no node 2/],
    ['a member without length', { ...good, members: [{ ...member, to: 0 }] }, /member 0 has no length/],
    ['a stiffness of no number', { ...good, members: [{ ...member, E: Number.NaN }] }, /member 0: E/],
    ['a negative area', { ...good, members: [{ ...member, A: -1 }] }, /member 0: A/],
    [
      'a load on no node',
      { ...good, loads: [{ node: 5, force: [0, 0, 0, 0, 0, 0] }] },
      /load 0: there is no node 5/,
    ],
    [
      'a load on no member',
      { ...good, memberLoads: [{ member: 1, perLength: [0, 0, 0] }] },
      /member load 0: there is no member 1/,
    ],
    [
      'a negative joint',
      { ...good, members: [{ ...member, ends: { to: ['rigid', -1, 'rigid', 'rigid', 'rigid', 'rigid'] } }] },
      /member 0: ends\.to/,
    ],
    [
      'a load of no number',
      { ...good, loads: [{ node: 1, force: [0, 0, Number.POSITIVE_INFINITY, 0, 0, 0] }] },
      /load 0: force/,
    ],
  ])('is refused by name: %s', (_, model, message) => {
    expect(() => solveFrame(model)).toThrow(RangeError)
    expect(() => solveFrame(model)).toThrow(message)
  })
})
