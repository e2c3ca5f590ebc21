/** The element's own style sheets, made once a document and adopted by each shadow root: a strict policy lets no other kind in. */

import strip from '../section-strip/section-strip.css?inline'
import stage from '../viewport/viewport.css?inline'
import base from './base.css?inline'
import panel from './panel.css?inline'

let sheet: CSSStyleSheet | null = null

export function adoptStyles(root: ShadowRoot): void {
  if (!sheet) {
    sheet = new CSSStyleSheet()
    sheet.replaceSync([base, stage, strip, panel].join('\n'))
  }
  adopt(root, sheet)
}

function adopt(root: ShadowRoot, own: CSSStyleSheet): void {
  if (!root.adoptedStyleSheets.includes(own)) root.adoptedStyleSheets = [...root.adoptedStyleSheets, own]
}
