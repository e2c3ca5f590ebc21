/** The classic small faults that can be put into a source text, one at a time, found in its syntax tree. */
import { parseSync } from 'vite'

export interface Mutant {
  /** Path from the project's root. */
  readonly file: string
  readonly start: number
  readonly end: number
  /** What stands there, and what is put in its place. */
  readonly from: string
  readonly to: string
  /** Of `functionsOf`, the innermost around it; -1 outside of all. */
  readonly within: number
}

export interface Body {
  readonly start: number
  readonly end: number
  /** Just after `{`, or around the one expression of an arrow. */
  readonly at: { readonly block: number } | { readonly from: number; readonly to: number }
}

interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly [key: string]: unknown
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '**': ['*'],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
  '+=': ['-='],
  '-=': ['+='],
  '*=': ['/='],
  '/=': ['*='],
}

const METHODS: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  some: 'every',
  every: 'some',
}

/** Called for their effect: a list without them is another one. */
const LEFT_OUT = new Set(['filter', 'sort', 'reverse', 'slice'])

const FUNCTIONS = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression'])

/** Inside a type nothing runs; these hold an expression as well. */
const isType = ({ type }: Node): boolean =>
  type.startsWith('TS') &&
  !['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression', 'TSTypeAssertion'].includes(type)

/** All nodes that run, each with those around it, outermost first. */
function walk(text: string, file: string, visit: (node: Node, around: readonly Node[]) => void): void {
  const { program, errors } = parseSync(file, text)
  if (errors.length > 0) throw new Error(`${file}: cannot be parsed: ${errors[0]!.message}`)
  const around: Node[] = []
  const into = (node: Node): void => {
    if (isType(node) || node.type === 'ImportDeclaration') return
    visit(node, around)
    around.push(node)
    for (const value of Object.values(node))
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) into(child)
    around.pop()
  }
  into(program as unknown as Node)
}

/** Bodies of the functions of a text, in the order of their beginnings. */
export function functionsOf(file: string, text: string): Body[] {
  const bodies: Body[] = []
  walk(text, file, (node) => {
    const body = node.body
    if (!FUNCTIONS.has(node.type) || !isNode(body)) return
    bodies.push({
      start: body.start,
      end: body.end,
      at: body.type === 'BlockStatement' ? { block: body.start + 1 } : { from: body.start, to: body.end },
    })
  })
  return bodies.sort((a, b) => a.start - b.start)
}

/** A number another than it was: by one, by a tenth, and what only keeps rounding out a thousand times as much. */
function otherNumber(value: number): string {
  const size = Math.abs(value)
  if (size > 0 && size < 1e-5) return String(value * 1000)
  return Number.isInteger(value) && size < 10 ? String(value + 1) : String(value * 1.1)
}

const isText = (node: unknown): boolean =>
  isNode(node) && (node.type === 'TemplateLiteral' || typeof node.value === 'string')

/** All mutants of a text. */
export function mutantsOf(file: string, text: string): Mutant[] {
  const bodies = functionsOf(file, text)
  const found: Mutant[] = []
  const put = ({ start, end }: { start: number; end: number }, to: string): void => {
    // Bodies are in order: of those around a place the last is the innermost.
    const within = bodies.findLastIndex((body) => body.start <= start && end <= body.end)
    found.push({ file, start, end, from: text.slice(start, end), to, within })
  }
  const of = (node: unknown): string => {
    const { start, end } = node as Node
    return text.slice(start, end)
  }
  /** Between two nodes stands their operator. */
  const operator = (node: Node): void => {
    const [left, right, sign] = [node.left as Node, node.right as Node, node.operator as string]
    const start = left.end + text.slice(left.end, right.start).indexOf(sign)
    for (const other of OPERATORS[sign] ?? []) put({ start, end: start + sign.length }, other)
  }
  const condition = (test: Node, values: readonly string[]): void => {
    for (const value of values) put(test, value)
    put(test, `!(${of(test)})`)
  }
  walk(text, file, (node, around) => {
    const parent = around.at(-1)
    switch (node.type) {
      case 'BinaryExpression':
        if (!(node.operator === '+' && (isText(node.left) || isText(node.right)))) operator(node)
        break
      case 'LogicalExpression':
      case 'AssignmentExpression':
        operator(node)
        break
      case 'UnaryExpression':
        if (node.operator === '!' || node.operator === '-') put(node, of(node.argument))
        break
      case 'IfStatement':
      case 'ConditionalExpression':
        condition(node.test as Node, ['true', 'false'])
        break
      case 'WhileStatement':
        put(node.test as Node, 'false')
        break
      case 'ForStatement':
        if (isNode(node.test)) put(node.test, 'false')
        break
      case 'Literal':
        if (parent?.type === 'Property' && parent.key === node) break
        if (typeof node.value === 'boolean') put(node, String(!node.value))
        else if (typeof node.value === 'number') put(node, otherNumber(node.value))
        break
      case 'ReturnStatement':
        if (isNode(node.argument)) put(node.argument, 'undefined')
        break
      case 'ArrowFunctionExpression':
        if (isNode(node.body) && node.body.type !== 'BlockStatement') put(node.body, 'undefined')
        break
      case 'ExpressionStatement':
        if (isNode(node.expression) && node.expression.type === 'CallExpression') put(node, ';')
        break
      case 'CallExpression': {
        const callee = node.callee as Node
        if (callee.type !== 'MemberExpression' || callee.computed) break
        const { start, end } = callee.property as Node
        const name = text.slice(start, end)
        if (METHODS[name]) put({ start, end }, METHODS[name])
        else if (LEFT_OUT.has(name)) put(node, of(callee.object))
        break
      }
    }
  })
  return found.sort((a, b) => a.start - b.start || a.end - b.end)
}

/** The text with one mutant in it. */
export const mutated = (text: string, { start, end, to }: Mutant): string =>
  text.slice(0, start) + to + text.slice(end)

/** The text with every body telling that it is run: `globalThis.leadlineHits` is given its number from `first` on. */
export function telling(file: string, text: string, first: number): string {
  const pieces: { at: number; put: string }[] = []
  functionsOf(file, text).forEach(({ at }, i) => {
    const hit = `globalThis.leadlineHits.add(${first + i})`
    if ('block' in at) pieces.push({ at: at.block, put: `${hit};` })
    else pieces.push({ at: at.from, put: `(${hit},` }, { at: at.to, put: ')' })
  })
  // From the back: what stands before a place does not move. At one place a later function is the inner one, and closes first.
  pieces.sort((a, b) => a.at - b.at)
  return pieces.reduceRight((all, { at, put }) => all.slice(0, at) + put + all.slice(at), text)
}

/** So many of a list, the same ones for the same seed. */
export function sampled<T>(list: readonly T[], count: number, seed: number): T[] {
  const rest = [...list]
  let state = seed >>> 0
  // Mulberry32: small, and even enough to choose by.
  const random = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  for (let i = rest.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1))
    ;[rest[i], rest[j]] = [rest[j]!, rest[i]!]
  }
  return rest.slice(0, count)
}
