/** The boats at a dock as the panel changes them: figures, kinds, and the edges that they lie at. */
import { describe, expect, it } from 'vitest'
import { assessKit, type Design, demoCatalog, demoDesign, deriveKit, parseDesign } from '../../rules/index.ts'
import { berthsOf, END_BOAT, hullBox, mooredOf } from '../../rules/layout/berth.ts'
import * as change from '../../src/parameters/boats/boat-edits.ts'
import { bumpersAlong } from '../../src/parameters/boats/bumpers-along.ts'
import { nextStep } from '../../src/units/steps.ts'

const placedOf = (design: Design) => mooredOf(assessKit(deriveKit(design, demoCatalog)).sections)
const placed = placedOf(demoDesign)
const atRight = (design: Design): Design => change.setPlace(design, END_BOAT, placed, 's5', 'right')

describe('a boat', () => {
  it('leave a Design that parses, and none of them leave it as it was', () => {
    for (const kind of ['fishing', 'runabout', 'pontoon'] as const) {
      const design = change.setKind(demoDesign, END_BOAT, kind)
      expect(parseDesign(design).ok).toBe(true)
      expect(change.kindOf(design, END_BOAT)).toBe(kind)
      expect(change.setKind(design, END_BOAT, 'none')).toEqual(demoDesign)
      const typed = atRight(change.setBoat(design, END_BOAT, { mass: 777 }))
      // One number changed: called what it was, with figures of its own, and back.
      expect(change.kindOf(typed, END_BOAT)).toBe(kind)
      expect([change.hasOwnFigures(design, END_BOAT), change.hasOwnFigures(typed, END_BOAT)]).toEqual([
        false,
        true,
      ])
      expect(change.kindOf(change.setUsualFigures(typed, END_BOAT), END_BOAT)).toBe(kind)
      expect(change.hasOwnFigures(change.setUsualFigures(typed, END_BOAT), END_BOAT)).toBe(false)
      expect(change.setKind(typed, END_BOAT, 'own')).toBe(typed)
      // Another kind lies at the same side.
      expect(change.setKind(typed, END_BOAT, 'fishing').dock.boat?.side).toBe('right')
      expect(change.setKind(typed, END_BOAT, 'runabout').dock.boat?.side).toBe('right')
      // An older Design calls it nothing: known by its figures, and called so once one changes; others stay unnamed.
      const { kind: _, ...unnamed } = design.dock.boat!
      const older = { ...design, dock: { ...design.dock, boat: unnamed } }
      expect(change.kindOf(older, END_BOAT)).toBe(kind)
      expect(change.kindOf(change.setBoat(older, END_BOAT, { mass: 777 }), END_BOAT)).toBe(kind)
      const strange = { ...older, dock: { ...older.dock, boat: { ...unnamed, mass: 777 } } }
      expect(change.kindOf(strange, END_BOAT)).toBe('own')
      expect(change.kindOf(change.setLength(strange, END_BOAT, 5), END_BOAT)).toBe('own')
    }
    expect(change.setBoat(demoDesign, END_BOAT, { mass: 1 })).toBe(demoDesign)
  })

  it('a boat as long as it is asked to be has the usual figures of that length, until one is typed', () => {
    const pontoon = change.setKind(demoDesign, END_BOAT, 'pontoon')
    // 20 ft of 22: 3300 lb x 20/22 = 3000 lb; the tubes are as they were, 28 in and 16 in, and so is its width of 102 in.
    const shorter = change.setLength(pontoon, END_BOAT, 6.096).dock.boat!
    expect(shorter).toMatchObject({ kind: 'pontoon', length: 6.096 })
    expect(shorter.mass).toBeCloseTo(1360.777, 3)
    expect([shorter.height, shorter.draught]).toEqual([expect.closeTo(0.7112, 9), expect.closeTo(0.4064, 9)])
    expect(shorter.beam).toBeCloseTo(2.5908, 6)
    // A runabout of 24.5 ft for 18: (24.5 / 18)² = 1.852623 times 2600 lb, its root 1.166667 times 30 in, 18 in and 92 in.
    const runabout = change.setLength(change.setKind(demoDesign, END_BOAT, 'runabout'), END_BOAT, 7.4676).dock
      .boat!
    expect(runabout.mass).toBeCloseTo(2184.873, 2)
    expect(runabout.height).toBeCloseTo(0.889, 5)
    expect(runabout.draught).toBeCloseTo(0.5334, 5)
    expect(runabout.beam).toBeCloseTo(2.7263, 4)
    const own = change.setLength(change.setBoat(pontoon, END_BOAT, { draught: 0.5 }), END_BOAT, 6.096).dock
      .boat!
    expect(own).toMatchObject({ length: 6.096, draught: 0.5, mass: pontoon.dock.boat!.mass })
    expect([6.7056, 6.8, 6.9, 0.3048].map((m) => nextStep(m, 0.3048, -1) / 0.3048)).toEqual(
      [21, 22, 22, 0].map((n) => expect.closeTo(n, 6)),
    )
    expect([6.7056, 6.8].map((m) => nextStep(m, 0.3048, 1) / 0.3048)).toEqual(
      [23, 23].map((n) => expect.closeTo(n, 6)),
    )
  })
})

describe('where a boat lies', () => {
  const one = change.setKind(demoDesign, END_BOAT, 'pontoon')
  const at = ({ dock }: Design) => [dock.boat?.side, (dock.boats ?? []).map((b) => [b.id, b.section, b.edge])]

  it('is the lake end to begin with, and it keeps to it on either side as the dock grows', () => {
    expect(at(one)).toEqual(['left', []])
    expect(at(atRight(one))).toEqual(['right', []])
    const longer = { ...one, dock: { ...one.dock, sections: 7 } }
    expect(berthsOf(longer.dock, placedOf(longer)).map(({ section }) => section.id)).toEqual(['s7'])
  })
  it('is any edge that it is put at, with all that it was, and the lake end again', () => {
    const typed = change.setBoat(one, END_BOAT, { mass: 777 })
    const moved = change.setPlace(typed, END_BOAT, placed, 's3', 'right')
    expect(at(moved)).toEqual([undefined, [['b1', 's3', 'right']]])
    expect(parseDesign(moved).ok).toBe(true)
    expect(moved.dock.boats![0]).toMatchObject({
      kind: 'pontoon',
      mass: 777,
      beam: expect.closeTo(2.5908, 9),
    })
    const across = change.setPlace(moved, 'b1', placed, 's5', 'end')
    expect(at(across)).toEqual([undefined, [['b1', 's5', 'end']]])
    expect(change.setPlace(across, 'b1', placed, 's5', 'left')).toEqual(typed)
  })
  it('of a second one is the first edge that is free: on the other side of the lake end', () => {
    const two = change.addBoat(one, placed)
    expect(at(two)).toEqual(['left', [['b1', 's5', 'right']]])
    expect(change.boatsOf(two).map(({ id, boat }) => [id, boat.kind])).toEqual([
      [END_BOAT, 'pontoon'],
      ['b1', 'pontoon'],
    ])
    // Each is changed, and taken away, by itself.
    const other = change.setKind(two, 'b1', 'fishing')
    expect(change.boatsOf(other).map(({ boat }) => boat.kind)).toEqual(['pontoon', 'fishing'])
    expect(change.setKind(other, 'b1', 'none')).toEqual(one)
    expect(change.setLength(two, 'b1', 6.096).dock.boats![0]!.mass).toBeCloseTo(1360.777, 3)
    // The lake end is one boat's: the other lies at its edge by name.
    const swapped = change.setPlace(
      change.setPlace(two, END_BOAT, placed, 's3', 'left'),
      'b1',
      placed,
      's5',
      'left',
    )
    expect(at(swapped)).toEqual([
      undefined,
      [
        ['b2', 's3', 'left'],
        ['b1', 's5', 'left'],
      ],
    ])
  })
  it('of many is never another’s, and none comes where there is no room', () => {
    let design = one
    for (let n = 0; n < 12; n++) design = change.addBoat(design, placed)
    const boxes = berthsOf(design.dock, placed).map((berth) => hullBox(berth))
    const clear = (a: (typeof boxes)[0], b: (typeof boxes)[0]) =>
      a.x1 <= b.x0 || b.x1 <= a.x0 || a.y1 <= b.y0 || b.y1 <= a.y0
    expect(boxes.length).toBeGreaterThan(2)
    expect(boxes.length).toBeLessThan(12)
    expect(boxes.every((a, i) => boxes.slice(0, i).every((b) => clear(a, b)))).toBe(true)
    expect(change.addBoat(design, placed)).toBe(design)
  })
})

describe('bumpers', () => {
  const [shore, far] = [0.25, 0.75].map((share) => share * placed.find(({ id }) => id === 's5')!.frame.length)
  const bumper = (section: string, edge: 'left' | 'right' | 'end', along: number) => ({
    code: 'bumper',
    section,
    edge,
    along,
  })
  const boated = (dock: Partial<Design['dock']>): Design => {
    const design = change.setKind(demoDesign, END_BOAT, 'pontoon')
    return { ...design, dock: { ...design.dock, ...dock } }
  }
  const moved = (design: Design, section: string, edge: 'left' | 'right' | 'end'): Design =>
    bumpersAlong(design, change.setPlace(design, END_BOAT, placed, section, edge), placed, demoCatalog)

  it('go with the boat to the edge that it is moved to, as far along it; what else is there stays', () => {
    const cleat = { code: 'cleat', section: 's5', edge: 'left' as const, along: 1 }
    const design = boated({ placed: [bumper('s5', 'left', shore!), cleat, bumper('s5', 'left', far!)] })
    expect(design.dock.boat!.side).toBe('left')
    expect(moved(design, 's5', 'right').dock.placed).toEqual([
      bumper('s5', 'right', expect.closeTo(shore!, 6) as unknown as number),
      cleat,
      bumper('s5', 'right', expect.closeTo(far!, 6) as unknown as number),
    ])
    // A frame 4 ft wide: a quarter and three quarters along its end.
    const wide = placed.find(({ id }) => id === 's5')!.frame.width
    expect(moved(design, 's5', 'end').dock.placed!.map(({ along }) => along)).toEqual([
      expect.closeTo(0.25 * wide, 6),
      1,
      expect.closeTo(0.75 * wide, 6),
    ])
  })

  it('stay where another boat does, and where no boat lay', () => {
    const elsewhere = boated({ placed: [bumper('s4', 'left', 1)] })
    expect(moved(elsewhere, 's5', 'right').dock.placed).toEqual(elsewhere.dock.placed)
  })
})
