/** Weights of boats as they are typed, and what people on the deck change in the Design. */
import { describe, expect, it } from 'vitest'
import { demoDesign } from '../../rules/index.ts'
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

describe('people on the deck', () => {
  it('the load that codes ask of decks is what is taken where nothing is said', () => {
    expect(carry.loadOf(demoDesign)).toBeCloseTo(1915.2, 1)
    const full = carry.setLoad(demoDesign, carry.LOADS[2]!.pressure)
    expect(full.dock.load).toBeCloseTo(2872.8, 1)
    expect(carry.setLoad(full, carry.LOADS[0]!.pressure)).toEqual(demoDesign)
  })
})
