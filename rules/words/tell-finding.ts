/** What findings and remedies say, in words that whoever tells them has at hand. */
import type { Finding, Remedy } from '../dock.ts'
import { listOf, type Reader } from './language.ts'
import { fill, type Subject, templateOf, type Values } from './messages.ts'

/** `plain` for a homeowner, `text` with its figures; its code where no subject has words for it. */
export function tellFinding(
  { code, values }: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  reader: Reader,
  words: readonly Subject[],
): string {
  const template = templateOf(words, `${code}.${form}`, reader.language)
  return template === undefined ? code : fill(template, values, reader, words)
}

/** Of several steps each as it is said in a sentence. */
export function tellRemedy(
  { key, values, steps }: Remedy,
  reader: Reader,
  words: readonly Subject[],
): string {
  const say = (name: string, filled: Values): string | undefined => {
    const template = templateOf(words, name, reader.language)
    return template === undefined ? undefined : fill(template, filled, reader, words)
  }
  // Inside of a sentence the same steps are said otherwise.
  const told = steps?.map(
    (step, i) => (i > 0 && say(`remedy.then.${step.key}`, step.values)) || tellRemedy(step, reader, words),
  )
  const last = told?.pop() ?? ''
  return say(`remedy.${key}`, told ? { steps: listOf(told, reader.language), last } : values) ?? key
}
