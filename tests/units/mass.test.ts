/** Weights of boats as they are typed, and what a boat and people change in the Design. */
import { describe, expect, it } from 'vitest'
import { demoDesign, parseDesign } from '../../rules/index.ts'
import * as carry from '../../src/parameters/deck-load-edits.ts'
import { massStep, parseMass } from '../../src/units/mass.ts'

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
      expect(carry.boatKind(typed)).toBe('own')
      expect(carry.setBoatKind(typed, 'own')).toBe(typed)
      // Another kind lies at the same side.
      expect(carry.setBoatKind(typed, 'fishing').dock.boat?.side).toBe('right')
    }
    expect(carry.setBoat(demoDesign, { mass: 1 })).toBe(demoDesign)
  })

  it('the load that codes ask of decks is what is taken where nothing is said', () => {
    expect(carry.loadOf(demoDesign)).toBeCloseTo(1915.2, 1)
    const full = carry.setLoad(demoDesign, carry.LOADS[2]!.pressure)
    expect(full.dock.load).toBeCloseTo(2872.8, 1)
    expect(carry.setLoad(full, carry.LOADS[0]!.pressure)).toEqual(demoDesign)
  })
})
