/** What every paper is told. */
import type { Reader } from '../../rules/index.ts'
import type { LabelGrid } from './label-grid.ts'
import type { PaperSize } from './marks.ts'

export interface PaperOptions extends Reader {
  readonly size: PaperSize
  /** `YYYY-MM-DD`. Given, never read from the clock, so that the same input makes the same bytes. */
  readonly date: string
  /** Who made it; may be empty. */
  readonly by: string
  /** Address that opens the dock on a phone: told by a square code where it is short enough for one. */
  readonly link?: string
  /** Sheets of labels to print on; where absent they are cut out of plain paper. */
  readonly labels?: LabelGrid
}
