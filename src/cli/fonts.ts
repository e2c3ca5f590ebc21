/** The papers' fonts: beside the built terminal, or in the checkout's own packages. */
import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename } from 'node:path'
import type { PaperFonts } from '../../geometry/export/pdf.ts'

const FONTS = {
  regular: '@expo-google-fonts/roboto/400Regular/Roboto_400Regular.ttf',
  bold: '@expo-google-fonts/roboto/700Bold/Roboto_700Bold.ttf',
} as const

function read(file: string): Uint8Array {
  const beside = new URL(`./fonts/${basename(file)}`, import.meta.url)
  return new Uint8Array(
    readFileSync(existsSync(beside) ? beside : createRequire(import.meta.url).resolve(file)),
  )
}

export const paperFonts = (): PaperFonts => ({ regular: read(FONTS.regular), bold: read(FONTS.bold) })
