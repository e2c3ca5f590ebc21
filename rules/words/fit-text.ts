/** How surely the legs fit, in sentences: the same on screen, paper and terminal. */
import type { Dock, Figure, Fit } from '../dock.ts'
import { legNumber } from '../leg-places.ts'
import en from './en/fit.json' with { type: 'json' }
import { formatFigure } from './figures.ts'
import type { Reader } from './language.ts'
import { subject, wordsOf } from './messages.ts'

export const FIT = subject('fit', en)

/** So sure needs no word on paper. */
const ENOUGH = 0.95
const SURE = 0.99

/** Nothing is sure. */
export function chanceIn(value: number, reader: Reader): string {
  const t = wordsOf(FIT, reader)
  const told = Math.min(SURE, Math.max(1 - SURE, value))
  const n = formatFigure({ value: told, unit: 'share' }, reader)
  return told === value ? n : t(value > told ? 'over' : 'under', { n: { value: n, unit: 'text' } })
}

const meters = (value: number): Figure => ({ value, unit: 'm' })

/** Which side of the dock's line, seen from the shore. */
export const sideOf = (y: number): 'left' | 'right' | 'middle' =>
  Math.abs(y) < NEAR ? 'middle' : y > 0 ? 'left' : 'right'
const NEAR = 0.15

/** How sure all of them are; what one more sounding, and so many longer legs, would do. */
export function fitLines({ all, spares, sounding }: Fit, dock: Pick<Dock, 'legs'>, reader: Reader): string[] {
  const t = wordsOf(FIT, reader)
  const chance = (value: number): Figure => ({ value: chanceIn(value, reader), unit: 'text' })
  const lines = [t(all >= SURE ? 'all-sure' : 'all', { chance: chance(all) })]
  if (sounding) {
    const { x, y, settles } = sounding
    lines.push(
      t(settles.length > 0 ? 'sounding-settles' : 'sounding', {
        // Nobody sounds to the inch.
        x: { value: x, unit: 'm-rough' },
        place: { value: t(`place.${sideOf(y)}`), unit: 'text' },
        legs: { value: settles.map((leg) => legNumber(dock, leg)).sort((a, b) => a - b), unit: 'count' },
        count: { value: settles.length, unit: 'count' },
      }),
    )
  }
  const count = spares?.chances.length ?? 0
  if (spares && count > 0)
    lines.push(
      t('spares', {
        count: { value: count, unit: 'count' },
        length: meters(spares.length),
        chance: chance(spares.chances[count - 1]!),
      }),
    )
  return lines
}

/** For a paper: nothing where all is sure enough. */
export const fitOnPaper = ({ fit, legs }: Pick<Dock, 'fit' | 'legs'>, reader: Reader): string[] =>
  fit && fit.all < ENOUGH ? [fitLines(fit, { legs }, reader).join(' ')] : []
