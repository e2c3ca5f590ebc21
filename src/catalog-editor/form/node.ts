/**
 * What a form asks for, read from the catalog's schema: one source for what is checked and what is asked. Every field that the schema
 * has is in it; a new one shows in the form from its first day, with the schema's own description.
 */
import * as v from 'valibot'
import { type Measure, measureOf } from './measure.ts'

interface Common {
  /** What the schema says of it; empty where it says nothing. */
  readonly says: string
  readonly optional: boolean
}

export interface NumberNode extends Common {
  readonly kind: 'number'
  readonly measure: Measure
  readonly min: number
  readonly max: number
}
export interface TextNode extends Common {
  readonly kind: 'text'
  readonly most: number
  /** What it must look like, in words; null: anything. */
  readonly like: string | null
}
export interface BooleanNode extends Common {
  readonly kind: 'boolean'
}
export interface ChoiceNode extends Common {
  readonly kind: 'choice'
  readonly options: readonly string[]
}
/** A value that cannot be another, such as the file's format. */
export interface FixedNode extends Common {
  readonly kind: 'fixed'
  readonly value: string | number
}
export interface ObjectNode extends Common {
  readonly kind: 'object'
  readonly fields: Readonly<Record<string, Node>>
}
export interface ListNode extends Common {
  readonly kind: 'list'
  readonly item: Node
  readonly least: number
  readonly most: number
}
/** So many entries, each of its own meaning. */
export interface TupleNode extends Common {
  readonly kind: 'tuple'
  readonly items: readonly Node[]
}
/** Entries by names of the shop's own. */
export interface RecordNode extends Common {
  readonly kind: 'record'
  readonly value: Node
}
/** One of several objects, told apart by a field. */
export interface VariantNode extends Common {
  readonly kind: 'variant'
  readonly by: string
  readonly options: Readonly<Record<string, ObjectNode>>
}
export type Node =
  | NumberNode
  | TextNode
  | BooleanNode
  | ChoiceNode
  | FixedNode
  | ObjectNode
  | ListNode
  | TupleNode
  | RecordNode
  | VariantNode

interface AnySchema extends v.GenericSchema {
  readonly wrapped?: AnySchema
  readonly entries?: Readonly<Record<string, AnySchema>>
  readonly item?: AnySchema
  readonly items?: readonly AnySchema[]
  readonly value?: AnySchema
  readonly options?: readonly unknown[]
  readonly key?: string
  readonly literal?: unknown
  readonly pipe?: readonly Action[]
}

/** A step of a pipe; the first is a schema, which may be a pipe itself. */
interface Action {
  readonly type: string
  readonly requirement?: unknown
  readonly message?: unknown
  readonly pipe?: readonly Action[]
}

const actionsOf = (pipe: readonly Action[] = []): Action[] =>
  pipe.flatMap((one) => (one.pipe ? actionsOf(one.pipe) : [one]))

/** @throws where a schema has a kind of field that the form does not know: to be taught it, not to leave it out. */
export const nodeOf = (schema: v.GenericSchema): Node => read(schema as AnySchema, false, '')

function read(schema: AnySchema, optional: boolean, above: string): Node {
  const says = v.getDescription(schema) ?? above
  if (schema.wrapped) return read(schema.wrapped, true, says)
  const common = { says, optional }
  const actions = actionsOf(schema.pipe)
  const asked = (type: string): number[] =>
    actions.flatMap((one) => (one.type === type ? [Number(one.requirement)] : []))
  const least = (type: string, otherwise: number): number => Math.max(otherwise, ...asked(type))
  const most = (type: string, otherwise: number): number => Math.min(otherwise, ...asked(type))
  switch (schema.type) {
    case 'number':
      return {
        ...common,
        kind: 'number',
        measure: measureOf(
          says,
          actions.some(({ type }) => type === 'integer'),
        ),
        min: least('min_value', Number.NEGATIVE_INFINITY),
        max: most('max_value', Number.POSITIVE_INFINITY),
      }
    case 'string': {
      const like = actions.find(({ type }) => type === 'regex')?.message
      return {
        ...common,
        kind: 'text',
        most: most('max_length', asked('max_length').length > 0 ? 1e6 : 120),
        like: like ? String(like) : null,
      }
    }
    case 'boolean':
      return { ...common, kind: 'boolean' }
    case 'picklist':
      return { ...common, kind: 'choice', options: (schema.options ?? []).map(String) }
    case 'literal':
      return { ...common, kind: 'fixed', value: schema.literal as string | number }
    case 'array':
      return {
        ...common,
        kind: 'list',
        item: read(schema.item!, false, ''),
        least: least('min_length', 0),
        most: most('max_length', 10_000),
      }
    case 'tuple':
      return { ...common, kind: 'tuple', items: schema.items!.map((item) => read(item, false, '')) }
    case 'record':
      return { ...common, kind: 'record', value: read(schema.value!, false, '') }
    case 'variant':
      return { ...common, kind: 'variant', by: schema.key!, options: optionsOf(schema) }
    case 'loose_object':
    case 'object':
      return { ...common, kind: 'object', fields: fieldsOf(schema) }
    default:
      throw new Error(`no form for a field of the kind ${schema.type}`)
  }
}

const fieldsOf = ({ entries = {} }: AnySchema): Record<string, Node> =>
  Object.fromEntries(Object.entries(entries).map(([key, entry]) => [key, read(entry, false, '')]))

function optionsOf({ key, options = [] }: AnySchema): Record<string, ObjectNode> {
  return Object.fromEntries(
    (options as readonly AnySchema[]).map((option) => {
      const node = read(option, false, '')
      if (node.kind !== 'object') throw new Error(`an option of ${key} that is no object`)
      return [String(option.entries?.[key!]?.literal), node]
    }),
  )
}

/** The node at a path: through a variant by what the value says that it is. Null where the schema has none. */
export function nodeAt(root: Node, path: readonly (string | number)[], value: unknown): Node | null {
  let node: Node | null = root
  let at = value
  for (const key of path) {
    node = stepInto(node, key, at)
    if (!node) return null
    at = typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[key] : undefined
  }
  return node
}

function stepInto(node: Node, key: string | number, value: unknown): Node | null {
  if (node.kind === 'list') return typeof key === 'number' ? node.item : null
  if (node.kind === 'tuple') return node.items[Number(key)] ?? null
  if (node.kind === 'record') return typeof key === 'string' ? node.value : null
  const fields =
    node.kind === 'object' ? node.fields : node.kind === 'variant' ? optionOf(node, value)?.fields : undefined
  return fields && Object.hasOwn(fields, key) ? fields[String(key)]! : null
}

/** Which of its options a value is; null where it is none. */
export function optionOf({ by, options }: VariantNode, value: unknown): ObjectNode | null {
  const name =
    typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[by] : undefined
  return typeof name === 'string' && Object.hasOwn(options, name) ? options[name]! : null
}
