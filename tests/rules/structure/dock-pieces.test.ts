/** Small pieces of a dock's structure by hand: where a boat lies, how far sleeves let a deck go, who judges which part, why nobody can. */

import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog, shopOf } from '../../../rules/index.ts'
import type { Kit } from '../../../rules/kit.ts'
import { lying } from '../../../rules/layout/berth.ts'
import { analyze } from '../../../rules/structure/dock/analysis.ts'
import { bumperAt, tiedTo } from '../../../rules/structure/dock/boat.ts'
import { braceJudge } from '../../../rules/structure/dock/brace-use.ts'
import { type DockFrame, dockFrame } from '../../../rules/structure/dock/frame.ts'
import { memberJudge } from '../../../rules/structure/dock/member-use.ts'
import { MOST_SECTIONS, whyNotJudged } from '../../../rules/structure/dock/not-judged.ts'
import { playOf } from '../../../rules/structure/dock/play.ts'
import { outerCorners } from '../../../rules/structure/dock/sway.ts'
import { strengthsOfStock, utilization } from '../../../rules/structure/strength/index.ts'
import { kitOf, level } from '../../support/level-dock.ts'

const berth = (frame: DockFrame) => lying(frame.kit).flatMap((one) => tiedTo(frame, one))

const frameOf = (...asked: Parameters<typeof kitOf>): DockFrame => dockFrame(kitOf(...asked))

describe('a boat', () => {
  const boat = (side: 'left' | 'right') => ({ length: 6, height: 1.5, draught: 0.4, mass: 2000, side })
  it('lies at the two corners of the last section on its own side', () => {
    // Leg axes of the third section: 3 + 2 · 2.4638 + 0.087313 = 8.014913 m and 10.278687 m, ±0.522287 m.
    for (const [side, sign] of [
      ['left', 1],
      ['right', -1],
    ] as const) {
      const frame = frameOf({ boat: boat(side) })
      const at = berth(frame).map((node) => [frame.nodes[node]!.x, frame.nodes[node]!.y])
      expect(at).toEqual(
        [8.014913, 10.278687].map((x) => [expect.closeTo(x, 6), expect.closeTo(sign * 0.522287, 6)]),
      )
    }
    expect(berth(frameOf())).toEqual([])
  })

  it('lies on its own side of a section far off the dock’s line, too', () => {
    // The outermost of a row of three to the left, and one that hangs lakeward of it about y = 6.1722 m.
    const plan = [
      { id: 'a', on: null },
      { id: 'b', on: 'a', edge: 'left', with: 'start' },
      { id: 'c', on: 'b', edge: 'end', with: 'start' },
      { id: 'd', on: 'c', edge: 'end', with: 'start' },
      { id: 'e', on: 'd', edge: 'right', with: 'start' },
    ]
    for (const [side, y] of [
      ['left', 6.1722 + 0.522287],
      ['right', 6.1722 - 0.522287],
    ] as const) {
      const frame = frameOf({ sections: undefined, plan, boat: boat(side) })
      const at = berth(frame).map((node) => frame.nodes[node]!.y)
      expect(at).toEqual([expect.closeTo(y, 6), expect.closeTo(y, 6)])
    }
  })

  it('of an edge of its own lies at the two corners there', () => {
    // Leg axes at the end of the third section; the start edge of the first: 3 + 0.087313 m.
    const one = { id: 'a', length: 6, height: 1.5, draught: 0.4, mass: 2000 }
    const at = (place: Record<string, string>) => {
      const frame = frameOf({ boats: [{ ...one, ...place }] })
      return berth(frame).map((node) => [frame.nodes[node]!.x, Math.sign(frame.nodes[node]!.y)])
    }
    expect(at({ section: 's3', edge: 'end' })).toEqual([
      [expect.closeTo(10.278687, 6), 1],
      [expect.closeTo(10.278687, 6), -1],
    ])
    expect(at({ section: 's1', edge: 'start' }).map(([x]) => x)).toEqual([
      expect.closeTo(3.087313, 6),
      expect.closeTo(3.087313, 6),
    ])
    expect(at({ section: 's9', edge: 'end' })).toEqual([])
  })

  it('meets the bumpers of its own side and section, the softest of them', () => {
    const soft = structuredClone(demoCatalog) as unknown as {
      extras: { code: string; parts: { kind: string; stiffness?: number }[] }[]
    }
    const stiff = demoCatalog.extras
      .find(({ code }) => code === 'bumper')!
      .parts.find(({ kind }) => kind === 'bumper')!.stiffness!
    const other = structuredClone(soft.extras.find(({ code }) => code === 'bumper')!)
    other.code = 'soft-bumper'
    for (const part of other.parts) if (part.kind === 'bumper') part.stiffness = stiff / 4
    soft.extras.push(other)
    const catalog = soft as unknown as Catalog
    const bumper = (frame: DockFrame) => bumperAt(frame, lying(frame.kit)[0]!)
    const with2 = (side: 'left' | 'right', section = 's3') =>
      bumper(
        frameOf(
          {
            boat: boat(side),
            placed: [
              { code: 'bumper', section: 's3', edge: 'left', along: 0.5 },
              { code: 'soft-bumper', section, edge: 'left', along: 1.6 },
              { code: 'soft-bumper', section: 's3', edge: 'end', along: 0.6 },
            ],
          },
          {},
          catalog,
        ),
      )
    expect(with2('left')).toBe(stiff / 4)
    expect(with2('left', 's2')).toBe(stiff)
    expect(with2('right')).toBeNull()
  })
})

describe('a hinge', () => {
  it.each([
    [1, 1.016 / 2],
    [2, 1.016 / 4],
    [3, 1.016 / 3],
  ])('of %i pins on a bar of 40 in hangs the ramp at the outer two, %f m off the middle', (pins, off) => {
    const catalog = structuredClone(demoCatalog) as unknown as { rules: { hingePins: { value: number } } }
    catalog.rules.hingePins.value = pins
    const bank = {
      soundings: [
        { distance: -3, depth: -0.9 },
        { distance: 0, depth: 0 },
        { distance: 60, depth: 6 },
      ],
    }
    const frame = frameOf({ ramp: true, start: null }, bank, catalog as unknown as Catalog)
    const hung = frame.links.filter(({ joint }) => joint.kind === 'hinge')
    for (const end of ['host', 'guest'] as const)
      expect(hung.map((link) => frame.nodes[link[end]]!.y)).toEqual([
        expect.closeTo(off, 6),
        expect.closeTo(-off, 6),
      ])
  })
})

describe('the frame', () => {
  it('leaves out posts that hold nothing: augers do not turn into rock', () => {
    const posts = (bottom: string) => frameOf({ extras: { 'anchor-post': 2 } }, { bottom }).posts
    expect(posts('sand').map(({ id }) => id)).toEqual(['anchor-post.1', 'anchor-post.2'])
    expect(posts('rock')).toEqual([])
  })

  it('has an arm at each end of a brace where clamps stand out from the leg, and none where they do not', () => {
    const out = frameOf()
    for (const { member, arms } of out.braces) {
      expect(arms.every((arm) => arm >= 0)).toBe(true)
      // Two inches from the leg's axis to the hole.
      for (const arm of arms) {
        const [a, b] = [out.nodes[out.members[arm]!.from]!, out.nodes[out.members[arm]!.to]!]
        expect(Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z)).toBeCloseTo(0.0508, 6)
      }
      const [a, b] = [out.nodes[out.members[member]!.from]!, out.nodes[out.members[member]!.to]!]
      expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(1.044574 - 0.1016, 6)
    }
    const flush = structuredClone(demoCatalog) as unknown as { clamp: { reach: number } }
    flush.clamp.reach = 0
    const frame = frameOf({}, {}, flush as unknown as Catalog)
    expect(frame.braces.length).toBeGreaterThan(0)
    for (const { arms } of frame.braces) expect(arms).toEqual([-1, -1])
  })
})

describe('play', () => {
  it('is the lean of the shortest leg along, and across of the section that gives most, none where a brace holds it', () => {
    // 1.2 m of water and a foot more under the third section's end: free legs 0.45 − 0.0254 − 0.0762 + 1.2 − 0.00635 = 1.54205 m.
    const bare = { bracing: { none: ['s1.start', 's1.end', 's2.end', 's3.end'] } }
    const frame = frameOf(bare)
    const node = frame.corners[2]![3]
    const sway = { nodeAcross: node } as Parameters<typeof playOf>[1]['sway']
    expect(playOf(frame, { lean: 0.01, sway })).toEqual({
      along: expect.closeTo(0.0154205, 7),
      across: expect.closeTo(0.0154205, 7),
    })
    const braced = frameOf()
    const same = { nodeAcross: braced.corners[2]![3] } as typeof sway
    expect(playOf(braced, { lean: 0.01, sway: same })).toEqual({
      along: expect.closeTo(0.0154205, 7),
      across: 0,
    })
    // Along all lean as the shortest; across the far section's own legs count, 0.4 m longer.
    const deeper = frameOf(bare, {
      soundings: [
        { distance: 0, depth: 1.2 },
        { distance: 8, depth: 1.2 },
        { distance: 8.0001, depth: 1.6 },
        { distance: 60, depth: 1.6 },
      ],
    })
    const far = { nodeAcross: deeper.corners[2]![3] } as typeof sway
    expect(playOf(deeper, { lean: 0.01, sway: far })).toEqual({
      along: expect.closeTo(0.0154205, 7),
      across: expect.closeTo(0.0194205, 7),
    })
  })
})

describe('a member', () => {
  // The demo's leg, 1.5 m long in one piece, not welded; forces on its two ends in its own axes, x along it.
  const length = 1.5
  const judge = () => memberJudge(shopOf(demoCatalog), 'pipe-2', [{ at: 0, length, held: length }], 'none')
  const ends = (from: number[], to: number[]) => Float64Array.from([...from, ...to])
  const strengths = strengthsOfStock(demoCatalog, 'pipe-2', { length, weld: 'none' })!

  it('is judged at both ends, pressed or pulled, by the worst case', () => {
    const one = judge()
    // Pressed by 3000 N, 50 N·m at its head.
    one.visit(ends([3000, 0, 0, 0, 0, 0], [-3000, 0, 0, 0, 50, 0]), 'a')
    one.visit(ends([2000, 0, 0, 0, 0, 0], [-2000, 0, 0, 0, 0, 0]), 'b')
    const worst = one.worst()
    expect(worst).toMatchObject({ axial: 3000, moment: 50, case: 'a' })
    const still = { Mz: 0, Vy: 0, Vz: 0, T: 0 }
    expect(worst.use).toBeCloseTo(utilization(strengths, { axial: -3000, My: 50, ...still }).use, 12)
    const other = judge()
    other.visit(ends([-9000, 0, 0, 0, 80, 0], [9000, 0, 0, 0, 0, 0]), 'pulled')
    expect(other.worst()).toMatchObject({ axial: -9000, moment: 80, case: 'pulled' })
  })

  it('is judged where a load along it bends it most', () => {
    // 100 N/m on 1.5 m between pinned ends: q·l²/8 = 28.125 N·m in the middle, in either plane.
    for (const plane of [1, 2]) {
      const one = judge()
      const from = [0, 0, 0, 0, 0, 0]
      from[plane] = 75
      one.visit(ends(from, from), 'even')
      expect(one.worst().moment).toBeCloseTo(28.125, 9)
      expect(one.worst().axial).toBeCloseTo(0, 9)
    }
    // With an end moment of 20 N·m held at the foot alone: V = 75 + 20/1.5 there, M = −20 + V²/2q = −20 + 88.333²/200 = 19.01 < 20.
    const held = judge()
    held.visit(ends([0, 0, 75 + 20 / 1.5, 0, -20, 0], [0, 0, 75 - 20 / 1.5, 0, 0, 0]), 'held')
    expect(held.worst().moment).toBeCloseTo(20, 9)
  })
})

describe('a brace', () => {
  it('is judged by the worse of pulled and pressed, each in its own case', () => {
    const frame = frameOf()
    expect(frame.braces.length).toBeGreaterThan(2)
    const judge = braceJudge(frame)
    const forces = (axial: number) => {
      const all = new Float64Array(frame.judged.length * 12)
      all[frame.slot[frame.braces[1]!.member]! * 12 + 6] = axial
      return all
    }
    judge.visit(forces(500), 'pulled a little')
    judge.visit(forces(-2000), 'pressed')
    judge.visit(forces(-1000), 'pressed less')
    judge.visit(forces(400), 'pulled less')
    const [none, own] = judge.uses()
    expect(none).toMatchObject({ axial: 0, use: 0, case: '' })
    expect(own).toMatchObject({ axial: -2000, case: 'pressed', pair: frame.braces[1]!.pair.pair.id })
    judge.visit(forces(9000), 'pulled')
    expect(judge.uses()[1]).toMatchObject({ axial: 9000, case: 'pulled' })
    // The demo's clamps hold 5000 N along the leg over 1.5; the brace rises by 0.4989 m in 1.0668: 9000 · 0.46763 · 1.5/5000 = 1.2626.
    const rise = Math.sqrt(1.0668 ** 2 - 0.942974 ** 2) / 1.0668
    expect(judge.uses()[1]!.use).toBeGreaterThanOrEqual((9000 * rise * 1.5) / 5000 - 1e-5)
  })
})

describe('why a dock is not judged', () => {
  const plan = (...rest: Record<string, unknown>[]) => ({
    sections: undefined,
    plan: [{ id: 'a', on: null }, ...rest],
  })
  const next = (id: string, on: string, more = {}) => ({ id, on, edge: 'end', with: 'start', ...more })
  it.each<[string | null, Kit]>([
    [null, kitOf()],
    ['too-long', kitOf({ sections: MOST_SECTIONS + 1 })],
    [null, kitOf({ sections: MOST_SECTIONS })],
    ['section-unreachable', kitOf(plan(next('b', 'c'), next('c', 'b')))],
    ['no-leg-length', kitOf({}, level(2.6))],
    ['no-legs', kitOf({ frame: 'no-frame' })],
    [
      'ramp-no-bank',
      kitOf(
        { ramp: true, start: 6, sections: 2 },
        {
          soundings: [
            { distance: 0, depth: 0 },
            { distance: 6, depth: 4.8 },
          ],
        },
      ),
    ],
    // Deck 0.45 m, frame and sleeve 0.1778 m: the underside at 0.2722 m, a sole of 6.35 mm under it.
    ['leg-too-short', kitOf({}, level(-0.266))],
    [null, kitOf({}, level(-0.2655))],
  ])('%s', (why, kit) => expect(whyNotJudged(kit)).toBe(why))

  it('no-strength, of whatever must carry', () => {
    const without = (
      change: (c: {
        materials: Record<string, { strength?: unknown }>
        stock: Record<string, { material: string }>
      }) => void,
    ) => {
      const copy = structuredClone(demoCatalog)
      change(copy as never)
      return kitOf({}, {}, copy)
    }
    // biome-ignore lint/suspicious/noExplicitAny: catalogs that the schema refuses elsewhere
    const unknown = (code: string) => (c: any) => {
      c.materials.unknown = { ...c.materials['6061-T6'], strength: undefined }
      c.stock[code] = { ...c.stock[code], material: 'unknown' }
    }
    const { frames, legs, braces, sleeve } = demoCatalog
    for (const code of [
      frames[0]!.rail,
      frames[0]!.ends,
      frames[0]!.cross.stock,
      legs[0]!.stock,
      braces[0]!.stock,
      sleeve.stock,
    ])
      expect(whyNotJudged(without(unknown(code))), code).toBe('no-strength')
  })
})

describe('a shove', () => {
  it('is given at every softest corner: across where it gives most across, along where it gives most along', () => {
    // Of a straight dock the last two corners give as much along, on two lines; across they stand on one.
    const names: string[] = []
    const { sway } = analyze(frameOf(), null, ({ combination }) => void names.push(combination.name))
    const shoves = (toward: string): number => names.filter((name) => name === `D+P ${toward}`).length
    expect([sway.softAlong.length, sway.softAcross.length]).toEqual([2, 1])
    expect(['left', 'right', 'shore', 'lake'].map(shoves)).toEqual([1, 1, 2, 2])
  })

  it('is tried at the corners of sections that carry none, tied to others or not', () => {
    // Of a dock of three with two beside its end only those two carry nothing; the first of them is tied to the second.
    const frame = frameOf({ head: { shape: 'wide', sections: 2 } })
    const { placed } = frame.kit.layout
    const of = (id: string) => frame.corners[placed.find((p) => p.id === id)!.index]!
    expect(outerCorners(frame)).toEqual([...of('h1'), ...of('h2')])
  })
})
