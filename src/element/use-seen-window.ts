/** How much of the window is left over a keyboard on the screen, for what stays in sight: as `--seen-top` and `--seen-height`, CSS px. */
import { type RefObject, useLayoutEffect } from 'react'

export function useSeenWindow(app: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const seen = window.visualViewport
    const style = app.current?.style
    if (!seen || !style) return
    const tell = (): void => {
      // Enlarged by two fingers, only a part of the page is looked at: then nothing is to move.
      if (seen.scale > 1.01) return
      style.setProperty('--seen-top', `${Math.max(0, seen.offsetTop)}px`)
      style.setProperty('--seen-height', `${seen.height}px`)
    }
    tell()
    seen.addEventListener('resize', tell)
    seen.addEventListener('scroll', tell)
    return () => {
      seen.removeEventListener('resize', tell)
      seen.removeEventListener('scroll', tell)
    }
  }, [app])
}
