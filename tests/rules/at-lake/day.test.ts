/** The day at the demo dock by hand; and random days against the engine's own kit, made anew from the depths as they were found. */
import { describe, expect, it } from 'vitest'
import {
  type Day,
  type DayState,
  dayAt,
  dayOf,
  depthToFrame,
  type LegAt,
} from '../../../rules/at-lake/index.ts'
import type { Catalog } from '../../../rules/catalog/index.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  projectOf,
  publishKit,
} from '../../../rules/index.ts'
import { drawn } from './support/drawn.ts'

const projectFor = (design: Design, catalog: Catalog = demoCatalog) =>
  projectOf(design, catalog, publishKit(deriveKit(design, catalog)))

const demo = projectFor(demoDesign)
const STATE: DayState = { level: 0, from: 'mark', keep: 'planned', measured: [], set: [] }
const legsOf = (day: Day): LegAt[] => day.stations.flatMap(({ legs }) => legs)
const legIn = (day: Day, id: string): LegAt => legsOf(day).find(({ leg }) => leg === id)!
const measured = (leg: string, depth: number, again = false) => ({
  leg,
  depth,
  how: 'measured' as const,
  again,
})

describe('before anything is measured', () => {
  const day = dayOf({ project: demo, state: STATE })

  it('every leg is as it was planned: height, length, brace, marks', () => {
    expect(legsOf(day).length).toBe(demo.dock.legs.length)
    demo.dock.legs.forEach((leg, i) => {
      const at = legIn(day, leg.id)
      expect(at.number).toBe(i + 1)
      expect(at.heights.deck).toBeCloseTo(leg.setHeight, 6)
      expect(at.heights.frame).toBeCloseTo(leg.setHeightFrame, 6)
      expect(at.heights.aboveDeck).toBeCloseTo(leg.aboveDeck!, 6)
      expect(at.stock?.code).toBe(leg.code)
      expect(at.enough).toBe('yes')
      expect(at.more).toBeCloseTo(0, 9)
      expect(at.limit).toEqual({ say: 'go', reasons: [] })
      const pair = demo.dock.pairs.find(({ legs }) => legs.includes(leg.id))!
      expect(at.brace?.code ?? null).toBe(pair.brace?.code ?? null)
      expect(at.brace?.fits).toBe(pair.brace ? 'fits' : 'not-needed')
      expect(at.brace?.moved ?? false).toBe(false)
      if (!pair.brace) return
      const own = at.brace!.marks.find((mark) => mark.leg === leg.id)!
      const z = own.end === 'low' ? pair.brace.lowZ : pair.brace.highZ
      expect(own.end === 'low').toBe(pair.brace.low === leg.id)
      expect(own.fromSole).toBeCloseTo(z - leg.bed, 5)
    })
    expect(day.assignment.moves).toEqual([])
    expect(day.limit).toEqual({ say: 'go', reasons: [] })
  })

  it('stations come in the order of work, each leg once', () => {
    expect(day.stations.map(({ section }) => section)).toEqual(demo.dock.workOrder)
    expect(new Set(legsOf(day).map(({ leg }) => leg)).size).toBe(demo.dock.legs.length)
    expect(day.stations.find(({ role }) => role === 'standing')!.legs.length).toBe(4)
  })

  it('distances go from the stake where there is one', () => {
    const staked = projectFor({
      ...demoDesign,
      site: { ...demoDesign.site, stake: { name: 'Oak', x: -2 } },
    })
    const at = legIn(dayOf({ project: staked, state: STATE }), 's4.end.left')
    expect(at.out).toBeCloseTo(legIn(day, 's4.end.left').out + 2, 9)
  })
})

describe('by hand: leg s4.end.left, planned 0.941086 deep, deck 0.45 over the water, a 6 ft leg (1.8288 m), pad 0.00635', () => {
  it('lake 0.10 lower, deck where it was planned, 0.90 deep', () => {
    const day = dayOf({
      project: demo,
      state: { ...STATE, level: -0.1, measured: [measured('s4.end.left', 0.9)] },
    })
    expect(day.overWater).toBeCloseTo(0.55, 9)
    const at = legIn(day, 's4.end.left')
    // 0.55 over the water and 0.90 under it; planking 0.0254 over the frame's top.
    expect(at.heights.deck).toBeCloseTo(1.45, 9)
    expect(at.heights.frame).toBeCloseTo(1.4246, 9)
    // 1.8288 + 0.00635 − 1.45, and as much more to the frame's top.
    expect(at.heights.aboveDeck).toBeCloseTo(0.38515, 9)
    expect(at.heights.fromTop).toBeCloseTo(0.41055, 9)
    expect(at.more).toBeCloseTo(1.45 - 1.391086, 6)
    // What was to be expected: 0.941086 − 0.10.
    expect(at.prior.depth).toBeCloseTo(0.841086, 6)
    expect(at.expected).toEqual({ depth: 0.9, sd: 0.01 })
  })

  it('read to the frame: 1.4246 from the ground to its top is the depth of 0.90 again', () => {
    const day = dayOf({ project: demo, state: { ...STATE, level: -0.1 } })
    expect(depthToFrame(1.4246, day, demoCatalog)).toBeCloseTo(0.9, 9)
  })

  it('the same with the deck as high over today’s water', () => {
    const day = dayOf({
      project: demo,
      state: { ...STATE, level: -0.1, keep: 'over-water', measured: [measured('s4.end.left', 0.9)] },
    })
    expect(day.deck).toBeCloseTo(0.35, 9)
    expect(legIn(day, 's4.end.left').heights.deck).toBeCloseTo(1.35, 9)
  })

  it('what is kept as planned sets the leg, and tells nothing of the bed', () => {
    const day = dayOf({
      project: demo,
      state: { ...STATE, measured: [{ leg: 's4.end.left', depth: 1.2, how: 'as-planned' }] },
    })
    expect(legIn(day, 's4.end.left').heights.deck).toBeCloseTo(1.65, 9)
    const before = dayOf({ project: demo, state: STATE })
    for (const { leg, expected } of legsOf(day)) expect(expected).toEqual(legIn(before, leg).expected)
  })

  it('measured twice: the later entry counts', () => {
    const state = { ...STATE, measured: [measured('s4.end.left', 0.9), measured('s4.end.left', 0.95)] }
    expect(legIn(dayOf({ project: demo, state }), 's4.end.left').depth).toBe(0.95)
  })
})

describe('random days against a kit of the depths as found', () => {
  const DESIGNS: readonly Design[] = [
    demoDesign,
    {
      ...demoDesign,
      dock: { ...demoDesign.dock, sections: 4, head: { shape: 'left', sections: 1 }, extras: {} },
    },
  ]
  // Nothing is left to the soundings' error, so that what a leg asks is what must stay; every pair is to be braced.
  const rules = {
    ...demoCatalog.rules,
    reserveMin: { ...demoCatalog.rules.reserveMin, value: 0 },
    braceFrom: { ...demoCatalog.rules.braceFrom, value: 0.3 },
  }
  const catalog: Catalog = { ...demoCatalog, rules }

  it('heights, shortest legs that do, braces with their marks', () => {
    const random = drawn(8)
    const seen = { fits: 0, other: 0 }
    const projects = DESIGNS.map((design) => projectFor(design, catalog))
    for (let time = 0; time < 12; time++) {
      const project = projects[time % projects.length]!
      const { design } = project
      const keep = time % 3 === 0 ? 'over-water' : 'planned'
      const level = 0.3 * (random() - 0.5)
      const over = design.dock.deckHeight - (keep === 'planned' ? level : 0)
      // Where the two legs of a pair are level the plan says which end is low: those are left out below.
      const depths = new Map(
        project.dock.legs.map(({ id, bed }, i) => [
          id,
          level -
            bed +
            (i % 2 ? 0.1 : -0.1) +
            (time % 3 === 1 ? -0.2 - 0.4 * random() : 0.1 * (random() - 0.5)),
        ]),
      )
      const day = dayOf({
        project,
        state: { ...STATE, level, keep, measured: [...depths].map(([leg, depth]) => measured(leg, depth)) },
      })
      // In today's water: depths, deck and levels.
      const { low, high } = design.site.levels
      const anew = (of: Catalog) =>
        deriveKit(
          {
            ...design,
            site: {
              ...design.site,
              soundingError: 0,
              levels: { low: low - level, high: high - level },
              soundings: project.dock.legs.map(({ id, x, y }) => ({
                distance: x,
                offset: y,
                depth: depths.get(id)!,
              })),
            },
            dock: { ...design.dock, deckHeight: over, start: project.dock.start },
          },
          of,
        )
      const kit = anew(catalog)
      for (const leg of kit.legs) {
        const at = legIn(day, leg.id)
        expect(at.heights.deck, `${time} ${leg.id}`).toBeCloseTo(over - leg.bed, 6)
        expect(at.needs?.code ?? null, `${time} ${leg.id}`).toBe(leg.stock?.code ?? null)
      }
      const kits = new Map(catalog.braces.map((brace) => [brace.code, anew({ ...catalog, braces: [brace] })]))
      for (const pair of project.dock.pairs) {
        const at = legIn(day, pair.legs[0]).brace!
        expect(at.planned).toBe(pair.brace?.code ?? null)
        if (!pair.brace) continue
        const [a, b] = pair.legs.map((id) => depths.get(id)!)
        if (Math.abs(a! - b!) <= 0.026) continue
        const { fit } = kits.get(at.planned!)!.pairs.find((one) => one.pair.id === pair.id)!
        expect(at.fits === 'fits', `${time} ${pair.id}`).toBe(fit !== null)
        if (!fit) {
          seen.other++
          continue
        }
        seen.fits++
        const low = at.marks.find(({ end }) => end === 'low')!
        const high = at.marks.find(({ end }) => end === 'high')!
        expect(low.leg).toBe(fit.low.id)
        expect(low.fromSole).toBeCloseTo(fit.lowZ - fit.low.bed, 6)
        expect(high.fromSole).toBeCloseTo(fit.highZ - fit.high.bed, 6)
      }
    }
    // Both kinds came up.
    expect(seen.fits).toBeGreaterThan(20)
    expect(seen.other).toBeGreaterThan(5)
  })
})

describe('when the bed is not as it was sounded', () => {
  const at = (state: Partial<DayState>) => dayOf({ project: demo, state: { ...STATE, ...state } })

  it('one measurement moves what is expected of its neighbors, less farther off, and makes it surer', () => {
    const before = at({})
    const after = at({ measured: [measured('s3.end.left', 0.79)] })
    const change = (leg: string) => legIn(after, leg).expected.depth - legIn(before, leg).expected.depth
    expect(change('s3.end.right')).toBeGreaterThan(change('s4.end.left'))
    expect(change('s4.end.left')).toBeGreaterThan(0.005)
    for (const { leg, expected } of legsOf(after)) {
      expect(expected.sd, leg).toBeLessThanOrEqual(legIn(before, leg).expected.sd + 1e-12)
    }
    expect(legIn(after, 's3.end.right').expected.sd).toBeLessThan(
      0.8 * legIn(before, 's3.end.right').expected.sd,
    )
  })

  it('a level that nobody knows is found from the legs: all deeper by as much', () => {
    const after = at({
      from: 'survey',
      measured: [measured('s2.start.left', 0.242), measured('s2.end.left', 0.525)],
    })
    // Both 0.10 deeper than planned: most of it is the lake.
    expect(legIn(after, 's5.end.right').expected.depth - 1.249061).toBeGreaterThan(0.05)
    expect(after.levelFound.level).toBeGreaterThan(0.05)
    expect(after.levelFound.level).toBeLessThan(0.1)
    expect(after.levelFound.error).toBeLessThan(0.8 * after.levelError)
    const known = at({ measured: [measured('s2.start.left', 0.242), measured('s2.end.left', 0.525)] })
    expect(legIn(known, 's5.end.right').expected.depth - 1.249061).toBeLessThan(0.05)
  })

  it('far off what was to be expected: measured again, and believed then', () => {
    const once = legIn(at({ measured: [measured('s3.end.left', 0.3)] }), 's3.end.left')
    expect(once.limit.say).toBe('measure-again')
    expect(once.limit.reasons).toContain('differs')
    // 0.26 shallower than planned: its leg does, its brace too.
    const deeper = legIn(at({ measured: [measured('s3.end.left', 0.686 + 0.26, true)] }), 's3.end.left')
    expect(deeper.limit.reasons).toContain('differs')
    expect(deeper.limit.say).toBe('go')
  })

  it('deeper than its leg reaches: one that is spare elsewhere goes there, and is told', () => {
    // s4.end.left has a 6 ft leg: with 1.50 under 0.45 it would end 0.11 under the deck. s5 has 7 ft legs, of which none is spare:
    // 1.699 and what must stay does with 6 ft. So the two change places.
    const day = at({ measured: [measured('s4.end.left', 1.4, true)] })
    const leg = legIn(day, 's4.end.left')
    expect(leg.stock?.code).toBe('leg-7')
    expect(leg.limit).toMatchObject({ reasons: expect.arrayContaining(['other-leg']) })
    const from = day.assignment.moves.find(({ code }) => code === 'leg-7')!.from!
    expect(['s5.end.left', 's5.end.right']).toContain(from)
    expect(day.assignment.moves).toContainEqual({ code: 'leg-6', from: 's4.end.left', to: from })
  })

  it('no leg at hand reaches: measured again, then a call', () => {
    const once = legIn(at({ measured: [measured('s5.end.left', 2.6)] }), 's5.end.left')
    expect(once.stock).toBeNull()
    expect(once.enough).toBe('no')
    expect(once.needs).toBeNull()
    expect(once.limit.say).toBe('measure-again')
    const twice = legIn(at({ measured: [measured('s5.end.left', 2.6, true)] }), 's5.end.left')
    expect(twice.limit.say).toBe('stop-and-call')
    expect(twice.limit.reasons).toContain('no-leg')
  })

  it('ground 0.40 higher than sounded under a braced pair: no brace of the shop keeps clear of it, which is a call', () => {
    // 0.736 from sole to deck. The short brace alone rises 0.504 (1.0668 over 0.9398 between the clamps): with 0.178 of frame and sleeve above
    // it, 0.051 to that, 0.083 of pad and 0.025 to that, and half a clamp at either end, 0.892 are needed.
    const both = [measured('s3.end.left', 0.286), measured('s3.end.right', 0.286)]
    const once = legIn(at({ measured: both }), 's3.end.left')
    expect(once.brace).toMatchObject({
      pair: 's3.end',
      fits: 'none',
      code: null,
      planned: 'brace-42',
      marks: [],
    })
    expect(once.limit.say).toBe('measure-again')
    const twice = legIn(at({ measured: both.map((one) => ({ ...one, again: true })) }), 's3.end.left')
    // What stands far over the deck is told beside a stop as well: of 5 ft, 1.524 + 0.00635 less 0.736, 0.794 over it.
    expect(twice.limit).toEqual({ say: 'stop-and-call', reasons: ['brace-none', 'tall'] })
  })

  it('a leg that comes to stand more than 2 ft over the deck is told, and no reason to stop', () => {
    // A 7 ft leg, 2.1336 + 0.00635, with 1.5 from sole to deck: 0.64 over it.
    const leg = legIn(at({ measured: [measured('s5.end.left', 1.05, true)] }), 's5.end.left')
    expect(leg.limit.reasons).toContain('tall')
    expect(leg.limit.say).toBe('go')
  })

  it('a longer spare on the shore is taken before legs change places', () => {
    const counts = new Map<string, number>()
    for (const { code } of demo.dock.legs) counts.set(code!, (counts.get(code!) ?? 0) + 1)
    counts.set('leg-8', 1)
    const legsAtHand = [...counts].map(([code, count]) => ({ code, count }))
    const day = at({ legsAtHand, measured: [measured('s4.end.left', 1.4, true)] })
    expect(day.assignment.moves).toEqual([{ code: 'leg-8', from: null, to: 's4.end.left' }])
  })

  it('a leg that is set stays where another can be taken', () => {
    const day = at({
      measured: [measured('s4.end.left', 1.4, true)],
      set: [{ leg: 's5.end.left', stock: 'leg-7', height: 1.7 }],
    })
    expect(day.assignment.moves).toContainEqual({ code: 'leg-7', from: 's5.end.right', to: 's4.end.left' })
    expect(legIn(day, 's5.end.left').stock?.code).toBe('leg-7')
  })

  it('a leg that changed places and is set is there once, and what was planned there is free for others', () => {
    // The swap from above is done: the 7 ft leg of s5 stands at s4.end.left, whose 6 ft leg is on the shore. The plan has two of 7 ft.
    const set = [{ leg: 's4.end.left', stock: 'leg-7', height: 1.85 }]
    const deep = measured('s4.end.left', 1.4, true)
    const used = ({ assignment }: Day): number =>
      assignment.given.filter(({ code }) => code === 'leg-7').length
    const planned = demo.dock.legs.filter(({ code }) => code === 'leg-7').length
    expect(planned).toBe(2)
    const after = at({ measured: [deep], set })
    expect(used(after)).toBe(planned)
    expect(after.assignment.unserved).toEqual([])
    const [without, other] = ['s5.end.left', 's5.end.right'].sort(
      (a, b) => legIn(after, a).stock!.length - legIn(after, b).stock!.length,
    ) as [string, string]
    expect([legIn(after, without).stock?.code, legIn(after, other).stock?.code]).toEqual(['leg-6', 'leg-7'])
    expect(after.assignment.moves).toEqual([{ code: 'leg-6', from: null, to: without }])
    // That place turns out 1.55 deep: 2.0 to the deck, which 6 ft does not reach; beside it it is shallower than sounded, where 6 ft do.
    const both = [deep, measured(without, 1.55, true), measured(other, 0.9, true)]
    const found = at({ measured: both, set })
    expect(legIn(found, without).stock?.code).toBe('leg-7')
    expect(found.assignment.moves).toContainEqual({ code: 'leg-7', from: other, to: without })
    expect(used(found)).toBe(planned)
    expect(legIn(found, other)).toMatchObject({ enough: 'yes' })
    expect(legIn(found, other).stock!.length).toBeLessThan(2)
  })

  it('a leg that was brought from elsewhere and is set is at hand, whatever the list says', () => {
    const set = [{ leg: 's4.end.left', stock: 'leg-8', height: 1.85 }]
    for (const legsAtHand of [undefined, [{ code: 'leg-6', count: 1 }]]) {
      const day = at({
        set,
        measured: [measured('s4.end.left', 1.4, true)],
        ...(legsAtHand ? { legsAtHand } : {}),
      })
      expect(legIn(day, 's4.end.left').stock?.code).toBe('leg-8')
    }
  })

  it('the water so high that the deck is hardly over it, and beyond what was expected of the lake', () => {
    expect(at({ level: 0.35 }).limit).toEqual({ say: 'stop-and-call', reasons: ['level-beyond', 'deck-low'] })
    expect(at({ level: 0.28, keep: 'over-water' }).limit.say).toBe('go')
    const unsaid = projectFor({ ...demoDesign, site: { ...demoDesign.site, assumed: ['levels'] } })
    expect(dayOf({ project: unsaid, state: { ...STATE, level: -0.5 } }).limit.say).toBe('go')
    expect(at({ level: -0.5 }).limit.reasons).toEqual(['level-beyond'])
  })
})

describe('the order of the day', () => {
  const { order } = dayOf({ project: demo, state: STATE })
  const line = (id: string) => order.flatMap(({ tighten }) => tighten[id] ?? [])

  it('sets every leg in one step, with both set bolts of its sleeve by the catalog’s wrench and turns', () => {
    expect(order.flatMap(({ legs }) => legs).sort()).toEqual(demo.dock.legs.map(({ id }) => id).sort())
    expect(line('in.s3/set-leg/s3.end.left')).toEqual([
      {
        kind: 'set-bolt',
        code: 'bolt-1/2-set',
        wrench: '3/4 in',
        count: 2,
        turns: [{ at: 'sleeve', from: 0.75, to: 0.75 }],
      },
    ])
  })

  it('tells each bolt’s turns by where it sits, and leaves set bolts finger-tight on the shore', () => {
    // What the catalog says of this bolt, by where it sits: which of them it is here only its own words tell.
    expect(line('in.s3/lock')[0]).toMatchObject({
      wrench: '1/2 in',
      count: 2,
      turns: [
        { at: 'carrier side', from: 0.5, to: 0.5 },
        { at: 'hung side', from: 1, to: 1.5 },
      ],
    })
    expect(line('dry.s3/set-bolts')).toEqual([])
  })

  it('a lift has its mass, people, and the same for each of them', () => {
    for (const { step } of order) {
      if (!step.lift) continue
      expect(step.lift.people).toBeGreaterThanOrEqual(2)
      expect(step.lift.each * step.lift.people).toBeCloseTo(step.lift.mass, 4)
    }
  })
})

it('sixty sections off the line: the first station in time, each later one at once', () => {
  const soundings = Array.from({ length: 120 }, (_, i) => ({
    distance: 0.6 * (i + 1),
    offset: i % 2 ? 1.5 : -1.5,
    depth: 0.3 + 0.015 * i,
  }))
  const project = projectFor({
    ...demoDesign,
    site: { ...demoDesign.site, soundings },
    dock: { ...demoDesign.dock, sections: 60, extras: {} },
  })
  const begin = performance.now()
  const day = dayAt(project)
  const first = day(STATE)
  const after = performance.now()
  day({
    ...STATE,
    measured: legsOf(first)
      .slice(0, 60)
      .map(({ leg, depth }) => measured(leg, depth + 0.02)),
  })
  const last = performance.now()
  // 50 and 30 ms alone on the machine that this was written on.
  expect(after - begin).toBeLessThan(2000)
  expect(last - after).toBeLessThan(1000)
})
