/** Where places of the plan fall on the picture: lake up, left of the dock to the left. */
import type { Rectangle } from '../../rules/layout/footprint.ts'

/** Room around the dock, px: for the + at its edges, and for the hand. */
const AROUND = 32
/** A meter is never drawn smaller or larger, px; between, the dock fills this much: the panel of a phone, where a double slip just fits. */
const LEAST = 22
const MOST = 60
const ROOM = { across: 320 - 2 * AROUND, out: 380 }

export interface View {
  readonly width: number
  readonly height: number
  /** px a meter. */
  readonly scale: number
  /** In plan, to px from the picture's left and top. */
  at(x: number, y: number): readonly [left: number, top: number]
  box(of: Rectangle): {
    readonly left: number
    readonly top: number
    readonly width: number
    readonly height: number
  }
}

export function viewOf(all: readonly Rectangle[]): View {
  const x0 = Math.min(...all.map((b) => b.x0))
  const x1 = Math.max(...all.map((b) => b.x1))
  const y0 = Math.min(...all.map((b) => b.y0))
  const y1 = Math.max(...all.map((b) => b.y1))
  const fits = Math.min(ROOM.across / (y1 - y0), ROOM.out / (x1 - x0))
  const scale = Math.min(MOST, Math.max(LEAST, fits))
  return {
    width: (y1 - y0) * scale + 2 * AROUND,
    height: (x1 - x0) * scale + 2 * AROUND,
    scale,
    at: (x, y) => [(y1 - y) * scale + AROUND, (x1 - x) * scale + AROUND],
    box: (of) => ({
      left: (y1 - of.y1) * scale + AROUND,
      top: (x1 - of.x1) * scale + AROUND,
      width: (of.y1 - of.y0) * scale,
      height: (of.x1 - of.x0) * scale,
    }),
  }
}
