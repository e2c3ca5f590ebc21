/** A cell's length in the unit of its column, or in its own where it says one. */
import { EXACT } from '../../rules/index.ts'
import { type LengthFault, type LengthUnit, parseLength } from '../units/parse.ts'

export const UNITS = ['ft', 'in', 'fathom', 'm', 'cm'] as const
export type Unit = (typeof UNITS)[number]

/** m: two yards, exact since the international yard of 1959. */
const FATHOM = 1.8288
const OWN_FATHOMS = /\s*(?:fathoms?|fath?\.?|fms?\.?)$/i

export type CellRead =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: LengthFault }

/** Of the plain numbers that nearly all cells are; thousands of them are read anew at each choice. */
const PLAIN = /^[-+]?\d{1,9}(?:\.\d{1,12})?$/
const METERS: Readonly<Record<Unit, number>> = {
  ft: EXACT.foot,
  in: EXACT.inch,
  fathom: FATHOM,
  m: 1,
  cm: 0.01,
}

/** m */
export function readCell(text: string, unit: Unit): CellRead {
  if (PLAIN.test(text)) return { ok: true, value: Number(text) * METERS[unit] }
  const own = OWN_FATHOMS.test(text)
  const bare = text.replace(OWN_FATHOMS, '')
  // Other units within a column of fathoms keep their own.
  const fathoms = own || (unit === 'fathom' && /^\s*[-+−–]?\s*[\d.,]+\s*$/.test(bare))
  const read = parseLength(
    own ? bare : text,
    fathoms || unit === 'fathom' ? 'm' : (unit satisfies LengthUnit),
  )
  if (!read.ok) return { ok: false, why: read.fault }
  return { ok: true, value: fathoms ? read.meters * FATHOM : read.meters }
}

/** A plain number: degrees, or meters of a grid. A comma parts decimals. */
export function readNumber(text: string): CellRead {
  const clean = text.trim().replace(/[−–]/g, '-').replace(',', '.')
  if (clean === '') return { ok: false, why: 'empty' }
  const value = Number(clean)
  return Number.isFinite(value) ? { ok: true, value } : { ok: false, why: 'not-a-length' }
}
