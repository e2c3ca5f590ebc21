/** What boats are drawn with: sheets and boxes in a boat's own axes, added to a mesh; the paints. */
import { placeOf, type Station } from '../../../geometry/boats.ts'
import type { Berth } from '../../../rules/layout/berth.ts'

/** Own axes, m: along to the bow, off to the side away from the dock, up from the water. */
export type Place = readonly [along: number, off: number, up: number]
/** Linear red, green, blue, and how much it shines, 0 to 1. */
export type Paint = readonly [r: number, g: number, b: number, gloss: number]

export const WHITE: Paint = [0.72, 0.7, 0.66, 0.75]
export const NAVY: Paint = [0.02, 0.045, 0.1, 0.9]
export const MAROON: Paint = [0.16, 0.022, 0.028, 0.8]
export const OLIVE: Paint = [0.085, 0.11, 0.075, 0.35]
export const ALLOY: Paint = [0.46, 0.48, 0.5, 0.85]
export const FLOOR: Paint = [0.3, 0.26, 0.2, 0.05]
export const GRAY: Paint = [0.16, 0.165, 0.17, 0.05]
export const SEAT: Paint = [0.62, 0.52, 0.38, 0.15]
export const BLACK: Paint = [0.018, 0.019, 0.021, 0.7]
export const GLASS: Paint = [0.05, 0.075, 0.085, 1]

export interface BoatMesh {
  readonly positions: number[]
  readonly normals: number[]
  readonly paints: number[]
  /** Of the boat that a vertex belongs to: its middle in plan, and a quarter of its length along it. */
  readonly berths: number[]
  readonly indices: number[]
}

const minus = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const cross = (a: Place, b: Place): Place => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
const dot = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

export interface Pen {
  /** A smooth sheet of rows of places; `seen` points from its surface to where it is seen from. */
  sheet(rows: readonly (readonly Place[])[], paint: Paint, seen: (at: Place) => Place): void
  /** A box between two corners, its top drawn in by `taper` on each side, m. */
  box(from: Place, to: Place, paint: Paint, taper?: number): void
}

export function penFor(mesh: BoatMesh, berth: Berth): Pen {
  const place = placeOf(berth)
  const [cx, cy] = place(0, 0)
  const [qx, qy] = place(berth.boat.length / 4, 0)
  const turned = ([along, off, up]: Place): Place => {
    const [x, y] = place(along, off)
    return [x - cx, y - cy, up]
  }
  const sheet: Pen['sheet'] = (rows, paint, seen) => {
    const wide = rows[0]!.length
    const first = mesh.positions.length / 3
    const sums = rows.map((row) => row.map((): [number, number, number] => [0, 0, 0]))
    const faces: [number, number][][] = []
    for (let i = 0; i + 1 < rows.length; i++)
      for (let j = 0; j + 1 < wide; j++) {
        faces.push(
          [
            [i, j],
            [i + 1, j],
            [i + 1, j + 1],
          ],
          [
            [i, j],
            [i + 1, j + 1],
            [i, j + 1],
          ],
        )
      }
    for (const face of faces) {
      const [a, b, c] = face.map(([i, j]) => rows[i]![j]!) as [Place, Place, Place]
      const normal = cross(minus(b, a), minus(c, a))
      const sign = dot(normal, seen(a)) < 0 ? -1 : 1
      for (const [i, j] of face)
        normal.forEach((value, k) => {
          sums[i]![j]![k] = sums[i]![j]![k]! + sign * value
        })
    }
    rows.forEach((row, i) => {
      row.forEach((at, j) => {
        const normal = turned(sums[i]![j]!)
        const long = Math.hypot(...normal) || 1
        const [x, y, z] = turned(at)
        mesh.positions.push(cx + x, cy + y, z)
        mesh.normals.push(...normal.map((value) => value / long))
        mesh.paints.push(...paint)
        mesh.berths.push(cx, cy, qx - cx, qy - cy)
      })
    })
    for (const face of faces) mesh.indices.push(...face.map(([i, j]) => first + i * wide + j))
  }
  const box: Pen['box'] = (from, to, paint, taper = 0) => {
    const [a, b] = [from.map((v, k) => Math.min(v, to[k]!)), from.map((v, k) => Math.max(v, to[k]!))]
    const middle: Place = [(a[0]! + b[0]!) / 2, (a[1]! + b[1]!) / 2, (a[2]! + b[2]!) / 2]
    const corner = (x: 0 | 1, y: 0 | 1, z: 0 | 1): Place => {
      const inset = z * taper
      return [x ? b[0]! - inset : a[0]! + inset, y ? b[1]! - inset : a[1]! + inset, z ? b[2]! : a[2]!]
    }
    const away = (at: Place): Place => minus(at, middle)
    for (const quad of [
      [corner(0, 0, 1), corner(1, 0, 1), corner(0, 1, 1), corner(1, 1, 1)],
      [corner(0, 0, 0), corner(1, 0, 0), corner(0, 0, 1), corner(1, 0, 1)],
      [corner(0, 1, 0), corner(1, 1, 0), corner(0, 1, 1), corner(1, 1, 1)],
      [corner(0, 0, 0), corner(0, 1, 0), corner(0, 0, 1), corner(0, 1, 1)],
      [corner(1, 0, 0), corner(1, 1, 0), corner(1, 0, 1), corner(1, 1, 1)],
      [corner(0, 0, 0), corner(1, 0, 0), corner(0, 1, 0), corner(1, 1, 0)],
    ])
      sheet([quad.slice(0, 2), quad.slice(2)], paint, away)
  }
  return { sheet, box }
}

export const UP = (): Place => [0, 0, 1]
export const AFT = (): Place => [-1, 0, 0]
export const between = (a: number, b: number, t: number): number => a + (b - a) * t

/** @param t part of the hull's length, from its stern */
export const stationAt = (stations: readonly Station[], t: number): Station =>
  stations[Math.round(t * (stations.length - 1))]!
