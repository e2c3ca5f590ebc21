/**
 * Sheets of labels as they are bought: so many columns and rows, all alike, in the middle of the sheet (common practice, no published
 * source). mm.
 */
import { PAPER_SIZES, type PaperSize, type Point } from './marks.ts'

interface Grid {
  readonly size: PaperSize
  readonly columns: number
  readonly rows: number
  readonly width: number
  readonly height: number
  /** Between columns; rows touch. */
  readonly gap: number
}

const IN = 25.4

const GRIDS = {
  'letter-2x5': { size: 'letter', columns: 2, rows: 5, width: 4 * IN, height: 2 * IN, gap: 0.1875 * IN },
  'letter-2x7': {
    size: 'letter',
    columns: 2,
    rows: 7,
    width: 4 * IN,
    height: (4 / 3) * IN,
    gap: 0.1875 * IN,
  },
  'letter-3x10': { size: 'letter', columns: 3, rows: 10, width: 2.625 * IN, height: IN, gap: 0.125 * IN },
  'a4-2x4': { size: 'a4', columns: 2, rows: 4, width: 99.1, height: 67.7, gap: 2.5 },
  'a4-2x7': { size: 'a4', columns: 2, rows: 7, width: 99.1, height: 38.1, gap: 2.5 },
  'a4-3x8': { size: 'a4', columns: 3, rows: 8, width: 70, height: 37, gap: 0 },
} as const satisfies Readonly<Record<string, Grid>>

export type LabelGrid = keyof typeof GRIDS
export const LABEL_GRIDS = Object.keys(GRIDS) as readonly LabelGrid[]

export interface LabelSheet extends Grid {
  readonly sheet: { readonly width: number; readonly height: number }
  /** Upper left corners, row by row. */
  readonly places: readonly Point[]
}

export function labelSheet(name: LabelGrid): LabelSheet {
  const grid: Grid = GRIDS[name]
  const { columns, rows, width, height, gap } = grid
  const sheet = PAPER_SIZES[grid.size]
  const left = (sheet.width - columns * width - (columns - 1) * gap) / 2
  const top = (sheet.height - rows * height) / 2
  return {
    ...grid,
    sheet,
    places: Array.from({ length: rows * columns }, (_, i) => [
      left + (i % columns) * (width + gap),
      top + Math.floor(i / columns) * height,
    ]),
  }
}
