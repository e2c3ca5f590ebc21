/** Styles of a part that comes in a chunk of its own, adopted where it is shown: a strict policy lets no other kind in. */
import { type RefObject, useLayoutEffect } from 'react'

export function useSheet(css: string, within: RefObject<Element | null>): void {
  useLayoutEffect(() => {
    const root = within.current?.getRootNode() as Document | ShadowRoot | undefined
    if (!root) return
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(css)
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet]
    return () => {
      root.adoptedStyleSheets = root.adoptedStyleSheets.filter((one) => one !== sheet)
    }
  }, [css, within])
}
