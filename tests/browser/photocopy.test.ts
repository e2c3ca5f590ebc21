/**
 * The one leaf off a bad copier: 1 bit, 100 dpi. Each text keeps its ink: nothing gray fades out, no letter fills up; and none is smaller than what is
 * read so. What ink there is to keep is measured on the same sheet at four times the resolution.
 */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { PNG } from 'pngjs'
import { expect, test } from 'vitest'
import { boxOf } from '../../geometry/drawing/labels.ts'
import { svgOf } from '../../geometry/export/svg.ts'
import type { PathMark, Sheet, TextMark } from '../../geometry/paper/marks.ts'
import { paperFrom } from '../../geometry/paper/paper-of.ts'
import { TINT } from '../../geometry/paper/style.ts'
import { CAP_HEIGHT } from '../../geometry/paper/text.ts'
import { paperOf } from '../../geometry/sheets/packet.ts'
import { type Design, demoCatalog, demoDesign, derive, english, projectOf } from '../../rules/index.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { open, withBrowser } from './support/open.ts'

withBrowser()

const COPIER = 100
const SHARP = 400
/** Pixels of a capital letter, the foot of a sheet left out: with fewer, figures run into one another. */
const LEAST = 6.9

const fontOf = (file: string): string =>
  readFileSync(createRequire(import.meta.url).resolve(`@expo-google-fonts/roboto/${file}`)).toString('base64')
const FONTS = [
  [400, fontOf('400Regular/Roboto_400Regular.ttf')],
  [700, fontOf('700Bold/Roboto_700Bold.ttf')],
].map(
  ([weight, data]) =>
    `@font-face { font-family: Roboto; font-weight: ${weight}; src: url(data:font/ttf;base64,${data}) }`,
)

/** Black or white, row by row. */
interface Copy {
  readonly dpi: number
  readonly width: number
  readonly black: readonly boolean[]
}

async function copied(page: Page, sheet: Sheet, dpi: number): Promise<Copy> {
  const [width, height] = [sheet.width, sheet.height].map((mm) => Math.round((mm * dpi) / 25.4)) as [
    number,
    number,
  ]
  await page.setViewportSize({ width, height })
  await page.setContent(
    `<style>${FONTS.join('')} body { margin: 0 } svg { display: block; width: ${width}px; height: ${height}px; font-family: Roboto }</style>${svgOf(sheet)}`,
  )
  await page.evaluate(() => document.fonts.ready)
  const { data } = PNG.sync.read(await page.screenshot())
  const black = Array.from({ length: width * height }, (_, i) => {
    const [r, g, b] = [data[4 * i]!, data[4 * i + 1]!, data[4 * i + 2]!]
    return 0.299 * r + 0.587 * g + 0.114 * b < 128
  })
  return { dpi, width, black }
}

/** Of a text's box, mm². */
function inkOf(mark: TextMark, { dpi, width, black }: Copy): number {
  const { x0, x1, y0, y1 } = boxOf(mark)
  const px = (mm: number): number => Math.round((mm * dpi) / 25.4)
  let count = 0
  for (let y = px(y0); y < px(y1); y++)
    for (let x = px(x0); x < px(x1); x++) if (black[y * width + x]) count++
  return count * (25.4 / dpi) ** 2
}

/** How much of a field's upper edge is black. */
function framed({ points }: PathMark, { dpi, width, black }: Copy): number {
  const px = (mm: number): number => (mm * dpi) / 25.4
  const [x0, y0] = [px(points[0]![0]), px(points[0]![1])]
  const columns = Array.from({ length: Math.floor(px(points[1]![0]) - x0) }, (_, i) => Math.ceil(x0) + i)
  const dark = columns.filter((x) => [-1, 0, 1].some((off) => black[(Math.floor(y0) + off) * width + x]))
  return dark.length / columns.length
}

const textsOf = ({ marks }: Sheet): TextMark[] =>
  marks.filter((mark): mark is TextMark => mark.kind === 'text' && mark.text.trim() !== '')

const tee: Design = parsedDesign({
  ...demoDesign,
  dock: { ...demoDesign.dock, sections: 4, head: { shape: 'tee', sections: 4 } },
})

test.each([
  ['the demo', demoDesign],
  ['a tee', tee],
] as const)(
  'the leaf of %s is legible off a copier of 100 dots to the inch in black and white',
  async (_, design) => {
    const { page, close } = await open()
    const blank = await page.context().newPage()
    const of = paperFrom(projectOf(design, demoCatalog, derive(design, demoCatalog)), {
      ...english('imperial'),
      ...({ size: 'letter', date: '2026-05-01', by: '' } as const),
    })
    let [seen, fields] = [0, 0]
    for (const sheet of paperOf('set-up', of).sheets.slice(0, 2)) {
      const [copy, sharp] = [await copied(blank, sheet, COPIER), await copied(blank, sheet, SHARP)]
      const texts = textsOf(sheet)
      const foot = Math.max(...texts.map(({ at }) => at[1])) - 5
      for (const mark of texts) {
        const least = mark.at[1] < foot ? LEAST : LEAST - 0.5
        expect((mark.size * CAP_HEIGHT * COPIER) / 25.4, mark.text).toBeGreaterThanOrEqual(least)
        const kept = inkOf(mark, copy) / inkOf(mark, sharp)
        expect(kept, mark.text).toBeGreaterThan(0.55)
        expect(kept, mark.text).toBeLessThan(1.5)
        seen++
      }
      for (const mark of sheet.marks) {
        if (mark.kind !== 'path' || mark.fill !== TINT) continue
        // A frame stays where the tint is gone: room to write.
        expect(framed(mark, copy)).toBeGreaterThan(0.95)
        fields++
      }
    }
    expect(seen).toBeGreaterThan(200)
    expect(fields).toBeGreaterThan(15)
    await blank.close()
    await close()
  },
)
