/** The plane that the lake is cut open along: beside the dock, or across it where it is seen from its end. */
import type { Vec3 } from '../../rules/index.ts'
import type { Slab } from './deck-rectangles.ts'

export interface Cut {
  /** True: it runs across the dock, and what lies lakeward of it is taken away, of the dock too. */
  readonly across: boolean
  /** Its offset, or its distance where it runs across, m. */
  readonly at: number
  /** What is kept: what lies farther left (1) or right (-1); across, what lies shoreward. */
  readonly keep: 1 | -1
}

/** From the dock to the plane where nobody has moved it, m: the whole dock stands behind it. */
export const OFF = 0.45

/** `moved`: where it was put, m; null: before the dock. `left`: the eye is on the left of the dock. */
export const cutOf = ({ x1, y0, y1 }: Slab, across: boolean, left: boolean, moved: number | null): Cut =>
  across
    ? { across, at: moved ?? x1 + OFF, keep: -1 }
    : { across, at: moved ?? (left ? y1 + OFF : y0 - OFF), keep: left ? -1 : 1 }

/** Whether a place of the dock is taken away with the lake before the plane. */
export const isGone = (cut: Cut | null, [x]: Vec3): boolean => cut?.across === true && x > cut.at

/** A place on the plane, by where it is along it, m. */
export const onCut = ({ across, at }: Cut, along: number): readonly [x: number, y: number] =>
  across ? [at, along] : [along, at]
