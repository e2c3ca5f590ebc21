/** A reason in words: each rule of the engine has a sentence; one that has none yet is told by its terms. */
import {
  type Dock,
  type Figure,
  fill,
  formatFigure,
  type Reader,
  type Reason,
  say,
} from '../../rules/index.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { chanceIn } from '../../rules/words/fit-text.ts'
import { templateOf } from '../../rules/words/messages.ts'
import { REASONS } from './reasons.ts'

export function reasonText(reason: Reason, reader: Reader, dock: Pick<Dock, 'legs'>): string {
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
  if (values.longest?.value === 'none') rule = `${rule}-none`
  if (reason.result.value === 'yes' || reason.result.value === 'no')
    values.result = { value: say(REASONS, reader, reason.result.value), unit: 'text' }
  if (rule === 'fit-chance')
    values.result = { value: chanceIn(Number(reason.result.value), reader), unit: 'text' }
  const low = values.low
  if (low && typeof low.value === 'string') values.low = { value: legNumber(dock, low.value), unit: 'count' }
  const template = templateOf([REASONS], `reason.${rule}`, reader.language)
  if (template !== undefined) return fill(template, values, reader)
  const terms = reason.terms.map((t) => `${t.key} ${formatFigure(t, reader)}`)
  return `${reason.rule}: ${terms.join(', ')} → ${formatFigure(reason.result, reader)}`
}
