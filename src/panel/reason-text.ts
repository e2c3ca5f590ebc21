/** A reason in words: one sentence for each rule of the engine; a rule without one is shown by its terms. */
import { type Figure, formatFigure, type Reason, wordsIn } from '../../rules/index.ts'
import { isMoreWord, type MoreWords } from '../words/use-more-words.ts'

export function reasonText(reason: Reason, words: MoreWords): string {
  const { more, units, lang } = words
  const { corners } = wordsIn(lang)
  const values: Record<string, Figure> = { result: reason.result }
  for (const { key, value, unit } of reason.terms) values[key] = { value, unit }
  let { rule } = reason

  // Miles and kilometers, not feet and inches.
  if (values.fetch) values.fetch = { ...values.fetch, unit: 'fetch' }
  // Heights are told from the water's surface without a sign.
  const bed = values.bed
  if (rule === 'set-height' && bed && Number(bed.value) > 0) rule = 'set-height-high'
  if (bed) values.bed = { ...bed, value: Math.abs(Number(bed.value)) }
  if (rule === 'length' && reason.result.value === 'none') rule = 'length-none'
  if (reason.result.value === 'yes' || reason.result.value === 'no')
    values.result = { value: more(reason.result.value), unit: 'text' }
  const low = values.low
  if (low && typeof low.value === 'string') {
    const corner = low.value.split('.').slice(1).join('.')
    values.low = { value: corners[corner as keyof typeof corners] ?? low.value, unit: 'text' }
  }
  const key = `reason.${rule}`
  if (isMoreWord(key)) return more(key, values)
  const terms = reason.terms.map((t) => `${t.key} ${formatFigure(t, units)}`)
  return `${reason.rule}: ${terms.join(', ')} → ${formatFigure(reason.result, units)}`
}
