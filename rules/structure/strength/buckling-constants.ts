/**
 * Buckling constants of aluminum, Pa: intercept B and slope D of the straight line that stands for inelastic buckling, and the
 * slenderness C at which elastic buckling takes over.
 *
 * Source: Aluminum Design Manual 2020, Part I (Specification for Aluminum Structures), tables B.4.1 (tempers O, H, T1 to T4 and
 * every weld-affected zone), B.4.2 (T5 to T9) and B.4.3 (postbuckling). The formulas are from memory; the tests hold them against
 * figures of the manual's worked examples. κ is 1 ksi.
 */

export interface BucklingLine {
  readonly B: number
  readonly D: number
  readonly C: number
}

/** What the chapters ask of a material in one state. All Pa. */
export interface Metal {
  readonly E: number
  /** Tension: yield, ultimate over the notch coefficient kt. */
  readonly Fty: number
  readonly Ftu: number
  /** Compressive yield. */
  readonly Fcy: number
  /** Shear: 0.6 of tension, table A.4.1. */
  readonly Fsy: number
  readonly Fsu: number
  /** Artificially aged, and not softened by a weld. */
  readonly aged: boolean
}

export interface BucklingConstants {
  /** Member buckling. */
  readonly column: BucklingLine
  /** Flat elements in uniform compression, and their k1, k2 of table B.4.3. */
  readonly flat: BucklingLine
  readonly k1: number
  readonly k2: number
  /** Flat elements in bending; k1 is 0.50 and k2 2.04 for every temper. */
  readonly flatBending: BucklingLine
  /** Round tubes: in uniform compression, in bending (C: where the first line meets the second). */
  readonly round: BucklingLine
  readonly roundBending: BucklingLine
  /** Flat elements in shear. */
  readonly shear: BucklingLine
}

const KAPPA = 6.894757e6

export function bucklingConstants({ E, Fcy, Fsy, aged }: Metal): BucklingConstants {
  const raised = (F: number, over: number, root: number) => F * (1 + (F / (over * KAPPA)) ** (1 / root))
  /** Aged: straight to 0.41 B/D. */
  const steep = (B: number): BucklingLine => {
    const D = (B / 10) * Math.sqrt(B / E)
    return { B, D, C: (0.41 * B) / D }
  }
  const gentle = (B: number): BucklingLine => {
    const D = (B / 20) * Math.sqrt((6 * B) / E)
    return { B, D, C: (2 * B) / (3 * D) }
  }
  const Bt = aged ? raised(Fcy, 50_000, 5) : raised(Fcy, 6500, 5)
  const Dt = (Bt / (aged ? 4.5 : 3.7)) * Math.cbrt(Bt / E)
  const Btb = 1.5 * Bt
  const Dtb = (Btb / 2.7) * Math.cbrt(Btb / E)
  return {
    column: aged ? steep(raised(Fcy, 2250, 2)) : gentle(raised(Fcy, 1000, 2)),
    flat: aged ? steep(raised(Fcy, 1500, 3)) : gentle(raised(Fcy, 440, 3)),
    k1: aged ? 0.35 : 0.5,
    k2: aged ? 2.27 : 2.04,
    flatBending: gentle(1.3 * raised(Fcy, 340, 3)),
    round: { B: Bt, D: Dt, C: roundLimit(Bt, Dt, E) },
    roundBending: { B: Btb, D: Dtb, C: (Btb - Bt) / (Dtb - Dt) },
    shear: aged ? steep(raised(Fsy, 800, 3)) : gentle(raised(Fsy, 240, 3)),
  }
}

/** Elastic buckling of a round tube in compression, Pa; `slenderness` is √(Rb/t). Table B.5.1. */
export const roundElastic = (E: number, slenderness: number): number =>
  (Math.PI ** 2 * E) / (16 * slenderness ** 2 * (1 + slenderness / 35) ** 2)

/** Where the straight line meets the elastic curve (Ct); the manual leaves it to trial and error. */
function roundLimit(B: number, D: number, E: number): number {
  // The elastic curve lies over the line near zero and under it at 0.7 B/D; past that they meet a second time.
  let low = 0
  let high = (0.7 * B) / D
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (roundElastic(E, middle) > B - D * middle) low = middle
    else high = middle
  }
  return (low + high) / 2
}
