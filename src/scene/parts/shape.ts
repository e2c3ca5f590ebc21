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
  /** Two for each vertex: tone 0 to 1, axis along the body 0 to 2. */
  readonly grain: Float32Array
  readonly parts: readonly ShapePart[]
  /** Least and greatest x, y, z. */
  readonly box: readonly [number, number, number, number, number, number]
}

const shapes = new WeakMap<Solid, Shape>()

/** The same object each time for the same solid. */
export function shapeOf(solid: Solid): Shape {
  const known = shapes.get(solid)
  if (known) return known
  const parts: { surface: Look; indices: Uint32Array }[] = []
  for (const { start, count, material } of solid.groups) {
    const indices = solid.indices.subarray(start, start + count)
    const same = parts.find((part) => part.surface === material)
    if (same) same.indices = Uint32Array.from([...same.indices, ...indices])
    else parts.push({ surface: material, indices })
  }
  const shape: Shape = {
    positions: solid.positions,
    normals: solid.normals,
    grain: grainOf(solid),
    parts,
    box: boxOf(solid.positions, solid.indices, 0, solid.indices.length),
  }
  shapes.set(solid, shape)
  return shape
}

function grainOf(solid: Solid): Float32Array {
  const grain = new Float32Array((solid.positions.length / 3) * 2)
  solid.bodies.forEach(({ start, count }, number) => {
    const [x0, y0, z0, x1, y1, z1] = boxOf(solid.positions, solid.indices, start, count)
    const sides = [x1 - x0, y1 - y0, z1 - z0]
    const axis = sides.indexOf(Math.max(...sides))
    // Tones spread evenly whatever the number of bodies: multiples of the golden section.
    const tone = (number * 0.6180339887) % 1
    for (let i = start; i < start + count; i++) {
      const v = solid.indices[i]!
      grain[2 * v] = tone
      grain[2 * v + 1] = axis
    }
  })
  return grain
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
  const grain = new BufferAttribute(shape.grain, 2)
  return shape.parts.map(({ surface, indices }) => {
    const geometry = new BufferGeometry()
    geometry.setAttribute('position', position)
    geometry.setAttribute('normal', normal)
    geometry.setAttribute('aGrain', grain)
    geometry.setIndex(new BufferAttribute(indices, 1))
    return { surface, geometry }
  })
}
