/** The papers' fonts, as files of our own origin; asked for with the first paper, and kept. */

import regular from '@expo-google-fonts/roboto/400Regular/Roboto_400Regular.ttf?url'
import bold from '@expo-google-fonts/roboto/700Bold/Roboto_700Bold.ttf?url'
import type { PaperFonts } from '../../../geometry/export/pdf.ts'

async function bytesAt(url: string): Promise<Uint8Array> {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`)
  return new Uint8Array(await answer.arrayBuffer())
}

let asked: Promise<PaperFonts> | null = null

/** Throws where they cannot be had; the next call asks again. */
export function paperFonts(): Promise<PaperFonts> {
  asked ??= Promise.all([bytesAt(regular), bytesAt(bold)]).then(
    ([one, two]) => ({ regular: one, bold: two }),
    (reason) => {
      asked = null
      throw reason
    },
  )
  return asked
}
