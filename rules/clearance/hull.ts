/** A boat where it lies, as far as the Design tells of it: a box as long, wide and deep as it says. m. */
import { type Berth, waterOutline } from '../layout/berth.ts'
import type { Box } from './convex.ts'

/**
 * From its draught under the water to its side over it.
 *
 * @param level of the water
 */
export function hullSolid(berth: Berth, level: number): Box {
  const { draught, height } = berth.boat
  const [a, b, c, d] = waterOutline(berth) as [Point, Point, Point, Point]
  const half = (p: Point, q: Point): [number, number, number] => [(q[0] - p[0]) / 2, (q[1] - p[1]) / 2, 0]
  const high = (height + draught) / 2
  return {
    shape: 'box',
    middle: [(a[0] + c[0]) / 2, (b[1] + d[1]) / 2, level - draught + high],
    edges: [half(a, b), half(b, c), [0, 0, high]],
  }
}

type Point = readonly [x: number, y: number]
