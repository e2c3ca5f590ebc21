/**
 * The 3D scene of one element. Loaded when the element comes into view; everything three is behind this import.
 *
 * `mountScene(host, store)` fills the host, follows its size, and draws only when something changed. It throws NoWebGLError where the
 * browser gives no context, so that the page can go on with the drawing. `dispose` frees everything.
 */
import type { LeadlineStore } from '../state/store.ts'
import { makePicture, type Picture } from './picture.tsx'
import { isSoftware } from './pixel-ratio.ts'
import { makeShell } from './shell.ts'

export { NoWebGLError } from './errors.ts'
export { type SceneStats, STATS } from './stats.ts'

/** A lost context not restored by the browser within this time is offered as a button, ms. */
const PATIENCE = 2500

export interface MountedScene {
  /** A PNG of the scene as it is seen, px; rejects while it is not there. */
  snapshot(width: number, height: number): Promise<Blob>
  dispose(): void
}

export default function mountScene(host: HTMLElement, store: LeadlineStore): MountedScene {
  const shell = makeShell(host)
  const slow = isSoftware()
  let waiting: ReturnType<typeof setTimeout> | undefined
  let picture: Picture

  const start = (): Picture => {
    clearTimeout(waiting)
    shell.offer(null, store.getState())
    return makePicture(shell.newCanvas(), store, shell, slow, {
      onLost() {
        waiting = setTimeout(() => shell.offer(restart, store.getState()), PATIENCE)
      },
      onBack() {
        clearTimeout(waiting)
        shell.offer(null, store.getState())
      },
    })
  }
  const measure = (): void => picture.resize(shell.box.clientWidth, shell.box.clientHeight)
  const restart = (): void => {
    picture.dispose()
    try {
      picture = start()
      measure()
    } catch {
      // Still no context: the offer stays.
      shell.offer(restart, store.getState())
    }
  }
  try {
    picture = start()
  } catch (error) {
    shell.dispose()
    throw error
  }
  const sizes = new ResizeObserver(measure)
  sizes.observe(shell.box)
  // Nothing is drawn in a hidden tab or while scrolled out of view.
  let near = false
  const seen = (): void => picture.setVisible(near && !document.hidden)
  const sight = new IntersectionObserver(
    (entries) => {
      near = entries.at(-1)!.isIntersecting
      seen()
    },
    // Just before it scrolls into view.
    { rootMargin: '64px' },
  )
  sight.observe(shell.box)
  document.addEventListener('visibilitychange', seen)
  return {
    snapshot: (width, height) => picture.snapshot(width, height),
    dispose() {
      clearTimeout(waiting)
      sizes.disconnect()
      sight.disconnect()
      document.removeEventListener('visibilitychange', seen)
      picture.dispose()
      shell.dispose()
    },
  }
}
