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

const READY = 'leadline-scene-ready'

export interface FrameReport {
  /** Told of each frame that was drawn. `moving`: another follows at once. */
  record(frame: Pick<SceneStats, 'drawCalls' | 'triangles' | 'instances' | 'still'>, moving: boolean): void
}

/** Hangs the figures on the canvas, and tells there when a picture is ready. */
export function makeFrameReport(canvas: HTMLCanvasElement, at: SceneStats['at']): FrameReport {
  const stats = { frames: 0, drawCalls: 0, triangles: 0, instances: 0, mostDrawCalls: 0, still: true }
  Object.defineProperty(canvas, STATS, { get: (): SceneStats => ({ ...stats, at }), enumerable: false })
  let told = false
  return {
    record(frame, moving) {
      Object.assign(stats, frame)
      stats.frames++
      stats.mostDrawCalls = Math.max(stats.mostDrawCalls, stats.drawCalls)
      // Water that moves never comes to rest: a picture it is all the same.
      if (!stats.still && (!moving || told)) return
      told = true
      const { drawCalls, instances, triangles } = stats
      const detail = { drawCalls, instances, triangles }
      canvas.dispatchEvent(new CustomEvent(READY, { bubbles: true, composed: true, detail }))
    },
  }
}
