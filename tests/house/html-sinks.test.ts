/**
 * No text becomes markup or code: what users, shops and files say is put on the screen as text alone. The sources are parsed, so that neither
 * a comment nor a string is taken for a use.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync } from 'vite'
import { expect, it } from 'vitest'

const ROOT = join(import.meta.dirname, '../..')

/** Properties that turn a text into markup when they are set, and attributes of JSX that do. */
const SET = /^(innerHTML|outerHTML|srcdoc|dangerouslySetInnerHTML)$/
/** Methods that do when they are called, whatever they are called on. */
const CALLED =
  /^(insertAdjacentHTML|setHTMLUnsafe|parseHTMLUnsafe|createContextualFragment|parseFromString|write|writeln|importScripts)$/
/** `write` and `writeln` are of many things; these are the ones that are meant. */
const OF_DOCUMENT = /^(write|writeln)$/
/** What runs a text. */
const RUNS = /^(eval|Function|GeneratorFunction|AsyncFunction)$/
const TIMERS = /^(setTimeout|setInterval)$/
/** Addresses that are a script. */
const SCRIPT_ADDRESS = /^\s*(javascript|vbscript):/i

interface Node {
  readonly type: string
  readonly start: number
  readonly name?: string | Node
  readonly value?: unknown
  readonly computed?: boolean
  readonly callee?: Node
  readonly object?: Node
  readonly property?: Node
  readonly key?: Node
  readonly left?: Node
  readonly arguments?: readonly Node[]
}

const nameIn = (node: Node | undefined): string => {
  if (!node) return ''
  if (typeof node.name === 'string') return node.name
  if (node.type === 'Literal') return String(node.value)
  // `a.b` and `a['b']` alike.
  return node.type === 'MemberExpression' ? nameIn(node.property) : ''
}

/** What is wrong with one piece of a program. */
function wrongIn(node: Node): string | null {
  const { type, callee, left, key, arguments: given = [] } = node
  if (type === 'AssignmentExpression' && left?.type === 'MemberExpression' && SET.test(nameIn(left)))
    return nameIn(left)
  if (type === 'JSXAttribute' && typeof node.name === 'object' && SET.test(nameIn(node.name)))
    return nameIn(node.name)
  // { innerHTML: … }, as given to Object.assign or to a component.
  if (type === 'Property' && SET.test(nameIn(key))) return nameIn(key)
  if (type === 'CallExpression' || type === 'NewExpression') {
    const name = nameIn(callee)
    if (RUNS.test(name)) return name
    if (TIMERS.test(name) && /^(Literal|TemplateLiteral)$/.test(given[0]?.type ?? ''))
      return `${name} of a text`
    if (callee?.type === 'MemberExpression' && CALLED.test(name))
      return OF_DOCUMENT.test(name) && nameIn(callee.object) !== 'document' ? null : name
    if (callee?.type === 'Identifier' && name === 'importScripts') return name
    if (name === 'DOMParser') return name
    // setAttribute('onclick', …), and what `srcdoc` does.
    if (/^setAttribute(NS)?$/.test(name) && given.some((one) => /^(on\w+|srcdoc)$/i.test(nameIn(one))))
      return `${name} of what runs`
  }
  if (type === 'Literal' && typeof node.value === 'string' && SCRIPT_ADDRESS.test(node.value))
    return 'an address that is a script'
  return null
}

/** All that the above looks for: a file without any of it need not be parsed. */
const ANY =
  /innerHTML|outerHTML|srcdoc|dangerously|insertAdjacent|HTMLUnsafe|Fragment|parseFromString|DOMParser|write|importScripts|eval|Function|setTimeout|setInterval|setAttribute|script:/i

function sinksIn(file: string, text: string): string[] {
  if (!ANY.test(text)) return []
  const { program, errors } = parseSync(file, text)
  expect(errors, file).toEqual([])
  const found: string[] = []
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) visit(one)
    if (typeof value !== 'object' || value === null || !('type' in value)) return
    const node = value as Node
    const wrong = wrongIn(node)
    if (wrong !== null) found.push(`${file}:${text.slice(0, node.start).split('\n').length} ${wrong}`)
    for (const inner of Object.values(node)) visit(inner)
  }
  visit(program)
  return found
}

it('No text is turned into markup or code, anywhere in the sources', () => {
  const files = ['rules', 'geometry', 'src'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .map((file) => join(folder, file))
      .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts')),
  )
  expect(files.length).toBeGreaterThan(400)
  const found = files.flatMap((file) => sinksIn(file, readFileSync(join(ROOT, file), 'utf8')))
  expect(found).toEqual([])
})

it.each([
  'element.innerHTML = name',
  "element['outerHTML'] += name",
  'frame.srcdoc = name',
  'Object.assign(element, { innerHTML: name })',
  'export const x = <p dangerouslySetInnerHTML={{ __html: name }} />',
  'export const x = <iframe srcdoc={name} />',
  "element.insertAdjacentHTML('beforeend', name)",
  'element.setHTMLUnsafe(name)',
  'range.createContextualFragment(name)',
  "new DOMParser().parseFromString(name, 'text/html')",
  'document.write(name)',
  'window.document.writeln(name)',
  'eval(name)',
  'globalThis.eval(name)',
  'new Function(name)',
  "setTimeout('go()', 1)",
  'window.setInterval(`go()`)',
  "element.setAttribute('onclick', name)",
  'importScripts(name)',
  "anchor.href = 'javascript:go()'",
])('What turns a text into markup or code is told: %s', (text) => {
  expect(sinksIn('x.tsx', text).length).toBeGreaterThan(0)
})

it.each([
  'element.textContent = name',
  '// element.innerHTML = name',
  "const said = 'element.innerHTML = name'",
  'process.stdout.write(name)',
  'stream.writeln(name)',
  'setTimeout(() => go(), 1)',
  "element.setAttribute('aria-label', name)",
  'const html = element.innerHTML',
  'export const x = <p>{name}</p>',
])('What does not is not told: %s', (text) => {
  expect(sinksIn('x.tsx', text)).toEqual([])
})
