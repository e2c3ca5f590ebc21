/**
 * What the schemas say of their fields is for `public/schema/` and the guide: the page reads with them and says none of it. Its build
 * empties those texts.
 */
import { type Plugin, parseSync } from 'vite'

interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
}
interface Call extends Node {
  readonly callee: Node & { readonly name?: string; readonly property?: { readonly name?: string } }
  readonly arguments: readonly Node[]
}
interface Maker extends Node {
  readonly id: { readonly name: string }
  readonly init: (Node & { readonly params?: readonly { readonly name?: string }[] }) | null
}

/** Every node under one. */
function* nodesOf(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const one of value) yield* nodesOf(one)
  else if (typeof value === 'object' && value !== null) {
    if ('type' in value && typeof value.type === 'string') yield value as Node
    for (const one of Object.values(value)) if (typeof one === 'object') yield* nodesOf(one)
  }
}

/** A schema file with its descriptions emptied: of `v.description`, and of the file's own functions with a parameter of that name. */
export function withoutDescriptions(file: string, code: string): string {
  const nodes = [...nodesOf(parseSync(file, code).program)]
  const places = new Map<string, number>([['description', 0]])
  for (const node of nodes) {
    const { id, init } = node as Maker
    const at =
      node.type === 'VariableDeclarator'
        ? (init?.params ?? []).findIndex((p) => p.name === 'description')
        : -1
    if (at >= 0) places.set(id.name, at)
  }
  const texts = nodes.flatMap((node): Node[] => {
    if (node.type !== 'CallExpression') return []
    const { callee, arguments: given } = node as Call
    const at = places.get(callee.name ?? callee.property?.name ?? '')
    const text = at === undefined ? undefined : given[at]
    return text?.type === 'Literal' || text?.type === 'TemplateLiteral' ? [text] : []
  })
  return texts
    .sort((a, b) => b.start - a.start)
    .reduce((out, { start, end }) => `${out.slice(0, start)}''${out.slice(end)}`, code)
}

export const terseSchemas: Plugin = {
  name: 'leadline:terse-schemas',
  enforce: 'pre',
  apply: 'build',
  transform: {
    filter: { id: /\/rules\/[^?]*schema\.ts$/ },
    handler: (code, id) => withoutDescriptions(id, code),
  },
}
