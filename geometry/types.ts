/** What shapes are, as plain data: typed arrays that a renderer, an exporter or a mesh library takes as they are. m, z up. */

/** What a surface is made of, as far as its looks go; `decking` is of the color that its solid has. */
export type Look = 'aluminum' | 'steel' | 'wood' | 'plastic' | 'rubber' | 'decking'

/** A run of `indices` of one look. */
export interface SolidGroup {
  readonly start: number
  readonly count: number
  readonly material: Look
}

/** A run of `indices` that is one closed body by itself. */
export interface SolidBody {
  readonly start: number
  readonly count: number
}

/**
 * One part in its own frame (`rules/part-kinds.ts` says where that is). Each body is closed and wound outward; bodies touch, and those of
 * parts whose mass is computed do not overlap. Vertices are split at hard edges, with exactly equal positions, so that a
 * mesh library can weld them.
 */
export interface Solid {
  /** x, y, z of each vertex. */
  readonly positions: Float32Array
  readonly normals: Float32Array
  readonly indices: Uint32Array
  readonly groups: readonly SolidGroup[]
  readonly bodies: readonly SolidBody[]
  /** Of what is `decking` in it, as `#rrggbb` (sRGB). */
  readonly color?: string
}

/** A rectangle in plan, m. */
export interface Extent {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}
