/**
 * Nothing is remembered in a module: what is, is kept on the value that it belongs to. So two elements, two catalogs or two tests never meet.
 * `src/element` is left out: what it shares is the page's.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync } from 'vite'
import { expect, it } from 'vitest'

const ROOT = join(import.meta.dirname, '../..')

/** None is added without a reason beside it, and none stays that is gone. */
const REMEMBERED: readonly string[] = [
  // Hosts call `derive(design, catalog)` again and again with the catalog that they have: said in the file.
  'rules/catalog-index.ts shops',

  // Programs: run once, from top to bottom.
  'src/build/counts.ts failed',
  'src/build/counts.ts passed',
  'src/cli/main.ts end',
  // Waited on, never written.
  'src/cli/descriptors.ts never',
  // Tables of a language, likewise.
  'rules/words/language.ts tables',
  // Words of a language for a reader, which follow from it alone and go with it: every row of a screen asks for them.
  'src/ui/use-words.ts made',
  // The papers' fonts, once for a page.
  'src/documents/files/fonts.ts asked',

  // Scratch vectors of three: written and read within one call, so that no frame makes new ones.
  'src/scene/forces/paint.ts _at',
  'src/scene/forces/paint.ts _turn',
  'src/scene/measures/label-overlay.ts _point',
  'src/scene/parts/instanced.ts _at',
  'src/scene/parts/instanced.ts _turn',
  'src/scene/scenery.ts _at',
  'src/scene/scenery.ts _size',
  'src/scene/components/use-gestures.ts _far',
  'src/scene/sun.ts _corner',
]

interface Node {
  readonly type: string
  readonly start: number
  readonly name?: string
  readonly kind?: string
  readonly body?: unknown
  readonly declaration?: Node | null
  readonly declarations?: readonly { readonly id: Node; readonly init: Node | null }[]
  readonly callee?: Node
  readonly object?: Node
  readonly property?: Node
  readonly expression?: Node
  readonly left?: Node
  readonly argument?: Node
  readonly operator?: string
  readonly elements?: readonly unknown[]
  readonly arguments?: readonly Node[]
}

const CHANGES =
  /^(set|add|delete|clear|push|pop|shift|unshift|splice|sort|reverse|fill|copyWithin|assign|defineProperty)$/

/** The name that a place or call begins with: `a` of `a.b[c].d`. */
function rootOf(node: Node | undefined): string | undefined {
  if (!node) return undefined
  if (node.type === 'Identifier') return node.name
  return node.type === 'MemberExpression' || node.type === 'TSNonNullExpression'
    ? rootOf(node.object ?? node.expression)
    : undefined
}

/** A typed array of so many zeros is room to work in: who fills it may be another module. */
const isRoom = (init: Node | null): boolean =>
  init?.type === 'NewExpression' &&
  /^(Uint|Int|Float|BigInt|BigUint)\d+(Clamped)?Array$/.test(init.callee?.name ?? '') &&
  init.arguments?.[0]?.type !== 'ArrayExpression'

/** A weak map is for nothing but filling as the code runs. */
const isWeak = (init: Node | null): boolean =>
  init?.type === 'NewExpression' && /^Weak(Map|Set)$/.test(init.callee?.name ?? '')

/** What can be filled: lists, objects, anything that is made by `new`. */
const canFill = (init: Node | null): boolean =>
  /^(NewExpression|ArrayExpression|ObjectExpression)$/.test(init?.type ?? '')

/** `file name` of everything that a module holds and changes as its code runs. */
function rememberedIn(file: string, text: string): string[] {
  const { program, errors } = parseSync(file, text)
  expect(errors, file).toEqual([])
  const state = new Set<string>()
  const fillable = new Set<string>()
  for (const statement of program.body as unknown as readonly Node[]) {
    const {
      type,
      kind,
      declarations = [],
    } = statement.type === 'ExportNamedDeclaration' ? (statement.declaration ?? statement) : statement
    if (type !== 'VariableDeclaration') continue
    for (const { id, init } of declarations) {
      if (kind !== 'const' || isRoom(init) || isWeak(init)) state.add(id.name ?? '(several)')
      else if (canFill(init) && id.name) fillable.add(id.name)
    }
  }
  const change = (name: string | undefined): void => {
    if (name !== undefined && fillable.has(name)) state.add(name)
  }
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) visit(one)
    if (typeof value !== 'object' || value === null || !('type' in value)) return
    const node = value as Node
    if (node.type === 'AssignmentExpression') change(rootOf(node.left))
    if (node.type === 'UpdateExpression') change(rootOf(node.argument))
    if (node.type === 'UnaryExpression' && node.operator === 'delete') change(rootOf(node.argument))
    const { callee } = node
    if (node.type === 'CallExpression' && callee?.type === 'MemberExpression') {
      const method = callee.property?.name ?? ''
      if (CHANGES.test(method)) change(rootOf(callee.object))
      // Object.assign(known, …)
      if (callee.object?.name === 'Object' && CHANGES.test(method)) change(rootOf(node.arguments?.[0]))
    }
    for (const inner of Object.values(node)) visit(inner)
  }
  visit(program)
  return [...state].map((name) => `${file} ${name}`)
}

it('No module remembers anything, but for those that are named', () => {
  const files = ['rules', 'geometry', 'src'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .map((file) => join(folder, file))
      .filter((file) => /\.tsx?$/.test(file) && !file.startsWith('src/element/')),
  )
  expect(files.length).toBeGreaterThan(300)
  const found = files.flatMap((file) => rememberedIn(file, readFileSync(join(ROOT, file), 'utf8')))
  expect(found.sort()).toEqual([...REMEMBERED].sort())
})

it.each([
  'let known = null',
  'export let known = 0',
  'var known = 1',
  'const known = new WeakMap()',
  'const known = new Map()\nexport const of = (a) => { known.set(a, 1) }',
  'const known = new Set()\nfunction f(a) { known.add(a) }',
  'export const known = []\nfunction f(a) { known.push(a) }',
  'const known = {}\nfunction f(a) { known[a] = 1 }',
  'const known: Record<string, number> = {}\nfunction f(a: string) { known[a]! += 1 }',
  'const known = { n: 0 }\nfunction f() { known.n++ }',
  'const known = { of: [] }\nfunction f(a) { known.of.push(a) }',
  'const known = {}\nfunction f(a) { Object.assign(known, a) }',
  'const known = {}\nfunction f(a) { delete known[a] }',
  'const known = new Float64Array(12)',
])('What a module remembers is told: %s', (text) => {
  expect(rememberedIn('x.ts', text)).toEqual(['x.ts known'])
})

it.each([
  'const known = new Map([[1, 2]])\nexport const of = (a) => known.get(a)',
  'const NONE = []\nexport const of = () => NONE',
  'export const f = () => { let a = 0; const known = new Map(); known.set(1, a); return known }',
  'const AXES = new Float32Array([1, 0, 0])',
  'const f = () => [1]\nexport const g = () => f().push(2)',
])('What it does not is not told: %s', (text) => {
  expect(rememberedIn('x.ts', text)).toEqual([])
})
