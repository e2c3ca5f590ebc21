/** Weights of boats as they are typed, and what a boat and people change in the Design. */
import { describe, expect, it } from 'vitest'
import { demoDesign, parseDesign } from '../../rules/index.ts'
import * as carry from '../../src/parameters/deck-load-edits.ts'
import { massStep, parseMass } from '../../src/units/mass.ts'
import { nextStep } from '../../src/units/steps.ts'

describe('a weight', () => {
  it.each([
    ['2000 lb', 907.18474],
    ['2000', 907.18474],
    ['900 kg', 900],
    ['1,2 t', 1200],
    [' .5 LBS ', 0.226796],
  ])('typed as "%s" is %f kg on a screen in pounds', (typed, kg) => {
    expect(parseMass(typed, 'imperial')).toBeCloseTo(kg, 5)
  })

  it('without a unit is in that of the screen', () => {
    expect(parseMass('900', 'metric')).toBe(900)
    expect(massStep('metric', false)).toBe(25)
    expect(massStep('imperial', true)).toBeCloseTo(226.796, 3)
  })

  it.each(['', 'heavy', '-3', '2 000', '10 ft', 'kg'])('is not what "%s" says', (typed) => {
    expect(parseMass(typed, 'imperial')).toBeNull()
  })
})

describe('people and boat', () => {
  it('leave a Design that parses, and none of them leave it as it was', () => {
    for (const kind of ['fishing', 'runabout', 'pontoon'] as const) {
      const design = carry.setBoatKind(demoDesign, kind)
      expect(parseDesign(design).ok).toBe(true)
      expect(carry.boatKind(design)).toBe(kind)
      expect(carry.setBoatKind(design, 'none')).toEqual(demoDesign)
      const typed = carry.setBoat(design, { mass: 777, side: 'right' })
      // One number changed: called what it was, with figures of its own, and back.
      expect(carry.boatKind(typed)).toBe(kind)
      expect([carry.hasOwnFigures(design), carry.hasOwnFigures(typed)]).toEqual([false, true])
      expect(carry.boatKind(carry.setUsualFigures(typed))).toBe(kind)
      expect(carry.hasOwnFigures(carry.setUsualFigures(typed))).toBe(false)
      expect(carry.setBoatKind(typed, 'own')).toBe(typed)
      // Another kind lies at the same side.
      expect(carry.setBoatKind(typed, 'fishing').dock.boat?.side).toBe('right')
      expect(carry.setBoatKind(typed, 'runabout').dock.boat?.side).toBe('right')
      // An older Design calls it nothing: known by its figures, and called so once one changes; others stay unnamed.
      const { kind: _, ...unnamed } = design.dock.boat!
      const older = { ...design, dock: { ...design.dock, boat: unnamed } }
      expect(carry.boatKind(older)).toBe(kind)
      expect(carry.boatKind(carry.setBoat(older, { mass: 777 }))).toBe(kind)
      const strange = { ...older, dock: { ...older.dock, boat: { ...unnamed, mass: 777 } } }
      expect(carry.boatKind(strange)).toBe('own')
      expect(carry.boatKind(carry.setBoatLength(strange, 5))).toBe('own')
    }
    expect(carry.setBoat(demoDesign, { mass: 1 })).toBe(demoDesign)
  })

  it('a boat as long as it is asked to be has the usual figures of that length, until one is typed', () => {
    const pontoon = carry.setBoatKind(demoDesign, 'pontoon')
    // 20 ft of 22: 3300 lb x 20/22 = 3000 lb; the tubes are as they were, 28 in and 16 in.
    const shorter = carry.setBoatLength(pontoon, 6.096).dock.boat!
    expect(shorter).toMatchObject({ kind: 'pontoon', length: 6.096 })
    expect(shorter.mass).toBeCloseTo(1360.777, 3)
    expect([shorter.height, shorter.draught]).toEqual([expect.closeTo(0.7112, 9), expect.closeTo(0.4064, 9)])
    // A runabout of 24.5 ft for 18: (24.5 / 18)² = 1.852623 times 2600 lb, its root 1.166667 times 30 in and 18 in.
    const runabout = carry.setBoatLength(carry.setBoatKind(demoDesign, 'runabout'), 7.4676).dock.boat!
    expect(runabout.mass).toBeCloseTo(2184.873, 2)
    expect(runabout.height).toBeCloseTo(0.889, 5)
    expect(runabout.draught).toBeCloseTo(0.5334, 5)
    const own = carry.setBoatLength(carry.setBoat(pontoon, { draught: 0.5 }), 6.096).dock.boat!
    expect(own).toMatchObject({ length: 6.096, draught: 0.5, mass: pontoon.dock.boat!.mass })
    expect([6.7056, 6.8, 6.9, 0.3048].map((m) => nextStep(m, 0.3048, -1) / 0.3048)).toEqual(
      [21, 22, 22, 0].map((n) => expect.closeTo(n, 6)),
    )
    expect([6.7056, 6.8].map((m) => nextStep(m, 0.3048, 1) / 0.3048)).toEqual(
      [23, 23].map((n) => expect.closeTo(n, 6)),
    )
  })

  it('the load that codes ask of decks is what is taken where nothing is said', () => {
    expect(carry.loadOf(demoDesign)).toBeCloseTo(1915.2, 1)
    const full = carry.setLoad(demoDesign, carry.LOADS[2]!.pressure)
    expect(full.dock.load).toBeCloseTo(2872.8, 1)
    expect(carry.setLoad(full, carry.LOADS[0]!.pressure)).toEqual(demoDesign)
  })
})
