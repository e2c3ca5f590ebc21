/** A solid of `geometry/` as the renderer takes it: one index range for each look, tone and direction for each body. */
import { BufferAttribute, BufferGeometry } from 'three'
import type { Look, Solid } from '../../../geometry/index.ts'

export interface ShapePart {
  readonly surface: Look
  readonly indices: Uint32Array
}

export interface Shape {
  readonly positions: Float32Array
  readonly normals: Float32Array
  /**
   * Three for each vertex: tone 0 to 1, axis along the body 0 to 2, and of planks that lie side by side half of the seam between them, m,
   * by the side that the vertex is on: + or −.
   */
  readonly grain: Float32Array
  readonly parts: readonly ShapePart[]
  /** Least and greatest x, y, z. */
  readonly box: readonly [number, number, number, number, number, number]
}

/** The same object each time for the same solid, as long as somebody has that. */
export function makeShapes(): (solid: Solid) => Shape {
  const shapes = new WeakMap<Solid, Shape>()
  return (solid) => {
    const known = shapes.get(solid) ?? shapeOf(solid)
    shapes.set(solid, known)
    return known
  }
}

export function shapeOf(solid: Solid): Shape {
  const parts: { surface: Look; indices: Uint32Array }[] = []
  for (const { start, count, material } of solid.groups) {
    const indices = solid.indices.subarray(start, start + count)
    const same = parts.find((part) => part.surface === material)
    if (same) same.indices = Uint32Array.from([...same.indices, ...indices])
    else parts.push({ surface: material, indices })
  }
  return {
    positions: solid.positions,
    normals: solid.normals,
    grain: grainOf(solid),
    parts,
    box: boxOf(solid.positions, solid.indices, 0, solid.indices.length),
  }
}

function grainOf(solid: Solid): Float32Array {
  const grain = new Float32Array((solid.positions.length / 3) * 3)
  const boxes = solid.bodies.map(({ start, count }) => boxOf(solid.positions, solid.indices, start, count))
  const seam = seamOf(boxes)
  solid.bodies.forEach(({ start, count }, number) => {
    const box = boxes[number]!
    const axis = axisOf(box)
    // Level, square to the plank; the sign is that of the axis which along × up gives.
    const across = 1 - axis
    const sign = axis === 1 ? 1 : -1
    // Tones spread evenly whatever the number of bodies: multiples of the golden section.
    const tone = (number * 0.6180339887) % 1
    for (let i = start; i < start + count; i++) {
      const v = solid.indices[i]!
      grain[3 * v] = tone
      grain[3 * v + 1] = axis
      if (seam > 0 && isPlank(box)) {
        const middle = (box[across]! + box[across + 3]!) / 2
        grain[3 * v + 2] = (solid.positions[3 * v + across]! > middle ? sign : -sign) * (seam / 2)
      }
    }
  })
  return grain
}

function axisOf(box: Shape['box']): number {
  const sides = [0, 1, 2].map((k) => box[k + 3]! - box[k]!)
  return sides.indexOf(Math.max(...sides))
}

/** Flat on its side: long and wide in plan, thin upward. */
const isPlank = (box: Shape['box']): boolean =>
  axisOf(box) < 2 && box[5] - box[2] < 0.6 * Math.min(box[3] - box[0], box[4] - box[1])

/** Seams wider than this are none, m. */
const MOST_SEAM = 0.03

/** The least seam between planks that lie side by side in one layer, m; 0 where there is none. */
function seamOf(boxes: readonly Shape['box'][]): number {
  let least = MOST_SEAM
  for (const axis of [0, 1]) {
    const across = 1 - axis
    const row = boxes
      .filter((box) => isPlank(box) && axisOf(box) === axis)
      .sort((a, b) => a[across]! - b[across]!)
    for (let i = 1; i < row.length; i++) {
      const [a, b] = [row[i - 1]!, row[i]!]
      const seam = b[across]! - a[across + 3]!
      if (seam > 1e-4 && Math.abs(a[5] - b[5]) < 1e-4) least = Math.min(least, seam)
    }
  }
  return least < MOST_SEAM ? least : 0
}

function boxOf(positions: Float32Array, indices: Uint32Array, start: number, count: number): Shape['box'] {
  const box: [number, number, number, number, number, number] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ]
  for (let i = start; i < start + count; i++)
    for (let k = 0; k < 3; k++) {
      const value = positions[3 * indices[i]! + k]!
      if (value < box[k]!) box[k] = value
      if (value > box[k + 3]!) box[k + 3] = value
    }
  return box
}

/** Geometries of one shape, one a look, with their vertices in common. The caller disposes them. */
export function geometriesOf(shape: Shape): { readonly surface: Look; readonly geometry: BufferGeometry }[] {
  const position = new BufferAttribute(shape.positions, 3)
  const normal = new BufferAttribute(shape.normals, 3)
  const grain = new BufferAttribute(shape.grain, 3)
  return shape.parts.map(({ surface, indices }) => {
    const geometry = new BufferGeometry()
    geometry.setAttribute('position', position)
    geometry.setAttribute('normal', normal)
    geometry.setAttribute('aGrain', grain)
    geometry.setIndex(new BufferAttribute(indices, 1))
    return { surface, geometry }
  })
}
