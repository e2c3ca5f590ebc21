/** The words and figures of one element's screen: its language, its units, its catalog's currency. */
import { useMemo } from 'react'
import { type Figure, formatLength, formatMass, formatMoney, formatSlope } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { say, type Word } from './index.ts'

export function useWords() {
  const units = useLeadline((s) => s.units)
  const lang = useLeadline((s) => s.lang)
  const currency = useLeadline((s) => s.catalog.currency)
  const priced = useLeadline((s) => s.audience !== 'crew')
  return useMemo(
    () => ({
      units,
      lang,
      /** A crew sets docks up; what they cost is not its concern. */
      priced,
      t: (key: Word, values?: Readonly<Record<string, Figure>>) => say(lang, units, key, values),
      length: (meters: number) => formatLength(meters, units),
      mass: (kg: number) => formatMass(kg, units),
      slope: formatSlope,
      money: (minor: number) => formatMoney(minor, currency, lang),
    }),
    [units, lang, currency, priced],
  )
}
