/** A style sheet that comes with a part of its own chunk: adopted by the shadow root as long as the part is shown. */
import { type RefObject, useLayoutEffect, useRef } from 'react'

export function useSheet<T extends HTMLElement>(css: string): RefObject<T | null> {
  const ref = useRef<T>(null)
  useLayoutEffect(() => {
    const root = ref.current?.getRootNode()
    if (!(root instanceof ShadowRoot)) return
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(css)
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet]
    return () => {
      root.adoptedStyleSheets = root.adoptedStyleSheets.filter((each) => each !== sheet)
    }
  }, [css])
  return ref
}
