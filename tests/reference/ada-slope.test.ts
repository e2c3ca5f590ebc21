/**
 * Ramp slope against accessibility guidance, which a private dock need not meet and which the engine only notes.
 *
 * - 2010 ADA Standards for Accessible Design, 405.2: ramp runs no steeper than 1:12.
 * - 405.6 (section number from memory; read as 4.8.2 of the 1991 guidelines): a run rises at most 30 in.
 * - 1003.2.1 with the worked example of ADAAG appendix A15.2.2: a drop of 6 ft needs a gangway of at least 72.25 ft, which is
 *   6·sqrt(145) = 72.250 ft along the slope. A frame here is at most 20 m long, so the example is worked at a quarter of its size:
 *   slope has no size.
 */
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'

const FOOT = 0.3048
const LIMIT = 1 / 12

/** Deck over level ground, hinge well lakeward of it, with a ramp of that length. */
function rampOver(drop: number, length: number) {
  const catalog: Catalog = {
    ...demoCatalog,
    frames: demoCatalog.frames.map((f) => (f.code === '4x8' ? { ...f, length } : f)),
  }
  const deck = 1
  // The ramp's lower edge is 0.0254 + 0.1524 under its deck, square to it: the ground lies lower than the deck's edge by
  // 0.1778·cos(tilt); the hinge axis is 0.0635 under the deck, so deck level at the hinge is off by 0.0635·(1 − cos).
  const tilt = Math.asin(drop / length)
  const ground = deck - 0.0635 - drop - (0.1778 - 0.0635) * Math.cos(tilt)
  const design = parsed({
    format: 'leadline/design',
    version: 1,
    site: {
      soundings: [
        { distance: -40, depth: -ground },
        { distance: 0, depth: -ground },
        { distance: 1, depth: 1 },
        { distance: 4, depth: 1.2 },
        { distance: 30, depth: 1.4 },
      ],
      levels: { low: -0.2, high: 0.1 },
      bottom: 'sand',
    },
    dock: { deckHeight: deck, frame: '4x8', sections: 2, ramp: true, start: 1.5 },
  })
  return deriveAtOnce(design, catalog)
}

const adaNotes = (dock: ReturnType<typeof rampOver>) => dock.findings.filter((f) => /405\.2/.test(f.basis))

describe('ramp slope (2010 ADA 405.2, 1003.2.1)', () => {
  it('is 1:12 where the gangway of ADAAG A15.2.2 has its 72.25 ft to 6 ft of drop', () => {
    const dock = rampOver((6 / 4) * FOOT, (72.25 / 4) * FOOT)
    const slope = dock.ramp!.slope
    // 0.01 ft in 72.25 ft of length.
    expect(Math.abs(slope / LIMIT - 1)).toBeLessThan(0.01 / 72.25)
    expect(Math.hypot(6, 6 * 12)).toBeCloseTo(72.25, 2)
  })

  it('takes a horizontal run of 30 ft for a rise of 30 in (405.6 with 405.2)', () => {
    const dock = rampOver(30 * 0.0254, Math.hypot(30, 2.5) * FOOT)
    expect(dock.ramp!.slope).toBeCloseTo(LIMIT, 5)
  })

  it('is noted, and no more than noted, where it is steeper than 1:12', () => {
    const steeper = adaNotes(rampOver(0.5, 0.5 * 11.9))
    expect(steeper).toHaveLength(1)
    expect(steeper[0]!.severity).toBe('note')
    expect(steeper[0]!.parts).toContain('s1')
  })

  it('is not noted at 1:12.2', () => {
    expect(adaNotes(rampOver(0.5, Math.hypot(0.5, 0.5 * 12.2)))).toEqual([])
  })
})
