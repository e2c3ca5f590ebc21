/**
 * Random beds made apart from the model: sums of independent steps over a grid, along the dock and, of each step, along the shore, as the
 * model takes a bed to be, at a roughness of their own that the model is not told.
 */

/** Numerical Recipes' quick generator; uniform and normal. */
export function chance(seed: number) {
  let state = seed >>> 0
  const uniform = (min = 0, max = 1): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return min + ((max - min) * state) / 2 ** 32
  }
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  return { uniform, normal }
}
export type Chance = ReturnType<typeof chance>

/** Steps of the grid, m; its nodes from 3 m up the bank to 18 m out, and 6 m to both sides. */
export const [DX, DY, NX, NY, EDGE, MIDDLE] = [0.25, 0.5, 84, 24, 12, 12]
export type Grid = (i: number, j: number) => number

export function walks({ normal }: Chance): Grid {
  const roughness = 0.002 * Math.exp(0.7 * normal())
  const step = (variance: number): number => Math.sqrt(roughness * variance) * normal()
  const [bank, lake] = [-0.3 + 0.05 * normal(), -0.1 - 0.08 * Math.abs(normal())]
  const rows = Array.from({ length: NY + 1 }, () => ({ edge: 0, steps: new Array<number>(NX).fill(0) }))
  for (let i = 0; i < NX; i++) rows[MIDDLE]!.steps[i] = step(DX)
  for (const side of [1, -1])
    for (let j = MIDDLE + side; j >= 0 && j <= NY; j += side) {
      rows[j]!.edge = rows[j - side]!.edge + step(DY / 3)
      for (let i = 0; i < NX; i++) rows[j]!.steps[i] = rows[j - side]!.steps[i]! + step((DX * DY) / 30)
    }
  const z = rows.map(({ edge, steps }) => {
    const row = new Float64Array(NX + 1).fill(edge)
    for (let i = EDGE; i < NX; i++) row[i + 1] = row[i]! + steps[i]! + lake * DX
    for (let i = EDGE; i > 0; i--) row[i - 1] = row[i]! - steps[i - 1]! - bank * DX
    return row
  })
  return (i, j) => z[j]![i]!
}

export const node = (i: number, j: number) => ({ distance: (i - EDGE) * DX, offset: (j - MIDDLE) * DY })
