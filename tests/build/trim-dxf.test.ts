/** What the build leaves out of the DXF writer is its hatch patterns by name, and nothing else. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { parseSync } from 'vite'
import { expect, it } from 'vitest'
import { withoutPatterns } from '../../src/build/trim-dxf.ts'

const lib = dirname(createRequire(import.meta.url).resolve('@tarikjabiri/dxf'))
const source = readFileSync(join(lib, 'index.mjs'), 'utf8')

it('leaves out every pattern and keeps all else, line for line', () => {
  const trimmed = withoutPatterns(source)
  expect(parseSync('index.mjs', trimmed).errors).toEqual([])
  expect(source.match(/new HatchPattern\(/g)!.length).toBeGreaterThan(50)
  expect(trimmed).not.toMatch(/new HatchPattern\(/)
  const [start, end] = [
    'const ANGLE = new HatchPattern("ANGLE");\n',
    '//#endregion\n//#region src/Internals/TrueColor.ts',
  ]
  const [before, after] = [source.indexOf(start), source.indexOf(end)]
  expect(before).toBeGreaterThan(0)
  expect(after).toBeGreaterThan(before)
  expect(trimmed).toBe(source.slice(0, before) + source.slice(after))
})
