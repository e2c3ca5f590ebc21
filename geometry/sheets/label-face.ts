/** What stands on one label: the code for a phone at the left; at the right its title, then as many lines as fit, the weightiest first. mm. */

import { type Block, heightOf, together, withTag } from '../paper/flow.ts'
import type { Mark, Point } from '../paper/marks.ts'
import { fittingCode, qrMarks } from '../paper/qr.ts'

export interface Face {
  /** What the phone may be told, the best first; the last one fits any label. */
  readonly codes: readonly string[]
  /** Large, on top; `most` is how large the label lets it be. */
  readonly title: (width: number, most: number) => Block
  /** Each whole or left out, the weightiest first. */
  readonly lines: (width: number) => readonly Block[]
  /** What is in it, as far as there is room; what is left out of it is counted. */
  readonly list?: {
    readonly items: (width: number) => readonly Block[]
    readonly more: (width: number, left: number, shown: number) => Block
  }
  /** Under all of it, always there. */
  readonly foot: (width: number) => Block
}

export const PAD = 2.6
/** Between code, which has white of its own, and text. */
const GAP = 1
/** Of a label's width, at most. */
const CODE_SHARE = 0.42

/** White that is kept at each side. */
export interface Pads {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}
export const EVEN: Pads = { left: PAD, top: PAD, right: PAD, bottom: PAD }

export interface Box {
  readonly width: number
  readonly height: number
  readonly pads: Pads
  /** How large the phone's code is at most. */
  readonly code?: number
}

const codeSize = ({ width, height, pads, code = Number.POSITIVE_INFINITY }: Box): number =>
  Math.min(height - pads.top - pads.bottom, width * CODE_SHARE - pads.left, code)

const innerWidth = (box: Box): number => box.width - box.pads.left - box.pads.right - codeSize(box) - GAP

export function faceMarks(face: Face, [x, y]: Point, box: Box): Mark[] {
  const { width, height, pads } = box
  const size = codeSize(box)
  const inner = innerWidth(box)
  const room = height - pads.top - pads.bottom
  const foot = face.foot(inner)
  const text = together([...fitted(face, inner, room - foot.height - foot.before), foot])
  const { text: code, ecc } = fittingCode(face.codes, size)
  return [
    ...withTag(qrMarks(code, [x + pads.left, y + pads.top + (room - size) / 2], size, ecc), {
      role: 'Figure',
      alt: code,
    }),
    ...text.marks(x + width - pads.right - inner, y + pads.top + (room - text.height) / 2),
  ]
}

/** As high as it takes for all lines. */
export function naturalHeight(face: Face, width: number, least: number): number {
  const box: Box = { width, height: least, pads: EVEN, code: least - 2 * PAD }
  const inner = innerWidth(box)
  return Math.max(
    least,
    heightOf([
      face.title(inner, TITLE),
      ...face.lines(inner),
      ...(face.list?.items(inner) ?? []),
      face.foot(inner),
    ]) +
      2 * PAD,
  )
}

/** From the first to the last that fits; of a list, then, as much of it as there is room for. */
function fitted({ title, lines, list }: Face, width: number, room: number): Block[] {
  const fits = (blocks: readonly Block[]): boolean => heightOf(blocks) <= room + 1e-6
  const head = [title(width, Math.min(TITLE, room * TITLE_SHARE)), ...lines(width)]
  let n = head.length
  while (n > 1 && !fits(head.slice(0, n))) n--
  const shown = head.slice(0, n)
  const items = list?.items(width) ?? []
  if (!list || items.length === 0) return shown
  for (let k = items.length; k >= 0; k--) {
    const all = [
      ...shown,
      ...items.slice(0, k),
      ...(k < items.length ? [list.more(width, items.length - k, k)] : []),
    ]
    if (fits(all)) return all
  }
  return shown
}
/** Of the em, mm, and at most of a label's height. */
const TITLE = 6.2
const TITLE_SHARE = 0.3
