/** Lengths on the plan: each section and the ramp, the run, the dock both ways. */
import { type Dock, formatLength } from '../../rules/index.ts'
import { hullBox } from '../../rules/layout/berth.ts'
import { cornersOf, footprintOf, footprintOfAll, stanceOf, toPlan } from '../../rules/layout/footprint.ts'
import { boatsIn } from '../boats.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import type { Bounds, ViewDimension } from './view.ts'

type Section = Dock['sections'][number]

/** Nearest row of dimension lines off the dock, and from row to row, mm on paper. */
const ROW = 6.5
/** Beside a section this much must be free for its own dimension line, m. */
const BESIDE = 1.2
/** Rows of what begins nearer than this to the outermost edge stand under each other, m. */
const NEAR = 0.6
/** Lengths and places that differ by less are the same, m. */
const SAME = 1e-6

/** A section's length from above: a ramp's is shorter than its own, m. */
export const levelLength = ({ ramp }: Pick<Dock, 'ramp'>, { role, length }: Section): number =>
  role === 'ramp' && ramp ? length / Math.hypot(1, ramp.slope) : length

/** @param own what the dock covers with all that is on it */
export function planDimensions(drawn: Drawn, own: Bounds): ViewDimension[] {
  const { dock } = drawn
  const standing = dock.sections.find(({ role }) => role === 'standing')
  if (!standing) return []
  const list: ViewDimension[] = []
  const add = (from: Point, to: Point, side: ViewDimension['side'], off: number, line: number): void => {
    const along = side === 'below' || side === 'above' ? 'x' : 'y'
    const long = along === 'x' ? Math.abs(to[0] - from[0]) : Math.abs(to[1] - from[1])
    list.push({ from, to, along, side, off, line, text: formatLength(long, drawn) })
  }
  const level = dock.sections.map((section) => ({ ...section, length: levelLength(dock, section) }))
  const boxes = [...level.map(footprintOf), ...boatsIn(drawn).map(hullBox)]
  const free = (box: Bounds): boolean =>
    !boxes.some(
      (one) =>
        one.x0 < box.x1 - SAME && box.x0 + SAME < one.x1 && one.y0 < box.y1 - SAME && box.y0 + SAME < one.y1,
    )
  for (const section of level) {
    const { c, s } = stanceOf(section)
    const { x0, x1, y0, y1 } = footprintOf(section)
    if (Math.abs(s) < SAME) {
      if (free({ x0, x1, y0: y0 - BESIDE, y1: y0 })) add([x0, y0], [x1, y0], 'below', ROW, y0)
      else if (free({ x0, x1, y0: y1, y1: y1 + BESIDE })) add([x0, y1], [x1, y1], 'above', ROW, y1)
      else add([x0, y0], [x1, y0], 'below', ROW, own.y0)
    } else if (Math.abs(c) < SAME) {
      if (free({ x0: x1, x1: x1 + BESIDE, y0, y1 })) add([x1, y0], [x1, y1], 'right', ROW, x1)
      else if (free({ x0: x0 - BESIDE, x1: x0, y0, y1 })) add([x0, y0], [x0, y1], 'left', ROW, x0)
      else add([x1, y0], [x1, y1], 'right', ROW, own.x1)
    } else list.push(slanted(section, level, drawn))
  }
  const run = level.filter(
    (one) => one.role !== 'ramp' && Math.abs(stanceOf(one).s) < SAME && Math.abs(one.y - standing.y) < SAME,
  )
  const around = footprintOfAll(run)
  if (around && run.length > 1) {
    const { x0, x1, y0 } = around
    add([x0, y0], [x1, y0], 'below', 2 * ROW, free({ x0, x1, y0: y0 - 2 * BESIDE, y1: y0 }) ? y0 : own.y0)
  }
  const shore = footprintOf(standing)
  const beside = boxes.filter((one) => one.y1 > standing.y - 1 && one.y0 < standing.y + 1)
  if (Math.abs(stanceOf(standing).s) < SAME)
    add([shore.x0, shore.y0], [shore.x0, shore.y1], 'left', ROW, Math.min(...beside.map(({ x0 }) => x0)))
  // The whole dock, beyond all rows that are there.
  const all = footprintOfAll(level)!
  const told = (along: 'x' | 'y', from: number, to: number): boolean =>
    list.some((one) => {
      const [a, b] = along === 'x' ? [one.from[0], one.to[0]] : [one.from[1], one.to[1]]
      return one.along === along && Math.abs(a - from) < SAME && Math.abs(b - to) < SAME
    })
  const beyond = (side: 'below' | 'right'): number =>
    list.reduce((most, one) => {
      const near = side === 'below' ? (one.line ?? 0) - own.y0 : own.x1 - (one.line ?? 0)
      return one.side === side && near < NEAR ? Math.max(most, one.off) : most
    }, 0) + ROW
  if (!told('x', all.x0, all.x1)) add([all.x0, all.y0], [all.x1, all.y0], 'below', beyond('below'), own.y0)
  if (!told('y', all.y0, all.y1)) add([all.x1, all.y0], [all.x1, all.y1], 'right', beyond('right'), own.x1)
  return list
}

/** Along the edge of a section that lies at a slant, on the side where nothing lies. */
function slanted(section: Section, all: readonly Section[], drawn: Drawn): ViewDimension {
  const p = stanceOf(section)
  const corners = cornersOf(section)
  const covered = (side: 1 | -1): boolean => {
    const [x, y] = toPlan(p, section.length / 2, side * (section.width / 2 + BESIDE / 2))
    return all.some((other) => {
      if (other.id === section.id) return false
      const q = stanceOf(other)
      const along = q.c * (x - q.x) + q.s * (y - q.y)
      const aside = -q.s * (x - q.x) + q.c * (y - q.y)
      return along > 0 && along < other.length && Math.abs(aside) < other.width / 2
    })
  }
  const left = covered(-1) && !covered(1)
  const [from, to] = left ? [corners[1]!, corners[2]!] : [corners[0]!, corners[3]!]
  const upward = (left ? p.c : -p.c) > 0
  return {
    from,
    to,
    along: 'slope',
    side: upward ? 'above' : 'below',
    off: ROW,
    text: formatLength(section.length, drawn),
  }
}
