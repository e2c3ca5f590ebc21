/** A value of the catalog in words, and what a field expects, in the reader's units. */
import type { Issue, Reader, Say } from '../../../rules/index.ts'
import { templateOf } from '../../../rules/words/messages.ts'
import { CATALOG_EDITOR, type EditorWord } from '../../words/catalog-editor.ts'
import { isList, isObject, type Json } from '../draft.ts'
import { type Scale, shownIn, unitOf } from './measure.ts'
import type { Node, NumberNode } from './node.ts'

/** Longest that is told of a value, letters. */
const LONG = 60

export interface Telling {
  readonly t: Say<EditorWord>
  readonly reader: Reader
  readonly currency: string
}

export const scaleOf = ({ measure, max }: NumberNode, { reader, currency }: Omit<Telling, 't'>): Scale => ({
  measure,
  units: reader.units,
  most: max,
  currency,
  language: reader.language,
})

/** With its unit. */
function numberText(node: NumberNode, value: number, telling: Omit<Telling, 't'>): string {
  const scale = scaleOf(node, telling)
  const shown = shownIn(scale, value)
  return node.measure === 'length' || unitOf(scale) === '' ? shown : `${shown} ${unitOf(scale)}`
}

export function valueText(node: Node | null, value: Json | undefined, telling: Telling): string {
  const { t } = telling
  if (value === undefined) return t('none')
  if (node?.kind === 'number' && typeof value === 'number') return numberText(node, value, telling)
  if (typeof value === 'boolean') return t(value ? 'yes' : 'no')
  if (node?.kind === 'choice' && typeof value === 'string') return optionText(value, telling)
  if (isList(value) && value.every((one) => !isObject(one))) return cut(value.join(', ')) || t('none')
  if (isObject(value) && (typeof value.name === 'string' || typeof value.code === 'string'))
    return cut(String(value.name ?? value.code))
  return cut(typeof value === 'string' ? value : JSON.stringify(value))
}

export const cut = (text: string): string => (text.length <= LONG ? text : `${text.slice(0, LONG - 1)}…`)

/** A choice's own word; the word itself where there is none. */
export function optionText(option: string, { reader }: Pick<Telling, 'reader'>): string {
  const found = templateOf([CATALOG_EDITOR], `option.${option}`, reader.language)
  return typeof found === 'string' ? found : option
}

/** What is wrong at a field: numbers as the reader has them, all else in the engine's words. */
export function faultText(node: Node, value: Json | undefined, issue: Issue, telling: Telling): string {
  const { t } = telling
  if (node.kind === 'number') {
    const what = expectedText(node, telling)
    if (value === undefined) return t('fault.missing', { what })
    const isReference = typeof value === 'number' && value >= node.min && value <= node.max
    if (!isReference)
      return t('fault.expected', {
        got: typeof value === 'number' ? numberText(node, value, telling) : cut(String(value)),
        what,
      })
  }
  if (node.kind === 'text' && (value === undefined || value === ''))
    return t('fault.missing', { what: t('text.least') })
  return issue.message
}

function expectedText(node: NumberNode, telling: Telling): string {
  const { t } = telling
  const end = (value: number): string => numberText(node, value, telling)
  if (!Number.isFinite(node.min)) return t('range.any')
  return Number.isFinite(node.max)
    ? t('range.number', { least: end(node.min), most: end(node.max) })
    : t('range.least', { least: end(node.min) })
}
