/** Looks that the first picture has no part in, and that come after it: of what is folded away, and of a page that is printed. */
import folded from './folded.css?inline'
import print from './print.css?inline'
import { adopt } from './styles.ts'

let sheet: CSSStyleSheet | null = null

export function adoptLaterStyles(root: ShadowRoot): void {
  if (!sheet) {
    sheet = new CSSStyleSheet()
    sheet.replaceSync([folded, print].join('\n'))
  }
  adopt(root, sheet)
}
