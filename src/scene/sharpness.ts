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

export interface Sharpness {
  /** Pixels to one of CSS for the frame about to be drawn. `moving`: another follows at once. */
  next(width: number, height: number, moving: boolean): number
  /** True where the last frame was as sharp as they get. */
  readonly sharp: boolean
  dispose(): void
}

/** `again` asks for the frame at rest. */
export function makeSharpness(slow: boolean, again: () => void): Sharpness {
  let timer: ReturnType<typeof setTimeout> | undefined
  let due = true
  let sharp = true
  const within = (ratio: number, most: number, share: number): number =>
    Math.max(0.4, Math.min(ratio, most, Math.sqrt(share)))
  return {
    get sharp() {
      return sharp
    },
    next(width, height, moving) {
      const screen = window.devicePixelRatio || 1
      const area = Math.max(1, width * height)
      if (!slow) return within(screen, MOST_RATIO, MOST_PIXELS / area)
      clearTimeout(timer)
      sharp = due && !moving
      if (sharp) {
        due = false
        return within(screen * SLOW.ratio, MOST_RATIO, SLOW.pixels / area)
      }
      timer = setTimeout(() => {
        due = true
        again()
      }, REST)
      return within(screen, 1, SLOW.quick / area)
    },
    dispose() {
      clearTimeout(timer)
    },
  }
}

let software: boolean | null = null

/** Whether WebGL is done by the processor. Asked once a page, of a context of its own. */
export function isSoftware(): boolean {
  if (software !== null) return software
  const gl = document.createElement('canvas').getContext('webgl2')
  const info = gl?.getExtension('WEBGL_debug_renderer_info')
  const name = gl && info ? String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)) : ''
  gl?.getExtension('WEBGL_lose_context')?.loseContext()
  software = /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name)
  return software
}
