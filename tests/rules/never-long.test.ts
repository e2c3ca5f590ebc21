/** Placing is near linear in sections and soundings: by what is looked at, not by the clock. And what it passes over changes nothing. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { padsOverlap } from '../../rules/checks/pads-overlap.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  makeBed,
  parseDesign,
  shopOf,
} from '../../rules/index.ts'
import { planOf, shoreEndOf } from '../../rules/layout/index.ts'
import { groundAlong, rampContact } from '../../rules/layout/ramp-rest.ts'
import { findStart } from '../../rules/layout/start.ts'
import { atLeast } from '../../rules/numbers.ts'
import { placeExtras } from '../../rules/parts/extras.ts'
import type { Bed } from '../../rules/site/index.ts'
import { nearestOf } from '../../rules/site/nearest.ts'

type Raw = { distance: number; offset?: number | undefined; depth: number; bottom?: string | undefined }
function designOf(soundings: readonly Raw[], dock: Record<string, unknown>, site = {}): Design {
  const parsed = parseDesign({
    ...demoDesign,
    site: { ...demoDesign.site, ...site, soundings },
    dock: { ...demoDesign.dock, start: null, ...dock },
  })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues.slice(0, 3)))
  return parsed.value
}
const shop = shopOf(demoCatalog)
const list = (n: number, make: (i: number) => Raw): Raw[] => Array.from({ length: n }, (_, i) => make(i))

/** A bed that counts what it is asked. */
function counted(bed: Bed): { readonly bed: Bed; asked: number } {
  const told = { asked: 0, bed }
  const count =
    <A extends readonly unknown[], T>(ask: (...args: A) => T) =>
    (...args: A): T => {
      told.asked++
      return ask(...args)
    }
  told.bed = { ...bed, bedAt: count(bed.bedAt), highest: count(bed.highest) }
  return told
}
const startOf = (design: Design, bed: Bed) =>
  findStart(design, shop, bed, shoreEndOf(planOf(design, shop), shop)!)

describe('the start', () => {
  for (const [name, make] of [
    ['on a line', (i: number): Raw => ({ distance: (i * 20_000) / 300, depth: -2 - Math.sin(i) })],
    [
      'off it',
      (i: number): Raw => ({ distance: (i * 20_000) / 300, offset: (i % 7) - 3, depth: -2 - Math.sin(i) }),
    ],
  ] as const)
    it(`is not there among 300 dry soundings ${name} out to 20 km, and that is told without a step at each of 400,000 places`, () => {
      const design = designOf(list(300, make), { ramp: false })
      const told = counted(makeBed(design.site))
      expect(startOf(design, told.bed).found).toBe(false)
      expect(told.asked).toBeLessThan(20_000)
    })

  it('of a ramp is sought the same way: not at half a million places off the line', () => {
    const wet = list(300, (i) => ({
      distance: (i * 20_000) / 300,
      offset: (i % 7) - 3,
      depth: 2 + Math.sin(i),
    }))
    const design = designOf(wet, { ramp: true, sections: 5 }, { crossSlope: 0.001 })
    const told = counted(makeBed(design.site))
    startOf(design, told.bed)
    expect(told.asked).toBeLessThan(60_000)
  })

  /** By the rule itself: step by step. */
  function plainly(design: Design, bed: Bed): number | null {
    const { standing } = shoreEndOf(planOf(design, shop), shop)!
    const { startStep: step, frameToBed } = shop.rules
    const under = design.dock.deckHeight - shop.shape(standing).lowest
    const { length, width } = standing
    for (let k = Math.ceil(-length / step); k <= Math.ceil((bed.lastX + length) / step); k++) {
      const x = Math.round(k * step * 1e7) / 1e7
      if (atLeast(under - bed.highest(x, x + length, -width / 2, width / 2), frameToBed)) return x
    }
    return null
  }

  it('is where the rule has it, step by step, however much is passed over', () => {
    let far = 0
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 220 }),
        fc.integer({ min: 10, max: 120 }),
        fc.constantFrom(0, 1, 4),
        fc.constantFrom(0, 0.03, -0.2),
        fc.boolean(),
        fc.infiniteStream(fc.integer({ min: 0, max: 1000 })),
        (n, wet, aside, crossSlope, wall, stream) => {
          const next = (): number => stream.next().value / 1000
          const soundings = list(n, (i) => {
            const distance = Math.round((i * 140_000) / n) / 1000
            const dry = distance < wet && next() > 0.2
            const offset = aside === 0 ? 0 : Math.round((next() - 0.5) * aside * 1000) / 1000
            return {
              distance,
              offset,
              depth: Math.round((dry ? -0.5 + next() * 0.5 : 0.3 + next()) * 1000) / 1000,
            }
          })
          const shore = wall ? { shore: { kind: 'wall', height: 0.6 } } : {}
          const design = designOf(soundings, { ramp: false }, { crossSlope, ...shore })
          const bed = makeBed(design.site)
          const { x, found } = startOf(design, bed)
          if (x > 6) far++
          expect(found ? x : null).toBe(plainly(design, bed))
        },
      ),
      { seed: 5, numRuns: 120 },
    )
    // Beyond the first hundred steps, where it passes over anything at all.
    expect(far).toBeGreaterThan(30)
  })
})

it('a ramp comes down on 20,000 soundings within its reach without looking at each of them for every step', () => {
  const design = designOf(
    list(20_000, (i) => ({ distance: -4 + i * 4e-4, depth: -0.7 + (i % 7) * 0.01 + i * 2e-5 })),
    { ramp: true, sections: 3 },
  )
  const bed = makeBed(design.site)
  const ground = groundAlong(bed, -6, 6, 0, 1.2)
  let looked = 0
  const x = new Proxy(ground.x as number[], {
    get(target, key) {
      looked++
      return Reflect.get(target, key)
    },
  })
  const shape = { length: 3, drop: 0.05, under: 0.1 }
  const rest = rampContact(shape, 2, 0.9, { ...ground, x })
  expect(rest).not.toBeNull()
  expect(looked).toBeLessThan(20_000)
  // And rests where it does when all is one block.
  const all = { x0: -6, x1: 6, z0: -9, z1: 9 }
  const plain = ground.x.map(() => all).slice(0, Math.ceil(ground.x.length / 32))
  expect(rampContact(shape, 2, 0.9, { ...ground, blocks: plain })).toEqual(rest)
})

describe('the nearest sounding', () => {
  it('is the first of the nearest, as by looking at all', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 12 })), {
          minLength: 1,
          maxLength: 200,
        }),
        fc.integer({ min: -2, max: 28 }),
        fc.integer({ min: -2, max: 28 }),
        fc.constantFrom(Number.POSITIVE_INFINITY, 4, 1),
        (places, px, py, within) => {
          const [x, y] = [0, 1].map((k) => Float64Array.from(places, (place) => place[k]!)) as [
            Float64Array,
            Float64Array,
          ]
          let [best, found] = [within, -1]
          places.forEach(([a, b], i) => {
            const d = (a - px / 2) ** 2 + (b - py / 2) ** 2
            if (d < best) [best, found] = [d, i]
          })
          expect(nearestOf(x, y)(px / 2, py / 2, within)).toBe(found)
        },
      ),
      { numRuns: 400 },
    )
  })

  it('of 4,000 is told at 1,000 places without reading each of them for each', () => {
    let read = 0
    const soundings = list(4000, (i) => ({
      distance: i * 0.01,
      offset: (i % 40) / 10,
      depth: 1,
      bottom: 'clay',
    })).map(({ distance, ...rest }) => ({
      ...rest,
      get distance() {
        read++
        return distance
      },
    }))
    const { bottomAt } = makeBed({ ...demoDesign.site, soundings } as unknown as Design['site'])
    for (let i = 0; i < 1000; i++) bottomAt(i * 0.04, 1)
    expect(read).toBeLessThan(40 * 4000)
  })
})

describe('what lies on each other', () => {
  it('is told by a thousand pairs at the most, of the two million of a heap of sections', () => {
    const heap = Array.from({ length: 2000 }, (_, i) =>
      i === 0 ? { id: 's0', on: null } : { id: `s${i}`, on: 's0', edge: 'end', with: 'start' },
    )
    const kit = deriveKit(designOf(demoDesign.site.soundings, { plan: heap }), demoCatalog)
    expect(kit.joints.overlapping.length).toBe(1000)
    expect(padsOverlap.find({ ...kit, waves: null }).length).toBe(1000)
  })

  it('is looked for among neighbors: of 2,000 legs in one row across the lake not every two are compared', () => {
    let read = 0
    const kit = deriveKit(designOf(demoDesign.site.soundings, { sections: 1000, ramp: false }), demoCatalog)
    const legs = kit.legs.map((leg) => {
      const turned = { ...leg, y: leg.x }
      Object.defineProperty(turned, 'x', {
        get: () => {
          read++
          return 0
        },
      })
      return turned
    })
    padsOverlap.find({ ...kit, legs, waves: null })
    expect(read).toBeLessThan(100 * legs.length)
  })
})

it('a thousand posts are put without asking every edge of the dock again for each', () => {
  const post = demoCatalog.extras.find(({ place }) => place === 'post')!.code
  const wide = list(6, (i) => ({ distance: i * 30, depth: i * 0.2 }))
  const plan = Array.from({ length: 400 }, (_, i) =>
    i === 0 ? { id: 's0', on: null } : { id: `s${i}`, on: `s${i - 1}`, edge: 'end', with: 'start' },
  )
  const design = designOf(wide, { plan, extras: { [post]: 1000 } })
  const kit = deriveKit(design, demoCatalog)
  let read = 0
  const legs = kit.legs.map((leg) => {
    const { pad } = leg
    return Object.defineProperty({ ...leg }, 'pad', {
      get: () => {
        read++
        return pad
      },
    })
  })
  const { layout, joints, extras } = kit
  expect(placeExtras(layout, joints, legs, kit)).toEqual(extras)
  expect(extras.placed.length).toBeGreaterThan(300)
  expect(read).toBeLessThan(100 * legs.length)
})
