/**
 * What is on a sheet of paper, as plain data: every paper is drawn from these few marks, and each writer (PDF, SVG) knows only them.
 *
 * Units: mm. x to the right and y down from the sheet's upper left corner. Angles in degrees, counter-clockwise as seen.
 */

export type Point = readonly [x: number, y: number]
/** `#rrggbb` */
export type Ink = `#${string}`

/**
 * What a mark is part of, for who does not see the sheet (ISO 32000-1, 14.8: standard structure types). One object is one element: all marks
 * that have it belong to it, on whatever sheets they are.
 */
export interface Tag {
  readonly role:
    | 'H1'
    | 'H2'
    | 'H3'
    | 'P'
    | 'L'
    | 'LI'
    | 'Lbl'
    | 'LBody'
    | 'Table'
    | 'TR'
    | 'TH'
    | 'TD'
    | 'Figure'
    | 'Caption'
    /** Not read: what every sheet repeats, lines, tints. */
    | 'Artifact'
  readonly in?: Tag
  /** Of a row: all its cells in their order, those too in which nothing stands. */
  readonly cells?: readonly Tag[]
  /** Columns, of a table and of a cell over several. */
  readonly columns?: number
  /** What is said of a figure. */
  readonly alt?: string
}

export interface Stroke {
  readonly width: number
  readonly ink: Ink
  /** Lengths drawn and left out in turn; absent where the line goes through. */
  readonly dash?: readonly number[]
}

/** A polyline or polygon. Without a stroke only its fill is seen. */
export interface PathMark {
  readonly kind: 'path'
  readonly tag?: Tag
  readonly points: readonly Point[]
  readonly closed: boolean
  readonly stroke: Stroke | null
  readonly fill: Ink | null
}

export interface CircleMark {
  readonly kind: 'circle'
  readonly tag?: Tag
  readonly at: Point
  readonly radius: number
  readonly stroke: Stroke | null
  readonly fill: Ink | null
}

export type Weight = 'regular' | 'bold'
export type Anchor = 'start' | 'middle' | 'end'

/** One line of text. */
export interface TextMark {
  readonly kind: 'text'
  readonly tag?: Tag
  /** On its baseline, where `anchor` says. */
  readonly at: Point
  readonly text: string
  /** Of the em, mm. */
  readonly size: number
  readonly weight: Weight
  readonly anchor: Anchor
  readonly angle: number
  readonly ink: Ink
  /** Under what else is there, which is read over it. */
  readonly behind?: true
}

/** A picture that is made of points: RGB, row by row from the top. */
export interface ImageMark {
  readonly kind: 'image'
  readonly tag?: Tag
  readonly at: Point
  readonly width: number
  readonly height: number
  /** PNG file, or what `type` says. */
  readonly png: Uint8Array
  readonly type?: 'jpeg'
}

export type Mark = PathMark | CircleMark | TextMark | ImageMark

export interface Sheet {
  readonly width: number
  readonly height: number
  readonly marks: readonly Mark[]
  /** Said in the list of bookmarks; null for a sheet that goes on from the one before. */
  readonly bookmark: string | null
}

/** Sheets that belong together, with what a file says of itself. */
export interface Paper {
  readonly title: string
  /** Who made it: the shop. */
  readonly author: string
  /** The dock's check code and what else is to be found by. */
  readonly subject: string
  /** BCP 47 */
  readonly lang: string
  readonly sheets: readonly Sheet[]
}

export const PAPER_SIZE_NAMES = ['letter', 'a4', 'tabloid', 'a3'] as const
export type PaperSize = (typeof PAPER_SIZE_NAMES)[number]

/** Upright, mm: ANSI/ASME Y14.1 A and B, ISO 216 A4 and A3. */
export const PAPER_SIZES: Readonly<Record<PaperSize, { readonly width: number; readonly height: number }>> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
  tabloid: { width: 279.4, height: 431.8 },
  a3: { width: 297, height: 420 },
}
