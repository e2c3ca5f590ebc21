/**
 * What only touches, solved apart from the engine: textbook stiffness, openings from Lemke's algorithm and from trying all sets.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Contact, judgedForces, touch } from '../../../rules/structure/dock/contacts.ts'
import { type DockFrame, dockFrame } from '../../../rules/structure/dock/frame.ts'
import { letGo, type Standing, TIPPED } from '../../../rules/structure/dock/lift-off.ts'
import type { FrameLoad, FrameMember, FrameNode } from '../../../rules/structure/index.ts'
import {
  factorState,
  layOutStates,
  loadNode,
  noLoad,
  respond,
} from '../../../rules/structure/second-order.ts'
import { smallCase, unlessLoose } from '../../rules/structure/dock-cases.ts'
import { runs } from '../../support/runs.ts'
import { allAnswers, lemke, slackOf } from './contacts/lcp.ts'
import {
  type Plain,
  plainContacts,
  problemOf,
  type Sideways,
  stanceOf,
  type Touching,
} from './contacts/plain-contacts.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 20_260_411)

type Frame = Touching & Pick<DockFrame, 'judged' | 'slot'>

const frameOf = (
  nodes: readonly FrameNode[],
  members: readonly FrameMember[],
  contacts: readonly Contact[],
): Frame => {
  const judged = Int32Array.from(members, (_, i) => i)
  return { nodes, members, contacts, judged, slot: judged }
}

interface Solved extends Standing {
  /** Of the judged members, twelve each. */
  readonly forces: Float64Array
  /** As the engine moved them, three a contact, m, from where each stands with its gap. */
  readonly open: readonly number[]
}

/** The engine's own way: all closed, gaps let down, then `letGo`. */
function engine(frame: Frame, loads: readonly FrameLoad[]): Solved {
  const states = layOutStates(frame)
  const state = factorState(states, null)
  const load = noLoad(states.layout)
  for (const { node, force } of loads)
    loadNode(load, node, [force[0], force[1], force[2]], [force[3], force[4], force[5]])
  const forces = judgedForces(state, frame as unknown as DockFrame, respond(state, load.onNodes), null)
  const touching = touch(state, frame as unknown as DockFrame)
  touching.move(
    frame.contacts.flatMap(({ gap }) => [-gap, 0, 0]),
    forces,
  )
  let open: number[] = frame.contacts.flatMap(() => [0, 0, 0])
  const seen = {
    ...touching,
    move(by: ArrayLike<number>, into: Float64Array) {
      open = Array.from(by)
      touching.move(by, into)
    },
  }
  return { ...letGo(seen, forces), forces, open }
}

const largest = (of: ArrayLike<number>): number => Math.max(0, ...Array.from(of, Math.abs))
const size = (forces: ArrayLike<number>): number => Math.max(1, largest(forces))
const upAt = (frame: Frame, i: number): number =>
  frame.slot[frame.contacts[i]!.member]! * 12 + (frame.contacts[i]!.kind === 'hook' ? 2 : 0)
/** What acts at a foot or a post sideways, x and y, N. */
const acrossAt = (frame: Frame, { forces }: Solved, i: number): readonly [number, number] => {
  const at = frame.slot[frame.contacts[i]!.member]! * 12
  return [forces[at + 1]!, forces[at + 2]!]
}
/** As the engine let them go, and at posts that gave what the engine says that they hold. */
const sidewaysOf = (frame: Frame, solved: Solved): Sideways =>
  new Map(
    solved.sideways.map((dof) => {
      const i = Math.floor(dof / 3)
      return [dof, frame.contacts[i]!.kind === 'post' ? acrossAt(frame, solved, i)[(dof % 3) - 1]! : 0]
    }),
  )

/** Sum of loads and of what the ground does, forces and moments about the origin, from `forces`, N and N·m. */
function unbalanced(frame: Frame, loads: readonly FrameLoad[], forces: Float64Array): number {
  const sum = new Array<number>(6).fill(0)
  const put = ({ x, y, z }: FrameNode, [fx, fy, fz, mx, my, mz]: readonly number[]): void => {
    const all = [fx!, fy!, fz!, mx! + y * fz! - z * fy!, my! + z * fx! - x * fz!, mz! + x * fy! - y * fx!]
    all.forEach((v, k) => {
      sum[k]! += v
    })
  }
  for (const { node, force } of loads) put(frame.nodes[node]!, force)
  frame.nodes.forEach((node, n) => {
    if (!node.fixed) return
    frame.members.forEach((member, m) => {
      if (member.from !== n) return
      const at = frame.slot[m]! * 12
      const f = forces.slice(at, at + 6)
      // Upright from the ground up: its own axes are z, x, y.
      const [x, y, z] = [f[1]!, f[2]!, f[0]!]
      put(node, [x, y, z, f[4]!, f[5]!, f[3]!])
    })
  })
  return Math.max(...sum.map(Math.abs))
}

/** What rounding leaves unbalanced: the last bit of how far things move times the stiffest piece (12 EI/L³; a ramp's end is cut to 8 mm). */
function lastBits(
  { nodes, members, contacts }: Frame,
  loads: readonly FrameLoad[],
  { open }: Solved,
): number {
  const stiffest = Math.max(
    ...members.map(({ from, to, E, Iy, Iz }) => {
      const [a, b] = [nodes[from]!, nodes[to]!]
      return (12 * E * Math.max(Iy, Iz)) / Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z) ** 3
    }),
  )
  const moved = Math.max(0.01, ...open.map(Math.abs), ...contacts.map(({ gap }) => gap))
  const lever = Math.max(1, ...nodes.map(({ x, y, z }) => Math.hypot(x, y, z)))
  const force = loads.reduce((sum, one) => sum + Math.hypot(...one.force), 0)
  return Number.EPSILON * lever * (stiffest * moved + 1e5 * force)
}

/** Moved by more than this nothing but rounding holds it, m. */
const FAR = 10
/** Of a leg's stiffness: what resists less than this part of it leaves open how far. */
const SLACK = 1e-4
/** What the engine calls no pull, N. */
const NO_PULL = 0.51

type Verdict = Solved | 'tips' | 'on the border'

/**
 * All that is asked of one case.
 *
 * @param solve the engine, or what makes a mistake on purpose
 */
function check(frame: Frame, loads: readonly FrameLoad[], solve = engine): Verdict {
  const ours = solve(frame, loads)
  const plain = plainContacts(frame, loads)
  const unit = Math.max(...frame.contacts.map((_, i) => Math.abs(plain.K[i * 3]![i * 3]!)))
  const answers = (z: readonly number[] | null): boolean => z?.every((v) => v / unit < FAR) ?? false
  if (!ours.stands) {
    // Nothing stops it, a foot rises by more than is counted on, or feet that must be let go sideways leave it loose.
    const own = stanceOf(frame, plain, unit)
    if (own === 'loose' || own.open === null || Math.max(...own.open) > TIPPED * 0.99) return 'tips'
    // Or a foot that came down again would hold it, which the engine does not count on: then one in the air would have to.
    expect(heldFromTheAir(frame, plain, ours, unit)).toBeGreaterThan(NO_PULL * 0.99)
    return 'tips'
  }
  // What is let go sideways is a rule beside the problem, and taken as the engine has it.
  const problem = problemOf(frame, plain, sidewaysOf(frame, ours), unit)
  expect(problem).not.toBeNull()
  const { M, up, all } = problem!
  // A pull of less than half a newton the engine leaves where it is: as if that contact held so much.
  const pulls = up.map((i) => Math.max(0, -(ours.forces[upAt(frame, i)]! + frame.contacts[i]!.holds)))
  expect(Math.max(...pulls)).toBeLessThan(NO_PULL)
  const r = problem!.r.map((v, at) => v + pulls[at]!)
  const z = lemke(M, r)
  if (!answers(z)) {
    // It hangs by less than the engine calls a pull.
    const nearly = r.map((v) => v + NO_PULL)
    expect(answers(lemke(M, nearly))).toBe(true)
    return 'on the border'
  }
  const most = size(ours.forces)
  agrees(frame, ours, plain.forces(all(z!)))
  conditions(frame, ours)
  // What acts there is one; how far things open is where something resists it: over two feet a table rocks by no force.
  const own = up.map((i) => ours.open[i * 3]! * unit)
  const apart = z!.map((v, at) => v - own[at]!)
  const resists = slackOf(
    M,
    up.map(() => 0),
    apart,
  )
  expect(largest(resists)).toBeLessThan(1e-5 * most)
  if (largest(resists) > SLACK * largest(apart))
    apart.forEach((v, at) => {
      expect(Math.abs(v / unit)).toBeLessThan(1e-5 + 1e-4 * (own[at]! / unit))
    })
  posts(frame, ours, all(z!))
  if (frame.contacts.length <= 10) {
    const slack = slackOf(M, r, z!)
    const others = allAnswers(M, r, 1e-6 * most).filter(answers)
    expect(others.length).toBeGreaterThan(0)
    for (const other of others)
      slackOf(M, r, other).forEach((v, i) => {
        expect(Math.abs(v - slack[i]!)).toBeLessThan(1e-3 * most)
      })
  }
  return ours
}

/** With what the engine lets go sideways free: what feet in the air would still have to hold sideways, the most, N. */
function heldFromTheAir(frame: Frame, plain: Plain, ours: Solved, unit: number): number {
  const { M, r, up, all } = problemOf(frame, plain, sidewaysOf(frame, ours), unit)!
  const z = lemke(M, r)!
  const acts = plain.forces(all(z))
  return Math.max(
    0,
    ...up.map((i, at) => {
      const { kind, member } = frame.contacts[i]!
      return kind === 'foot' && z[at]! > 0 ? Math.hypot(acts[member]![1]!, acts[member]![2]!) : 0
    }),
  )
}

/** Forces of all judged members. */
function agrees(frame: Frame, { forces }: Solved, exact: readonly (readonly number[])[]): void {
  let apart = 0
  frame.judged.forEach((m, at) => {
    exact[m]!.forEach((v, k) => {
      apart = Math.max(apart, Math.abs(v - forces[at * 12 + k]!))
    })
  })
  expect(apart).toBeLessThan(1e-5 * size(forces))
}

/** What bears does not pull by more than it holds, what is open stands clear and bears nothing. */
function conditions(frame: Frame, { forces, open, lifted, sideways }: Solved): void {
  frame.contacts.forEach(({ holds, kind }, i) => {
    const by = open[i * 3]!
    const at = upAt(frame, i)
    expect(forces[at]! + holds).toBeGreaterThan(-NO_PULL)
    if (!lifted.includes(i)) {
      expect(by).toBe(0)
      return
    }
    expect(by).toBeGreaterThan(-2e-7)
    expect(Math.abs(forces[at]! + holds)).toBeLessThan(1e-6)
    if (kind === 'foot' && sideways.includes(i * 3 + 1))
      expect(Math.hypot(...forces.slice(at, at + 3))).toBeLessThan(1e-6)
  })
}

/** Posts hold no more than their ground does; one that gives holds all of it, and gives the way it is pushed. */
function posts(frame: Frame, solved: Solved, exact: readonly number[]): void {
  frame.contacts.forEach(({ kind, holds }, i) => {
    if (kind !== 'post') return
    const [x, y] = acrossAt(frame, solved, i)
    expect(Math.hypot(x, y)).toBeLessThan(holds + NO_PULL)
    if (!solved.sideways.includes(i * 3 + 1)) return
    expect(Math.hypot(x, y)).toBeCloseTo(holds, 6)
    expect(exact[i * 3 + 1]! * x + exact[i * 3 + 2]! * y).toBeLessThan(1e-9)
  })
}

const FOOT = [true, true, true, false, false, false] as const
const STIFF = { E: 70e9, G: 26e9, A: 1e-3, Iy: 4e-7, Iz: 9e-7, J: 6e-7 }
const foot = (member: number, node: number, gap = 0): Contact => ({
  kind: 'foot',
  member,
  node,
  holds: 0,
  gap,
})

/** Feet at places, legs up to the corners of a ring of rails; the tops are nodes n … 2n − 1. */
function table(places: readonly (readonly [number, number])[], low: readonly number[] = []): Frame {
  const n = places.length
  const nodes: FrameNode[] = [
    ...places.map(([x, y]): FrameNode => ({ x, y, z: 0, fixed: FOOT })),
    ...places.map(([x, y]): FrameNode => ({ x, y, z: 1.2 })),
  ]
  const ring = places.map((_, i) => ({ from: n + i, to: n + ((i + 1) % n), ...STIFF }))
  const legs = places.map((_, i) => ({ from: i, to: n + i, ...STIFF }))
  return frameOf(
    nodes,
    [...legs, ...ring],
    places.map((_, i) => foot(i, i, low[i] ?? 0)),
  )
}
const around = (n: number): (readonly [number, number])[] =>
  Array.from({ length: n }, (_, i) => [
    1.3 * Math.cos((2 * Math.PI * i) / n + 0.2),
    Math.sin((2 * Math.PI * i) / n + 0.2),
  ])

const down = (node: number, force: readonly [number, number, number], twist = 0): FrameLoad => ({
  node,
  force: [force[0], force[1], force[2], twist, 0, 0],
})

describe('feet of a table, by Lemke and by all sets', () => {
  for (const n of [3, 4, 6])
    it(`with ${n} legs agree with the engine in what acts and what opens (fast-check seed ${SEED + n})`, () => {
      const seen = { tips: 0, bears: 0, lifts: 0 }
      const side = fc.integer({ min: -60, max: 60 })
      const loads = fc.array(fc.tuple(side, side, fc.integer({ min: -900, max: 150 })), {
        minLength: n,
        maxLength: n,
      })
      const low = fc.array(fc.constantFrom(0, 0, 0.003, 0.02), { minLength: n, maxLength: n })
      fc.assert(
        fc.property(loads, low, (corners, gaps) => {
          const frame = table(around(n), gaps)
          const all = corners.map(([x, y, z], i) => down(n + i, [x, y, z]))
          const solved = check(frame, all)
          if (solved === 'on the border') return
          seen[solved === 'tips' ? 'tips' : solved.lifted.length > 0 ? 'lifts' : 'bears']++
          if (solved === 'tips') return
          expect(unbalanced(frame, all, solved.forces) / lastBits(frame, all, solved)).toBeLessThan(1)
        }),
        { seed: SEED + n, numRuns: runs(24) },
      )
      expect(seen.tips).toBeGreaterThanOrEqual(runs(1))
      // Three feet have one way to stand: they all bear, or it tips.
      if (n === 3) expect(seen.bears).toBeGreaterThanOrEqual(5)
      else expect(seen.lifts).toBeGreaterThanOrEqual(5)
    })
})

describe('contacts of small docks, by Lemke and by all sets', () => {
  it(`agree with the engine in what acts and what opens (fast-check seed ${SEED})`, () => {
    const seen = { tips: 0, bears: 0, foot: 0, shore: 0, hook: 0, post: 0 }
    const side = fc.integer({ min: -40, max: 40 })
    const corner = fc.tuple(
      side,
      side,
      fc.integer({ min: -900, max: -500 }),
      fc.constantFrom(0, 0, -200, 200),
    )
    const hooked = smallCase(6).filter(({ kit }) => kit.joints.all.some(({ kind }) => kind === 'hook'))
    const corners = fc.array(corner, { minLength: 24, maxLength: 24 })
    fc.assert(
      fc.property(
        hooked,
        corners,
        fc.constantFrom('hook', 'foot', 'shore'),
        fc.constantFrom(0, 200),
        ({ kit }, some, lift, lock) => {
          // Locks that give before a dock tips: as a shop may state them, or none.
          const own = dockFrame(kit)
          const contacts = own.contacts.map((one) => (one.kind === 'hook' ? { ...one, holds: lock } : one))
          const frame = { ...own, contacts }
          const all = frame.corners.flat().map((node, i) => {
            const [x, y, z, twist] = some[i % some.length]!
            return down(node, [x, y, z], twist)
          })
          // Something pulls what is over one contact up, by more than it holds and than weighs on it.
          const over = frame.contacts.find(({ kind }) => kind === lift)
          if (over) all.push(down(frame.members[over.member]!.to, [0, 0, over.holds + 1000]))
          const solved = unlessLoose(() => check(frame, all))
          if (solved === undefined || solved === 'on the border') return
          if (solved === 'tips') {
            seen.tips++
            return
          }
          if (solved.lifted.length === 0) seen.bears++
          for (const i of solved.lifted) seen[frame.contacts[i]!.kind]++
          frame.contacts.forEach(({ kind }, i) => {
            if (kind === 'post' && solved.sideways.includes(i * 3 + 1)) seen.post++
          })
          expect(unbalanced(frame, all, solved.forces) / lastBits(frame, all, solved)).toBeLessThan(1)
        },
      ),
      { seed: SEED, numRuns: runs(40) },
    )
    // Feet that lift are the tables' part.
    expect(Math.min(seen.shore, seen.hook)).toBeGreaterThanOrEqual(runs(3))
  })
})

/** Stands on a bank: held against rolling, slides along x but at the first. */
const bank = (x: number, first: boolean): FrameNode => ({
  x,
  y: 0,
  z: -0.1,
  fixed: [first, true, true, true, false, true],
})

/** A plank along x with nodes at `xs`, on posts that give by nothing at some of them. */
function plank(xs: readonly number[], on: readonly number[], low: readonly number[] = []): Frame {
  const nodes: FrameNode[] = [
    ...xs.map((x): FrameNode => ({ x, y: 0, z: 0 })),
    ...on.map((i, k) => bank(xs[i]!, k === 0)),
  ]
  const spans = xs.slice(1).map((_, i) => ({ from: i, to: i + 1, ...STIFF }))
  const posts = on.map((i, k) => ({ from: xs.length + k, to: i, ...STIFF, A: 0.02 }))
  const contacts = on.map((_, k): Contact => {
    return { kind: 'shore', member: spans.length + k, node: xs.length + k, holds: 0, gap: low[k] ?? 0 }
  })
  return frameOf(nodes, [...spans, ...posts], contacts)
}

const stood = (verdict: Verdict): Solved => {
  if (typeof verdict === 'string') throw new Error(verdict)
  return verdict
}
const bears = (frame: Frame, { forces }: Solved): number[] =>
  frame.contacts.map((_, i) => forces[upAt(frame, i)]!)

describe('contacts by hand', () => {
  it('lets the far end of a plank go and bears by the lever rule: 1/4 and 3/4', () => {
    const frame = plank([0, 1, 2.5, 3], [0, 1, 3])
    const solved = stood(check(frame, [down(2, [0, 0, -1000])]))
    expect(solved.lifted).toEqual([0])
    const [far, near, end] = bears(frame, solved)
    expect(far).toBeCloseTo(0, 9)
    expect(near).toBeCloseTo(250, 5)
    expect(end).toBeCloseTo(750, 5)
    // The far end goes up by the turn over the near support: P·a·b·(2 span − a)/(6·EI·span) each meter, load at a from it.
    const turn = (1000 * 1.5 * 0.5 * (4 - 1.5)) / (6 * STIFF.E * STIFF.Iy * 2)
    expect(solved.open[0]! / turn).toBeCloseTo(1, 5)
  })

  const L = 4
  const EI = STIFF.E * STIFF.Iy
  for (const [word, sag] of [
    ['stays open under a load that sags it by 15 mm', 0.015],
    ['closes under one that would sag it by 32 mm', 0.032],
  ] as const)
    it(`a gap of 20 mm under the middle of a plank ${word} (5wL⁴/384EI)`, () => {
      const w = (384 * EI * sag) / (5 * L ** 4)
      const frame = plank([0, L / 2, L], [0, 1, 2], [0, 0.02, 0])
      const l = L / 2
      // An even load brought to the nodes; moments between equal spans cancel.
      const turn = (w * l * l) / 12
      const solved = stood(
        check(frame, [
          { node: 0, force: [0, 0, (-w * l) / 2, 0, turn, 0] },
          { node: 1, force: [0, 0, -w * l, 0, 0, 0] },
          { node: 2, force: [0, 0, (-w * l) / 2, 0, -turn, 0] },
        ]),
      )
      const middle = Math.max(0, ((sag - 0.02) * 48 * EI) / L ** 3)
      const [left, own, right] = bears(frame, solved)
      expect(own).toBeCloseTo(middle, 2)
      expect(left).toBeCloseTo((w * L - middle) / 2, 2)
      expect(right).toBeCloseTo((w * L - middle) / 2, 2)
      expect(solved.open[3]).toBeCloseTo(Math.max(0, 0.02 - sag), 6)
    })

  for (const lock of [500, 900])
    it(`a hook with a lock of ${lock} N, pulled by 800, ${lock < 800 ? 'comes off, and its lock goes on holding' : 'stays on'}`, () => {
      // A cantilever of 2 m, hooked at its end, lifted 0.2 m before that: R = P·a²(3ℓ − a)/(2ℓ³).
      const whole = 2
      const a = 1.8
      const P = (800 * 2 * whole ** 3) / (a * a * (3 * whole - a))
      const ends = { from: ['rigid', 'rigid', 'rigid', 'free', 'free', 'free'] } as const
      const clamped = [true, true, true, true, true, true] as const
      const frame = frameOf(
        [
          { x: 0, y: 0, z: 0, fixed: clamped },
          { x: a, y: 0, z: 0 },
          { x: whole, y: 0, z: 0, fixed: clamped },
        ],
        [
          { from: 0, to: 1, ...STIFF },
          { from: 2, to: 1, ...STIFF, ends },
        ],
        [{ kind: 'hook', member: 1, node: 2, holds: lock, gap: 0 }],
      )
      const solved = stood(check(frame, [down(1, [0, 0, P])]))
      expect(solved.lifted).toEqual(lock < 800 ? [0] : [])
      expect(bears(frame, solved)[0]).toBeCloseTo(-Math.min(lock, 800), 4)
      expect(solved.open[0]).toBeCloseTo((Math.max(0, 800 - lock) * whole ** 3) / (3 * EI), 7)
    })
})

describe('the check itself', () => {
  const frame = table(around(4))
  const loads = [0, 1, 2, 3].map((i) => down(4 + i, [0, 0, [-300, -800, -300, 100][i]!]))

  it('passes what the engine gives, which lets a foot go', () => {
    expect(stood(check(frame, loads)).lifted).toEqual([3])
  })

  const wrong: readonly (readonly [string, (solved: Solved) => Solved])[] = [
    ['an opening of the wrong sign', (one) => ({ ...one, open: one.open.map((v) => -v) })],
    [
      'a force of the wrong sign',
      (one) => ({ ...one, forces: one.forces.map((v, i) => (i === 0 ? -v : v)) }),
    ],
    ['a foot told as bearing that is off', (one) => ({ ...one, lifted: [] })],
    ['one told as off that bears', (one) => ({ ...one, lifted: [1, ...one.lifted] })],
    ['a dock that tips which does not', (one) => ({ ...one, stands: false })],
  ]
  for (const [what, change] of wrong)
    it(`refuses ${what}`, () => {
      expect(() => check(frame, loads, (...of) => change(engine(...of)))).toThrow()
    })

  it('refuses a contact that the engine never heard of', () => {
    const without = (one: Frame): Frame => ({
      ...one,
      contacts: one.contacts.map((c, i) => (i === 3 ? { ...c, holds: 1e9 } : c)),
    })
    expect(() => check(frame, loads, (one, of) => engine(without(one), of))).toThrow()
  })

  it('refuses a foot told 1 mm lower than it is', () => {
    const lower = (one: Frame): Frame => ({
      ...one,
      contacts: one.contacts.map((c, i) => (i === 1 ? { ...c, gap: 1e-3 } : c)),
    })
    expect(() => check(frame, loads, (one, of) => engine(lower(one), of))).toThrow()
  })
})
