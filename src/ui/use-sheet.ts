/** A style sheet that comes with a part of its own chunk: adopted by the shadow root when the part is first shown, and left there. */
import { type RefObject, useLayoutEffect, useRef } from 'react'

const sheets = new Map<string, CSSStyleSheet>()

export function useSheet<T extends HTMLElement>(css: string): RefObject<T | null> {
  const ref = useRef<T>(null)
  useLayoutEffect(() => {
    const root = ref.current?.getRootNode()
    if (!(root instanceof ShadowRoot)) return
    let sheet = sheets.get(css)
    if (!sheet) {
      sheet = new CSSStyleSheet()
      sheet.replaceSync(css)
      sheets.set(css, sheet)
    }
    if (!root.adoptedStyleSheets.includes(sheet))
      root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet]
  }, [css])
  return ref
}
