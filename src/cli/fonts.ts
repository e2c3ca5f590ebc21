/** The papers' fonts, from the packages that are installed beside the terminal. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { PaperFonts } from '../../geometry/export/pdf.ts'

const require = createRequire(import.meta.url)
const read = (file: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(`@expo-google-fonts/roboto/${file}`)))

export const paperFonts = (): PaperFonts => ({
  regular: read('400Regular/Roboto_400Regular.ttf'),
  bold: read('700Bold/Roboto_700Bold.ttf'),
})
