/**
 * Static condensation of one degree of freedom of a small symmetric stiffness matrix.
 */

/** A pivot under this part of the stiffness it came from is the rounding left of nothing. */
export const NOTHING = 1e-12

/**
 * Puts a joint of stiffness `joint` between degree of freedom `i` of a part and its node, and condenses the
 * part's own degree away: afterwards row `i` of `matrix` and `load` belongs to the node. With `joint` 0 the
 * degree of freedom is free and row `i` ends as zeros.
 *
 * From d_i = (s u_i + f_i − Σ M_ij u_j) / p with p = M_ii + s, put into the energy of part and joint.
 *
 * @param matrix size × size, row by row; changed in place
 * @param load loads equivalent on the same degrees of freedom; changed in place
 * @param nothing pivots no larger than this are taken as no stiffness at all
 * @returns the sign of the pivot: -1 says that one negative eigenvalue has been condensed away, 0 that the
 *   degree of freedom had no stiffness (its row is zeroed and its load is left in `load[i]`)
 */
export function condense(
  matrix: Float64Array,
  size: number,
  load: Float64Array,
  i: number,
  joint: number,
  nothing: number,
): -1 | 0 | 1 {
  const row = i * size
  const pivot = matrix[row + i]! + joint
  if (Math.abs(pivot) <= nothing) {
    for (let j = 0; j < size; j++) {
      matrix[row + j] = 0
      matrix[j * size + i] = 0
    }
    return 0
  }
  const share = joint / pivot
  const loadOverPivot = load[i]! / pivot
  for (let j = 0; j < size; j++) {
    if (j === i) continue
    const factor = matrix[j * size + i]! / pivot
    if (factor === 0) continue
    load[j]! -= factor * load[i]!
    for (let k = 0; k < size; k++) if (k !== i) matrix[j * size + k]! -= factor * matrix[row + k]!
  }
  for (let j = 0; j < size; j++) {
    if (j !== i) {
      matrix[row + j]! *= share
      matrix[j * size + i] = matrix[row + j]!
    }
  }
  matrix[row + i]! *= share
  load[i] = joint * loadOverPivot
  return pivot < 0 ? -1 : 1
}
