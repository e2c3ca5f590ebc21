/**
 * Short words for the reference frames: supports, ends, sections, one member in space.
 */
import type { End6, Fixed6, FrameMember } from '../../../rules/structure/index.ts'

export const CLAMPED: Fixed6 = [true, true, true, true, true, true]
export const FREE: Fixed6 = [false, false, false, false, false, false]
/** Holds the place, lets turn but for a spin about global z (for upright members). */
export const PINNED_UPRIGHT: Fixed6 = [true, true, true, false, false, true]
/** Holds movement out of the global x–z plane. */
export const IN_XZ: Fixed6 = [false, true, false, true, false, true]
/** Pinned foot of a frame that lies in the x–z plane. */
export const PINNED_XZ: Fixed6 = [true, true, true, true, false, true]

/** Turns freely both ways, carries torsion. */
export const HINGE: End6 = ['rigid', 'rigid', 'rigid', 'rigid', 'free', 'free']

/** Aluminum tube, invented round figures: 70 GPa, 26 GPa; two different second moments. */
export const TUBE = { E: 70e9, G: 26e9, A: 1e-3, Iy: 4e-7, Iz: 9e-7, J: 6e-7 } as const

/** The same, its axial stiffness so high that it does not show in 1e-6. */
export const STIFF_TUBE = { ...TUBE, A: 100 } as const

export const between = (from: number, to: number, rest: Partial<FrameMember> = {}): FrameMember => ({
  from,
  to,
  ...STIFF_TUBE,
  ...rest,
})

/** A root of a function that changes sign between two places, to rounding. */
export function rootOf(f: (x: number) => number, low: number, high: number): number {
  let a = low
  let b = high
  const sign = Math.sign(f(a))
  if (sign === Math.sign(f(b))) throw new Error('rootOf: no change of sign')
  for (let i = 0; i < 200; i++) {
    const middle = (a + b) / 2
    if (Math.sign(f(middle)) === sign) a = middle
    else b = middle
  }
  return (a + b) / 2
}
