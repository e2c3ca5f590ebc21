/** What feet hold on their bed and from when on they slide: forces given, resistance worked by hand. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, deriveKit } from '../../../rules/index.ts'
import type { Combination } from '../../../rules/structure/dock/combinations.ts'
import { feetJudge, slideOf } from '../../../rules/structure/dock/foot-use.ts'
import { dockFrame } from '../../../rules/structure/dock/frame.ts'
import { type Lean, sliding } from '../../../rules/structure/dock/sliding.ts'
import type { Solved } from '../../../rules/structure/dock/soften.ts'
import { parsed } from '../../support/by-hand.ts'

/** One section on four legs, 0.5 m deep, without a ramp: friction of 0.25 on sand (IBC 2018 table 1806.2), 0.73 at the most. */
function standing(bottom = 'sand', extras = {}) {
  const { wind: _wind, ...site } = demoDesign.site
  const design = parsed({
    ...demoDesign,
    site: { ...site, bottom, soundings: [0, 30].map((distance) => ({ distance, depth: 0.5 })) },
    dock: { ...demoDesign.dock, sections: 1, ramp: false, start: 5, extras },
  })
  const frame = dockFrame(deriveKit(design, demoCatalog))
  const at = (i: number): number => frame.slot[frame.legs[i]!.members[0]!]! * 12
  /** Of each foot: what presses it, and what pushes it along x and y, N. */
  const forces = (feet: readonly (readonly [press: number, x: number, y: number])[]): Float64Array => {
    const all = new Float64Array(frame.judged.length * 12)
    feet.forEach((foot, i) => {
      all.set(foot, at(i))
    })
    return all
  }
  return { frame, forces, rubbing: sliding(frame) }
}

const upright = (feet = 4): Lean => ({ axial: new Float64Array(feet), x: 0, y: 0 })

describe('feet on a bed', () => {
  it('hold by what presses each of them', () => {
    const { forces, rubbing } = standing()
    const all = forces([
      [400, 30, 0],
      [300, 0, 40],
      [200, 0, 0],
      [100, 0, 0],
    ])
    // 0.25 · (400 + 300); 0.73 · 700; √(30² + 40²)
    expect(rubbing.of([0, 1], all, upright(), 'low')).toEqual({ push: 50, holds: 175 })
    expect(rubbing.of([0, 1], all, upright(), 'high').holds).toBeCloseTo(511, 9)
    expect(rubbing.whole(all, upright(), 'low').holds).toBeCloseTo(250, 9)
  })

  it('hold less by what others are lifted by: a dock that tips weighs no more for it', () => {
    const { forces, rubbing } = standing()
    const all = forces([
      [400, 0, 0],
      [-100, 0, 0],
      [400, 0, 0],
      [-300, 0, 0],
    ])
    // 0.25 · 400 · (1 − 100/400); of all 0.25 · 800 · (1 − 400/800): a quarter of what is left to press, 300 N and 400 N.
    expect(rubbing.of([0, 1], all, upright(), 'low').holds).toBeCloseTo(75, 9)
    expect(rubbing.of([0, 1], all, upright(), 'high').holds).toBeCloseTo(0.73 * 300, 9)
    expect(rubbing.whole(all, upright(), 'low').holds).toBeCloseTo(100, 9)
    // More up than down, or nothing down: nothing.
    expect(
      rubbing.of(
        [1, 2, 3],
        forces([
          [0, 0, 0],
          [-300, 0, 0],
          [400, 0, 0],
          [-300, 0, 0],
        ]),
        upright(),
        'low',
      ).holds,
    ).toBe(0)
    expect(rubbing.of([1, 3], all, upright(), 'low').holds).toBe(0)
  })

  it('are not pushed by a lean: what a leaning leg pushes at its foot is taken off, of what presses it alone', () => {
    const { forces, rubbing } = standing()
    const all = forces([
      [400, -4, -8],
      [300, 0, 0],
    ])
    const lean = { axial: Float64Array.of(400, -300, 0, 0), x: 0.01, y: 0.02 }
    expect(rubbing.of([0, 1], all, lean, 'low').push).toBeCloseTo(0, 9)
    expect(rubbing.of([0, 1], all, { ...lean, x: 0.02 }, 'low').push).toBeCloseTo(4, 9)
  })

  it('in muck hold by plate and tube: 500 Pa on 0.1778 · 0.4064 m², three times that on 60.325 mm as deep as the pad sinks', () => {
    const { forces, rubbing } = standing('muck')
    const all = forces([[1e5, 0, 0]])
    // 500 · (0.072258 + 3 · 0.060325 · 0.25) = 58.75 N; at the most 3000 Pa of it: 352.5 N.
    expect(rubbing.of([0], all, upright(), 'low').holds).toBeCloseTo(58.75, 2)
    expect(rubbing.of([0], all, upright(), 'high').holds).toBeCloseTo(352.5, 1)
  })

  it('are helped by posts in the dock as a whole, which take their part of the push to the ground too', () => {
    const { frame, forces, rubbing } = standing('sand', { 'anchor-post': 2 })
    expect(frame.posts).toHaveLength(2)
    const all = forces([[400, 30, 0]])
    for (const { member } of frame.posts) all.set([0, 10, 20], frame.slot[member]! * 12)
    const posts = frame.posts.reduce((sum, { holds }) => sum + holds, 0)
    expect(posts).toBeGreaterThan(1)
    const whole = rubbing.whole(all, upright(), 'low')
    expect(whole.holds).toBeCloseTo(100 + posts, 6)
    // √((30 + 2 · 10)² + (2 · 20)²)
    expect(whole.push).toBeCloseTo(Math.hypot(50, 40), 9)
    expect(rubbing.of([0, 1, 2, 3], all, upright(), 'low')).toEqual({ push: 30, holds: 100 })
  })
})

describe('a foot and a dock', () => {
  const solved = (forces: Float64Array, more: Partial<Combination> = {}, lifted: number[] = []): Solved => ({
    combination: {
      name: '0.6D+W today left',
      gravity: 'none',
      dead: 0.6,
      live: [0, 0],
      weather: null,
      side: null,
      lean: 'left',
      outside: true,
      ...more,
    },
    forces,
    carried: forces,
    lifted,
    stands: true,
    spared: false,
    lean: upright(),
  })
  /** Four feet, each pressed by 400 N, so that each holds 100 N on sand, and pushed by so much. */
  const judged = (push: number, more: Partial<Combination> = {}, lifted: number[] = []) => {
    const { frame, forces } = standing()
    const judge = feetJudge(frame)
    judge.visit(solved(forces(Array.from({ length: 4 }, () => [400, push, 0])), more, lifted))
    return { feet: judge.uses(), whole: judge.total() }
  }

  it.each([
    [99, 0.99, false],
    [100, 1, false],
    [101, 1.01, true],
    [109, 1.09, true],
  ])('pushed by %f N a foot that holds 100: %f of it, slides: %s', (push, part, slides) => {
    const { feet, whole } = judged(push)
    expect(whole).toEqual({ push: part, case: '0.6D+W today left', slides })
    for (const foot of feet) expect(foot).toMatchObject({ push: part, slides, pushCase: '0.6D+W today left' })
  })

  it('are told of at most 99 times, and of no push under a newton', () => {
    expect(judged(50_000).whole).toMatchObject({ push: 99, slides: true })
    expect(judged(0.2).whole).toEqual({ push: 0, case: null, slides: false })
  })

  it('press their plates: 400 N on 0.1778 · 0.4064 m², over half of 2000 psf', () => {
    const { feet } = judged(10, {}, [2])
    // 5535.7 Pa; 1000 psf are 47,880.3 Pa.
    for (const foot of feet)
      expect(foot).toMatchObject({
        load: 400,
        case: '0.6D+W today left',
        pressure: expect.closeTo(5535.7, 1),
      })
    expect(feet[0]!.use).toBeCloseTo(5535.7 / 47_880.3, 5)
    expect(feet.map(({ lifts, liftCase }) => [lifts, liftCase])).toEqual([
      [false, null],
      [false, null],
      [true, '0.6D+W today left'],
      [false, null],
    ])
  })

  it('as a whole are asked of what lasts, feet by themselves of that and no more', () => {
    expect(judged(150, { outside: false })).toMatchObject({ whole: { push: 0, slides: false } })
    expect(judged(150, { outside: false }).feet[0]).toMatchObject({ push: 1.5, slides: true })
    // 600 N against 400 with 10 J: 10 · (1 − (400/600)²)/400 = 13.9 mm, a nudge; with 20 J 27.8 mm.
    const bump = { transient: true, force: 600 } as const
    expect(judged(150, { ...bump, energy: 10 })).toMatchObject({
      whole: { push: 0 },
      feet: [{ push: 0 }, {}, {}, {}],
    })
    expect(judged(150, { ...bump, energy: 20 })).toMatchObject({
      whole: { push: 1.5, slides: true },
      feet: [{ push: 0 }, {}, {}, {}],
    })
  })

  it('slide by what a push has left when it has come to where they let go', () => {
    expect(slideOf({ push: 600, holds: 400 }, 20)).toBeCloseTo(0.027778, 6)
    expect(slideOf({ push: 400, holds: 400 }, 20)).toBe(0)
    expect(slideOf({ push: 1, holds: 0 }, 20)).toBe(Number.POSITIVE_INFINITY)
  })
})
