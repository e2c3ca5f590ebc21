/**
 * For the build: methods that no code of the scene can call. A bundler drops a class that nobody names, but never a method of one that
 * somebody does; three's classes have many hundreds.
 *
 * A method is kept where its name stands anywhere in code that is kept: as a property, a plain name, a string. Kept is what is named
 * from outside and all that is named from there, name by name until nothing more is found; so the same name on two classes keeps both.
 */
import { parseSync } from 'vite'

interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly [key: string]: unknown
}

interface Method {
  readonly name: string
  readonly start: number
  readonly end: number
  readonly names: ReadonlySet<string>
}
/** A class, function or variable of the outermost level, or a statement there. */
interface Item {
  /** What it declares; none for a statement, which is always kept. */
  readonly declares: readonly string[]
  /** Named in it outside of its methods. */
  readonly names: ReadonlySet<string>
  readonly methods: readonly Method[]
}

export interface Source {
  readonly code: string
  readonly items: readonly Item[]
}

/** Throws where it is no module. */
export function readSource(file: string, code: string): Source {
  const { program, errors } = parseSync(file, code)
  if (errors.length > 0) throw new Error(`readSource: ${file}: ${errors[0]!.message}`)
  return { code, items: (program.body as unknown as Node[]).map((node) => itemOf(node, code)) }
}

/** All words of some code that is not taken apart: names, properties, and what stands in strings. */
export const wordsOf = (code: string): Set<string> => new Set(code.match(/[A-Za-z_$][\w$]*/g))

function itemOf(node: Node, code: string): Item {
  const inner = (node.type === 'ExportNamedDeclaration' ? (node.declaration as Node | null) : null) ?? node
  const own = inner.type === 'ClassDeclaration' ? methodsOf(inner, code) : []
  let rest = ''
  let from = node.start
  for (const { start, end } of own) {
    rest += code.slice(from, start)
    from = end
  }
  rest += code.slice(from, node.end)
  return { declares: declaredBy(inner), names: wordsOf(uncommented(rest)), methods: own }
}

/** Imports and exports of a module name what others may ask for, not what it uses. */
const isPassing = ({ type, declaration }: Node): boolean =>
  type === 'ImportDeclaration' || (type === 'ExportNamedDeclaration' && declaration === null)

function declaredBy(node: Node): string[] {
  if (isPassing(node)) return ['']
  if (node.type === 'ClassDeclaration' || node.type === 'FunctionDeclaration')
    return [(node.id as unknown as { name: string }).name]
  if (node.type === 'VariableDeclaration')
    return (node.declarations as { id: { type: string; name: string } }[]).map(({ id }) => id.name)
  return []
}

/**
 * Plain methods, and functions that a constructor sets as `this.name`: accessors and constructors stay, and what is named by an
 * expression.
 */
function methodsOf(node: Node, code: string): Method[] {
  const method = (name: string, { start, end }: Node, names: Node): Method => ({
    name,
    start,
    end,
    names: wordsOf(uncommented(code.slice(names.start, names.end))),
  })
  return (node.body as { body: Node[] }).body.flatMap((member) => {
    const key = member.key as { type: string; name: string } | undefined
    if (member.type !== 'MethodDefinition' || member.computed || key?.type !== 'Identifier') return []
    const value = member.value as Node & { body: { body: Node[] } }
    if (member.kind === 'method') return [method(key.name, member, value)]
    if (member.kind !== 'constructor') return []
    return value.body.body.flatMap((statement) => {
      const { type, left, right } = (statement.expression ?? {}) as Record<string, Node | undefined> & {
        type?: string
      }
      if (type !== 'AssignmentExpression' || right?.type !== 'FunctionExpression') return []
      const name = /^this\.(\w+)$/.exec(code.slice(left!.start, left!.end))?.[1]
      return name ? [method(name, statement, right)] : []
    })
  })
}

/** Comments name much that nothing calls. */
const uncommented = (code: string): string => code.replace(/\/\*[\s\S]*?\*\/|(^|[^:"'`])\/\/[^\n]*/g, '$1')

/** The names that are kept, begun with those that are named from outside. */
export function keptNames(sources: readonly Source[], outside: Iterable<string>): Set<string> {
  const kept = new Set(outside)
  const items = sources.flatMap((source) => source.items)
  const done = new Set<Item | Method>()
  const take = (part: Item | Method): void => {
    done.add(part)
    for (const name of part.names) kept.add(name)
  }
  for (let before = -1; before !== done.size; ) {
    before = done.size
    for (const item of items) {
      if (!done.has(item) && (item.declares.length === 0 || item.declares.some((name) => kept.has(name))))
        take(item)
      if (done.has(item))
        for (const method of item.methods) if (!done.has(method) && kept.has(method.name)) take(method)
    }
  }
  return kept
}

/** The code without methods whose names are not kept. */
export function withoutMethods({ code, items }: Source, kept: ReadonlySet<string>): string {
  let out = ''
  let from = 0
  for (const { methods } of items)
    for (const { name, start, end } of methods) {
      if (kept.has(name)) continue
      out += code.slice(from, start)
      from = end
    }
  return out + code.slice(from)
}
