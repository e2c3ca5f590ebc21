/** What a leg is called wherever it is told of: its number and where it stands, the same on screen, paper and in the terminal. */
import type { Dock, Finding } from '../dock.ts'
import { legNumber, legPlace, numbered } from '../leg-places.ts'
import en from './en/legs.json' with { type: 'json' }
import type { Reader } from './language.ts'
import { subject, wordsOf } from './messages.ts'

export const LEGS = subject('legs', en)

type Legs = Pick<Dock, 'legs' | 'sections' | 'workOrder'>

/** `27 ft 4 in out, left`; empty for an id that is no leg of this dock. */
export function placeOfLeg(dock: Legs, id: string, reader: Reader): string {
  const leg = dock.legs.find((one) => one.id === id)
  if (!leg) return ''
  const { out, side, aside } = legPlace(dock, leg)
  const t = wordsOf(LEGS, reader)
  const meters = (value: number) => ({ value, unit: 'm' })
  return aside === null
    ? t(`place.${side}`, { out: meters(out) })
    : t(`place.${side}-off`, { out: meters(out), aside: meters(aside) })
}

/** In a list of legs: `7: 27 ft 4 in out, left`. */
export const legListed = (dock: Legs, id: string, reader: Reader): string => named('listed', dock, id, reader)

/** By itself: `Leg 7, 27 ft 4 in out, left`. */
export const legNamed = (dock: Legs, id: string, reader: Reader): string => named('named', dock, id, reader)

const named = (key: 'listed' | 'named', dock: Legs, id: string, reader: Reader): string =>
  legNumber(dock, id) === 0
    ? id
    : wordsOf(LEGS, reader)(key, {
        number: { value: legNumber(dock, id), unit: 'count' },
        place: { value: placeOfLeg(dock, id, reader), unit: 'text' },
      })

/** The legs of a pair: `7, 8`. */
export const pairListed = ({ legs, pairs }: Pick<Dock, 'legs' | 'pairs'>, id: string): string =>
  pairs
    .find((pair) => pair.id === id)
    ?.legs.map((leg) => legNumber({ legs }, leg))
    .join(', ') ?? id

/** A finding as it is told with the dock at hand: legs and pairs by their numbers, with the section that they are of. */
export function withLegNumbers(finding: Finding, { legs, pairs }: Pick<Dock, 'legs' | 'pairs'>): Finding {
  const told = numbered({ legs, pairs })
  const values = Object.entries(finding.values).map(([key, figure]) => {
    const { value } = figure
    if (typeof value === 'string') return [key, { ...figure, value: told(value) }]
    if (Array.isArray(value))
      return [
        key,
        { ...figure, value: value.map((one: unknown) => (typeof one === 'string' ? told(one) : one)) },
      ]
    return [key, figure]
  })
  return { ...finding, values: Object.fromEntries(values) as Finding['values'] }
}
