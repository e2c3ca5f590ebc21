/**
 * What a member of bar stock may carry, whatever law it follows, and how much of it a set of forces uses.
 *
 * Axes are the stock's: y along its width, z up its height, x along the member. `momentY` bends it up and down (with `Iy`),
 * `shearZ` acts up and down. Allowable values, safety factors taken off: N and N·m, always positive.
 */

/** Which way of failing sets a value. */
export type LimitState =
  | 'yield'
  | 'rupture'
  /** Of the member as a whole, sideways. */
  | 'member-buckling'
  /** Of a wall. */
  | 'local-buckling'
  /** The two together. */
  | 'joint-buckling'
  /** Tipping and twisting under bending. */
  | 'lateral-torsional-buckling'

export interface Limit {
  readonly value: number
  readonly by: LimitState
}

/** How forces add up: 'flat' walls or a 'curved' one (ADM H.3), or steel (AISC H1). */
export type Interaction = 'adm-flat' | 'adm-curved' | 'aisc'

export interface Strengths {
  readonly interaction: Interaction
  /** Bends alike about every axis. */
  readonly round: boolean
  readonly compression: Limit
  readonly tension: Limit
  readonly momentY: Limit
  readonly momentZ: Limit
  readonly shearY: Limit
  readonly shearZ: Limit
  readonly torsion: Limit
}

export interface MemberOptions {
  /** Between the points that hold it, m: for buckling, for bending out of its plane, and for shear buckling of round tubes. */
  readonly length: number
  /** Effective length factor; 1 where forces come from a second-order analysis (ADM 2020 C.3). */
  readonly k?: number
  /** Bending coefficient Cb, at least 1; 1 where not told (even moment). */
  readonly Cb?: number
  /**
   * Aluminum only. `ends`: welded across within 0.05 of its length from both ends, at both of which it is held; what happens at the
   * weld is then judged by the softened metal, buckling by the sound one. `all`: welded elsewhere, or welded and held at one end only.
   */
  readonly weld?: 'none' | 'ends' | 'all'
  /** Area lost to bolt holes where it is pulled, m2. */
  readonly holes?: number
}

/** In the stock's axes, N and N·m; axial positive in tension. Other signs do not matter. */
export interface MemberForcesAt {
  readonly axial: number
  readonly My: number
  readonly Mz: number
  readonly Vy?: number
  readonly Vz?: number
  readonly T?: number
}

/** The term of the sum that takes the largest share. */
export type Term = 'compression' | 'tension' | 'bending' | 'shear' | 'torsion'

export interface Use {
  /** 1 is all of it. Never falls when all forces grow by the same factor, yet is not in proportion to it where shear counts. */
  readonly use: number
  readonly governing: { readonly term: Term; readonly by: LimitState; readonly rule: string }
}

/** The least of several. */
export function least(...limits: readonly Limit[]): Limit {
  return limits.reduce((least, limit) => (limit.value < least.value ? limit : least))
}

/**
 * How much of its strengths a member uses at one place.
 *
 * Aluminum: axial with bending by ADM 2020 H.1-1 (sum of the three shares at most 1; formula from memory), and compression, bending
 * and shear by H.3-1 (flat walls: bending and shear squared) or H.3-2 (curved: shear squared). Of a round tube both moments act as
 * their resultant, since it bends alike about every axis. Steel: AISC 360-16 H1.1, and H3-6 where torsion takes more than a fifth of
 * its strength (memory).
 */
export function utilization(strengths: Strengths, forces: MemberForcesAt): Use {
  const { interaction, round } = strengths
  const pulled = forces.axial > 0
  const along = pulled ? strengths.tension : strengths.compression
  const axial = Math.abs(forces.axial) / along.value
  const y = Math.abs(forces.My) / strengths.momentY.value
  const z = Math.abs(forces.Mz) / strengths.momentZ.value
  const Vy = Math.abs(forces.Vy ?? 0) / strengths.shearY.value
  const Vz = Math.abs(forces.Vz ?? 0) / strengths.shearZ.value
  const bending = round ? Math.hypot(y, z) : y + z
  const across = round ? Math.hypot(Vy, Vz) : Math.max(Vy, Vz)
  const twist = Math.abs(forces.T ?? 0) / strengths.torsion.value
  const shear = across + twist

  const pressed = pulled ? 0 : axial
  const steelBending = axial >= 0.2 ? axial + (8 / 9) * bending : axial / 2 + bending
  const bent = interaction === 'aisc' ? steelBending : axial + bending
  const rules: [number, string][] =
    interaction === 'aisc'
      ? [
          [bent, 'AISC 360-16 H1.1'],
          [twist > 0.2 ? axial + bending + shear ** 2 : 0, 'AISC 360-16 H3.2'],
          [shear, 'AISC 360-16 G, H3.1'],
        ]
      : [
          [bent, 'ADM 2020 H.1'],
          [pressed + (interaction === 'adm-flat' ? bending ** 2 : bending) + shear ** 2, 'ADM 2020 H.3'],
          [shear, 'ADM 2020 G, H.2'],
        ]
  const [use, rule] = rules.reduce((most, next) => (next[0] > most[0] ? next : most))
  const moment = y >= z ? strengths.momentY : strengths.momentZ
  const crossing = Vy >= Vz ? strengths.shearY : strengths.shearZ
  const terms: [number, Term, LimitState][] = [
    [axial, pulled ? 'tension' : 'compression', along.by],
    [bending, 'bending', moment.by],
    [across, 'shear', crossing.by],
    [twist, 'torsion', strengths.torsion.by],
  ]
  const [, term, by] = terms.reduce((most, next) => (next[0] > most[0] ? next : most))
  return { use, governing: { term, by, rule } }
}
