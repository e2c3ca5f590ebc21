/** No function is longer than a screen and a half, but for those that are named here; none of those stays named when it is shorter. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync } from 'vite'
import { expect, it } from 'vitest'

const ROOT = join(import.meta.dirname, '../..')

/** Lines, from its first to its last. */
const MOST = 80

/** Longer so far. To split one by subject takes its line away; none is added without a reason beside it. */
const LONGER: readonly string[] = []

interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly id?: { readonly name?: string } | null
  readonly key?: { readonly name?: string }
  readonly body?: unknown
}

/** `file name`, of each function that is longer. */
function longIn(file: string, text: string): string[] {
  const { program, errors } = parseSync(file, text)
  expect(errors, file).toEqual([])
  const found: string[] = []
  const visit = (value: unknown, around: string): void => {
    if (Array.isArray(value)) for (const one of value) visit(one, around)
    if (typeof value !== 'object' || value === null || !('type' in value)) return
    const node = value as Node
    const name = node.id?.name ?? node.key?.name ?? around
    const isFunction = /^(FunctionDeclaration|FunctionExpression|ArrowFunctionExpression)$/.test(node.type)
    if (isFunction && node.body && text.slice(node.start, node.end).split('\n').length > MOST)
      found.push(`${file} ${name}`)
    for (const inner of Object.values(node)) visit(inner, name)
  }
  visit(program, '')
  return found
}

it('Functions are 80 lines at the most, but for those that are named', () => {
  const files = ['rules', 'geometry', 'src'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file))
      .map((file) => join(folder, file)),
  )
  const long = files.flatMap((file) => longIn(file, readFileSync(join(ROOT, file), 'utf8')))
  expect([...new Set(long)].sort()).toEqual([...LONGER].sort())
})

it.each(['function a() {', 'const a = () => {', 'class B { a() {'])('A longer one is told: %s', (head) => {
  const end = '}'.repeat(head.split('{').length - 1)
  expect(longIn('x.ts', `${head}${'\n'.repeat(MOST)}${end}`)).toEqual(['x.ts a'])
  expect(longIn('x.ts', `${head}${'\n'.repeat(MOST - 1)}${end}`)).toEqual([])
})
