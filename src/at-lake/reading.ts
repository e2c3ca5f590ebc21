/**
 * What a length means that somebody typed with a wet hand. A plain number may be meant in either unit, and a figure may be far beyond what
 * it is of: both are asked about before anything counts.
 */
import type { Units } from '../../rules/index.ts'
import { bareUnit, type LengthFault, parseLength } from '../units/parse.ts'

/**
 * What is measured: water over the bottom; how far the lake went up or down; from a mark down to the water; a leg from its sole to the
 * deck; from the bottom up to the frame; the deck down to the water; how far a level's end is off, and how long that level is.
 */
export type ReadingKind = 'depth' | 'change' | 'down' | 'leg' | 'frame' | 'over' | 'gap' | 'level'

/** More than this is asked about, m: what docks on legs, their lakes and tools seldom have. Judgment. */
const SELDOM: Readonly<Record<ReadingKind, number>> = {
  depth: 4,
  change: 1,
  down: 4,
  leg: 6,
  frame: 6,
  over: 1.5,
  gap: 0.3,
  level: 3,
}
/** More than this is of no lake, leg or tool, m. */
const NEVER = 30

/** One way to take a plain number: the same with its unit, and what that is, m. */
export interface Taken {
  readonly text: string
  readonly unit: 'in' | 'ft' | 'cm' | 'm'
  readonly meters: number
}

export type Reading =
  | { readonly is: 'empty' }
  | { readonly is: 'fault'; readonly fault: LengthFault }
  /** Of either unit. */
  | { readonly is: 'which'; readonly ways: readonly [Taken, Taken] }
  /** So much that it is asked about; never: it cannot be. */
  | { readonly is: 'large' | 'never' | 'negative'; readonly meters: number }
  | { readonly is: 'length'; readonly meters: number }

/** A plain number is of the larger of these, or of the smaller. */
const PLAIN = { imperial: ['ft', 'in'], metric: ['m', 'cm'] } as const
const SIGN = { in: '"', ft: "'", cm: ' cm', m: ' m' } as const

export function readingOf(text: string, kind: ReadingKind, units: Units): Reading {
  const clean = text.trim()
  if (clean === '') return { is: 'empty' }
  const [large, small] = PLAIN[units]
  const read = parseLength(clean, large)
  if (!read.ok) return { is: 'fault', fault: read.fault }
  const { meters } = read
  // A mark can be under water by now; all else begins at nothing.
  if (meters < 0 && kind !== 'down') return { is: 'negative', meters }
  const smaller = parseLength(clean, small)
  const plain = smaller.ok && smaller.meters !== meters
  // 0.18 is meters; 18 may be either. Of feet and inches a plain number is never sure.
  const sure = large === 'm' && /[.,]/.test(clean) && Math.abs(meters) <= SELDOM[kind]
  if (plain && !sure)
    return {
      is: 'which',
      ways: [
        { text: clean + SIGN[small], unit: small, meters: smaller.meters },
        { text: clean + SIGN[large], unit: large, meters },
      ],
    }
  if (Math.abs(meters) > NEVER) return { is: 'never', meters }
  return { is: Math.abs(meters) > SELDOM[kind] + 1e-9 ? 'large' : 'length', meters }
}

/** m; null: nothing that counts yet. */
export function lengthOf(text: string, kind: ReadingKind, units: Units): number | null {
  const read = readingOf(text, kind, units)
  return read.is === 'length' ? read.meters : null
}

/**
 * As it was typed, so long as that still means what it meant; a plain number of the other units means something else by now.
 *
 * @param told the length in the units of the screen
 */
export function shownText(
  typed: { readonly text: string; readonly value: number | null },
  units: Units,
  told: (meters: number) => string,
): string {
  if (typed.value === null) return typed.text
  const read = parseLength(typed.text, bareUnit(units))
  // What was stepped to is told to the quarter inch.
  return read.ok && Math.abs(read.meters - typed.value) < 0.01 ? typed.text : told(typed.value)
}
