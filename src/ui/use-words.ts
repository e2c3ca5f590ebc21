/** The words and figures of one element's screen: its language, its units, its catalog's currency. */
import {
  type Figure,
  formatFigure,
  formatLength,
  formatMass,
  formatSlope,
  type Language,
  moneyIn,
  type Reader,
  type Say,
  type Subject,
  wordsOf,
} from '../../rules/index.ts'
import { type LeadlineState, pricesIn, useLeadline } from '../state/store.ts'
import { SCREEN, type Word } from '../words/index.ts'

/** Whom the screen is told to, and how it tells one subject. */
export interface Words<K extends string> extends Reader {
  readonly reader: Reader
  readonly t: Say<K>
  /** A crew sets docks up; what they cost is not its concern. A page may show no prices to anyone, a shop none to its customers. */
  readonly priced: boolean
  /** What single parts cost is shown too. */
  readonly lined: boolean
  length(meters: number): string
  mass(kg: number): string
  slope(slope: number): string
  figure(of: Figure): string
  /** An amount in the catalog's smallest coin. */
  money(minor: number): string
}

export function useWords(): Words<Word>
export function useWords<K extends string>(of: Subject<K>): Words<K>
export function useWords(of: Subject = SCREEN): Words<string> {
  return useLeadline((state) => wordsFor(of, state))
}

/** By subject, units and money; made once for all that tell the same to the same reader: hundreds of rows ask at every move of a hand. */
const made = new WeakMap<Language, Map<string, Words<string>>>()

function wordsFor(of: Subject, state: LeadlineState): Words<string> {
  const { units, language } = state
  const { currency } = state.catalog
  const shown = pricesIn(state)
  const key = [of.name, units, currency, shown].join()
  const known = made.get(language) ?? new Map<string, Words<string>>()
  made.set(language, known)
  let words = known.get(key)
  if (!words) {
    const reader = { language, units }
    words = {
      ...reader,
      reader,
      priced: shown !== 'none',
      lined: shown === 'lines',
      t: wordsOf(of, reader),
      length: (meters) => formatLength(meters, reader),
      mass: (kg) => formatMass(kg, reader),
      slope: (slope) => formatSlope(slope, reader),
      figure: (figure) => formatFigure(figure, reader),
      money: moneyIn(currency, language),
    }
    known.set(key, words)
  }
  return words
}
