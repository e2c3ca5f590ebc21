/** The dock of least cost for a boat's draught: the same as working out every dock of the space to the end. */
import { describe, expect, it } from 'vitest'
import { assess, type Design, demoCatalog, demoDesign, deriveKit } from '../../rules/index.ts'
import { amountOf } from '../../src/panel/price.ts'
import { verdictOf } from '../../src/panel/verdict.ts'
import { type DepthWish, searchDepth } from '../../src/parameters/depth-search/search.ts'
import { parsed } from '../support/by-hand.ts'

const WISH: DepthWish = { draught: 0.6, under: 0.15, length: 4, side: 'right' }
const catalog = { ...demoCatalog, frames: demoCatalog.frames.slice(0, 2) }
const on = (slope: number, more: Partial<Design['site']> = {}): Design =>
  parsed({
    ...demoDesign,
    site: {
      ...demoDesign.site,
      soundings: [-4, 0, 5, 10, 15, 20].map((distance) => ({ distance, offset: 0, depth: slope * distance })),
      levels: { low: -0.2, high: 0.15 },
      ...more,
    },
  })

function finish<T>(steps: Generator<unknown, T>): { readonly value: T; readonly count: number } {
  for (let count = 0; ; count++) {
    const step = steps.next()
    if (step.done) return { value: step.value, count }
  }
}

/** Each dock by itself, in no order: none is left out because another was found. */
function bruteForce(
  design: Design,
  slope: number,
  decks: readonly number[],
  most: number,
): { price: number; own: number; count: number } {
  const ok: { readonly price: number; readonly own: boolean }[] = []
  const inHand = JSON.stringify(design.dock.head)
  let count = 0
  for (const { code: frame } of catalog.frames)
    for (const head of [
      { shape: 'straight', sections: 0 },
      { shape: 'left', sections: 1 },
      { shape: 'tee', sections: 2 },
    ] as const)
      for (const deckHeight of decks)
        for (let sections = 2; sections <= most; sections++) {
          count++
          const { placed: _, overrides: __, bracing: ___, ...dock } = design.dock
          const one = parsed({ ...design, dock: { ...dock, frame, head, deckHeight, sections } })
          const found = assess(deriveKit(one, catalog), { remedies: false })
          const high = design.site.levels.high + catalog.rules.deckOverHigh.value
          if (found.structure === null || verdictOf(found).toFix.length > 0 || deckHeight < high - 1e-6)
            continue
          // The boat lies beside the middle of the section farthest out, of several the one most to the right.
          const placedAt = found.sections
            .filter(({ role }) => role !== 'ramp')
            .map((s) => {
              const [c, sine] = [Math.cos((s.heading * Math.PI) / 180), Math.sin((s.heading * Math.PI) / 180)]
              const end = s.x + Math.max(0, c) * s.length + (Math.abs(sine) * s.width) / 2
              return {
                end: Math.round(end * 1e4),
                middle: s.x + (c * s.length) / 2,
                y: s.y + (sine * s.length) / 2,
              }
            })
            .sort((a, b) => b.end - a.end || a.y - b.y)
          const depth = slope * (placedAt[0]!.middle - WISH.length / 2) + Math.min(0, design.site.levels.low)
          if (depth < WISH.draught + WISH.under - 1e-6) continue
          ok.push({ price: amountOf(found, catalog), own: JSON.stringify(head) === inHand })
        }
  const least = (of: typeof ok): number => Math.min(...of.map(({ price }) => price))
  return { price: least(ok), own: least(ok.filter(({ own }) => own)), count }
}

describe('the least dock', () => {
  it.each([
    ['an even bed, straight in hand', 0.1, [0.45], 7, { shape: 'straight', sections: 0 }],
    ['a steeper one, two deck heights, an L in hand', 0.16, [0.3, 0.5], 5, { shape: 'left', sections: 1 }],
    ['the same, a T in hand', 0.16, [0.5], 5, { shape: 'tee', sections: 2 }],
  ] as const)(
    'of %s costs as much as that of brute force, of all and of that shape, and less is worked out',
    (_, slope, decks, most, head) => {
      const any = on(slope)
      const design = parsed({ ...any, dock: { ...any.dock, head } })
      const { value: found, count } = finish(searchDepth(design, catalog, WISH, decks))
      const brute = bruteForce(design, slope, decks, most)
      expect(found!.best!.price).toBe(brute.price)
      expect(found!.best!.found).toBe('stands')
      expect(found!.best!.depth).toBeGreaterThanOrEqual(WISH.draught + WISH.under - 1e-6)
      expect(found!.own!.price).toBe(brute.own)
      expect(found!.own).toMatchObject({ found: 'stands', head })
      if (head.shape === 'straight') expect(found!.own).toBe(found!.best)
      else expect(found!.own!.price).toBeGreaterThan(found!.best!.price)
      const worked = found!.all.filter((one) => one.found === 'stands' || one.found === 'fix')
      expect(worked.length).toBeLessThan(brute.count)
      expect(count).toBeGreaterThan(found!.all.length)
      // What was not worked out is dearer: than the least of all, and than the least of its shape.
      for (const one of found!.all)
        if (one.found === null) {
          expect(one.price).toBeGreaterThanOrEqual(found!.best!.price)
          if (one.head.shape === head.shape) expect(one.price).toBeGreaterThanOrEqual(found!.own!.price)
        }
    },
    // A hundred docks are worked out to the end.
    240_000,
  )

  it('tries an L to the side of the one in hand, and a head of more sections as it is', () => {
    const any = on(0.16)
    const headsOf = (head: Design['dock']['head']) => {
      const design = parsed({ ...any, dock: { ...any.dock, head } })
      const { value } = finish(searchDepth(design, catalog, WISH, [0.2]))
      return [...new Set(value!.all.map((one) => `${one.head.shape} ${one.head.sections}`))].sort()
    }
    expect(headsOf({ shape: 'right', sections: 1 })).toEqual(['right 1', 'straight 0', 'tee 2'])
    expect(headsOf({ shape: 'tee', sections: 4 })).toEqual(['left 1', 'straight 0', 'tee 2', 'tee 4'])
  })

  it('of the shape in hand that needs most is the one with least to fix, where none does it all', () => {
    const any = on(0.16)
    const design = parsed({
      ...any,
      dock: { ...any.dock, head: { shape: 'left', sections: 1 }, bracing: undefined },
      site: { ...any.site, wind: { speed: 70, fetch: 40_000, depth: 30, from: 45 } },
    })
    const { value: found } = finish(searchDepth(design, catalog, WISH, [0.5]))
    const worked = found!.all.filter((one) => one.found === 'fix' && one.head.shape === 'left')
    expect(worked.length).toBeGreaterThan(0)
    expect(found!.own).toMatchObject({ found: 'fix', head: { shape: 'left' } })
    for (const one of worked) expect(one.fixes).toBeGreaterThanOrEqual(found!.own!.fixes)
  })

  it('is none where the lake is nowhere so deep, and all that was tried is told', () => {
    const shallow = on(0.1, {
      soundings: [-4, 0, 5, 10, 40].map((distance) => ({
        distance,
        offset: 0,
        depth: distance < 0 ? 0.1 * distance : Math.min(0.1 * distance, 0.5),
      })),
    })
    const { value: found } = finish(searchDepth(shallow, catalog, WISH, [0.45]))
    expect(found!.best).toBe(null)
    expect(found!.all.length).toBeGreaterThan(50)
    expect(new Set(found!.all.map((one) => one.found))).toEqual(new Set(['shallow']))
  })

  it('has no deck under the high level and the shop’s margin', () => {
    const { value: found } = finish(searchDepth(on(0.16), catalog, WISH, [0.2]))
    expect(found!.best).toBe(null)
    expect(found!.all.some((one) => one.found === 'low')).toBe(true)
  })

  it('leaves a plan of one’s own alone', () => {
    const { sections: _, head: __, ramp: ___, ...dock } = demoDesign.dock as Design['dock']
    const own = parsed({ ...demoDesign, dock: { ...dock, plan: [{ id: 's1', on: null }] } })
    expect(finish(searchDepth(own, catalog, WISH, [0.45])).value).toBe(null)
  })
})
