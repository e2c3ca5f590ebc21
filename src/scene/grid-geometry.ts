/** A geometry that is filled again and again from arrays: what has the same size is written over, what is the same array is left alone. */
import { BufferAttribute, BufferGeometry } from 'three'

export interface GridGeometry {
  readonly geometry: BufferGeometry
  /** By attribute: its numbers and how many a vertex has. All is copied. */
  fill(attributes: Readonly<Record<string, readonly [Float32Array, number]>>, indices: Uint32Array): void
}

/** The caller disposes the geometry. */
export function makeGridGeometry(): GridGeometry {
  const geometry = new BufferGeometry()
  const copied = new Map<string, Float32Array>()
  let triangles: Uint32Array | null = null
  return {
    geometry,
    fill(attributes, indices) {
      for (const [name, [array, size]] of Object.entries(attributes)) {
        if (copied.get(name) === array) continue
        copied.set(name, array)
        const known = geometry.attributes[name] as BufferAttribute | undefined
        if (known?.array.length === array.length) {
          known.set(array)
          known.needsUpdate = true
        } else {
          // What the card holds of the old ones goes with them.
          if (known) geometry.dispose()
          geometry.setAttribute(name, new BufferAttribute(array.slice(), size))
        }
      }
      if (indices === triangles) return
      triangles = indices
      const index = geometry.index as BufferAttribute | null
      if (index?.array.length === indices.length) {
        index.set(indices)
        index.needsUpdate = true
      } else geometry.setIndex(new BufferAttribute(indices.slice(), 1))
    },
  }
}
