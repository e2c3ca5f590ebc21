/** Looks that the first picture has no part in, and that come after it: of what is told or folded away, and of a page that is printed. */
import folded from './folded.css?inline'
import notice from './notice.css?inline'
import print from './print.css?inline'

let sheet: CSSStyleSheet | null = null

export function adoptLaterStyles(root: ShadowRoot): void {
  if (!sheet) {
    sheet = new CSSStyleSheet()
    sheet.replaceSync([notice, folded, print].join('\n'))
  }
  // Before those of chunks that came meanwhile: what they say of the same holds.
  const [own, ...others] = root.adoptedStyleSheets
  if (own && !others.includes(sheet)) root.adoptedStyleSheets = [own, sheet, ...others]
}
