/**
 * Supports that move and feet that let go: closed forms, a table worked by hand, and every set of feet tried on small random docks.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { analyze } from '../../../rules/structure/dock/analysis.ts'
import { deadLoad, liveLoad, pushLoad } from '../../../rules/structure/dock/basic-loads.ts'
import { type Contact, judgedForces, touch } from '../../../rules/structure/dock/contacts.ts'
import { AS_BUILT, type DockFrame, dockFrame } from '../../../rules/structure/dock/frame.ts'
import { letGo, TIPPED } from '../../../rules/structure/dock/lift-off.ts'
import { whyNotJudged } from '../../../rules/structure/dock/not-judged.ts'
import type { FrameMember, FrameNode } from '../../../rules/structure/index.ts'
import {
  endForces,
  factorState,
  layOutStates,
  loadNode,
  noLoad,
  respond,
  type State,
  settle,
} from '../../../rules/structure/second-order.ts'
import { onLevelBed, smallCase, unlessLoose } from './dock-cases.ts'

const SEED = 20260310
const PINNED = [true, true, true, false, false, false] as const
const CLAMPED = [true, true, true, true, true, true] as const
const BAR = { E: 70e9, G: 26e9, A: 1e-3, Iy: 4e-7, Iz: 9e-7, J: 6e-7 }

/** Held members only: what `touch` and `letGo` need of a dock's frame. */
const frameOf = (
  nodes: readonly FrameNode[],
  members: readonly FrameMember[],
  legs: readonly { foot: number; members: readonly number[] }[],
): DockFrame => {
  const judged = Int32Array.from(members, (_, i) => i)
  const contacts = legs.map(
    (leg): Contact => ({ kind: 'foot', member: leg.members[0]!, node: leg.foot, holds: 0, gap: 0 }),
  )
  return { nodes, members, legs, contacts, judged, slot: judged } as unknown as DockFrame
}

describe('a support that is moved by 1', () => {
  it('at the tip of a propped cantilever takes 3EI/L³', () => {
    const L = 2.1
    const model = {
      nodes: [
        { x: 0, y: 0, z: 0, fixed: CLAMPED },
        { x: L, y: 0, z: 0, fixed: PINNED },
      ],
      members: [{ from: 0, to: 1, ...BAR }],
    }
    const state = factorState(layOutStates(model), null)
    const forces = new Float64Array(12)
    endForces(state, 0, settle(state, [{ node: 1, direction: 2, by: 1, members: [0] }]), null, forces, 0)
    // A member along x bends toward z about its local y.
    const force = (3 * BAR.E * BAR.Iy) / L ** 3
    expect(forces[8]! / force).toBeCloseTo(1, 9)
    expect(Math.hypot(forces[4]!, forces[5]!) / (force * L)).toBeCloseTo(1, 9)
  })

  it('in the middle of a beam over two equal spans takes 6EI/L³, which is half of it at each end', () => {
    const L = 1.7
    const model = {
      nodes: [0, L, 2 * L].map((x) => ({
        x,
        y: 0,
        z: 0,
        fixed: [true, true, true, true, false, false] as const,
      })),
      members: [
        { from: 0, to: 1, ...BAR },
        { from: 1, to: 2, ...BAR },
      ],
    }
    const state = factorState(layOutStates(model), null)
    const forces = new Float64Array(24)
    const movement = settle(state, [{ node: 1, direction: 2, by: 1, members: [0, 1] }])
    endForces(state, 0, movement, null, forces, 0)
    endForces(state, 1, movement, null, forces, 12)
    const whole = (6 * BAR.E * BAR.Iy) / L ** 3
    expect((forces[8]! + forces[14]!) / whole).toBeCloseTo(1, 9)
    expect(-forces[2]! / (whole / 2)).toBeCloseTo(1, 9)
    expect(-forces[20]! / (whole / 2)).toBeCloseTo(1, 9)
  })

  it(`obeys Maxwell on random docks, with axial force in them or without: what foot i's lift does to foot j is what j's does to i (fast-check seed ${SEED})`, () => {
    let looked = 0
    fc.assert(
      fc.property(smallCase(12), fc.double({ min: 0, max: 1, noNaN: true }), ({ kit }, part) => {
        const frame = dockFrame(kit)
        const done = unlessLoose(() => {
          const states = layOutStates(frame)
          const plain = factorState(states, null)
          // Pressed legs, well under what buckles them.
          const axial = new Float64Array(frame.members.length)
          for (const { members } of frame.legs) for (const m of members) axial[m] = -300 * part
          return [plain, factorState(states, axial)]
        })
        if (!done) return
        looked++
        for (const state of done) {
          if (state.buckled) continue
          const { contacts, column } = touch(state, frame)
          const dofs = contacts.flatMap(({ kind }, i) =>
            kind === 'foot'
              ? [i * 3, i * 3 + 1, i * 3 + 2]
              : kind === 'post'
                ? [i * 3 + 1, i * 3 + 2]
                : [i * 3],
          )
          const own = new Map(dofs.map((dof) => [dof, column(dof)[dof]!]))
          for (const i of dofs)
            for (const j of dofs.filter((other) => other < i)) {
              const apart = column(i)[j]! - column(j)[i]!
              expect(Math.abs(apart) / Math.sqrt(Math.abs(own.get(i)! * own.get(j)!))).toBeLessThan(1e-5)
            }
        }
      }),
      { seed: SEED, numRuns: 60 },
    )
    expect(looked).toBeGreaterThan(40)
  })
})

/**
 * A table: feet on the ground, legs of one sort, a top of bars so stiff that it stays plane. Loads hang on a top corner or on a
 * node that the top carries.
 */
function table(places: readonly (readonly [number, number])[], load: readonly [x: number, y: number]) {
  const stout = { E: 70e12, G: 26e12, A: 1e-2, Iy: 1e-4, Iz: 1e-4, J: 1e-4 }
  const nodes: FrameNode[] = [
    ...places.map(([x, y]) => ({ x, y, z: 0, fixed: PINNED })),
    ...places.map(([x, y]) => ({ x, y, z: 1 })),
    { x: load[0], y: load[1], z: 1 },
  ]
  const n = places.length
  const members: FrameMember[] = [
    ...places.map((_, i) => ({ from: i, to: n + i, ...BAR })),
    ...places.flatMap(([x, y], i) =>
      Math.hypot(x - load[0], y - load[1]) < 1e-9 ? [] : [{ from: n + i, to: 2 * n, ...stout }],
    ),
    ...places.map((_, i) => ({ from: n + i, to: n + ((i + 1) % n), ...stout })),
  ]
  const frame = frameOf(
    nodes,
    members,
    places.map((_, i) => ({ foot: i, members: [i] })),
  )
  const states = layOutStates(frame)
  const state = factorState(states, null)
  const push = noLoad(states.layout)
  loadNode(push, 2 * n, [0, 0, -1000])
  const forces = judgedForces(state, frame, respond(state, push.onNodes), null)
  const standing = letGo(touch(state, frame), forces)
  return { ...standing, feet: places.map((_, i) => forces[i * 12]!) }
}

describe('a table with 1000 N on it, by hand', () => {
  const three = [
    [0, 0],
    [2, 0],
    [1, 1.5],
  ] as const

  it('on three legs bears by the lever rule inside of its feet', () => {
    // About the line of the first two: the third bears 1000·0.3/1.5 = 200; the rest as 1 − 0.8·… of x about the first foot:
    // 2·R2 + 1·200 = 0.9·1000, R2 = 350; R1 = 1000 − 200 − 350 = 450.
    const { feet, lifted, stands } = table(three, [0.9, 0.3])
    expect(stands).toBe(true)
    expect(lifted).toEqual([])
    expect(feet.map((v) => Math.round(v * 10) / 10)).toEqual([450, 350, 200])
  })

  it('on three legs goes over outside of them', () => {
    expect(table(three, [1, -0.2]).stands).toBe(false)
  })

  const square = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ] as const

  it('on four equal legs bears as a stiff top does while all are pressed: P/4·(1 ± 2s) on the diagonal', () => {
    // Load at s of the way from the middle to the first corner: R1 = P(1/4 + s/2), R3 = P(1/4 − s/2), the others P/4.
    const { feet, lifted } = table(square, [0.3, 0.3])
    expect(lifted).toEqual([])
    for (const [i, expected] of [400, 250, 100, 250].entries())
      expect(Math.abs(feet[i]! - expected)).toBeLessThan(2)
  })

  it('lets the far leg go beyond half way and stands on three: R1 = sP, the others (1 − s)P/2', () => {
    // s = 0.75: with all four held the far leg would pull by 125 N.
    const { feet, lifted, stands } = table(square, [0.75, 0.75])
    expect(stands).toBe(true)
    expect(lifted).toEqual([2])
    for (const [i, expected] of [750, 125, 0, 125].entries())
      expect(Math.abs(feet[i]! - expected)).toBeLessThan(1)
  })

  it('goes over beyond an edge', () => {
    expect(table(square, [0, 1.1]).stands).toBe(false)
  })
})

interface Answer {
  readonly lifted: readonly number[]
  readonly forces: Float64Array
  readonly highest: number
  /** Contacts in it that are no feet. */
  readonly opened: readonly number[]
}

/** Under this it is rounding; what `letGo` calls no pull (N) and a foot that rests (m) lie within. */
const PULL = 0.6
const GAP = 2e-7
const FAR = 1e3

/** The frame with contacts really free: feet, struts, hooks let go by their supports and joints, nothing of lift-off.ts. */
function freed(
  frame: DockFrame,
  lifted: readonly number[],
  sideways: (dof: number) => boolean,
): { free: DockFrame; holding: (add: typeof loadNode, load: ReturnType<typeof noLoad>) => void } {
  const nodes = [...frame.nodes]
  const members = [...frame.members]
  const held: number[] = []
  frame.contacts.forEach(({ kind, node, member }, i) => {
    const up = lifted.includes(i)
    if (kind === 'foot')
      nodes[node] = {
        ...nodes[node]!,
        fixed: [!sideways(i * 3 + 1), !sideways(i * 3 + 2), !up, false, false, false],
      }
    if (kind === 'shore' && up)
      nodes[node] = { ...nodes[node]!, fixed: [false, false, false, false, false, false] }
    if (kind === 'hook' && up) {
      const { ends } = members[member]!
      members[member] = {
        ...members[member]!,
        ends: { ...ends, from: ['rigid', 'rigid', 'free', 'free', 'free', 'free'] },
      }
      held.push(i)
    }
  })
  return {
    free: { ...frame, nodes, members },
    holding(add, load) {
      for (const i of held) {
        const { member, holds } = frame.contacts[i]!
        const { from, to } = frame.members[member]!
        const [a, b] = [frame.nodes[from]!, frame.nodes[to]!]
        add(load, from, [0, 0, holds])
        // What pulls at the link's free end, brought to its other one: r × F.
        add(load, to, [0, 0, -holds], [-(a.y - b.y) * holds, (a.x - b.x) * holds, 0])
      }
    },
  }
}

/**
 * Every set out of `of` taken off in turn, `sideways` let go besides, on a frame whose contacts are really free there: those
 * sets in which what bears presses and what is free does not close.
 *
 * @param sideways contact · 3 + 1 or 2: x or y
 */
function tryAllSets(
  frame: DockFrame,
  of: readonly number[],
  sideways: readonly number[] | 'of the set',
  onNodes: Float64Array,
  onMembers: Float64Array,
): Answer[] {
  const found: Answer[] = []
  for (let set = 0; set < 1 << of.length; set++) {
    const lifted = of.filter((_, i) => (set >> i) & 1)
    const { free, holding } = freed(frame, lifted, (dof) =>
      sideways === 'of the set' ? lifted.includes(Math.floor(dof / 3)) : sideways.includes(dof),
    )
    const state = unlessLoose((): State => factorState(layOutStates(free), null))
    if (!state) continue
    const load = { onNodes: onNodes.slice(), onMembers }
    holding(loadNode, load)
    const movement = respond(state, load.onNodes)
    // Nothing resists but rounding: the dock tips.
    if (Math.max(...movement.map(Math.abs)) > FAR) continue
    const forces = judgedForces(state, free, movement, onMembers)
    const fits = frame.contacts.every((one, i) => {
      if (one.kind === 'post') return true
      const at = frame.slot[one.member]! * 12 + (one.kind === 'hook' ? 2 : 0)
      return lifted.includes(i) ? stands(frame, movement, one) > -GAP : forces[at]! > -one.holds - PULL
    })
    const opened = lifted.filter((i) => frame.contacts[i]!.kind !== 'foot')
    if (fits)
      found.push({
        lifted,
        forces,
        opened,
        highest: Math.max(0, ...lifted.map((i) => stands(frame, movement, frame.contacts[i]!))),
      })
  }
  return found
}

/** How far a contact that is free stands off, m. */
function stands(frame: DockFrame, movement: Float64Array, { kind, node, member }: Contact): number {
  if (kind !== 'hook') return movement[node * 6 + 2]!
  const { to } = frame.members[member]!
  const [a, b] = [frame.nodes[node]!, frame.nodes[to]!]
  const [rx, ry] = [movement[to * 6 + 3]!, movement[to * 6 + 4]!]
  return movement[to * 6 + 2]! + rx * (a.y - b.y) - ry * (a.x - b.x) - movement[node * 6 + 2]!
}

describe('contacts that bear and do not pull, on random docks', () => {
  it(`are those of the one set that fits, of all sets: what bears presses, what is free does not sink (fast-check seed ${SEED + 1})`, () => {
    const seen = { all: 0, some: 0, tips: 0, comesDown: 0, shore: 0, hook: 0 }
    const loads = fc.record({
      dead: fc.constantFrom(0.6, 1),
      left: fc.constantFrom(0, 1),
      right: fc.constantFrom(0, 1),
      push: fc.constantFrom(0, 500, 2000, 8000),
      angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
      corner: fc.nat(),
      twist: fc.constantFrom(0, 0, -3000, 3000),
      level: fc.boolean(),
      lock: fc.constantFrom(0, 150, 2000),
      under: fc.constantFrom(0, 300, 700, 1200),
    })
    fc.assert(
      fc.property(
        smallCase(8),
        loads,
        (one, { dead, left, right, push, angle, corner, twist, level, lock, under }) => {
          const kit = level ? onLevelBed(one) : one.kit
          if (kit.legs.length > 8 || whyNotJudged(kit) !== null) return
          // Posts whose ground gives are no contacts that open: they have a test of their own.
          if (kit.extras.placed.some(({ post }) => post)) return
          const built = dockFrame(kit)
          const frame: DockFrame = {
            ...built,
            contacts: built.contacts.map((of) => (of.kind === 'hook' ? { ...of, holds: lock } : of)),
          }
          const states = layOutStates(frame)
          const state = unlessLoose(() => factorState(states, null))
          if (!state) return
          const whole = noLoad(states.layout)
          const add = ({ onNodes, onMembers }: typeof whole, by: number): void => {
            onNodes.forEach((v, i) => {
              whole.onNodes[i]! += by * v
            })
            onMembers.forEach((v, i) => {
              whole.onMembers[i]! += by * v
            })
          }
          add(deadLoad(states, frame), dead)
          if (left || right) add(liveLoad(states, frame, { left, right }), 1)
          const tops = frame.legs.map(({ top }) => top)
          const at = tops[corner % tops.length]!
          add(pushLoad(states, at, push * Math.cos(angle), push * Math.sin(angle)), 1)
          loadNode(whole, at, [0, 0, 0], [twist, 0, 0])
          // From under a corner of the ramp's shore end.
          if (kit.layout.ramp) loadNode(whole, frame.corners[kit.layout.ramp.index]![0], [0, 0, under])

          const forces = judgedForces(state, frame, respond(state, whole.onNodes), whole.onMembers)
          const { lifted, sideways, stands } = letGo(touch(state, frame), forces)
          if (!stands) {
            const all = frame.contacts.flatMap(({ kind }, i) => (kind === 'post' ? [] : [i]))
            if (all.length > 7) return
            seen.tips++
            for (const one of tryAllSets(frame, all, 'of the set', whole.onNodes, whole.onMembers))
              expect(one.highest).toBeGreaterThan(TIPPED * 0.999)
            return
          }
          seen[lifted.length > 0 ? 'some' : 'all']++
          for (const i of lifted) {
            const { kind } = frame.contacts[i]!
            if (kind === 'shore' || kind === 'hook') seen[kind]++
          }
          const loose = [...new Set([...lifted, ...sideways.map((dof) => Math.floor(dof / 3))])]
          if (loose.length > 5) return
          const fitting = tryAllSets(frame, loose, sideways, whole.onNodes, whole.onMembers)
          if (loose.length > lifted.length) seen.comesDown++
          expect(fitting.length).toBeGreaterThan(0)
          const size = Math.max(...forces.map(Math.abs))
          // A link whose hook is open carries its load there or here, at one end or the other.
          const skip = new Set(
            fitting.flatMap(({ opened }) => opened.map((i) => frame.slot[frame.contacts[i]!.member]!)),
          )
          const apart = fitting.map(
            (one) =>
              Math.max(
                ...one.forces.map((v, i) => (skip.has(Math.floor(i / 12)) ? 0 : Math.abs(v - forces[i]!))),
              ) / size,
          )
          expect(Math.min(...apart)).toBeLessThan(1e-4)
          // One answer: sets that fit differ only in feet that neither bear nor hang.
          expect(Math.max(...apart)).toBeLessThan(5e-3)
        },
      ),
      { seed: SEED + 1, numRuns: 300 },
    )
    expect(Math.min(seen.all, seen.some)).toBeGreaterThanOrEqual(5)
    expect(seen.tips).toBeGreaterThanOrEqual(3)
    expect(seen.comesDown).toBeGreaterThanOrEqual(1)
    expect(seen.shore).toBeGreaterThanOrEqual(1)
    expect(seen.hook).toBeGreaterThanOrEqual(3)
  })

  it(`in every case of a dock press, hang free, or both at nothing, and let go of no force (fast-check seed ${SEED + 2})`, () => {
    fc.assert(
      fc.property(smallCase(14), ({ kit }) => {
        const frame = dockFrame(kit, AS_BUILT)
        unlessLoose(() =>
          analyze(frame, null, ({ forces, lifted, stands }) => {
            if (!stands) return
            frame.contacts.forEach(({ kind, member, holds }, i) => {
              const at = frame.slot[member]! * 12 + (kind === 'hook' ? 2 : 0)
              if (kind === 'post')
                expect(Math.hypot(forces[at + 1]!, forces[at + 2]!)).toBeLessThan(holds + 1)
              else if (!lifted.includes(i)) expect(forces[at]!).toBeGreaterThan(-holds - 0.51)
              else if (kind === 'foot') expect(Math.hypot(...forces.slice(at, at + 3))).toBeLessThan(0.01)
              else expect(forces[at]! + holds).toBeCloseTo(0, 6)
            })
          }),
        )
      }),
      { seed: SEED + 2, numRuns: 60 },
    )
  })
})
