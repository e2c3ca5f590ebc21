/** Styles of a part that comes in a chunk of its own, adopted while it is shown: a strict policy lets no other kind in. */
import { type RefObject, useLayoutEffect, useRef } from 'react'

/** To be given to an element of the part. */
export function useSheet<T extends Element>(css: string): RefObject<T | null> {
  const ref = useRef<T>(null)
  useLayoutEffect(() => {
    const root = ref.current?.getRootNode()
    if (!(root instanceof ShadowRoot)) return
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(css)
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet]
    return () => {
      root.adoptedStyleSheets = root.adoptedStyleSheets.filter((one) => one !== sheet)
    }
  }, [css])
  return ref
}
