/** A dock that is there already: which of its parts are used where, what is new, what is left over. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { existingFrom, partsOfDesign } from '../../rules/existing/from-parts.ts'
import { giveLegs, type LegPlace } from '../../rules/existing/give-legs.ts'
import type { ExistingParts } from '../../rules/existing/owned.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  derive,
  deriveKit,
  parseDesign,
  publishKit,
} from '../../rules/index.ts'
import { packingList, rowsOfList } from '../../rules/papers/packing-list.ts'
import { cartons, quote } from '../../rules/papers.ts'
import { anyCase } from '../support/arbitraries.ts'
import { placedDock } from '../support/placed-dock.ts'
import { runs } from '../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_713)
const FT = 0.3048

const owning = (existing: ExistingParts, design: Design = demoDesign): Design => {
  const parsed = parseDesign({ ...design, dock: { ...design.dock, existing } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}
const demoOwning = (existing: ExistingParts) => placedDock(owning(existing), demoCatalog)
const lengthsOf = (dock: { legs: readonly { stock: number | null }[] }) =>
  dock.legs.map(({ stock }) => Math.round(stock! / FT))

describe('the legs that are there already', () => {
  // With its deck at 0.55 m the demo's legs are, pair by pair, 3, 4, 5, 6 and 7 ft. One size longer stands 2 ft (the limit) and more over the
  // deck but at the first and the third pair; from 5 ft on a leg is braced.
  const deck: Design = { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.55 } }
  const standing = (legs: ExistingParts['legs']) => placedDock(owning({ legs }, deck), demoCatalog)

  it('stand where they fit: as chosen, and longer where that is no trouble', () => {
    const dock = standing([
      { stock: 4 * FT, count: 3 },
      { stock: 6 * FT, count: 3 },
    ])
    expect(lengthsOf(dock)).toEqual([4, 3, 4, 4, 6, 5, 6, 6, 7, 7])
    expect(dock.existing!.used).toEqual([
      {
        kind: 'leg',
        code: 'leg-4',
        name: 'Leg 4 ft',
        quantity: 3,
        of: ['s2.start.left', 's2.end.left', 's2.end.right'],
      },
      {
        kind: 'leg',
        code: 'leg-6',
        name: 'Leg 6 ft',
        quantity: 3,
        of: ['s3.end.left', 's4.end.left', 's4.end.right'],
      },
    ])
    expect(dock.existing!.left).toEqual([])
  })
  it('do not stand where they would be far over the deck, or ask for a brace that the rule does not', () => {
    const dock = standing([
      { stock: 5 * FT, count: 4 },
      { stock: 8 * FT, count: 2 },
    ])
    expect(lengthsOf(dock)).toEqual([3, 3, 4, 4, 5, 5, 6, 6, 7, 7])
    expect(dock.existing!.left.map(({ code, quantity }) => [code, quantity])).toEqual([
      ['leg-5', 2],
      ['leg-8', 2],
    ])
    expect(dock.pairs.map(({ needsBrace }) => needsBrace)).toEqual([false, false, true, true, true])
  })
  it('are told in the reasons where one is longer than the rule’s choice', () => {
    const dock = standing([{ stock: 6 * FT, count: 3 }])
    const told = dock.legs.filter(({ id }) =>
      dock.reasons.legs[id]!.some(({ rule }) => rule === 'length-owned'),
    )
    expect(told.map(({ id }) => id)).toEqual(['s3.end.left'])
    expect(dock.findings.map(({ code }) => code)).not.toContain('leg-tall-above-deck')
  })
  it('are used for a leg whose length was set by hand only where it is that length', () => {
    const design = owning(
      { legs: [{ stock: 8 * FT, count: 2 }] },
      {
        ...demoDesign,
        dock: {
          ...demoDesign.dock,
          overrides: { 's5.end.left': { stock: 7 * FT }, 's5.end.right': { stock: 8 * FT } },
        },
      },
    )
    const dock = placedDock(design, demoCatalog)
    expect(dock.existing!.used.map(({ of }) => of)).toEqual([['s5.end.right']])
    expect(dock.existing!.left.map(({ code, quantity }) => [code, quantity])).toEqual([['leg-8', 1]])
  })
})

/** Every way to give legs to places, one by one: how many are used at the most, and with those the least sum of length over what is asked. */
function bruteForce(places: readonly LegPlace[], stock: readonly number[]): [number, number] {
  let best: [number, number] = [-1, 0]
  const left = [...stock]
  const go = (i: number, used: number, over: number): void => {
    if (i === places.length) {
      if (used > best[0] || (used === best[0] && over < best[1])) best = [used, over]
      return
    }
    go(i + 1, used, over)
    for (let k = places[i]!.least; k <= places[i]!.most; k++)
      if (left[k]! > 0) {
        left[k]!--
        go(i + 1, used + 1, over + k - places[i]!.least)
        left[k]!++
      }
  }
  go(0, 0, 0)
  return best
}

describe('giving legs', () => {
  const LENGTHS = 6
  const place = fc
    .tuple(fc.nat({ max: LENGTHS - 1 }), fc.nat({ max: 4 }))
    .map(([least, more]): LegPlace => ({ least, most: Math.min(LENGTHS - 1, least + more) }))

  it(`uses as many as can be, with the least over, as every way tried tells (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        fc.array(place, { maxLength: 7 }),
        fc.array(fc.nat({ max: 2 }), { minLength: LENGTHS, maxLength: LENGTHS }),
        (places, stock) => {
          const given = giveLegs(places, stock)
          const used = given.filter((k) => k >= 0)
          for (const [i, k] of given.entries())
            if (k >= 0) expect(k >= places[i]!.least && k <= places[i]!.most).toBe(true)
          for (const [k, n] of stock.entries())
            expect(used.filter((one) => one === k).length).toBeLessThanOrEqual(n)
          const over = given.reduce((sum, k, i) => sum + (k < 0 ? 0 : k - places[i]!.least), 0)
          expect([used.length, over]).toEqual(bruteForce(places, stock))
        },
      ),
      { seed: SEED, numRuns: runs(2000) },
    )
  })
})

describe('all else that is there', () => {
  it('is counted by code: used, left over, unknown to the catalog; only the rest is new', () => {
    const dock = demoOwning({
      sections: { '4x8': 3, '5x8': 1 },
      braces: { 'brace-42': 5, gone: 2 },
      pads: { 'pad-7x16': 10 },
      legs: [{ stock: 1.5, count: 2 }],
      other: { 'hinge-pin': { 'hinge-pin': 1 }, sail: { big: 1 } },
    })
    const { used, left, new: fresh, price } = dock.existing!
    expect(used.map(({ code, quantity, of }) => [code, quantity, of])).toEqual([
      // The first standing section, the ramp, then outward.
      ['4x8', 3, ['s2', 's1', 's3']],
      ['brace-42', 2, ['s3.end', 's4.end']],
      ['pad-7x16', 10, []],
      ['hinge-pin', 1, []],
    ])
    expect(left).toEqual([
      { kind: 'frame', code: '5x8', name: expect.any(String), quantity: 1, known: true },
      { kind: 'brace', code: 'brace-42', name: expect.any(String), quantity: 3, known: true },
      { kind: 'brace', code: 'gone', name: 'gone', quantity: 2, known: false },
      { kind: 'leg', code: '', name: '', length: 1.5, quantity: 2, known: false },
      { kind: 'sail', code: 'big', name: 'big', quantity: 1, known: false },
    ])
    expect(fresh.find(({ code }) => code === '4x8')).toMatchObject({ quantity: 2 })
    expect(fresh.some(({ code }) => code === 'pad-7x16')).toBe(false)
    const priceOf = (code: string) => dock.parts.find((row) => row.code === code)!.unitPrice
    expect(dock.totals.price - price).toBe(
      3 * priceOf('4x8') + 2 * priceOf('brace-42') + 10 * priceOf('pad-7x16') + priceOf('hinge-pin'),
    )
  })
  it('is nothing where the design says nothing, and nothing of the dock is another', () => {
    const { existing, fingerprint: _, ...rest } = placedDock(demoDesign, demoCatalog)
    expect(existing).toBe(null)
    const { existing: none, fingerprint: __, ...same } = demoOwning({})
    expect(none).toMatchObject({ used: [], left: [], price: rest.totals.price })
    expect(same).toEqual(rest)
  })
  it('is used where a plan mixes frames of two kinds', () => {
    const plan = [
      { id: 'a', on: null, along: 0 },
      { id: 'b', on: 'a', edge: 'end', with: 'start', along: 0, frame: '5x8' },
      { id: 'c', on: 'b', edge: 'end', with: 'start', along: 0 },
    ] as const
    const { sections: _, ramp: __, head: ___, ...dock } = demoDesign.dock
    const design = owning({ sections: { '5x8': 2 } }, {
      ...demoDesign,
      dock: { ...dock, plan: [...plan] },
    } as Design)
    const { used, left } = placedDock(design, demoCatalog).existing!
    expect(used).toMatchObject([{ code: '5x8', quantity: 1, of: ['b'] }])
    expect(left).toMatchObject([{ code: '5x8', quantity: 1 }])
  })
})

describe('a dock there already, from a file of it', () => {
  const longer: Design = { ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } }

  it('is all that an older design or its list is made of', () => {
    const fromDesign = existingFrom(partsOfDesign(demoDesign, demoCatalog), demoCatalog)
    const list = rowsOfList(
      JSON.parse(JSON.stringify(packingList(derive(demoDesign, demoCatalog), demoCatalog))),
    )
    expect(list.ok && existingFrom(list.value, demoCatalog)).toEqual(fromDesign)
    const again = placedDock(owning(fromDesign), demoCatalog)
    expect(again.existing).toMatchObject({ left: [], new: [], mass: 0, price: 0 })
  })
  it('keeps what was left over of one before it, on either way', () => {
    const existing = { sections: { '4x8': 7, old: 1 }, legs: [{ stock: 1.5, count: 2 }] }
    const grown = owning(existing, longer)
    const list = rowsOfList(JSON.parse(JSON.stringify(packingList(derive(grown, demoCatalog), demoCatalog))))
    const all = existingFrom(partsOfDesign(grown, demoCatalog), demoCatalog)
    expect(list.ok && existingFrom(list.value, demoCatalog)).toEqual(all)
    expect(all.sections).toEqual({ '4x8': 7, old: 1 })
    expect(all.legs).toContainEqual({ stock: 1.5, count: 2 })
  })
  it('is not packed again, and costs nothing in a quote', () => {
    const design = owning(existingFrom(partsOfDesign(demoDesign, demoCatalog), demoCatalog), longer)
    const dock = derive(design, demoCatalog)
    const frames = cartons(dock, demoCatalog).packages.flatMap(({ items }) =>
      items.filter(({ kind }) => kind === 'frame'),
    )
    expect(frames.map(({ quantity, of }) => [quantity, of])).toEqual([[1, ['s6']]])
    const made = quote(dock, design, demoCatalog, { date: '2026-03-01' })
    expect(made.goods).toBe(dock.existing!.price)
    const owned = made.lines.filter(({ group }) => group === 'owned')
    expect(owned.map(({ code, quantity, amount }) => [code, quantity, amount])).toEqual(
      dock.existing!.used.map(({ code, quantity }) => [code, quantity, 0]),
    )
  })
})

describe(`every dock with something there already (seed ${SEED})`, () => {
  const count = fc.nat({ max: 12 })
  it('uses nothing twice, needs what is used and new, and costs no more than all', () => {
    let helped = 0
    let tried = 0
    fc.assert(
      fc.property(
        anyCase,
        fc.array(count, { minLength: 40, maxLength: 40 }),
        fc.boolean(),
        ({ design, catalog }, counts, wild) => {
          let i = 0
          const next = (): number => counts[i++ % counts.length]!
          const table = (items: readonly { code: string }[]) =>
            Object.fromEntries(items.map(({ code }) => [code, next()]))
          const existing: ExistingParts = {
            sections: table(catalog.frames),
            legs: catalog.legs.map(({ length }) => ({ stock: length, count: next() })),
            braces: table(catalog.braces),
            ...(wild && { pads: table(catalog.pads), other: { sail: { big: 1 } } }),
          }
          const dock = publishKit(deriveKit(owning(existing, design), catalog))
          const { used, left, new: fresh, price, mass } = dock.existing!
          const at = (
            rows: readonly { kind: string; code: string; quantity: number }[],
            kind: string,
            code: string,
          ) =>
            rows
              .filter((row) => row.kind === kind && row.code === code)
              .reduce((sum, row) => sum + row.quantity, 0)
          for (const { kind, code, quantity } of dock.parts)
            expect(at(used, kind, code) + at(fresh, kind, code)).toBe(quantity)
          const owned: [string, string, number][] = [
            ...Object.entries(existing.sections!).map(
              ([code, n]) => ['frame', code, n] as [string, string, number],
            ),
            ...catalog.legs.map(
              ({ code }, k) => ['leg', code, existing.legs![k]!.count] as [string, string, number],
            ),
            ...Object.entries(existing.braces!).map(
              ([code, n]) => ['brace', code, n] as [string, string, number],
            ),
          ]
          for (const [kind, code, n] of owned) {
            expect(at(used, kind, code) + at(left, kind, code)).toBe(n)
            const of = used.find((row) => row.kind === kind && row.code === code)?.of ?? []
            expect(of.length).toBe(at(used, kind, code))
            expect(new Set(of).size).toBe(of.length)
          }
          expect(price).toBeLessThanOrEqual(dock.totals.price)
          expect(mass).toBeLessThanOrEqual(dock.totals.mass)
          // As few new legs as with the rule's lengths, and no leg shorter than needed or too far over the deck for it.
          const plain = publishKit(deriveKit(design, catalog))
          dock.legs.forEach((leg, k) => {
            const ruled = plain.legs[k]!
            if (ruled.stock === null) expect(leg.stock).toBe(null)
            else if (leg.stock !== ruled.stock) {
              helped++
              expect(leg.stock!).toBeGreaterThan(ruled.stock)
              expect(leg.aboveDeck!).toBeLessThanOrEqual(catalog.rules.aboveDeckMax.value + 2e-6)
              expect(used.some(({ kind, of }) => kind === 'leg' && of.includes(leg.id))).toBe(true)
            }
          })
          const placed = plain.legs.filter(({ stock }) => stock !== null)
          if (placed.length <= 8) {
            tried++
            const lengths = catalog.legs.map(({ length }) => length).sort((a, b) => a - b)
            const { aboveDeckMax, braceFrom } = catalog.rules
            const byHand = new Set(Object.keys(design.dock.overrides ?? {}))
            const places = placed.map(({ id, stock, aboveDeck }): LegPlace => {
              const bears = (length: number): boolean =>
                aboveDeck! + length - stock! <= aboveDeckMax.value + 1e-6 &&
                (stock! >= braceFrom.value - 1e-6 || length < braceFrom.value - 1e-6)
              const least = lengths.indexOf(stock!)
              let most = least
              while (!byHand.has(id) && most + 1 < lengths.length && bears(lengths[most + 1]!)) most++
              return { least, most }
            })
            const stock = lengths.map((length) =>
              catalog.legs.reduce(
                (n, leg, k) => n + (leg.length === length ? existing.legs![k]!.count : 0),
                0,
              ),
            )
            const over = placed.reduce((sum, { id, stock }) => {
              const now = dock.legs.find((leg) => leg.id === id)!
              return sum + lengths.indexOf(now.stock!) - lengths.indexOf(stock!)
            }, 0)
            const n = used.filter(({ kind }) => kind === 'leg').reduce((sum, row) => sum + row.quantity, 0)
            expect([n, over]).toEqual(bruteForce(places, stock))
          }
          const byCode = (parts: typeof plain.parts) =>
            parts
              .filter(({ kind }) => kind === 'leg')
              .reduce(
                (sum, row) =>
                  sum +
                  Math.max(
                    0,
                    row.quantity -
                      (owned.find(([kind, code]) => kind === 'leg' && code === row.code)?.[2] ?? 0),
                  ),
                0,
              )
          expect(
            fresh.filter(({ kind }) => kind === 'leg').reduce((sum, row) => sum + row.quantity, 0),
          ).toBeLessThanOrEqual(byCode(plain.parts))
        },
      ),
      { seed: SEED, numRuns: runs(250) },
    )
    expect(tried).toBeGreaterThan(runs(30))
    expect(helped).toBeGreaterThan(runs(10))
  })
})
