/**
 * Uplift of crests under a deck: Douglass, Chen and Olsen, Wave Forces on Bridge Decks (FHWA 2006), F = c·γ·Δz·A with c = 1 (memory), its
 * mean over a length, and what gaps between planks let through. Worked by hand from the formulas.
 */
import { describe, expect, it } from 'vitest'
import { meanHead, mostHead, upliftPressure } from '../../rules/site/waves/crest.ts'
import type { Wave } from '../../rules/site/waves/dispersion.ts'

/** A wave with its crest so high over still water, 4 m long. */
const crested = (crest: number, more: Partial<Wave> = {}): Wave => ({
  height: crest / 0.7,
  period: 1.6,
  depth: 3,
  k: Math.PI / 2,
  ...more,
})
const solid = (gap: number) => ({ gap, rise: 0.03, open: 0 })

describe('uplift under a deck', () => {
  it('is γ times the crest over its underside: 0.22 m of water are 2157.5 Pa', () => {
    const wave = crested(0.42)
    expect(mostHead(wave, solid(0.2))).toBeCloseTo(0.22, 12)
    expect(upliftPressure(wave, solid(0.2), 0.22)).toBeCloseTo(2157.5, 1)
    expect(mostHead(wave, solid(0.42))).toBe(0)
    expect(mostHead(wave, solid(0.5))).toBe(0)
  })

  it('is even under a section only where the wave is long: its mean by hand', () => {
    // Crest 0.4 m, underside at 0.2 m: the wave is over it within acos(0.5) = 1.0472 rad of its crest, 0.6667 m.
    // Over 2 m: 2 (0.4 · 0.86603 − 0.2 · 1.0472)/1.5708 = 0.17440 m², 0.08720 m of head; over 1 m: 0.16013 m.
    const wave = crested(0.4)
    expect(meanHead(wave, solid(0.2), -1, 1)).toBeCloseTo(0.0872, 4)
    expect(meanHead(wave, solid(0.2), -0.5, 0.5)).toBeCloseTo(0.16013, 4)
    // A section off the crest, and one under the next crest.
    expect(meanHead(wave, solid(0.2), 1, 3)).toBe(0)
    expect(meanHead(wave, solid(0.2), 3, 5)).toBeCloseTo(0.0872, 4)
    expect(meanHead(crested(0.4, { k: 1e-9 }), solid(0.2), -1, 1)).toBeCloseTo(0.2, 9)
  })

  it('over one whole wave is the mean that numbers give', () => {
    const wave = crested(0.3)
    for (const gap of [-0.5, -0.1, 0, 0.1, 0.25]) {
      const deck = { gap, rise: 1, open: 0 }
      let sum = 0
      const n = 4000
      for (let i = 0; i < n; i++) sum += Math.max(0, 0.3 * Math.cos((wave.k * 4 * (i + 0.5)) / n) - gap) / n
      expect(meanHead(wave, deck, 0.7, 4.7)).toBeCloseTo(sum, 5)
    }
  })

  it('goes on as the lake rises over the deck: what stands on it presses as much from above', () => {
    const wave = crested(0.3)
    expect(mostHead(wave, solid(-0.03))).toBeCloseTo(0.33, 12)
    expect(mostHead(wave, solid(-1))).toBeCloseTo(0.33, 12)
  })

  it('acts on the planks and not on the gaps: an open 4 % take 4 % off', () => {
    const wave = crested(0.42)
    const full = upliftPressure(wave, solid(0.2), 0.22)
    expect(upliftPressure(wave, { ...solid(0.2), open: 0.04 }, 0.22) / full).toBeCloseTo(0.96, 9)
    expect(upliftPressure(wave, { ...solid(0.2), open: 1 }, 0.22)).toBe(0)
  })

  it('on a grating is no more than what drives the water through it', () => {
    // H 0.4 m, T 2 s: the surface rises by π · 0.4/2 = 0.6283 m/s; through half the area, contracted to 0.6, at 2.0944 m/s: v²/2g = 0.22365 m.
    // With 0.03 m of planks 0.25365 m, under 0.3 m of head: 9806.65 · 0.25365 · 0.5 = 1243.7 Pa.
    const wave = { height: 0.4, period: 2, depth: 3, k: 1 }
    expect(upliftPressure(wave, { gap: 0, rise: 0.03, open: 0.5 }, 0.3)).toBeCloseTo(1243.7, 0)
  })
})
