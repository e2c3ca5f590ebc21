/**
 * What a builder says of a dock before anything is computed. Judgment, with a few lines of hand arithmetic beside each dock; the
 * lakes are invented.
 *
 * Figures that the hand arithmetic uses, for the demo shop: a 4 x 8 ft section with its legs 85 kg = 834 N (4 x 10 some 100 kg, 5 x 8
 * some 100 kg); wind on it 0.613·(1.44 U)²·2·0.18 N/m = 0.458 U² N/m, so 1.12 U² N for a 2.44 m section, or 19 % of its dead weight
 * at U = 12; legs 1.04 m apart, so light (0.6 D) it holds 0.6·834·0.52 = 260 Nm against going over; slides at 0.25·0.6·834 = 125 N on
 * sand (0.35: 175 N on gravel and rock), or at 209 N (292 N) with its whole weight. Waves: H_s = 5.112e-4·0.71 U^1.23·sqrt(fetch)
 * (Shore Protection Manual 1984, eq. 3-39), crest 0.7·1.27·H_s. Leg: EI 19.3 kNm², moment 1.8 kNm. People 40 psf = 1915 Pa:
 * 5.7 kN on a section, so 3.3 kN a foot in the run, 72 kPa under the 7 x 10 in pad that the shop had when most of these were written,
 * 43 under its 10 x 12 in pad of today (what was fine for the smaller one is for this). An anchor post holds about 110 N on sand at
 * 1.35 m, 180 N in clay, 20 N in muck (Broms 1964, safety 2.5).
 */
import type { Design } from '../../../rules/index.ts'
import { parsedDesign } from '../arbitraries.ts'

/** `fine`: no stop and no warn; `with-care`: a warn or more, no stop; `no`: a stop or more. */
export type Verdict = 'fine' | 'with-care' | 'no'

export interface BuildersDock {
  readonly design: Design
  /** Why it is good or bad, in a builder's words. */
  readonly words: string
  /** One verdict, or the two that an honest builder stands between. */
  readonly expect: Verdict | readonly Verdict[]
  /** Codes of which one or more is among the findings. Empty: nothing has to be found. */
  readonly because: readonly string[]
  /** Codes that are not raised. */
  readonly never: readonly string[]
}

/** Distance from the water's edge, depth, and what else was found there. */
export type Spot = readonly [distance: number, depth: number, more?: Readonly<Record<string, unknown>>]

/** A bank of 0.9 m over 3 m, and a bed that goes down from the water's edge. */
export const BANK: Spot = [-3, -0.9]
export const EDGE: Spot = [0, 0]

export const lake = (
  name: string,
  spots: readonly Spot[],
  site: Readonly<Record<string, unknown>>,
  dock: Readonly<Record<string, unknown>>,
): Design =>
  parsedDesign({
    format: 'leadline/design',
    version: 1,
    name,
    site: {
      soundings: spots.map(([distance, depth, more]) => ({ distance, depth, ...more })),
      levels: { low: -0.2, high: 0.15 },
      bottom: 'sand',
      ...site,
    },
    dock: { deckHeight: 0.45, frame: '4x8', sections: 4, ramp: true, extras: {}, ...dock },
  })

/** A wind, m/s, over so much open water, m. */
export const wind = (speed: number, fetch: number) => ({ wind: { speed, fetch } })
