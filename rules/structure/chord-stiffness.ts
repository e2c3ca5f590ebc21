/**
 * Bending of a member with joints at its ends, in slopes against the chord.
 *
 * A member moved without bending then gives exactly nothing: ties of very different stiffness lose no digits
 * to each other, and a true mechanism has no strain energy at all instead of a little rounding.
 */

/** The four joints for bending in one plane, in the order of w1, φ1, w2, φ2; Infinity is rigid, 0 free. */
export interface PlaneJoints {
  /** Across the member, N/m. */
  readonly acrossFrom: number
  /** In rotation, N·m/rad. */
  readonly turnFrom: number
  readonly acrossTo: number
  readonly turnTo: number
}

export const ALL_RIGID: PlaneJoints = {
  acrossFrom: Number.POSITIVE_INFINITY,
  turnFrom: Number.POSITIVE_INFINITY,
  acrossTo: Number.POSITIVE_INFINITY,
  turnTo: Number.POSITIVE_INFINITY,
}

/** End moments from end slopes: Ma = aa·θa + ab·θb, Mb = ab·θa + bb·θb (N·m/rad), as [aa, ab, bb]. */
export type ChordStiffness = readonly [number, number, number]

const NONE: ChordStiffness = [0, 0, 0]

/**
 * Force method on the simply supported member: slopes from end moments are L/6EI·[2 −1; −1 2], to which
 * joints in rotation add 1/turn on the diagonal, and joints across add (1/acrossFrom + 1/acrossTo)/L² to
 * all four, for the shear (Ma + Mb)/L tilts the chord. Inverted by hand so that no term cancels.
 *
 * @param EI bending stiffness, N·m²
 * @param length m
 */
export function chordStiffness(EI: number, length: number, joints: PlaneJoints): ChordStiffness {
  if (EI === 0) return NONE
  const u = length / (6 * EI)
  const a = 1 / joints.turnFrom
  const b = 1 / joints.turnTo
  const c = (1 / joints.acrossFrom + 1 / joints.acrossTo) / length ** 2
  const hingedFrom = a === Number.POSITIVE_INFINITY
  const hingedTo = b === Number.POSITIVE_INFINITY
  if (c === Number.POSITIVE_INFINITY) {
    // No shear: the moments are equal and opposite.
    if (hingedFrom || hingedTo) return NONE
    const k = 1 / (6 * u + a + b)
    return [k, -k, k]
  }
  if (hingedFrom) return hingedTo ? NONE : [0, 0, 1 / (2 * u + b + c)]
  if (hingedTo) return [1 / (2 * u + a + c), 0, 0]
  const determinant = 3 * u * u + 2 * u * (a + b) + a * b + c * (6 * u + a + b)
  return [(2 * u + b + c) / determinant, (u - c) / determinant, (2 * u + a + c) / determinant]
}

/**
 * The same as a 4 × 4 matrix on deflection and slope of both ends (w1, φ1, w2, φ2), row by row.
 *
 * @param out 16 numbers
 */
export function planeMatrix(aa: number, ab: number, bb: number, length: number, out: Float64Array): void {
  const from = (aa + ab) / length
  const to = (ab + bb) / length
  const across = (from + to) / length
  out[0] = across
  out[1] = from
  out[2] = -across
  out[3] = to
  out[4] = from
  out[5] = aa
  out[6] = -from
  out[7] = ab
  out[8] = -across
  out[9] = -from
  out[10] = across
  out[11] = -to
  out[12] = to
  out[13] = ab
  out[14] = -to
  out[15] = bb
}
