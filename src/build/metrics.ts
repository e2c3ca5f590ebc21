/** Widths of the papers' letters, out of the font files, into `geometry/paper/font-metrics.json`. Run by `npm run build:metrics`. */
import { readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import opentype from 'opentype.js'

const require = createRequire(import.meta.url)

export const FONT_FILES = {
  regular: '@expo-google-fonts/roboto/400Regular/Roboto_400Regular.ttf',
  bold: '@expo-google-fonts/roboto/700Bold/Roboto_700Bold.ttf',
} as const

export function fontOf(weight: keyof typeof FONT_FILES): ReturnType<typeof opentype.parse> {
  const { buffer, byteOffset, length } = readFileSync(require.resolve(FONT_FILES[weight]))
  return opentype.parse(buffer.slice(byteOffset, byteOffset + length) as ArrayBuffer)
}

/** Runs of code points that follow each other: the first one, and the widths of all, a blank between. */
function runsOf(font: ReturnType<typeof opentype.parse>): Record<string, string> {
  const runs: Record<string, string> = {}
  const points = Object.entries(font.tables.cmap.glyphIndexMap)
    .filter(([, glyph]) => glyph > 0)
    .map(([point]) => Number(point))
    .filter((point) => point >= 0x20 && point <= 0xffff)
    .sort((a, b) => a - b)
  let first = -1
  let before = -1
  for (const point of points) {
    const width = String(font.charToGlyph(String.fromCodePoint(point)).advanceWidth)
    if (point !== before + 1) first = point
    runs[first] = first === point ? width : `${runs[first]} ${width}`
    before = point
  }
  return runs
}

export function metricsFile(): string {
  const regular = fontOf('regular')
  const metrics = {
    unitsPerEm: regular.unitsPerEm,
    ascent: regular.ascender,
    descent: -regular.descender,
    capHeight: regular.tables.os2.sCapHeight,
    xHeight: regular.tables.os2.sxHeight,
    regular: runsOf(regular),
    bold: runsOf(fontOf('bold')),
  }
  return `${JSON.stringify(metrics, null, 2)}\n`
}

export const METRICS_FILE = join(
  dirname(fileURLToPath(import.meta.url)),
  '../../geometry/paper/font-metrics.json',
)

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(METRICS_FILE, metricsFile())
