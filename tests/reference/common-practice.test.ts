/**
 * The rules that the trade goes by. All of them: common practice, no published source; what a shop may set otherwise is data of
 * its catalog, here the demo shop's. The trade's own worked check is in `tests/rules/worked-docks.test.ts`, wrenches in
 * `wrenches.test.ts`. Rules about the order of steps within a section, cartons and wave clearance are not in a Dock yet.
 */
import { describe, expect, it } from 'vitest'
import type { PartKind } from '../../rules/dock.ts'
import { type Catalog, type Dock, demoCatalog } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'

const CARRIED = 'carried'

interface Wish {
  readonly dock: Record<string, unknown>
  /** Depth of a level bed from 1 m out, m. */
  readonly depth?: number
  readonly crossSlope?: number
  readonly catalog?: Catalog
}

/** A dock over a level bed behind a steep shore, the deck 0.5334 m (21 in) up. */
function dockOf({ dock, depth = 0.6, crossSlope = 0, catalog = demoCatalog }: Wish): Dock {
  const design = parsed({
    format: 'leadline/design',
    version: 1,
    site: {
      soundings: [
        { distance: -2, depth: -0.8 },
        { distance: 0, depth: 0 },
        { distance: 0.5, depth: depth / 2 },
        { distance: 1, depth },
        { distance: 6, depth },
        { distance: 12, depth },
        { distance: 18, depth },
      ],
      levels: { low: -0.2, high: 0.15 },
      bottom: 'sand',
      crossSlope,
    },
    dock: { deckHeight: 0.5334, frame: '4x8', ...dock },
  })
  return deriveAtOnce(design, catalog)
}

const count = (dock: Dock, kind: PartKind) => dock.placements.filter((p) => p.kind === kind).length
const legsOf = (dock: Dock, id: string) => dock.legs.filter((l) => l.section === id).map((l) => l.corner)
const corner = (dock: Dock, id: string, which: string) =>
  legsOf(dock, id).some((c) => c === which) ? 'on a leg' : CARRIED

describe('legs — common practice, no published source', () => {
  const dock = dockOf({ dock: { sections: 4, ramp: true } })

  it('ramp none, standing section four, following section in a straight run two at its end edge', () => {
    expect(legsOf(dock, 's1')).toEqual([])
    expect(legsOf(dock, 's2').sort()).toEqual(['end.left', 'end.right', 'start.left', 'start.right'])
    expect(legsOf(dock, 's3').sort()).toEqual(['end.left', 'end.right'])
    expect(legsOf(dock, 's4').sort()).toEqual(['end.left', 'end.right'])
  })

  it('a foot pad, a leg cap and a pad bolt to each leg, a sleeve cap to each empty sleeve, two set bolts to each used one', () => {
    expect(count(dock, 'leg')).toBe(8)
    expect(count(dock, 'foot-pad')).toBe(8)
    expect(count(dock, 'leg-cap')).toBe(8)
    expect(count(dock, 'pad-bolt')).toBe(8)
    expect(count(dock, 'sleeve-cap')).toBe(4 * 4 - 8)
    expect(count(dock, 'set-bolt')).toBe(2 * 8)
  })

  it('stations are one pitch apart: section length and joint gap', () => {
    const [, s2, s3, s4] = dock.sections.map((s) => s.x)
    expect(s3! - s2!).toBeCloseTo(2.4384 + 0.0254, 6)
    expect(s4! - s3!).toBeCloseTo(2.4384 + 0.0254, 6)
  })
})

describe('one carrying rule for every shape — common practice, no published source', () => {
  /** `b` hung on the end of `a`, that far to the right. */
  const beside = (along: number) =>
    dockOf({
      dock: {
        plan: [
          { id: 'a', on: null },
          { id: 'b', on: 'a', edge: 'end', with: 'start', along },
        ],
      },
    })

  it('hooks sit a pair to a joint, 10 in from the ends of the overlap, on the carrying edge', () => {
    const dock = beside(0.4)
    const a = dock.sections.find((s) => s.id === 'a')!
    // The overlap reaches from 0.4 to 1.2192 m along a's end, counted from its left corner at y = +0.6096.
    const hooks = dock.placements.filter((p) => p.kind === 'hook-bracket').map((p) => p.at)
    expect(hooks).toHaveLength(2)
    for (const [x] of hooks) expect(x).toBeCloseTo(a.x + 2.4384, 6)
    expect(hooks.map(([, y]) => 0.6096 - y).sort()).toEqual([
      expect.closeTo(0.4 + 0.254, 5),
      expect.closeTo(1.2192 - 0.254, 5),
    ])
  })

  it('a corner within 12 in of a hook of its own joint is carried, one farther off gets a leg', () => {
    // Hung 45 mm to the right: its right corner is sqrt((0.254 + 0.045)² + 0.0254²) = 0.30008 m from the hook.
    expect(corner(beside(0.045), 'b', 'start.right')).toBe(CARRIED)
    // 50 mm: sqrt(0.304² + 0.0254²) = 0.30506 m, over 12 in = 0.3048 m.
    expect(corner(beside(0.05), 'b', 'start.right')).toBe('on a leg')
    expect(corner(beside(0.05), 'b', 'start.left')).toBe(CARRIED)
  })

  it('counts the distance in plan, so the end corners of a section are never carried by its start', () => {
    expect(legsOf(beside(0.05), 'b').sort()).toEqual(['end.left', 'end.right', 'start.right'])
  })

  it('a section hung by its side stands on the two legs of its far side', () => {
    const dock = dockOf({
      dock: {
        plan: [
          { id: 'a', on: null },
          { id: 'b', on: 'a', edge: 'left', with: 'right', along: 0 },
        ],
      },
    })
    expect(legsOf(dock, 'b').sort()).toEqual(['end.left', 'start.left'])
  })

  it('further edges that touch are ties: hardware of their own, no hooks, and they carry nothing', () => {
    const dock = dockOf({ dock: { sections: 4, ramp: false, head: { shape: 'wide', sections: 2 } } })
    const ties = dock.joints.filter((j) => j.kind === 'tie')
    expect(ties.map((j) => j.between)).toEqual([['h1', 'h2']])
    expect(dock.placements.filter((p) => p.kind === 'hook-bracket' && p.of === ties[0]!.id)).toEqual([])
    expect(dock.placements.filter((p) => p.code === demoCatalog.tie.code)).toHaveLength(2)
    // Its start corner touches h1, which stands: but only by the tie.
    expect(corner(dock, 'h2', 'start.left')).toBe('on a leg')
  })
})

describe('hinge and hooks — common practice, no published source', () => {
  const dock = dockOf({ dock: { sections: 5, ramp: true } })

  it('a hinge only between ramp and standing section: one bar, three bar bolts, two pins with their own bolts', () => {
    expect(dock.joints.filter((j) => j.kind === 'hinge').map((j) => j.between)).toEqual([['s1', 's2']])
    expect(['hinge-bar', 'bar-bolt', 'hinge-pin', 'pin-bolt'].map((k) => count(dock, k as PartKind))).toEqual(
      [1, 3, 2, 2],
    )
  })

  it('every other joint one pair of hook brackets, two bolts each', () => {
    expect(dock.joints.filter((j) => j.kind === 'hook')).toHaveLength(3)
    expect(count(dock, 'hook-bracket')).toBe(6)
    expect(count(dock, 'hook-bolt')).toBe(12)
  })

  it('none of it where there is no ramp', () => {
    const plain = dockOf({ dock: { sections: 3, ramp: false } })
    expect(plain.joints.map((j) => j.kind)).toEqual(['hook', 'hook'])
    expect(count(plain, 'hinge-bar') + count(plain, 'bar-bolt') + count(plain, 'hinge-pin')).toBe(0)
  })
})

describe('pairs — common practice, no published source', () => {
  it('are first the two legs of one end edge', () => {
    const dock = dockOf({ dock: { sections: 3, ramp: true } })
    expect(dock.pairs.map((p) => p.id)).toEqual(['s2.start', 's2.end', 's3.end'])
  })

  /** Two sections beside `a`, one outside the other, the outer one shifted: their lone legs stand 1.2446 m apart. */
  const lone = (shift: number) => {
    const [short, long, ...others] = demoCatalog.braces
    const reaching = { ...short!, code: 'brace-x', spacing: { from: 1.2, to: 1.27 } }
    return dockOf({
      dock: {
        plan: [
          { id: 'a', on: null },
          { id: 'b', on: 'a', edge: 'left', with: 'right', along: 0 },
          { id: 'c', on: 'b', edge: 'left', with: 'right', along: shift },
        ],
      },
      depth: 0.3,
      catalog: { ...demoCatalog, braces: [short!, long!, ...others, reaching] },
    })
  }
  const crossing = (dock: Dock) =>
    dock.pairs
      .filter((p) => p.id.includes('~'))
      .map((p) => [...p.legs].sort().join(' '))
      .sort()

  it('then legs left over within 50 mm of one line square to an edge', () => {
    expect(crossing(lone(0.049))).toEqual(['b.end.left c.end.left', 'b.start.left c.start.left'])
    expect(crossing(lone(0.052))).toEqual([])
  })

  it('have no leg twice', () => {
    const legs = lone(0).pairs.flatMap((p) => p.legs)
    expect(new Set(legs).size).toBe(legs.length)
  })
})

describe('braces — common practice, no published source', () => {
  const run = (wish: Partial<Wish> = {}) =>
    dockOf({ depth: 0.7366, ...wish, dock: { sections: 4, ramp: false, start: 2, ...wish.dock } })
  const feet = (n: number) => n * 0.3048
  /** Depth at which that leg is the shortest that does, with a hand to spare. */
  const depthFor = (length: number) => length + 0.00635 - 0.1524 - 0.5334 - 0.1

  it.each([
    [4, null],
    [5, 'brace-42'],
    [6, 'brace-42'],
    [7, 'brace-54'],
    [8, 'brace-54'],
    [10, 'brace-54'],
  ])('%i ft legs have %s', (length, code) => {
    const dock = run({ depth: depthFor(feet(length)) })
    for (const pair of dock.pairs) {
      expect(dock.legs.find((l) => l.id === pair.legs[0])?.stock).toBeCloseTo(feet(length), 9)
      expect(pair.needsBrace).toBe(code !== null)
      expect(pair.brace?.code ?? null).toBe(code)
    }
  })

  it('the longer leg of a pair decides', () => {
    // 0.06 in 1 over 1.044574 m: beds 0.0627 m apart, one leg just under and one just over what 6 ft reaches.
    const dock = run({ depth: depthFor(feet(6)) + 0.1, crossSlope: 0.06 })
    const stocks = dock.pairs[0]!.legs.map((id) => dock.legs.find((l) => l.id === id)!.stock)
    expect(stocks.map((s) => Math.round(s! / 0.3048)).sort()).toEqual([6, 7])
    expect(dock.pairs[0]!.brace?.code).toBe('brace-54')
  })

  it('two clamps and two bolts a brace', () => {
    const dock = run()
    expect(count(dock, 'brace')).toBe(5)
    expect(count(dock, 'brace-clamp')).toBe(10)
    expect(count(dock, 'brace-bolt')).toBe(10)
  })

  it('hang midway between frame and the higher bed', () => {
    const dock = run({ crossSlope: 0.1 })
    for (const { legs, brace } of dock.pairs) {
      const higher = Math.max(...legs.map((id) => dock.legs.find((l) => l.id === id)!.bed))
      expect((brace!.lowZ + brace!.highZ) / 2).toBeCloseTo((0.5334 - 0.1778 + higher) / 2, 5)
    }
  })

  it.each([
    [0.1, 'left'],
    [-0.1, 'right'],
  ])('have their low end on the deeper leg (fall to the left %d)', (crossSlope, side) => {
    for (const { brace } of run({ crossSlope }).pairs) expect(brace!.low.endsWith(side)).toBe(true)
  })

  const lowEnds = (dock: Dock) => dock.pairs.map((p) => p.brace!.low.split('.').at(-1))

  it.each([
    ['level', 0],
    // 25 mm over the spacing of 1.044574 m is a fall of 0.02393.
    ['beds 24.5 mm apart', 0.02345],
  ])('alternate on level beds, the first low end left (%s)', (_what, crossSlope) => {
    expect(lowEnds(run({ crossSlope }))).toEqual(['left', 'right', 'left', 'right', 'left'])
  })

  it('do not alternate on beds 25.5 mm apart', () => {
    expect(lowEnds(run({ crossSlope: 0.02442 }))).toEqual(['left', 'left', 'left', 'left', 'left'])
  })

  it('begin on the right where the design says so', () => {
    expect(lowEnds(run({ dock: { bracing: { first: 'right' } } }))).toEqual([
      'right',
      'left',
      'right',
      'left',
      'right',
    ])
  })
})

describe('decking and hardware — common practice, no published source', () => {
  const dock = dockOf({ dock: { sections: 4, ramp: true } })

  it('two deck clips a panel', () => {
    expect(count(dock, 'deck-clip')).toBe(2 * count(dock, 'deck-panel'))
  })

  it('small hardware is bagged by kind, a kind in one bag only', () => {
    const small: PartKind[] = [
      'set-bolt',
      'pad-bolt',
      'hook-bolt',
      'bar-bolt',
      'pin-bolt',
      'brace-bolt',
      'leg-cap',
      'sleeve-cap',
      'deck-clip',
      'brace-clamp',
      'hook-bracket',
      'hinge-pin',
    ]
    for (const kind of small) {
      const bags = new Set(dock.parts.filter((r) => r.kind === kind).map((r) => r.bag))
      if (count(dock, kind) > 0) expect([kind, bags.size, bags.has(null)]).toEqual([kind, 1, false])
    }
  })

  it('a bolt is counted with its nut: no nuts of their own', () => {
    expect(dock.parts.some((r) => /^nut/i.test(r.name) || r.kind === ('nut' as PartKind))).toBe(false)
    for (const bolt of demoCatalog.hardware) expect(bolt.name).toMatch(/with nut$/)
  })

  it('turns past finger-tight: set bolts 3/4, carrier side 1/2, hung side 1 to 1 1/2', () => {
    const turns = (kind: string) =>
      demoCatalog.hardware.find((b) => b.kind === kind)!.turns.map((t) => [t.at, t.from, t.to])
    expect(turns('set-bolt')).toEqual([['sleeve', 0.75, 0.75]])
    expect(turns('hook-bolt')).toEqual([
      ['carrier side', 0.5, 0.5],
      ['hung side', 1, 1.5],
    ])
  })
})

describe('order of work — common practice, no published source', () => {
  it('standing section, ramp, then outward', () => {
    expect(
      dockOf({ dock: { sections: 4, ramp: true, head: { shape: 'tee', sections: 2 } } }).workOrder,
    ).toEqual(['s2', 's1', 's3', 's4', 'h1', 'h2'])
  })

  it('heights are also given to the frame top, for reading while the panels are off', () => {
    for (const leg of dockOf({ dock: { sections: 2, ramp: false } }).legs)
      expect(leg.setHeight - leg.setHeightFrame).toBeCloseTo(0.0254, 6)
  })
})
