/** Lines across what is cut through, and strokes under the ground's surface (ISO 128-3). mm on paper, y down. */
import type { Point } from '../paper/marks.ts'
import type { Segment } from './labels.ts'
import type { Hatch } from './view.ts'

/** Strokes under the ground: in threes, each so long; so far apart; every eighth place begins a three. */
const STROKE = { long: 1.5, apart: 0.8, next: 8 } as const

/** Within the loops, a place within two of them being outside again; on one grid for the whole sheet. */
export function hatchLines(loops: readonly (readonly Point[])[], { angle, every }: Hatch): Segment[] {
  const turn = (angle * Math.PI) / 180
  // Along the lines, and square to them. y is down on paper.
  const [ux, uy] = [Math.cos(turn), -Math.sin(turn)]
  const along = ([x, y]: Point): number => x * ux + y * uy
  const off = ([x, y]: Point): number => -x * uy + y * ux
  const back = (a: number, b: number): Point => [a * ux - b * uy, a * uy + b * ux]
  const offs = loops.flat().map(off)
  const lines: Segment[] = []
  for (let n = Math.ceil(Math.min(...offs) / every); n * every <= Math.max(...offs); n++) {
    const at = n * every
    const crossed = loops
      .flatMap((loop) =>
        loop.flatMap((a, i): number[] => {
          const b = loop[(i + 1) % loop.length]!
          const [from, to] = [off(a) - at, off(b) - at]
          if (from < 0 === to < 0) return []
          return [along(a) + (from / (from - to)) * (along(b) - along(a))]
        }),
      )
      .sort((a, b) => a - b)
    for (let i = 0; i + 1 < crossed.length; i += 2)
      if (crossed[i + 1]! - crossed[i]! > 0.05) lines.push([back(crossed[i]!, at), back(crossed[i + 1]!, at)])
  }
  return lines
}

/** Along a line from its first place to its last, down to the left. */
export function earthStrokes(line: readonly Point[]): Segment[] {
  const strokes: Segment[] = []
  let gone = 0
  line.slice(1).forEach((b, i) => {
    const a = line[i]!
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    for (let n = Math.floor(gone / STROKE.apart); n * STROKE.apart < gone + long; n++) {
      const far = n * STROKE.apart
      if (far < gone || n % STROKE.next > 2) continue
      const share = (far - gone) / long
      const at: Point = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]
      strokes.push([at, [at[0] - STROKE.long * Math.SQRT1_2, at[1] + STROKE.long * Math.SQRT1_2]])
    }
    gone += long
  })
  return strokes
}
