/**
 * Frames of every sort for tests of what holds for all: drawn by fast-check, so a failure shrinks and repeats.
 */
import fc from 'fast-check'
import type {
  End6,
  EndJoint,
  FrameLoad,
  FrameMember,
  FrameModel,
  FrameNode,
  MemberLoad,
  Vec3,
} from '../../../rules/structure/index.ts'

/** From 1/span to span, even on a logarithmic scale. */
const factor = (span: number): fc.Arbitrary<number> =>
  fc.integer({ min: -1000, max: 1000 }).map((power) => span ** (power / 1000))

/** A thousandth of the size is the smallest that is not 0. */
const within = (size: number): fc.Arbitrary<number> =>
  fc.integer({ min: -1000, max: 1000 }).map((part) => (part * size) / 1000)

const vector = (size: number): fc.Arbitrary<[number, number, number]> =>
  fc.tuple(within(size), within(size), within(size))

const section = fc
  .record({ E: factor(3), A: factor(4), Iy: factor(6), Iz: factor(6), J: factor(6) })
  .map(({ E, A, Iy, Iz, J }) => ({
    E: 70e9 * E,
    G: 26e9 * E,
    A: 1e-3 * A,
    Iy: 5e-7 * Iy,
    Iz: 5e-7 * Iz,
    J: 5e-7 * J,
  }))

const joint = (stiffness: number): fc.Arbitrary<EndJoint> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.constant<EndJoint>('rigid') },
    { weight: 1, arbitrary: fc.constant<EndJoint>('free') },
    { weight: 2, arbitrary: factor(30).map((f) => stiffness * f) },
  )

const end: fc.Arbitrary<End6> = fc.tuple(
  joint(1e6),
  joint(1e5),
  joint(1e5),
  joint(1e4),
  joint(3e4),
  joint(3e4),
)

export interface Options {
  /** Joints other than rigid, and bars, among the members that close loops. */
  readonly joints: boolean
  /** `up` given for every member (so that the whole may be turned). */
  readonly allUp?: boolean
}

/** Any `up` that is not near the member. */
function upFor(from: FrameNode, to: FrameNode, wish: Vec3): Vec3 {
  const d: Vec3 = [to.x - from.x, to.y - from.y, to.z - from.z]
  const along = d[0] * wish[0] + d[1] * wish[1] + d[2] * wish[2]
  const size = Math.hypot(...d) * Math.hypot(...wish)
  if (size > 0 && Math.abs(along) < 0.9 * size) return wish
  const least = d.map(Math.abs).indexOf(Math.min(...d.map(Math.abs)))
  return [0, 1, 2].map((k) => (k === least ? 1 : 0)) as unknown as Vec3
}

/**
 * Nodes on a jittered grid (so none lie close together), the first clamped and each other one tied rigidly to
 * an earlier one: stable whatever else is added. More members close loops, by any joints.
 */
export function randomFrame({ joints, allUp = false }: Options): fc.Arbitrary<FrameModel> {
  const place = fc.tuple(vector(0.35), fc.nat({ max: 1000 }), section, vector(1), fc.boolean())
  const loop = fc.record({
    a: fc.nat({ max: 1000 }),
    b: fc.nat({ max: 1000 }),
    section,
    from: end,
    to: end,
    bar: fc.boolean(),
    up: vector(1),
    hasUp: fc.boolean(),
  })
  return fc
    .record({
      places: fc.array(place, { minLength: 1, maxLength: 6 }),
      loops: fc.array(loop, { maxLength: 6 }),
      clampSecond: fc.boolean(),
      loads: fc.array(fc.tuple(fc.nat({ max: 1000 }), vector(1000), vector(400)), {
        minLength: 1,
        maxLength: 4,
      }),
      spread: fc.array(fc.tuple(fc.nat({ max: 1000 }), vector(300)), { maxLength: 3 }),
    })
    .map(({ places, loops, clampSecond, loads, spread }) => {
      const clamp = { fixed: [true, true, true, true, true, true] as const }
      const nodes: FrameNode[] = [{ x: 0, y: 0, z: 0, ...clamp }]
      const members: FrameMember[] = []
      const tie = (
        from: number,
        to: number,
        rest: Omit<FrameMember, 'from' | 'to' | 'up'>,
        up: Vec3 | undefined,
      ) =>
        members.push({
          from,
          to,
          ...rest,
          ...(up || allUp ? { up: upFor(nodes[from]!, nodes[to]!, up ?? [0, 0, 1]) } : {}),
        })
      places.forEach(([jitter, host, ownSection, up, hasUp], i) => {
        const cell = i + 1
        nodes.push({
          x: (cell % 2) * 2 + jitter[0],
          y: (Math.floor(cell / 2) % 2) * 2 + jitter[1],
          z: Math.floor(cell / 4) * 2 + jitter[2],
          ...(clampSecond && i === 2 ? clamp : {}),
        })
        tie(host % cell, cell, ownSection, hasUp ? up : undefined)
      })
      for (const { a, b, section: own, from, to, bar, up, hasUp } of loops) {
        const start = a % nodes.length
        const stop = b % nodes.length
        if (start === stop) continue
        const rest = joints ? { ends: { from, to }, axialOnly: bar } : {}
        tie(start, stop, { ...own, ...rest }, hasUp ? up : undefined)
      }
      return {
        nodes,
        members,
        loads: loads.map(
          ([node, f, m]): FrameLoad => ({
            node: node % nodes.length,
            force: [...f, ...m] as FrameLoad['force'],
          }),
        ),
        memberLoads: spread.map(
          ([member, perLength]): MemberLoad => ({ member: member % members.length, perLength }),
        ),
      }
    })
}

/** Members whose joints leave themselves loose may not be loaded; drops the loads on members with joints. */
export const loadsOnRigidOnly = (model: FrameModel): FrameModel => ({
  ...model,
  memberLoads: (model.memberLoads ?? []).filter(({ member }) => model.members[member]!.ends === undefined),
})
