/** The loads by themselves: worked by hand, and what holds for them on any dock and site. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Waves } from '../../../rules/dock.ts'
import { assessKit, type Catalog, demoCatalog, demoDesign, deriveKit } from '../../../rules/index.ts'
import type { Kit } from '../../../rules/kit.ts'
import { coherentShare, SPREAD } from '../../../rules/site/waves/short-crested.ts'
import { analyze } from '../../../rules/structure/dock/analysis.ts'
import { deadLoad, weatherLoad } from '../../../rules/structure/dock/basic-loads.ts'
import { bump } from '../../../rules/structure/dock/boat.ts'
import type { Combination } from '../../../rules/structure/dock/combinations.ts'
import { type DockFrame, dockFrame } from '../../../rules/structure/dock/frame.ts'
import { legWaves } from '../../../rules/structure/dock/leg-waves.ts'
import { crowdLoads, edgeLoads } from '../../../rules/structure/dock/people.ts'
import type { Solved } from '../../../rules/structure/dock/soften.ts'
import { upliftLoad, upliftOf } from '../../../rules/structure/dock/uplift.ts'
import { freeShares } from '../../../rules/structure/dock/weather-load.ts'
import { type CaseLoad, layOutStates } from '../../../rules/structure/second-order.ts'
import { boatWavesBeam, GUST } from '../../../rules/structure/strength/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { metricCatalog } from '../../support/catalogs.ts'
import { runs } from '../../support/runs.ts'
import { judgedCase, unlessLoose } from './dock-cases.ts'

const SEED = 20260801
const random = (seed: number, few: number) => ({ seed: SEED + seed, numRuns: runs(few) })

const { wind: _wind, ...calm } = demoDesign.site
const flat = (depth: number) => ({ soundings: [0, 60].map((distance) => ({ distance, depth })) })
const kitOf = (
  site: Record<string, unknown>,
  dock: Record<string, unknown> = {},
  catalog: Catalog = demoCatalog,
): Kit =>
  deriveKit(
    parsedDesign({
      ...demoDesign,
      site: { ...calm, levels: { low: 0, high: 0 }, ...flat(1.2), ...site },
      dock: { ...demoDesign.dock, ramp: false, start: 3, sections: 3, extras: {}, ...dock },
    }),
    catalog,
  )

/** All that a load does: force, and moment about the origin. */
function whole({ nodes }: DockFrame, { onNodes }: CaseLoad) {
  const sum = { x: 0, y: 0, z: 0, mx: 0, my: 0 }
  nodes.forEach(({ x, y, z }, i) => {
    const [fx, fy, fz, mx, my] = onNodes.slice(i * 6, i * 6 + 5) as unknown as [
      number,
      number,
      number,
      number,
      number,
    ]
    sum.x += fx
    sum.y += fy
    sum.z += fz
    sum.mx += mx + y * fz - z * fy
    sum.my += my + z * fx - x * fz
  })
  return sum
}

/** What feet press, N. */
const pressed = (frame: DockFrame, forces: Float64Array): number =>
  frame.legs.reduce((sum, { members }) => sum + forces[frame.slot[members[0]!]! * 12]!, 0)

const base = assessKit(kitOf({ wind: { speed: 12, fetch: 1000 } })).waves!
const wavesLike = (more: Partial<Waves>): Waves => ({ ...base, wake: 0, ...more })

const casesListOf = (kit: Kit): Combination[] => {
  const seen: Combination[] = []
  analyze(dockFrame(kit), assessKit(kit).waves, ({ combination }) => void seen.push(combination))
  return seen
}
const casesOf = (kit: Kit): Map<string, Combination> =>
  new Map(casesListOf(kit).map((one) => [one.name, one]))

/** Eight sections in a row, in a sea that reaches no plank today. */
const LONG = kitOf({ wind: { speed: 10, fetch: 500 } }, { sections: 8 })

/** Depth m, period s, and the height as a part of the highest that stands: by the depth, or, without it, steeper by half than Miche's. */
const wave = fc.record({
  depth: fc.double({ min: 0.15, max: 4, noNaN: true }),
  period: fc.double({ min: 0.8, max: 8, noNaN: true }),
  part: fc.double({ min: 0.02, max: 0.995, noNaN: true }),
})
const leg = fc.record({
  width: fc.double({ min: 0.03, max: 0.12, noNaN: true }),
  shape: fc.constantFrom('round', 'square'),
})

describe('a wave on a leg', () => {
  it(`pushes no less where it is higher, and by no more than 2 % for 0.2 % of height; finite (seed ${SEED})`, () => {
    fc.assert(
      fc.property(wave, leg, ({ depth, period, part }, { width, shape }) => {
        const deep = (9.80665 * period ** 2) / (2 * Math.PI)
        const most = Math.min(0.78 * depth, 0.2 * deep)
        const force = (height: number): number => {
          const waves = wavesLike({ open: height / 1.8, period })
          return legWaves(waves, [{ width, shape, depth, along: 0, across: 0 }], 'highest')[0]!.force
        }
        const [low, high] = [force(part * most), force(part * most * 1.002)]
        expect(Number.isFinite(high)).toBe(true)
        expect(high).toBeGreaterThanOrEqual(low)
        expect(high).toBeLessThanOrEqual(low * 1.02)
      }),
      random(0, 150),
    )
  })

  it('has no cliff where it begins to break: 60 mm in 1 m of water, from under half of the depth to what it lets stand', () => {
    const force = (height: number): number =>
      legWaves(
        wavesLike({ open: height / 1.8, period: 2.5 }),
        [{ width: 0.06, shape: 'round', depth: 1, along: 0, across: 0 }],
        'highest',
      )[0]!.force
    let last = force(0.45)
    for (let height = 0.4509; height < 0.8; height *= 1.002) {
      const now = force(height)
      expect(now / last).toBeLessThan(1.02)
      expect(now).toBeGreaterThanOrEqual(last)
      last = now
    }
    // ½ · 9806.65 · 1.75 · 0.06 · 0.78² = 313.2 N, and held there by the depth.
    expect(force(0.78)).toBeGreaterThan(313)
    expect(force(5)).toBeCloseTo(force(0.78), 9)
  })

  it('that is a boat’s wake pushes too, and the worse of both counts', () => {
    const at = (open: number, wake: number) =>
      legWaves(
        wavesLike({ open, period: 1.5, wake }),
        [{ width: 0.06, shape: 'round', depth: 1.2, along: 0, across: 0 }],
        'highest',
      )[0]!.force
    expect(at(0, 0.3)).toBeGreaterThan(5)
    expect(at(0.05, 0.3)).toBe(at(0, 0.3))
    expect(at(0.3, 0.05)).toBe(at(0.3, 0))
    const kit = kitOf({ wake: 0.3 })
    const { waves } = assessKit(kit)
    const frame = dockFrame(kit)
    expect(whole(frame, weatherLoad(layOutStates(frame), frame, waves, 'today', 'left')).y).toBeGreaterThan(
      50,
    )
  })
})

describe('a wind sea on a long dock', () => {
  it(`the highest tenth never pushes or lifts more than the highest wave (seed ${SEED + 3})`, () => {
    const sea = fc.record({
      open: fc.double({ min: 0.01, max: 0.7, noNaN: true }),
      period: fc.double({ min: 1, max: 4, noNaN: true }),
      wake: fc.constantFrom(0, 0.2),
    })
    fc.assert(
      fc.property(sea, fc.double({ min: 0.2, max: 3, noNaN: true }), (one, depth) => {
        const waves = wavesLike({ ...one, depth: 3 })
        const legs = [0, 1, 2, 3].map((i) => ({
          width: 0.06,
          shape: 'round' as const,
          depth,
          along: 0,
          across: 2.4 * i,
        }))
        const sum = (height: 'highest' | 'tenth'): number =>
          legWaves(waves, legs, height).reduce((all, wave) => all + (wave?.force ?? 0), 0)
        expect(sum('tenth')).toBeLessThanOrEqual(sum('highest') * (1 + 1e-12))
        for (const toward of ['left', 'shore'] as const) {
          const lift = (height: 'highest' | 'tenth'): number =>
            [...(upliftOf(LONG, waves, 0, toward, height)?.values() ?? [])].reduce((all, n) => all + n, 0)
          expect(lift('tenth')).toBeLessThanOrEqual(lift('highest') * (1 + 1e-12))
        }
      }),
      random(3, 60),
    )
    const { waves } = assessKit(LONG)
    const frame = dockFrame(LONG)
    const states = layOutStates(frame)
    for (const toward of ['left', 'right', 'shore'] as const) {
      const push = (height: 'highest' | 'tenth'): number => {
        const { x, y } = whole(frame, weatherLoad(states, frame, waves, 'today', toward, height))
        return Math.hypot(x, y)
      }
      expect(push('tenth')).toBeLessThan(push('highest'))
    }
  })

  it('reaches all of no length, and less of more', () => {
    for (const k of [0, 0.3, 1, 4]) expect(coherentShare(0, k)).toBe(1)
    expect(coherentShare(10, 0)).toBe(1)
    for (const k of [0.3, 1, 4]) {
      let last = 1
      for (let across = 0.5; across < 200; across *= 1.3) {
        const now = coherentShare(across, k)
        expect(now).toBeLessThan(last)
        expect(now).toBeGreaterThan(0)
        last = now
      }
    }
  })

  it('by what a sum of waves from all directions has on its mean along the crests, within 2 %', () => {
    // Each wave is exp(i·k·y·sin θ) along the crests; its mean over the length is found by points, its energy goes as the normal law about
    // the main direction. Neither the correlation nor its integral is used. By hand, k·σ·B → ∞: share² → √(2π)/(k·σ·B).
    const summed = (across: number, k: number): number => {
      const [points, directions] = [800, 1200]
      let energy = 0
      let all = 0
      for (let d = 0; d < directions; d++) {
        const theta = Math.PI * ((d + 0.5) / directions - 0.5)
        const weight = Math.exp(-0.5 * (theta / SPREAD) ** 2)
        let [re, im] = [0, 0]
        for (let p = 0; p < points; p++) {
          const phase = k * across * ((p + 0.5) / points) * Math.sin(theta)
          re += Math.cos(phase) / points
          im += Math.sin(phase) / points
        }
        energy += weight * (re * re + im * im)
        all += weight
      }
      return Math.sqrt(energy / all)
    }
    for (const [across, k] of [
      [2.44, 1],
      [10, 1],
      [10, 2.5],
      [25, 1],
      [50, 2],
    ] as const)
      expect(Math.abs(coherentShare(across, k) / summed(across, k) - 1)).toBeLessThan(0.02)
    expect(coherentShare(50, 2) ** 2 / (Math.sqrt(2 * Math.PI) / (50 * 2 * SPREAD))).toBeCloseTo(1, 1)
  })
})

describe('an edge', () => {
  it('that another section covers by half is free by half', () => {
    const kit = kitOf(
      {},
      {
        sections: undefined,
        plan: [
          { id: 's1', on: null },
          { id: 's2', on: 's1', edge: 'end', with: 'start' },
          { id: 'h1', on: 's2', edge: 'left', with: 'start' },
        ],
      },
    )
    const frame = dockFrame(kit)
    const share = freeShares(frame)
    const of = (id: string, edge: string) =>
      share(frame.rails.find((r) => r.section.id === id && r.edge === edge)!)
    // 4 ft of 8.
    expect(of('s2', 'left')).toBeCloseTo(0.5, 6)
    expect(of('s2', 'right')).toBe(1)
    expect(of('s1', 'end')).toBeCloseTo(0, 6)
    expect(of('h1', 'start')).toBeCloseTo(0, 6)
    // And the wind meets it so: the first section's side, half of the second's, the end of the one beside. 1 m of edge in 20 m/s, a gust of 28.87 m/s, 0.613 · 28.87² · 2 · 0.1778 m = 181.7 N.
    const windy = dockFrame(kitOf({ ...flat(0.3), wind: { speed: 20, fetch: 0 } }, kit.design.dock))
    const { y } = whole(windy, weatherLoad(layOutStates(windy), windy, null, 'today', 'right'))
    const legs = windy.legs.length * 0.613 * 28.868 ** 2 * 1.2 * 0.060325 * (0.45 - 0.1778)
    expect((-y - legs) / 181.7).toBeCloseTo(2.4384 + 1.2192 + 1.2192, 1)
  })

  it(`is free by 0 to 1 on any dock (seed ${SEED + 1})`, () => {
    fc.assert(
      fc.property(judgedCase, ({ kit }) => {
        const frame = dockFrame(kit)
        const share = freeShares(frame)
        for (const rail of frame.rails) {
          expect(share(rail)).toBeGreaterThanOrEqual(0)
          expect(share(rail)).toBeLessThanOrEqual(1)
        }
      }),
      random(1, 12),
    )
  })

  it('is pushed without a jump as the lake rises, from under the frame to over the deck; and so is the deck lifted', () => {
    const step = 0.01
    let most = 0
    const jumps: number[] = []
    let last: readonly number[] | null = null
    for (let high = 0.01; high < 0.7; high += step) {
      const kit = kitOf({ levels: { low: 0, high }, wind: { speed: 12, fetch: 700 } })
      const { waves } = assessKit(kit)
      const frame = dockFrame(kit)
      const states = layOutStates(frame)
      const lift = upliftLoad(states, frame, waves!, high, 'left', 'highest')
      const now = [
        whole(frame, weatherLoad(states, frame, waves, 'high', 'left')).y,
        lift ? whole(frame, lift).z : 0,
      ]
      most = Math.max(most, ...now)
      if (last) jumps.push(...now.map((value, i) => Math.abs(value - last![i]!)))
      last = now
    }
    expect(most).toBeGreaterThan(1000)
    expect(Math.max(...jumps) / most).toBeLessThan(0.08)
  })
})

describe('crests under the deck', () => {
  // Crests of 0.448 m under planks at 0.4246 m.
  const site = { wake: 0.64 }
  it('lift what stands over them, come with 0.6 D + W alone, and come off what the feet press', () => {
    // Head-on: abeam such a wake carries so light a dock over, and what its feet press then is no answer.
    const kit = kitOf(site, { extras: { 'anchor-post': 6 } })
    const { waves } = assessKit(kit)
    const frame = dockFrame(kit)
    const states = layOutStates(frame)
    const lift = whole(frame, upliftLoad(states, frame, waves!, 0, 'shore', 'tenth')!).z
    const lifts = upliftOf(kit, waves!, 0, 'shore', 'tenth')!
    expect(lift).toBeCloseTo(
      [...lifts.values()].reduce((sum, one) => sum + one, 0),
      6,
    )
    expect(lift).toBeGreaterThan(50)
    const dead = -whole(frame, deadLoad(states, frame)).z
    const seen = new Map<string, number>()
    analyze(frame, waves, ({ combination, forces, stands }: Solved) => {
      if (stands) seen.set(combination.name, pressed(frame, forces))
    })
    const [light, full] = [seen.get('0.6D+W today shore'), seen.get('D+W today shore')]
    expect(full).toBeCloseTo(dead, 0)
    expect(light).toBeCloseTo(0.6 * dead - lift, 0)
  })

  it('are none where they do not reach the planks, and a section at most γ times its highest crest over them', () => {
    expect(
      upliftOf(
        kitOf({ wind: { speed: 6, fetch: 300 } }),
        assessKit(kitOf({ wind: { speed: 6, fetch: 300 } })).waves!,
        0,
        'left',
        'highest',
      ),
    ).toBeNull()
    const kit = kitOf(site)
    const waves = assessKit(kit).waves!
    const head = 0.7 * site.wake - (0.45 - 0.0254)
    for (const toward of ['left', 'shore'] as const)
      for (const lift of upliftOf(kit, waves, 0, toward, 'highest')!.values())
        expect(lift).toBeLessThanOrEqual(9806.65 * head * 2.4384 * 1.2192)
  })
})

describe('people at the worst places', () => {
  it('are a crowd on the end section alone: its 40 psf, and nobody else', () => {
    const frame = dockFrame(kitOf({}))
    const [end, left, right] = crowdLoads(layOutStates(frame), frame, 0.01)
    // 1915.21 Pa on 2.97290 m².
    expect(whole(frame, end!.load).z).toBeCloseTo(-5693.7, 0)
    expect(whole(frame, end!.load).x).toBeCloseTo(56.9, 1)
    for (const half of [left, right]) expect(whole(frame, half!.load).z).toBeCloseTo(-5693.7 / 2, 0)
    expect(crowdLoads(layOutStates(frame), dockFrame(kitOf({}, { sections: 1 })), 0.01)).toEqual([])
  })

  it('and one of 300 lb on a ladder outside of the end corner', () => {
    const kit = kitOf({})
    const frame = dockFrame(kit)
    for (const { load, toward } of edgeLoads(layOutStates(frame), frame)) {
      const { x, y, z, mx, my } = whole(frame, load)
      expect([x, y]).toEqual([0, 0])
      expect(z).toBeCloseTo(-1334.5, 1)
      // At the frame's corner and 0.15 m out to the side: y = ±(0.6096 + 0.15), x the end of the third section.
      const end = kit.layout.placed.at(-1)!
      expect(mx / z).toBeCloseTo((toward === 'left' ? 1 : -1) * 0.7596, 6)
      expect(-my / z).toBeCloseTo(end.x + end.frame.length, 6)
    }
  })

  it('are named, each case once, on docks of both shops', () => {
    for (const catalog of [demoCatalog, metricCatalog]) {
      const frame = catalog.frames[0]!.code
      const names = casesOf(kitOf({}, { frame }, catalog))
      for (const name of ['D+C lake', 'D+C left', 'D+C right', 'D+E left', 'D+E right'])
        expect(names.has(name)).toBe(true)
    }
  })
})

describe('a boat', () => {
  it('of 2 t comes in with 67.5 J: 3674 N on a dock that gives 10 µm a newton, 1643 N with a bumper of 25 kN/m', () => {
    // ½ · 2000 · 0.3² · 1.5 · 0.5 = 67.5 J; √(2 · 67.5/1e-5); in a row 1e-5 + 4e-5 m/N: √(2 · 67.5/5e-5).
    expect(bump(2000, 1e-5)).toMatchObject({ energy: 67.5 })
    expect(bump(2000, 1e-5).force).toBeCloseTo(3674.2, 1)
    const soft = bump(2000, 1e-5, 25_000)
    expect(soft.force).toBeCloseTo(1643.2, 1)
    expect((soft.force * soft.give) / 2).toBeCloseTo(67.5, 9)
  })

  const boat = { length: 6, height: 1.5, draught: 0.4, mass: 2000, side: 'left' }
  it('is a short event with its energy in the cases, and softer where a bumper is fitted on its side', () => {
    const bumped = (extras: Record<string, unknown>) =>
      casesOf(kitOf({}, { boat, ...extras })).get('D+B right')!
    const hard = bumped({})
    expect(hard).toMatchObject({ transient: true, energy: 67.5, outside: true })
    const placed = (edge: string) => ({ placed: [{ code: 'bumper', section: 's3', edge, along: 1.2 }] })
    expect(bumped(placed('left')).force!).toBeLessThan(0.8 * hard.force!)
    expect(bumped(placed('right')).force).toBeCloseTo(hard.force!, 6)
  })

  it('hands the dock what waves push it by: 324 N on 6 m, Hs 0.4 m, k 1/m, draught 0.4 m', () => {
    // 9806.65 · 0.16/16 · (1 − e^−0.8) · 6 = 98.07 · 0.55067 · 6.
    expect(
      boatWavesBeam(
        { length: 6, beam: 2.1, height: 1, mass: 0, draught: 0.4 },
        { height: 0.4, period: 2, depth: 9, k: 1 },
      ),
    ).toBeCloseTo(324, 0)
    const push = (dock: Record<string, unknown>, fetch: number): number => {
      const kit = kitOf({ wind: { speed: 12, fetch } }, dock)
      const frame = dockFrame(kit)
      return whole(frame, weatherLoad(layOutStates(frame), frame, assessKit(kit).waves, 'today', 'right')).y
    }
    const own = (fetch: number): number => push({}, fetch) - push({ boat }, fetch)
    expect(own(400)).toBeGreaterThan(own(0))
  })
})

describe('two boats', () => {
  const size = { length: 6, height: 1.5, draught: 0.4, mass: 2000 }
  const boats = [
    { id: 'a', ...size, section: 's3', edge: 'left' },
    { id: 'b', ...size, mass: 500, section: 's3', edge: 'end' },
  ]
  it('come in one after the other, each away from its own edge: 67.5 J to the right, 16.875 J to the shore', () => {
    // ½ · m · 0.3² · 1.5 · 0.5 of 2000 and of 500 kg.
    const cases = casesOf(kitOf({}, { boats }))
    expect(cases.get('D+B right')).toMatchObject({ transient: true, energy: 67.5 })
    expect(cases.get('D+B shore')).toMatchObject({ transient: true, energy: 16.875 })
    expect(casesOf(kitOf({}, { boats: boats.slice(0, 1) })).has('D+B shore')).toBe(false)
  })
  it('both lean on the dock in a wind: the one along the dock by its side, the one across by its bow', () => {
    const push = (dock: Record<string, unknown>): number => {
      const kit = kitOf({ wind: { speed: 12, fetch: 0 } }, dock)
      const frame = dockFrame(kit)
      return whole(frame, weatherLoad(layOutStates(frame), frame, assessKit(kit).waves, 'today', 'right')).y
    }
    // q = 0.613 · (10.7 · GUST)²; the side 1.2 · 0.7 · 6 · 1.5 = 7.56, the bow 0.6 · 0.7 · 2.1 · 1.5 = 1.323 m²; toward −y.
    const q = 0.613 * (10.7 * GUST) ** 2
    expect(push({ boats: boats.slice(0, 1) }) - push({})).toBeCloseTo(-7.56 * q, 0)
    expect(push({ boats }) - push({})).toBeCloseTo(-8.883 * q, 0)
    // Stated, its beam counts.
    const wide = [{ ...boats[1]!, beam: 4.2 }]
    expect(push({ boats: wide }) - push({})).toBeCloseTo(-2.646 * q, 0)
  })
  it('side by side on one edge are two cases of one name, and the worse of them counts', () => {
    const heavy = [boats[0]!, { ...boats[0]!, id: 'c', section: 's2', mass: 800 }]
    const energies = casesListOf(kitOf({}, { boats: heavy }))
      .filter(({ name }) => name === 'D+B right')
      .map(({ energy }) => energy)
    expect(energies).toEqual([67.5, 27])
  })
})

describe('on any site', () => {
  it(`every load of wind and waves is a finite figure (seed ${SEED + 2})`, () => {
    const site = fc.record({
      speed: fc.constantFrom(1e-300, 1e-160, 1e-125, 1e-9, 3, 12, 80),
      fetch: fc.constantFrom(0, 1e-7, 1, 700, 1e6),
      depth: fc.constantFrom(null, 1e-7, 1, 1000),
      wake: fc.constantFrom(0, 1e-7, 0.3, 5),
    })
    fc.assert(
      fc.property(judgedCase, site, ({ design, catalog }, { wake, ...wind }) => {
        const boat = { length: 7, height: 2, draught: 0.5, mass: 3000, side: 'left' as const }
        const kit = deriveKit(
          { ...design, site: { ...design.site, wind, wake }, dock: { ...design.dock, boat } },
          catalog,
        )
        const { waves } = assessKit(kit)
        const frame = dockFrame(kit)
        const states = unlessLoose(() => layOutStates(frame))
        if (!states) return
        // A sea of 80 m/s over 1000 km comes to what the depth lets stand: kilonewtons a leg, not more.
        for (const level of ['low', 'today', 'high'] as const)
          for (const toward of ['left', 'shore'] as const) {
            for (const height of ['highest', 'tenth'] as const) {
              const load = weatherLoad(states, frame, waves, level, toward, height)
              for (const value of load.onNodes) expect(Number.isFinite(value)).toBe(true)
            }
          }
        const lift = waves && upliftLoad(states, frame, waves, 0, 'left', 'highest')
        if (lift) for (const value of lift.onNodes) expect(Number.isFinite(value)).toBe(true)
      }),
      random(2, 6),
    )
  })
})
