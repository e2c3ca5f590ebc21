/** For the build: what the PDF library would load to draw web pages, which no paper asks for, is left out, with the 100 kB that it weighs. */
import type { Plugin } from 'vite'

const NOT_ASKED = /^(?:html2canvas|dompurify|canvg)$/
const NOT_ASKED_FOR = '\0not-asked-for'

export const papersAlone: Plugin = {
  name: 'leadline:papers-alone',
  enforce: 'pre',
  resolveId: { filter: { id: NOT_ASKED }, handler: () => NOT_ASKED_FOR },
  load: { filter: { id: new RegExp(NOT_ASKED_FOR) }, handler: () => 'export default null' },
}
