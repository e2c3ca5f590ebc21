/** The surface as a mesh while waves are shown: fine about the dock, wide far out, ending where the ground comes through it. */
import { BufferAttribute, BufferGeometry } from 'three'
import { type BedMesh, groundMesh, waterSurface } from '../../../geometry/index.ts'
import { type Cut, onCut } from '../cut.ts'
import type { Slab } from '../deck-rectangles.ts'
import { type Sea, shareAt } from './wave-trains.ts'

/** How far the water goes, m: to where it is only a line. */
export const HORIZON = 5000
/** Steps of the fine part to a wavelength, along the waves' way and along their crests; and its bounds, m. */
const ALONG = 8
const ACROSS = 4
const FINEST = 0.22
const COARSEST = 1.4
/** Rows of the fine part beyond the dock, by side; beyond them each step is longer than the last by a factor. */
const SHORE = { rows: 6, growth: 1.6 } as const
const LAKE = { rows: 30, growth: 1.15 } as const
const ASIDE = { rows: 14, growth: 1.2 } as const
/** With fewer steps to its length than this a wave is only a slope on a flat surface; it gets there within one step more. */
const LEAST = { along: 4, across: 1.5 } as const

interface Reach {
  readonly rows: number
  readonly growth: number
}

export interface Ground {
  at(x: number, y: number): number
  /** As far as it is drawn. */
  readonly mesh: Pick<BedMesh, 'xs' | 'ys'>
}

/** `aSea`: share of the full height by which a vertex moves, and by which its slope is seen. */
export function seaGeometry(sea: Sea, ground: Ground, dock: Slab, level: number): BufferGeometry {
  const xs = columnsOf(sea, dock)
  const ys = rowsOf(sea, dock)
  const { positions, indices, depths } = waterSurface(groundMesh(xs, ys, bottomOf(ground)), level)
  const byX = fadeAt(xs, sea.length, LEAST.along)
  const byY = fadeAt(ys, sea.length, LEAST.across)
  const shares = new Float32Array(depths.length * 2)
  depths.forEach((depth, i) => {
    const share = shareAt(sea, depth)
    shares[2 * i] = share * byX(positions[3 * i]!) * byY(positions[3 * i + 1]!)
    shares[2 * i + 1] = share
  })
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setAttribute('aSea', new BufferAttribute(shares, 2))
  geometry.setIndex(new BufferAttribute(indices, 1))
  return geometry
}

/**
 * A band along the surface where the lake is cut open. `position`: place along the cut, share of the full height there, 0 for its lower
 * edge and 1 for its upper one.
 */
export function edgeGeometry(sea: Sea, ground: Ground, dock: Slab, level: number, cut: Cut): BufferGeometry {
  const columns = cut.across ? rowsOf(sea, dock) : columnsOf(sea, dock)
  const fade = fadeAt(columns, sea.length, cut.across ? LEAST.across : LEAST.along)
  const bottom = bottomOf(ground)
  const xs = columns.flatMap((x, i) => (i === 0 ? [x] : [(columns[i - 1]! + x) / 2, x]))
  const positions = new Float32Array(xs.length * 6)
  const index: number[] = []
  const landward = ground.mesh.xs[0]!
  let wet = false
  xs.forEach((x, i) => {
    const depth = !cut.across && x < landward ? 0 : level - bottom(...onCut(cut, x))
    for (const k of [0, 1]) positions.set([x, shareAt(sea, depth) * fade(x), k], 6 * i + 3 * k)
    // From the last dry place on: there the ground covers it.
    if (i > 0 && (depth > 0 || wet)) {
      const a = 2 * (i - 1)
      index.push(a, a + 2, a + 1, a + 1, a + 2, a + 3)
    }
    wet = depth > 0
  })
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setIndex(index)
  return geometry
}

/** Where no ground is drawn any more there is water, as in the still picture. */
function bottomOf({ at, mesh: { xs, ys } }: Ground): (x: number, y: number) => number {
  const [x0, x1, y0, y1] = [xs[0]!, xs.at(-1)!, ys[0]!, ys.at(-1)!]
  return (x, y) => (x >= x0 && x <= x1 && y >= y0 && y <= y1 ? at(x, y) : -HORIZON)
}

const columnsOf = ({ length }: Sea, { x0, x1 }: Slab): number[] =>
  rowOf(x0, x1, Math.min(COARSEST, Math.max(FINEST, length / ALONG)), SHORE, LAKE)

const rowsOf = ({ length }: Sea, { y0, y1 }: Slab): number[] =>
  rowOf(y0, y1, Math.min(COARSEST * 1.5, Math.max(FINEST * 1.5, length / ACROSS)), ASIDE, ASIDE)

/** Ascending places: even over `a` to `b` and some way beyond, then in growing steps to the horizon. */
function rowOf(a: number, b: number, step: number, before: Reach, after: Reach): number[] {
  const [from, to] = [a - before.rows * step, b + after.rows * step]
  const n = Math.ceil((to - from) / step)
  const even = Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n)
  const out = ({ growth }: Reach): number[] => {
    const list: number[] = []
    for (let far = 0, next = step; far < HORIZON; next *= growth) {
      far += next
      list.push(far)
    }
    return list
  }
  return [
    ...out(before)
      .map((far) => from - far)
      .reverse(),
    ...even,
    ...out(after).map((far) => to + far),
  ]
}

/** 1 where a row is fine enough for waves of a length, 0 where it is not, by place. */
function fadeAt(row: readonly number[], length: number, least: number): (at: number) => number {
  const stepAt = (at: number): number => {
    let [low, high] = [0, row.length - 1]
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (row[middle]! <= at) low = middle
      else high = middle
    }
    return row[high]! - row[low]!
  }
  return (at) => Math.min(1, Math.max(0, length / stepAt(at) - least))
}
