/**
 * How many pixels a picture gets. A graphics card draws every frame as sharp as the screen. Where the processor must do its
 * work, frames of a move are coarse, and what stands still is drawn once more, finer than the screen: that smooths edges too.
 */

/** Sharper than this is not seen; and never more pixels than this in all. */
const MOST_RATIO = 2
const MOST_PIXELS = 3_200_000
/** The same for the processor: at rest, and in a move. */
const SLOW = { ratio: 1.5, pixels: 900_000, quick: 260_000 } as const
/** Nothing has moved for this long, ms. */
const REST = 220

export interface PixelRatio {
  /** Pixels of the canvas to one of CSS. */
  ratio(width: number, height: number): number
  /** The same for the frame about to be drawn: less than the canvas has where it is coarse. `moving`: another follows at once. */
  next(width: number, height: number, moving: boolean): number
  dispose(): void
}

/** `again` asks for the frame at rest. */
export function makePixelRatio(slow: boolean, again: () => void): PixelRatio {
  let timer: ReturnType<typeof setTimeout> | undefined
  let due = true
  const within = (ratio: number, most: number, pixels: number, width: number, height: number): number =>
    Math.max(0.4, Math.min(ratio, most, Math.sqrt(pixels / Math.max(1, width * height))))
  const screen = (): number => window.devicePixelRatio || 1
  const ratio = (width: number, height: number): number =>
    slow
      ? within(screen() * SLOW.ratio, MOST_RATIO, SLOW.pixels, width, height)
      : within(screen(), MOST_RATIO, MOST_PIXELS, width, height)
  return {
    ratio,
    next(width, height, moving) {
      if (!slow) return ratio(width, height)
      clearTimeout(timer)
      if (due && !moving) {
        due = false
        return ratio(width, height)
      }
      timer = setTimeout(() => {
        due = true
        again()
      }, REST)
      return within(screen(), 1, SLOW.quick, width, height)
    },
    dispose() {
      clearTimeout(timer)
    },
  }
}

/** Whether WebGL is done by the processor. Asked of a context of its own, before the picture's is made. */
export function isSoftware(): boolean {
  const gl = document.createElement('canvas').getContext('webgl2')
  const info = gl?.getExtension('WEBGL_debug_renderer_info')
  const name = gl && info ? String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)) : ''
  gl?.getExtension('WEBGL_lose_context')?.loseContext()
  return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name)
}
