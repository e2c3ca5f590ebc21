import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { withoutDescriptions } from '../../src/build/terse-schemas.ts'

it('empties what a schema says of its fields, and nothing else', () => {
  const file = [
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is a file's text.
    'const meters = (max: number, description: string) => v.pipe(v.number(), v.description(`${description}, m`))',
    "const A = { x: meters(3, 'How far'), y: v.pipe(v.string(), v.regex(/a/, 'kept'), v.description('What')) }",
    "issue('x', 'kept too')",
  ].join('\n')
  expect(withoutDescriptions('a.ts', file).split('\n')).toEqual([
    "const meters = (max: number, description: string) => v.pipe(v.number(), v.description(''))",
    "const A = { x: meters(3, ''), y: v.pipe(v.string(), v.regex(/a/, 'kept'), v.description('')) }",
    "issue('x', 'kept too')",
  ])
})

it.each(['design', 'plan', 'catalog'])('leaves none in the schema of a %s', (name) => {
  const path = `rules/${name}/schema.ts`
  const before = readFileSync(path, 'utf8')
  const after = withoutDescriptions(path, before)
  expect(before).toMatch(/description\(\s*['"`]\w/)
  expect(after).not.toMatch(/description\(\s*['"`]\w/)
  expect(after.length).toBeLessThan(before.length)
})
