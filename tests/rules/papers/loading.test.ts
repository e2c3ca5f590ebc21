/** Loading order and kits by section, on random docks of both shops. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessKit, type Catalog, demoCatalog, demoDesign, deriveKit } from '../../../rules/index.ts'
import { runsOf } from '../../../rules/papers/loading.ts'
import { cartons, countCards, loading } from '../../../rules/papers.ts'
import { anyCase } from '../../support/arbitraries.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_009)
const RUNS = runs(60)

describe(`packages (seed ${SEED}, ${RUNS} docks)`, () => {
  it('are loaded each once, and a section’s frame and legs never before those of a later one', () => {
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const dock = assessKit(deriveKit(design, catalog))
        const packed = cartons(dock, catalog)
        const steps = loading(dock, packed)
        const order = steps.flatMap(({ packages }) => packages)
        expect([...order].sort((a, b) => a - b)).toEqual(packed.packages.map(({ number }) => number))
        const placeOf = new Map(order.map((number, i) => [number, i]))
        // Frames go each by itself: the one that is put down first comes off first.
        const frames = dock.workOrder.map((id) =>
          packed.packages.find(({ items }) =>
            items.some(({ kind, of }) => kind === 'frame' && of.includes(id)),
          ),
        )
        frames.forEach((one, i) => {
          const next = frames[i + 1]
          if (one && next && one !== next)
            expect(placeOf.get(one.number)).toBeGreaterThan(placeOf.get(next.number)!)
        })
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  it('have kits by section where the shop wants them: each holds what its section takes, spares apart, and nothing is lost', () => {
    let kits = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog: shop }) => {
        const catalog: Catalog = { ...shop, packing: { ...shop.packing, kits: true } }
        const dock = assessKit(deriveKit(design, catalog))
        const [by, plain] = [cartons(dock, catalog), cartons(dock, shop)]
        const sums = (of: typeof by): [string, number, number][] => {
          const all = new Map<string, [number, number]>()
          for (const { items, bags } of of.packages)
            for (const { code, kind, quantity, spares } of [...items, ...bags.flatMap((bag) => bag.items)]) {
              const key = `${kind} ${code}`
              const [q, s] = all.get(key) ?? [0, 0]
              all.set(key, [q + quantity, s + spares])
            }
          return [...all].map(([key, [q, s]]): [string, number, number] => [key, q, s]).sort()
        }
        expect(sums(by)).toEqual(sums(plain))
        expect(by.mass).toBe(plain.mass)
        for (const bag of by.bags) {
          if (bag.section === null) {
            expect(bag.letter).toBe('+')
            for (const { quantity } of bag.items) expect(quantity).toBe(0)
            continue
          }
          kits++
          expect(bag.letter).toBe(bag.section)
          for (const { kind, code, spares } of bag.items) {
            expect(spares).toBe(0)
            const there = dock.placements.filter(
              (one) => one.kind === kind && one.code === code && one.section === bag.section,
            ).length
            const inKits = by.bags
              .filter(({ section }) => section === bag.section)
              .flatMap(({ items }) => items)
              .reduce((sum, item) => sum + (item.kind === kind && item.code === code ? item.quantity : 0), 0)
            expect(inKits).toBe(there)
          }
        }
        expect(countCards(dock, catalog, by)).toHaveLength(by.bags.length)
      }),
      { seed: SEED, numRuns: RUNS },
    )
    expect(kits).toBeGreaterThan(RUNS)
  })
})

describe('the demo dock', () => {
  const dock = assessKit(deriveKit(demoDesign, demoCatalog))
  it('loads its outermost section first, and last what stands first', () => {
    expect(loading(dock, cartons(dock, demoCatalog)).map(({ section }) => section)).toEqual([
      's5',
      's4',
      's3',
      's1',
      's2',
    ])
  })
})

it.each([
  [[3, 1, 2], '1–3'],
  [[7], '7'],
  [[1, 2, 4, 6, 7], '1–2, 4, 6–7'],
] as const)('packages %j are told as %s', (numbers, told) => expect(runsOf(numbers)).toBe(told))
