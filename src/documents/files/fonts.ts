/** The papers' fonts, asked for with the first paper, and kept. */
import type { PaperFonts } from '../../../geometry/export/pdf.ts'
import type { FontUrls } from './font-urls.ts'

async function bytesAt(url: string): Promise<Uint8Array> {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`)
  return new Uint8Array(await answer.arrayBuffer())
}

let asked: Promise<PaperFonts> | null = null

/** Rejects where they cannot be had; the next call asks again. */
export function paperFonts({ regular, bold }: FontUrls): Promise<PaperFonts> {
  asked ??= Promise.all([bytesAt(regular), bytesAt(bold)]).then(
    ([one, two]) => ({ regular: one, bold: two }),
    (reason) => {
      asked = null
      throw reason
    },
  )
  return asked
}
