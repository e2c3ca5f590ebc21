/** All of the parts list goes into the packages, nothing else does, and nothing is packed heavier than the shop carries. */

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PartKind } from '../../../rules/dock.ts'
import { type Catalog, type Dock, demoCatalog, demoDesign, parseCatalog } from '../../../rules/index.ts'
import { cartons, countCards, type Packages, type PackedItem } from '../../../rules/papers.ts'
import { PART_KINDS } from '../../../rules/part-kinds.ts'
import { anyCase } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { metricCatalog } from '../../support/catalogs.ts'
import { groupBy } from '../../support/laws/law.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_001)
const RUNS = runs(400)

const grams = (kg: number): number => Math.round(kg * 1000)
const keyOf = ({ kind, code }: { kind: string; code: string }): string => `${kind} ${code}`
const pieces = (items: readonly PackedItem[]): number =>
  items.reduce((sum, { quantity, spares }) => sum + quantity + spares, 0)
const weight = (items: readonly PackedItem[]): number =>
  items.reduce((sum, { unitMass, quantity, spares }) => sum + grams(unitMass) * (quantity + spares), 0)
const insideOf = ({ bags, items }: Packages['packages'][number]): PackedItem[] => [
  ...bags.flatMap((bag) => bag.items),
  ...items,
]

/** What a shop that states nothing goes by, written out once more. */
const BY_DEFAULT = { bag: 5, carton: 20, bundle: 23, pieces: 10 }

const seen = { docks: 0, split: 0, over: 0, bundles: 0, cartons: 0, mixed: 0 }

/** Sentences that say where the packing breaks a law. */
function faults(dock: Dock, catalog: Catalog): string[] {
  const out: string[] = []
  const say = (wrong: boolean, text: string): void => {
    if (wrong) out.push(text)
  }
  const packed = cartons(dock, catalog)
  const limits = { ...BY_DEFAULT, ...catalog.packing }
  const all = packed.packages.flatMap(insideOf)

  // The parts list, exactly, spares apart.
  const byKey = groupBy(all, keyOf)
  say(byKey.size !== dock.parts.length, `${byKey.size} kinds of parts, expected ${dock.parts.length}`)
  for (const row of dock.parts) {
    const items = byKey.get(keyOf(row)) ?? []
    const sum = (of: 'quantity' | 'spares'): number => items.reduce((total, item) => total + item[of], 0)
    say(sum('quantity') !== row.quantity, `${row.code}: ${sum('quantity')}, expected ${row.quantity}`)
    say(sum('spares') !== row.spares, `spares of ${row.code}: ${sum('spares')}, expected ${row.spares}`)
    say(
      items.some(({ name, unitMass }) => name !== row.name || unitMass !== row.unitMass),
      `${row.code} is told otherwise`,
    )
  }
  const total = dock.parts.reduce((sum, row) => sum + grams(row.unitMass) * (row.quantity + row.spares), 0)
  say(grams(packed.mass) !== total, `${packed.mass} kg in all, expected ${total / 1000}`)
  say(
    grams(packed.mass) - grams(packed.sparesMass) !== grams(dock.totals.mass),
    `without spares not ${dock.totals.mass} kg`,
  )
  say(packed.pieces !== pieces(all), `${packed.pieces} pieces, expected ${pieces(all)}`)

  packed.packages.forEach((one, i) => {
    const what = `package ${i + 1} (${one.kind})`
    const inside = insideOf(one)
    const g = weight(inside)
    seen.cartons++
    say(one.number !== i + 1, `${what} is called ${one.number}`)
    say(inside.length === 0, `${what} is empty`)
    say(grams(one.mass) !== g, `${what} weighs ${one.mass}, expected ${g / 1000}`)
    const limit = one.kind === 'loose' ? null : one.kind === 'bundle' ? limits.bundle : limits.carton
    say(one.limit !== limit, `${what} may weigh ${one.limit}, expected ${limit}`)
    const heavy = limit !== null && g > grams(limit!)
    if (heavy) seen.over++
    say(heavy && pieces(inside) > 1, `${what} weighs ${one.mass} of ${limit} with ${pieces(inside)} pieces`)
    say(one.over !== heavy, `${what}: over ${one.over}`)
    say(one.kind === 'loose' && pieces(inside) !== 1, `${what} holds ${pieces(inside)} pieces`)
    say((one.kind === 'hardware') !== one.bags.length > 0, `${what} has ${one.bags.length} bags`)
    say(one.bags.length > 0 && one.items.length > 0, `${what} has bags and loose goods`)
    if (one.kind === 'bundle') {
      seen.bundles++
      say(pieces(inside) > limits.pieces!, `${what} holds ${pieces(inside)} pieces`)
      say(new Set(inside.map(({ kind }) => kind)).size !== 1, `${what} holds several kinds`)
    }
    if (one.kind === 'goods' && one.items.length > 1) seen.mixed++
  })

  const inCartons = packed.packages.flatMap(({ bags }) => bags.map((bag) => bag.id)).sort()
  say(
    inCartons.join() !==
      packed.bags
        .map(({ id }) => id)
        .sort()
        .join(),
    'bags are not those in the cartons',
  )
  say(new Set(inCartons).size !== inCartons.length, 'two bags are called the same')
  const bagOf = new Map(dock.parts.map((row) => [keyOf(row), row.bag]))
  const most = Math.min(limits.bag!, limits.carton!)
  for (const [letter, bags] of groupBy(packed.bags, (bag) => bag.letter)) {
    if (bags.length > 1) seen.split++
    say(
      bags.some(({ n, of }, i) => n !== i + 1 || of !== bags.length),
      `bags ${letter} are not numbered`,
    )
    for (const bag of bags) {
      say(
        bag.items.some((item) => bagOf.get(keyOf(item)) !== letter),
        `bag ${bag.id} holds what is not ${letter}`,
      )
      say(grams(bag.mass) !== weight(bag.items), `bag ${bag.id} weighs ${bag.mass}`)
      const heavy = weight(bag.items) > grams(most)
      say(heavy && pieces(bag.items) > 1, `bag ${bag.id} weighs ${bag.mass} of ${most}`)
      say(bag.over !== heavy, `bag ${bag.id}: over ${bag.over}`)
      say(!packed.packages[bag.package - 1]?.bags.includes(bag), `bag ${bag.id} is not in ${bag.package}`)
    }
  }

  // Frames, legs and braces are for their own places, each once.
  const meant = (kind: string): string =>
    all
      .flatMap((item) => (item.kind === kind ? item.of : []))
      .sort()
      .join()
  const there = (ids: readonly string[]): string => [...ids].sort().join()
  say(meant('frame') !== there(dock.sections.map(({ id }) => id)), 'frames are not those of the sections')
  say(
    meant('leg') !== there(dock.legs.flatMap(({ id, code }) => (code ? [id] : []))),
    'legs are not the dock’s',
  )
  say(
    meant('brace') !== there(dock.pairs.flatMap(({ id, brace }) => (brace ? [id] : []))),
    'braces are not the pairs’',
  )
  const longest = Math.max(
    0,
    ...dock.sections.map(({ length, width }) => Math.max(length, width)),
    ...dock.legs.map(({ stock }) => stock ?? 0),
    ...dock.pairs.map(({ brace }) => brace?.stock ?? 0),
  )
  say(packed.longest < longest - 1e-6, `longest ${packed.longest}, at least ${longest}`)

  for (const { bag, rows } of countCards(dock, catalog, packed)) {
    say(rows.length !== bag.items.length, `card ${bag.id} has ${rows.length} rows`)
    rows.forEach((row, i) => {
      const item = bag.items[i]!
      const needed = dock.parts.find((part) => keyOf(part) === keyOf(row))!.quantity
      const sum = row.places.reduce((n, { count }) => n + count, 0)
      say(
        row.quantity !== item.quantity || row.spares !== item.spares,
        `card ${bag.id} counts ${row.code} otherwise`,
      )
      say(
        row.needed !== needed || sum !== needed,
        `card ${bag.id}: ${row.code} goes to ${sum} places of ${needed}`,
      )
      const bolt = catalog.hardware.find(({ kind, code }) => kind === row.kind && code === row.code)
      say(row.wrench !== (bolt?.wrench ?? null), `card ${bag.id}: wrench ${row.wrench}`)
      say(row.turns.length !== (bolt?.turns.length ?? 0), `card ${bag.id}: turns`)
    })
  }
  return out
}

/** The catalogs' own packing, and shops that carry much less or more, some less than a single piece weighs. */
const packing = fc.option(
  fc
    .record(
      {
        bag: fc.integer({ min: 1, max: 90 }).map((n) => n / 10),
        carton: fc.integer({ min: 4, max: 400 }).map((n) => n / 10),
        bundle: fc.integer({ min: 20, max: 600 }).map((n) => n / 10),
        pieces: fc.integer({ min: 1, max: 30 }),
        long: fc.integer({ min: 2, max: 30 }).map((n) => n / 10),
        bundled: fc.constantFrom<PartKind[]>([], ['leg'], ['foot-pad', 'leg', 'brace']),
        loose: fc.constantFrom<PartKind[]>([], ['frame'], ['frame', 'deck-panel']),
      },
      { requiredKeys: [] },
    )
    .map((stated) => stated as NonNullable<Catalog['packing']>),
)

describe(`packing (seed ${SEED}, ${RUNS} docks)`, () => {
  it('holds the parts list exactly, and no carton, bag or bundle over its limit unless a single piece is', () => {
    fc.assert(
      fc.property(anyCase, packing, ({ design, catalog }, stated) => {
        seen.docks++
        const dock = deriveAtOnce(design, catalog)
        expect(faults(dock, stated === null ? catalog : { ...catalog, packing: stated })).toEqual([])
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  it('was looked at where it is hard: bags that split, single pieces over a limit, cartons of several goods', () => {
    expect(seen.docks).toBeGreaterThanOrEqual(RUNS)
    expect(seen.split / seen.docks).toBeGreaterThan(0.2)
    expect(seen.over / seen.docks).toBeGreaterThan(0.2)
    expect(seen.bundles / seen.docks).toBeGreaterThan(1)
    expect(seen.mixed / seen.docks).toBeGreaterThan(0.2)
  })

  it('is told to be wrong where a piece is missing, one too many, or a carton too heavy', () => {
    const dock = deriveAtOnce(demoDesign, demoCatalog)
    expect(faults(dock, demoCatalog)).toEqual([])
    const more = {
      ...dock,
      parts: dock.parts.map((row, i) => (i === 3 ? { ...row, quantity: row.quantity + 1 } : row)),
    }
    expect(faults(more, demoCatalog)).not.toEqual([])
    const light = { ...demoCatalog, packing: { ...demoCatalog.packing, carton: 10 } }
    const stale = cartons(dock, demoCatalog).packages.filter(
      ({ kind, mass }) => kind === 'goods' && mass > 10,
    )
    expect(stale.length).toBeGreaterThan(0)
    expect(cartons(dock, light).packages.filter(({ kind, mass }) => kind === 'goods' && mass > 10)).toEqual(
      [],
    )
  })
})

describe('the demo dock', () => {
  const dock = deriveAtOnce(demoDesign, demoCatalog)
  const packed = cartons(dock, demoCatalog)

  // Ten foot pads, four bumpers of 1.4 kg, two augers of 3.1 kg; posts and the hinge bar go with the long goods.
  it('has all its hardware in one carton, its goods in two', () => {
    expect(packed.packages.filter(({ kind }) => kind === 'hardware')).toHaveLength(1)
    expect(packed.packages.filter(({ kind }) => kind === 'goods')).toHaveLength(2)
    expect(packed.bags.map(({ id }) => id)).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'])
  })

  it('has five frames, each by itself and for its section in the order of work', () => {
    const frames = packed.packages.filter(({ kind }) => kind === 'loose')
    expect(frames.map(({ items }) => items[0]!.of)).toEqual(dock.workOrder.map((id) => [id]))
  })

  it('tells the set bolts’ card: 20 and 1, two to a leg, the 3/4 in wrench, 3/4 of a turn', () => {
    const [card] = countCards(dock, demoCatalog)
    expect(card!.rows).toHaveLength(1)
    expect(card!.rows[0]).toMatchObject({ quantity: 20, spares: 1, wrench: '3/4 in', needed: 20 })
    // Four legs on the standing section, two on each of three that follow, two set bolts to a leg; none on the ramp.
    expect(card!.rows[0]!.places).toEqual([
      { section: 's2', count: 8 },
      { section: 's3', count: 4 },
      { section: 's4', count: 4 },
      { section: 's5', count: 4 },
    ])
    expect(card!.rows[0]!.turns.map(({ say }) => say.values.from!.value)).toEqual(['3/4'])
  })
})

describe('a catalog’s packing', () => {
  it.each([
    ['packing.bundled[0]', { bundled: ['legs'] }],
    ['packing.carton', { carton: 0 }],
    ['packing.pieces', { pieces: 0 }],
    ['packing.pieces', { pieces: 1.5 }],
  ])('that is wrong at %s is told so', (path, packing) => {
    const parsed = parseCatalog({ ...demoCatalog, packing })
    expect(parsed.ok ? [] : parsed.issues.map((issue) => issue.path)).toEqual([path])
  })

  it('may name every kind of part', () => {
    const packing = { loose: Object.keys(PART_KINDS) }
    expect(parseCatalog({ ...demoCatalog, packing }).ok).toBe(true)
  })

  it('sells no service twice under one code', () => {
    const services = [demoCatalog.services![0]!, demoCatalog.services![0]!]
    const parsed = parseCatalog({ ...demoCatalog, services })
    expect(parsed.ok ? [] : parsed.issues.map((issue) => issue.path)).toEqual(['services[1].code'])
  })
})

describe('a shop that carries less', () => {
  it('packs the same dock in more cartons', () => {
    const design = {
      ...demoDesign,
      dock: { ...demoDesign.dock, frame: metricCatalog.frames[0]!.code, extras: {} },
    }
    const dock = deriveAtOnce(design, metricCatalog)
    const { packing: _stated, ...silent } = metricCatalog
    const one = cartons(dock, metricCatalog)
    expect(one.packages.length).toBeGreaterThan(cartons(dock, silent).packages.length)
  })
})
