/** How the papers look: sizes of letters, lines and white in mm, inks. One place, so that all sheets are of one hand. */
import type { Ink, Stroke } from './marks.ts'

export const INK: Ink = '#1b2126'
/** Of what is read second; dark enough that thin letters do not fade off a copier of 1 bit and 100 dpi. */
export const GRAY: Ink = '#2c343a'
const LIGHT: Ink = '#c3cad0'
export const TINT: Ink = '#f2f4f5'
export const WATER: Ink = '#3f7fa3'
/** What must not be overlooked: printed black on a copier, red where there is color. */
export const ALERT: Ink = '#a3261b'

/** Of the em, mm: 3.4 mm is 9.6 points. */
export const SIZE = { title: 6.6, heading: 4.4, sub: 3.6, body: 3.4, small: 2.75, tiny: 2.35 } as const

/** Line to line, of the em. */
export const LEADING = 1.36

export const RULE: Stroke = { width: 0.25, ink: INK }
export const HAIR: Stroke = { width: 0.12, ink: LIGHT }
export const BOX: Stroke = { width: 0.22, ink: INK }
/** Around what is written in by hand: stays where a tint does not. */
export const FIELD: Stroke = { width: 0.35, ink: INK }
export const CUT: Stroke = { width: 0.12, ink: GRAY, dash: [1.2, 1.2] }

/** Around what is on a sheet: every printer keeps clear of less. */
export const MARGIN = { side: 15, top: 13, bottom: 11 } as const
/** Kept at the foot of each sheet, and at the head of those after the first. */
export const FOOT = 10
export const HEAD_AGAIN = 10
