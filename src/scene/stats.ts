/** What the last frame took: for tests, and for whoever wonders. */
export interface SceneStats {
  /** Frames drawn since the scene was mounted. */
  readonly frames: number
  /** Of the last frame, the shadow's among them. */
  readonly drawCalls: number
  readonly triangles: number
  /** Placements drawn. */
  readonly instances: number
  /** Most draw calls of any frame so far. */
  readonly mostDrawCalls: number
  /** True when no move is going on. */
  readonly still: boolean
  /** Where on the canvas a place of the dock's frame is seen, CSS px; null behind the eye. */
  at(x: number, y: number, z: number): { readonly x: number; readonly y: number } | null
}

/** Where it hangs on the canvas, unseen by loops over its properties. */
export const STATS = 'leadlineScene'

export const READY = 'leadline-scene-ready'
