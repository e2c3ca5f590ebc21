/** What holds for every dock's structure, on random docks of both shops. Only what is true: see what it leaves out at the end. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deriveKit } from '../../../rules/index.ts'
import { analyze } from '../../../rules/structure/dock/analysis.ts'
import {
  deadLoad,
  leanLoad,
  liveLoad,
  pushLoad,
  TOWARD,
  weatherLoad,
} from '../../../rules/structure/dock/basic-loads.ts'
import { judgedForces, touch } from '../../../rules/structure/dock/contacts.ts'
import { AS_BUILT, type DockFrame, dockFrame } from '../../../rules/structure/dock/frame.ts'
import { letGo } from '../../../rules/structure/dock/lift-off.ts'
import { memberJudge } from '../../../rules/structure/dock/member-use.ts'
import { whyNotJudged } from '../../../rules/structure/dock/not-judged.ts'
import type { Solved } from '../../../rules/structure/dock/soften.ts'
import { structureOf } from '../../../rules/structure/dock/structure.ts'
import { outerCorners } from '../../../rules/structure/dock/sway.ts'
import type { FrameMember, FrameModel, Vec3 } from '../../../rules/structure/index.ts'
import {
  type CaseLoad,
  endForces,
  factorState,
  layOutStates,
  noLoad,
  respond,
  type State,
  type StateLayout,
} from '../../../rules/structure/second-order.ts'
import { mirrored, sortedId, swapId, turnsAskew } from '../../support/mirror.ts'
import { judgedCase, judgedStraight, smallCase, unlessLoose, withDock } from './dock-cases.ts'
import { divided, rotation, turn, turned } from './turned.ts'

const SEED = 20260320
const few = (offset: number, numRuns: number) => ({ seed: SEED + offset, numRuns })

/** The dock's frame under the axial forces of its own dead load, or null where it is loose. */
function softened(frame: DockFrame): { states: StateLayout; plain: State; pressed: State } | undefined {
  return unlessLoose(() => {
    const states = layOutStates(frame)
    const plain = factorState(states, null)
    const dead = deadLoad(states, frame)
    const movement = respond(plain, dead.onNodes)
    const end = new Float64Array(12)
    const axial = Float64Array.from(frame.members, (_, m) => {
      endForces(plain, m, movement, dead.onMembers, end, 0)
      return (end[6]! - end[0]!) / 2
    })
    return { states, plain, pressed: factorState(states, axial) }
  })
}

const numbers = fc.integer({ min: -1000, max: 1000 })
/** Forces on a few corners of sections: places that are there with braces and without. */
const cornerLoads = fc.array(fc.tuple(fc.nat(), numbers, numbers, numbers), { minLength: 1, maxLength: 4 })

function loadOf({ corners, nodes }: DockFrame, list: readonly (readonly number[])[]): Float64Array {
  const all = corners.flat().filter((node) => node !== undefined)
  const onNodes = new Float64Array(nodes.length * 6)
  for (const [which, ...force] of list)
    force.forEach((value, k) => {
      onNodes[all[which! % all.length]! * 6 + k]! += value
    })
  return onNodes
}
const work = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0)

describe('the frame of a dock', () => {
  it(`obeys Betti in every state: loads do the same work on each other's movements (seed ${SEED})`, () => {
    fc.assert(
      fc.property(judgedCase, cornerLoads, cornerLoads, ({ kit }, one, two) => {
        const frame = dockFrame(kit)
        const done = softened(frame)
        if (!done) return
        for (const state of [done.plain, done.pressed]) {
          if (state.buckled) continue
          const [p, q] = [loadOf(frame, one), loadOf(frame, two)]
          const [u, v] = [respond(state, p), respond(state, q)]
          const scale = Math.sqrt(Math.abs(work(p, u) * work(q, v))) + 1e-9
          expect(Math.abs(work(p, v) - work(q, u)) / scale).toBeLessThan(1e-6)
        }
      }),
      few(0, 40),
    )
  })

  it(`adds loads within a state (superposition) (seed ${SEED + 1})`, () => {
    fc.assert(
      fc.property(judgedCase, cornerLoads, cornerLoads, ({ kit }, one, two) => {
        const frame = dockFrame(kit)
        const state = softened(frame)?.pressed
        if (!state || state.buckled) return
        const [p, q] = [loadOf(frame, one), loadOf(frame, two)]
        const both = respond(
          state,
          p.map((value, i) => 2 * value - 3 * q[i]!),
        )
        const [u, v] = [respond(state, p), respond(state, q)]
        const size = Math.max(...both.map(Math.abs), ...u.map(Math.abs), ...v.map(Math.abs))
        both.forEach((value, i) => {
          expect(Math.abs(value - 2 * u[i]! + 3 * v[i]!) / size).toBeLessThan(1e-7)
        })
      }),
      few(1, 30),
    )
  })

  it(`turned about the vertical as a whole moves turned (seed ${SEED + 2})`, () => {
    fc.assert(
      fc.property(judgedCase, cornerLoads, fc.integer({ min: -31, max: 31 }), ({ kit }, list, tenths) => {
        const frame = dockFrame(kit)
        const R = rotation([0, 0, 1], tenths / 10)
        const model = withUp(frame)
        const other = turned(model, R)
        const p = loadOf(frame, list)
        const there = p.slice()
        for (let node = 0; node < frame.nodes.length; node++)
          turn(R, [p[node * 6]!, p[node * 6 + 1]!, p[node * 6 + 2]!]).forEach((value, k) => {
            there[node * 6 + k] = value
          })
        const moved = unlessLoose(() => [
          respond(factorState(layOutStates(model), null), p),
          respond(factorState(layOutStates(other), null), there),
        ])
        if (!moved) return
        const [u, v] = moved as [Float64Array, Float64Array]
        const size = Math.max(...u.map(Math.abs))
        for (let node = 0; node < frame.nodes.length; node++)
          turn(R, [u[node * 6]!, u[node * 6 + 1]!, u[node * 6 + 2]!]).forEach((value, k) => {
            expect(Math.abs(value - v[node * 6 + k]!) / size).toBeLessThan(1e-6)
          })
      }),
      few(2, 30),
    )
  })

  it(`does not notice that a leg or a rail is divided, pressed or not (seed ${SEED + 3})`, () => {
    fc.assert(
      fc.property(
        smallCase(20),
        cornerLoads,
        fc.nat(),
        fc.integer({ min: 1, max: 9 }),
        ({ kit }, list, which, tenths) => {
          const frame = dockFrame(kit)
          const able = frame.members.flatMap((member, i) =>
            member.axialOnly || member.ends?.from ? [] : [i],
          )
          const member = able[which % able.length]!
          const p = loadOf(frame, list)
          const longer = new Float64Array(p.length + 6)
          longer.set(p)
          const axial = (count: number): Float64Array => new Float64Array(count).fill(-150)
          const cut = divided({ nodes: frame.nodes, members: frame.members, loads: [] }, member, tenths / 10)
          const done = unlessLoose(() => [layOutStates(frame), layOutStates(cut)] as const)
          if (!done || !unlessLoose(() => factorState(done[0], null))) return
          for (const force of [null, -1]) {
            const a = factorState(done[0], force === null ? null : axial(frame.members.length))
            const b = factorState(done[1], force === null ? null : axial(cut.members.length))
            if (a.buckled) return
            const u = respond(a, p)
            const v = respond(b, longer)
            const size = Math.max(...u.map(Math.abs))
            // Pressed members are eight cubic pieces each: 0.01 % between eight and sixteen.
            u.forEach((value, i) => {
              expect(Math.abs(value - v[i]!) / size).toBeLessThan(force ? 1e-4 : 1e-6)
            })
          }
        },
      ),
      few(3, 30),
    )
  })

  it(`gives no more under its own load with its braces than without, nor with one bar more (seed ${SEED + 4})`, () => {
    let braced = 0
    fc.assert(
      fc.property(judgedStraight, cornerLoads, fc.nat(), fc.nat(), ({ kit }, list, a, b) => {
        const frame = dockFrame(kit)
        const bare = dockFrame(kit, { ...AS_BUILT, braces: false })
        const give = (model: Pick<FrameModel, 'nodes' | 'members'>, load: Float64Array) =>
          unlessLoose(() => work(load, respond(factorState(layOutStates(model), null), load)))
        const own = give(frame, loadOf(frame, list))
        const without = give(bare, loadOf(bare, list))
        if (own === undefined || without === undefined) return
        if (frame.braces.length > 0) braced++
        expect(own).toBeLessThanOrEqual(without * (1 + 1e-8) + 1e-12)
        const [from, to] = [a % frame.nodes.length, b % frame.nodes.length]
        if (from === to) return
        const { x, y, z } = frame.nodes[from]!
        const far = frame.nodes[to]!
        if (Math.hypot(far.x - x, far.y - y, far.z - z) < 0.01) return
        const bar: FrameMember = { from, to, E: 70e9, G: 26e9, A: 3e-4, Iy: 0, Iz: 0, J: 0, axialOnly: true }
        const more = give({ nodes: frame.nodes, members: [...frame.members, bar] }, loadOf(frame, list))
        expect(more).toBeLessThanOrEqual(own * (1 + 1e-7) + 1e-12)
      }),
      few(4, 40),
    )
    expect(braced).toBeGreaterThan(8)
  })
})

/** Each member with the `up` that it has without one, so that it can be turned. */
const withUp = ({ nodes, members }: DockFrame): FrameModel => ({
  nodes,
  loads: [],
  members: members.map((member) => {
    const a = nodes[member.from]!
    const b = nodes[member.to]!
    const length = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z)
    const up: Vec3 = Math.hypot(b.x - a.x, b.y - a.y) / length < 1e-6 ? [0, 1, 0] : [0, 0, 1]
    return { ...member, up }
  }),
})

describe('every case of a dock', () => {
  it(`is carried whole: feet, posts and the ramp's end push back with what acts, in x, y and z (seed ${SEED + 5})`, () => {
    let cases = 0
    let off = 0
    let lifted = 0
    fc.assert(
      fc.property(judgedCase, ({ kit }) => {
        const frame = dockFrame(kit)
        const seen: { solved: Solved; carried: Vec3 }[] = []
        const analysis = unlessLoose(() =>
          analyze(frame, null, (solved) => {
            if (solved.stands)
              seen.push({
                solved: { ...solved, forces: solved.forces },
                carried: carriedIn(frame, solved.forces),
              })
          }),
        )
        if (!analysis) return
        const { states, lean } = analysis
        const dead = sumOf(deadLoad(states, frame))
        const left = sumOf(liveLoad(states, frame, { left: 1, right: 0 }))
        const right = sumOf(liveLoad(states, frame, { left: 0, right: 1 }))
        const end = new Float64Array(12)
        /** Of each leg, under dead load and so much of the people. */
        const pressing = (live: number): Float64Array => {
          const moves = [
            respond(analysis.plain, analysis.dead.onNodes),
            respond(analysis.plain, analysis.live.onNodes),
          ]
          return Float64Array.from(frame.legs, ({ members }) =>
            [analysis.dead, analysis.live].reduce((sum, load, i) => {
              endForces(analysis.plain, members[0]!, moves[i]!, load.onMembers, end, 0)
              return sum + ((i === 0 ? 1 : live) * (end[0]! - end[6]!)) / 2
            }, 0),
          )
        }
        const press = { full: pressing(1), none: pressing(0) }
        for (const { solved, carried } of seen) {
          const { combination } = solved
          // Pushes and bumps: their size depends on the dock; they have a test of their own below.
          if (combination.side !== null) continue
          cases++
          if (solved.lifted.length > 0) lifted++
          const weather = combination.weather
            ? sumOf(
                weatherLoad(
                  states,
                  frame,
                  null,
                  combination.weather.level,
                  combination.weather.toward,
                  'highest',
                  combination.weather.moored,
                ),
              )
            : [0, 0, 0]
          const tilt = sumOf(
            leanLoad(states, frame, press[combination.gravity], lean, TOWARD[combination.lean]),
          )
          const acts = [0, 1, 2].map(
            (k) =>
              combination.dead * dead[k]! +
              combination.live[0] * left[k]! +
              combination.live[1] * right[k]! +
              (combination.weather?.factor ?? 0) * weather[k]! +
              tilt[k]!,
          )
          const size = Math.hypot(...acts)
          const apart = Math.max(...[0, 1, 2].map((k) => Math.abs(carried[k]! + acts[k]!))) / size
          expect(apart).toBeLessThan(NEAR_BUCKLING)
          if (apart > EQUAL) off++
        }
      }),
      few(5, 25),
    )
    expect(cases).toBeGreaterThan(200)
    expect(lifted).toBeGreaterThan(5)
    expect(off / cases).toBeLessThan(0.02)
  })

  it(`scaled as a whole by 1 or more lowers no leg's use and no foot's load (seed ${SEED + 6})`, () => {
    fc.assert(
      fc.property(
        smallCase(14),
        cornerLoads,
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.constantFrom(0, 1),
        ({ kit }, list, times, live) => {
          const built = dockFrame(kit)
          // What holds up to a limit and no more does not scale: locks and posts are left out.
          const frame = {
            ...built,
            contacts: built.contacts
              .filter(({ kind }) => kind !== 'post')
              .map((one) => ({ ...one, holds: 0 })),
          }
          const done = softened(frame)
          if (!done || done.pressed.buckled) return
          const { states, pressed } = done
          const whole = noLoad(states.layout)
          const add = ({ onNodes, onMembers }: CaseLoad, by: number): void => {
            onNodes.forEach((value, i) => {
              whole.onNodes[i]! += by * value
            })
            onMembers.forEach((value, i) => {
              whole.onMembers[i]! += by * value
            })
          }
          add(deadLoad(states, frame), 1)
          add(liveLoad(states, frame, { left: live, right: live }), 1)
          add({ onNodes: loadOf(frame, list), onMembers: whole.onMembers.map(() => 0) }, 1)
          const at = (by: number) => {
            const forces = judgedForces(pressed, frame, respond(pressed, whole.onNodes), whole.onMembers).map(
              (value) => value * by,
            )
            const { stands } = letGo(touch(pressed, frame), forces)
            return {
              stands,
              uses: frame.legs.map(({ leg, members }) => {
                const judge = memberJudge(
                  frame.kit.shop,
                  leg.stock!.stock,
                  members.map((m) => ({
                    at: frame.slot[m]!,
                    length: states.layout.members.length[m]!,
                    held: states.layout.members.length[m]!,
                  })),
                  'none',
                )
                judge.visit(forces, '')
                return judge.worst().use
              }),
              feet: frame.legs.map(({ members }) => forces[frame.slot[members[0]!]! * 12]!),
            }
          }
          const one = at(1)
          const more = at(times)
          if (!one.stands) {
            expect(more.stands).toBe(false)
            return
          }
          if (!more.stands) return
          const most = Math.max(...one.uses)
          one.uses.forEach((use, i) => {
            expect(more.uses[i]!).toBeGreaterThanOrEqual(use - 2e-3 * most)
          })
          const heaviest = Math.max(...one.feet)
          one.feet.forEach((load, i) => {
            expect(more.feet[i]!).toBeGreaterThanOrEqual(load - 2e-3 * heaviest - 1)
          })
        },
      ),
      few(6, 40),
    )
  })

  it(`is the same in a mirror, the first brace mirrored too (seed ${SEED + 7})`, () => {
    let compared = 0
    fc.assert(
      fc.property(judgedCase, ({ design, catalog }) => {
        fc.pre(!turnsAskew(design, catalog))
        const { boat: _, ...plain } = design.dock
        const own = withDock({ ...design, dock: plain }, { extras: {}, placed: [] })
        const kit = deriveKit(own, catalog)
        const other = deriveKit(mirrored(own, catalog), catalog)
        if (whyNotJudged(kit) !== null || whyNotJudged(other) !== null) return
        const both = unlessLoose(() => [kit, other].map((k) => structureOf(k, null, { deep: false })))
        if (!both) return
        compared++
        const [a, b] = both as [(typeof both)[number], (typeof both)[number]]
        expect(b.stands).toBe(a.stands)
        // Of two corners on one line the first is pushed: what stands under it takes half a percent more than its mirror image.
        const near = (there: number, here: number, size: number): void => {
          expect(Math.abs(there - here)).toBeLessThanOrEqual(1e-2 * size + 2e-6)
        }
        near(b.swayAcross, a.swayAcross, a.swayAcross)
        near(b.swayAlong, a.swayAlong, a.swayAlong)
        near(b.railUse ?? 0, a.railUse ?? 0, a.railUse ?? 0)
        const most = Math.max(...a.legs.map(({ use }) => use))
        for (const leg of a.legs) near(b.legs.find((l) => l.leg === swapId(leg.leg))!.use, leg.use, most)
        const heaviest = Math.max(...a.feet.map(({ load }) => load))
        for (const foot of a.feet)
          near(b.feet.find((f) => f.leg === swapId(foot.leg))!.load, foot.load, heaviest)
        for (const brace of a.braces)
          near(b.braces.find((one) => sortedId(one.pair) === sortedId(swapId(brace.pair)))!.use, brace.use, 1)
      }),
      few(7, 25),
    )
    expect(compared).toBeGreaterThan(15)
  })

  it('of a push is told at the corner that gives most, and the push comes out at the feet', () => {
    fc.assert(
      fc.property(judgedStraight, ({ kit }) => {
        const frame = dockFrame(kit)
        unlessLoose(() => {
          const states = layOutStates(frame)
          const plain = factorState(states, null)
          for (const node of outerCorners(frame)) {
            const load = pushLoad(states, node, 300, -500)
            const carried = carriedIn(
              frame,
              judgedForces(plain, frame, respond(plain, load.onNodes), load.onMembers),
            )
            expect(carried[0]).toBeCloseTo(-300, 3)
            expect(carried[1]).toBeCloseTo(500, 3)
            expect(carried[2]).toBeCloseTo(0, 2)
          }
        })
      }),
      few(8, 20),
    )
  })
})

/** Of all that acts: what may be missing between it and what pushes back; of a dock about to buckle its own leaning magnifies rounding. */
const EQUAL = 1e-9
const NEAR_BUCKLING = 1e-5

/** All that a load does, in x, y and z. */
const sumOf = ({ onNodes }: CaseLoad): Vec3 => {
  const sum: [number, number, number] = [0, 0, 0]
  for (let i = 0; i < onNodes.length; i += 6) for (let k = 0; k < 3; k++) sum[k]! += onNodes[i + k]!
  return sum
}

/** What feet, posts and the ramp's end push back with, global axes. */
function carriedIn(frame: DockFrame, forces: Float64Array): Vec3 {
  const sum: [number, number, number] = [0, 0, 0]
  const upright = (member: number): void => {
    const o = frame.slot[member]! * 12
    // Standing from its foot up: along, and y = (1, 0, 0), z = (0, 1, 0).
    sum[2] += forces[o]!
    sum[0] += forces[o + 1]!
    sum[1] += forces[o + 2]!
  }
  for (const { members } of frame.legs) upright(members[0]!)
  for (const { member } of frame.posts) upright(member)
  for (const { kind, member } of frame.contacts) if (kind === 'shore') upright(member)
  return sum
}

// Not said, for it is not true: that a brace never adds to any sway, that a longer leg is never stiffer (a 5 ft leg brings its brace), that
// more weight never asks less of a part (it holds a windward foot down), that a dock is its own mirror image without the first brace turned.
