/**
 * Lengthwise braces worked by hand, on the demo shop with such for sale, over a level bed 29 in deep with the deck 21 in up: legs, pads and
 * braces across as in `plan/worked-shapes.test.ts`. Underside 0.3556, bed −0.7366, pad's top −0.65405, half a clamp 0.0254; braces across
 * have their holes at −0.439930 and 0.058930, low ends by turns.
 *
 * Two sections that hang together have their legs 2.4638 apart, 2.3622 between the holes. along-102 rises sqrt(2.5908² − 2.3622²) = 1.064075:
 * with half a clamp at each end, 0.0508 under the frame and 0.0254 over the pad, 0.08255 over the bed, that asks for 1.273625 of the 1.0922
 * between underside and bed. along-96 rises sqrt(2.4384² − 2.3622²) = 0.604819: midway (−0.1905) its holes are at −0.492909 and 0.111909.
 * Two clamps on one leg are 0.0254 + 0.0254 + 0.0254 = 0.0762 apart at least.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boatsByBraces } from '../../rules/clearance/boats-by-braces.ts'
import { clearances } from '../../rules/clearance/clearance.ts'
import { demoCatalog, deriveKit, findingText, parseCatalog } from '../../rules/index.ts'
import { publishKit } from '../../rules/publish-kit.ts'
import { alongCatalog, askedAlong } from '../support/along-shop.ts'
import { anyCase } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { type BraceRow, expectBraces, parsed } from '../support/by-hand.ts'
import { runs } from '../support/runs.ts'
import { validate } from '../support/validate.ts'
import { overLevelBed } from '../support/worked-designs.ts'

const designOf = (dock: object) => parsed(overLevelBed(dock))

/** Across, low ends in turn from the left. */
const across = (...pairs: string[]): BraceRow[] =>
  pairs.map((pair, i) => [
    pair,
    'brace-42',
    0.498861,
    `${pair}.${i % 2 === 0 ? 'left' : 'right'}`,
    -0.43993,
    0.05893,
    0.18872,
    0.27127,
  ])

/** What hangs between the same two clamps: under the frame 0.3556 − high − 0.0254, over the pad low − 0.0254 + 0.65405. */
const along = (pair: string, code: string, rise: number, low: string, lowZ: number): BraceRow => [
  pair,
  code,
  rise,
  low,
  lowZ,
  lowZ + rise,
  lowZ - 0.0254 + 0.65405,
  0.3556 - (lowZ + rise) - 0.0254,
]

/** Midway, where the clamps across are in nobody's way. */
const MIDWAY = -0.492909
/** Up from the clamp across that its low end would meet: −0.439930 + 0.0762; its high end, 0.182158 over the other one, is clear of it. */
const OVER = -0.36373
/** Down from it: −0.439930 − 0.0762. */
const UNDER = -0.51613

const made = (dock: object) => {
  const asked = designOf(dock)
  const dockMade = deriveAtOnce(asked, alongCatalog)
  expect(validate(dockMade, asked, alongCatalog)).toEqual([])
  expect(dockMade.findings.filter(({ severity }) => severity === 'stop')).toEqual([])
  return dockMade
}

/** Quantities by code of what braces are fixed with, what they cost together in cents, and weigh, kg. */
function more(dock: ReturnType<typeof made>, bare: ReturnType<typeof made>) {
  const count = ({ parts }: typeof dock, code: string) =>
    parts.find((row) => row.code === code)?.quantity ?? 0
  const codes = new Set([...dock.parts, ...bare.parts].map(({ code }) => code))
  return {
    parts: Object.fromEntries(
      [...codes].flatMap((code) => {
        const by = count(dock, code) - count(bare, code)
        return by === 0 ? [] : [[code, by]]
      }),
    ),
    price: dock.totals.price - bare.totals.price,
    mass: Math.round((dock.totals.mass - bare.totals.mass) * 1000),
  }
}

describe('four sections in a row', () => {
  const run = ['s1.start', 's1.end', 's2.end', 's3.end', 's4.end']
  const bare = made({ sections: 4 })

  it('have none unless they are asked for', () => {
    expectBraces(bare, across(...run))
    expect(bare.pairs.some((pair) => pair.along)).toBe(false)
  })

  it('at the lake end: both sides of the last, each as near the middle as the clamps across let it', () => {
    const dock = made({ sections: 4, bracing: { along: 'last' } })
    expectBraces(dock, [
      ...across(...run),
      // Low end on s4.end.left, where the one across has its own at −0.439930: 0.052979 over it. Down by 0.023221 its high end, at 0.088688 on
      // s3.end.left, would be 0.029758 from 0.058930; so up, past both.
      along('s4.left', 'along-96', 0.604819, 's4.end.left', OVER),
      // On s4.end.right the one across is at 0.058930, on s3.end.right at −0.439930: both 0.55 m off.
      along('s4.right', 'along-96', 0.604819, 's4.end.right', MIDWAY),
    ])
    expect(dock.pairs.at(-1)).toMatchObject({
      along: true,
      needsBrace: true,
      legs: ['s3.end.right', 's4.end.right'],
      spacing: 2.4638,
    })
    // 2 x 8400 + 4 clamps at 1250 + 4 bolts at 130; 0.769562 kg/m x (2.4384 + 0.0254) = 1.896 kg, clamps 0.36, bolts 0.06.
    expect(more(dock, bare)).toEqual({
      parts: { 'along-96': 2, 'brace-clamp': 4, 'bolt-3/8-brace': 4 },
      price: 16_800 + 5_000 + 520,
      mass: 2 * 1896 + 4 * 360 + 4 * 60,
    })
  })

  it('wherever they fit: from the last in, a leg in one bay at most', () => {
    const dock = made({ sections: 4, bracing: { along: 'all' } })
    expectBraces(dock, [
      ...across(...run),
      along('s4.left', 'along-96', 0.604819, 's4.end.left', OVER),
      along('s4.right', 'along-96', 0.604819, 's4.end.right', MIDWAY),
      along('s2.left', 'along-96', 0.604819, 's2.end.left', OVER),
      along('s2.right', 'along-96', 0.604819, 's2.end.right', MIDWAY),
    ])
    expect(more(dock, bare).parts).toEqual({ 'along-96': 4, 'brace-clamp': 8, 'bolt-3/8-brace': 8 })
  })

  it('piece by piece: from a clamp’s reach beside the low leg, two clamps that face each other, a bolt through each hole', () => {
    const dock = made({ sections: 4, bracing: { along: 'last' } })
    const pieces = dock.placements.filter(({ of }) => of === 's4.right')
    expect(pieces.map(({ kind, at }) => [kind, ...at.map((v) => Math.round(v * 1e4) / 1e4)])).toEqual([
      ['brace', 17.6917, -0.5223, -0.4929],
      ['brace-clamp', 17.7425, -0.5223, -0.4929],
      ['brace-clamp', 15.2787, -0.5223, 0.1119],
      ['brace-bolt', 17.6917, -0.5223, -0.4929],
      ['brace-bolt', 15.3295, -0.5223, 0.1119],
    ])
  })

  it('leave out the one that the design leaves out, and put none elsewhere for it', () => {
    const dock = made({ sections: 4, bracing: { along: 'last', none: ['s4.left'] } })
    expect(dock.pairs.filter((pair) => pair.along).map(({ id, brace }) => [id, brace?.code ?? null])).toEqual(
      [
        ['s4.left', null],
        ['s4.right', 'along-96'],
      ],
    )
    expect(dock.findings.map(({ code }) => code)).not.toContain('brace-left-out')
    expect(dock.findings.map(({ code }) => code)).not.toContain('brace-along-does-not-fit')
  })

  it('hold the true shapes of their parts apart: clamps on a leg by the 0.0254 m that are asked for', () => {
    const asked = designOf({ sections: 4, bracing: { along: 'all' } })
    const kit = deriveKit(asked, alongCatalog)
    const dock = publishKit(kit)
    const lengthwise = new Set(dock.pairs.flatMap((pair) => (pair.along ? pair.id : [])))
    const found = clearances(dock, alongCatalog, kit.bed, { within: 0.05, ground: 0.05 })
    const near = found.filter(({ a, b }) => lengthwise.has(a.of) || (b && lengthwise.has(b.of)))
    expect(near.filter(({ clash }) => clash)).toEqual([])
    const clamps = near.filter(({ a, b }) => a.kind === 'brace-clamp' && b?.kind === 'brace-clamp')
    expect(clamps.length).toBeGreaterThan(0)
    for (const { gap } of clamps) expect(gap).toBeGreaterThan(0.0254 - 1e-6)
  })
})

describe('a T of two and two', () => {
  const pairs = ['s1.start', 's1.end', 's2.end', 'h1.end', 'h2.end']
  const tee = { sections: 2, head: { shape: 'tee', sections: 2 } }
  const bare = made(tee)

  it('at the lake end: the run’s last section; the head’s bays would want the same legs', () => {
    const dock = made({ ...tee, bracing: { along: 'last' } })
    expectBraces(dock, [
      ...across(...pairs),
      along('s2.left', 'along-96', 0.604819, 's2.end.left', OVER),
      along('s2.right', 'along-96', 0.604819, 's2.end.right', MIDWAY),
    ])
    expect(more(dock, bare).price).toBe(2 * 8400 + 4 * 1250 + 4 * 130)
  })

  it('wherever they fit: along the head’s far edge from the run’s end, and in the first section between its own legs', () => {
    const dock = made({ ...tee, bracing: { along: 'all' } })
    expectBraces(dock, [
      ...across(...pairs),
      along('h2.left', 'along-96', 0.604819, 'h2.end.left', OVER),
      // Both its low end and that of the brace across are on h1.end.right; on s2.end.left nothing is near its high end: down is nearer.
      along('h1.right', 'along-96', 0.604819, 'h1.end.right', UNDER),
      // 2.263774 apart, 2.162174 between the holes: along-96 rises sqrt(2.4384² − 2.162174²) = 1.127297, with its room too much for 1.0922;
      // along-89 sqrt(2.2606² − 2.162174²) = 0.659785, and 0.520392 is 0.080462 from the 0.439930 of the one across.
      along('s1.left', 'along-89', 0.659785, 's1.end.left', -0.520392),
      along('s1.right', 'along-89', 0.659785, 's1.end.right', -0.520392),
    ])
    expect(more(dock, bare)).toEqual({
      parts: { 'along-96': 2, 'along-89': 2, 'brace-clamp': 8, 'bolt-3/8-brace': 8 },
      // Of 2.2606 m: 0.769562 x (2.2606 + 0.0254) = 1.759 kg.
      price: 2 * 8400 + 2 * 7900 + 8 * 1250 + 8 * 130,
      mass: 2 * 1896 + 2 * 1759 + 8 * 360 + 8 * 60,
    })
  })
})

describe('where the bed falls', () => {
  it('the low end is on the deeper leg, whichever comes first, and the middle over the higher bed', () => {
    const site = (deep: number) => ({
      soundings: [
        { distance: 0, depth: 0.3 },
        { distance: 8, depth: 1 },
        { distance: 20, depth: deep },
      ],
    })
    const low = (deep: number) => {
      const asked = designOf({ sections: 4, bracing: { along: 'last', none: ['s3.end', 's4.end'] } })
      const dock = deriveAtOnce(parsed({ ...asked, site: { ...asked.site, ...site(deep) } }), alongCatalog)
      return dock.pairs.find(({ id }) => id === 's4.left')!.brace!
    }
    expect(low(1.5).low).toBe('s4.end.left')
    expect(low(0.7).low).toBe('s3.end.left')
    // The bed 1 + 0.5 (x − 8)/12 deep, at s3.end (15.278687) 1.303279: (0.3556 − 1.303279)/2 midway, half of 1.064075 down from there.
    expect(low(1.5)).toMatchObject({ code: 'along-102' })
    expect(low(1.5).lowZ).toBeCloseTo((0.3556 - 1.303279) / 2 - 1.064075 / 2, 5)
  })
})

describe('where none fits', () => {
  const told = (dock: object, catalog = alongCatalog) => {
    const { findings } = deriveAtOnce(designOf(dock), catalog)
    return findings.filter(({ code }) => code.startsWith('brace-along'))
  }

  it('that is said with the reason, and nothing is drawn', () => {
    const asked = { sections: 4, deckHeight: 0.2, bracing: { along: 'last' } }
    const dock = deriveAtOnce(designOf(asked), alongCatalog)
    expect(dock.placements.filter(({ code }) => code.startsWith('along'))).toEqual([])
    const [finding] = told(asked)
    expect(finding).toMatchObject({ code: 'brace-along-does-not-fit', severity: 'note' })
    expect(findingText(finding!, 'text')).toContain('s4.left, s4.right')
  })

  it('so is that the shop has none, or none for what stands there', () => {
    expect(told({ sections: 4, bracing: { along: 'last' } }, demoCatalog)[0]!.values.why!.value).toBe(
      'no-brace',
    )
    expect(told({ sections: 4, frame: '4x10', bracing: { along: 'all' } })[0]!.values.why!.value).toBe(
      'no-bay',
    )
    expect(told({ sections: 4 }, alongCatalog)).toEqual([])
  })
})

describe('a boat beside one', () => {
  // Its box lies at the edge; legs are 0.087313 in from there, and the tube is 0.015875 thick from its middle: 0.071438 m.
  const found = (dock: object) => {
    const kit = deriveKit(designOf({ sections: 4, bracing: { along: 'last' }, ...dock }), alongCatalog)
    return boatsByBraces(publishKit(kit), kit)
  }
  const boat = { id: 'a', length: 4, height: 0.5, draught: 0.3, mass: 500, section: 's4' }

  it('is told of, with how far it is', () => {
    const [note, ...rest] = found({ boats: [{ ...boat, edge: 'right' }] })
    expect(rest).toEqual([])
    expect(note).toMatchObject({
      code: 'boat-near-brace',
      severity: 'note',
      parts: ['s4.right', 's4'],
      remedy: null,
    })
    expect(note!.values.clear!.value).toBeCloseTo(0.071438, 5)
  })

  it('at an edge without one nothing is', () => {
    expect(found({ boats: [{ ...boat, edge: 'right', section: 's2' }] })).toEqual([])
    expect(found({ boats: [{ ...boat, edge: 'end' }] })).toEqual([])
    expect(found({ boats: [{ ...boat, edge: 'right' }], bracing: {} })).toEqual([])
  })
})

describe('a catalog', () => {
  it('has them with the others, and none of them goes across', () => {
    const anyWidth = { ...alongCatalog.braces.at(-1)!, code: 'along-any', spacing: { from: 0.5, to: 3 } }
    const parsedShop = parseCatalog({ ...alongCatalog, braces: [...demoCatalog.braces, anyWidth] })
    if (!parsedShop.ok) throw new Error(JSON.stringify(parsedShop.issues))
    const dock = deriveAtOnce(designOf({ sections: 4, bracing: { none: [] } }), parsedShop.value)
    const bare = deriveAtOnce(designOf({ sections: 4 }), demoCatalog)
    expect(dock.pairs).toEqual(bare.pairs)
    expect(dock.parts).toEqual(bare.parts)
  })
})

const SEED = Number(process.env.LEADLINE_SEED ?? 8_215)
const RUNS = runs(200)

describe(`any dock (seed ${SEED}, ${RUNS} docks)`, () => {
  it('with them is the dock without them and they, each fixed once and drawn, or told of', () => {
    let braced = 0
    fc.assert(
      fc.property(anyCase, fc.constantFrom('last' as const, 'all' as const), ({ design }, wish) => {
        const asked = askedAlong(design, wish)
        const bare = deriveAtOnce(design, alongCatalog)
        const dock = deriveAtOnce(asked, alongCatalog)
        const lengthwise = dock.pairs.filter((pair) => pair.along)
        const ids = new Set(lengthwise.map(({ id }) => id))
        expect(dock.pairs.filter((pair) => !pair.along)).toEqual(bare.pairs)
        expect(dock.legs.map(({ braced: _, ...leg }) => leg)).toEqual(
          bare.legs.map(({ braced: _, ...leg }) => leg),
        )
        expect(dock.placements.filter(({ of }) => !ids.has(of))).toEqual(bare.placements)
        for (const { id, brace } of lengthwise) {
          const own = dock.placements.filter(({ of }) => of === id).map(({ kind }) => kind)
          expect(own.sort()).toEqual(
            brace ? ['brace', 'brace-bolt', 'brace-bolt', 'brace-clamp', 'brace-clamp'] : [],
          )
          const said = dock.findings.some(
            ({ code, parts }) => code === 'brace-along-does-not-fit' && parts.includes(id),
          )
          expect(said || brace !== null || Boolean(asked.dock.bracing?.none?.includes(id))).toBe(true)
          if (brace) braced++
        }
        expect(validate(dock, asked, alongCatalog)).toEqual([])
      }),
      { seed: SEED, numRuns: RUNS },
    )
    expect(braced).toBeGreaterThan(RUNS / 10)
  })
})
