/** What stands in a new entry before anybody has said anything of it. */
import { isList, isObject, type Json } from '../draft.ts'
import type { Node } from './node.ts'

/** The least that has its shape; its numbers are at the least that is allowed, or nought. */
export function blankOf(node: Node): Json {
  switch (node.kind) {
    case 'number':
      return Math.max(node.min, Math.min(node.max, 0))
    case 'text':
      return ''
    case 'boolean':
      return false
    case 'choice':
      return node.options[0] ?? ''
    case 'fixed':
      return node.value
    case 'list':
      return Array.from({ length: node.least }, () => blankOf(node.item))
    case 'tuple':
      return node.items.map(blankOf)
    case 'record':
      return {}
    case 'variant': {
      const [option] = Object.values(node.options)
      return option ? blankOf(option) : {}
    }
    case 'object':
      return Object.fromEntries(
        Object.entries(node.fields).flatMap(([key, field]) =>
          field.optional ? [] : [[key, blankOf(field)]],
        ),
      )
  }
}

/** A new entry of a list: like the last one, for parts of a kind are much alike, with a code of its own. */
export function entryLike(item: Node, list: readonly Json[], from: Json | undefined = list.at(-1)): Json {
  if (from === undefined) return blankOf(item)
  if (!isObject(from) || typeof from.code !== 'string') return from
  return {
    ...from,
    code: freeCode(
      from.code,
      list.flatMap((one) => (isObject(one) ? [String(one.code)] : [])),
    ),
  }
}

/** `brace-42` where that is there: `brace-42-2`, `brace-42-3` … */
export function freeCode(code: string, among: readonly string[]): string {
  const taken = new Set(among)
  if (!taken.has(code)) return code
  const stem = code.replace(/-\d{1,2}$/, '')
  for (let n = 2; ; n++) if (!taken.has(`${stem}-${n}`)) return `${stem}-${n}`
}

/** Another option of a variant: what both have stays. */
export function asOption(option: Node, by: string, name: string, from: Json | undefined): Json {
  const blank = blankOf(option)
  if (!isObject(blank) || option.kind !== 'object') return blank
  const kept = isObject(from)
    ? Object.entries(from).filter(([key]) => key !== by && fits(option.fields[key], from[key]))
    : []
  return { ...blank, ...Object.fromEntries(kept), [by]: name }
}

const fits = (node: Node | undefined, value: Json | undefined): boolean =>
  node !== undefined &&
  (node.kind === 'number'
    ? typeof value === 'number'
    : node.kind === 'text' || node.kind === 'choice'
      ? typeof value === 'string'
      : node.kind === 'list'
        ? isList(value)
        : node.kind === 'boolean'
          ? typeof value === 'boolean'
          : isObject(value))
