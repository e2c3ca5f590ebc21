/** What there is already and what becomes of it, in lines: the same on screen, paper and terminal. */
import type { Dock, Existing } from '../dock.ts'
import { numbered } from '../leg-places.ts'
import en from './en/existing.json' with { type: 'json' }
import { formatLength } from './figures.ts'
import { listOf, type Reader } from './language.ts'
import { subject, wordsOf } from './messages.ts'

export const EXISTING = subject('existing', en)

interface Told {
  readonly name: string
  readonly code: string
  readonly quantity: number
  readonly length?: number
  readonly known?: boolean
  readonly of?: readonly string[]
}

function line({ name, code, quantity, length, known = true, of = [] }: Told, reader: Reader): string {
  const t = wordsOf(EXISTING, reader)
  const text = (value: string) => ({ value, unit: 'text' })
  const own =
    code === '' && length !== undefined ? t('leg-of', { length: formatLength(length, reader) }) : name
  const part = text(known ? own : t('not-in-catalog', { part: text(own) }))
  const count = { value: quantity, unit: 'count' }
  return of.length > 0
    ? t('line-at', { count, part, places: text(listOf(of, reader.language)) })
    : t('line', { count, part })
}

/** With the places where each is used: legs by their numbers. */
export const usedLines = (
  { used }: Pick<Existing, 'used'>,
  reader: Reader,
  dock: Pick<Dock, 'legs' | 'pairs'>,
): string[] => {
  const told = numbered(dock)
  return used.map((one) => line({ ...one, of: one.of.map(told) }, reader))
}

export const leftLines = ({ left }: Pick<Existing, 'left'>, reader: Reader): string[] =>
  left.map((one) => line(one, reader))

export const newLines = (rows: Dock['parts'], reader: Reader): string[] =>
  rows.map((one) => line(one, reader))
