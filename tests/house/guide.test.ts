/** The guide's tables and plots are what the engine says now. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { GUIDE, guideFiles } from '../../src/build/guide/guide.ts'

it('tells the figures that the engine works out (npm run build:guide renews them)', {
  timeout: 120_000,
}, () => {
  const files = guideFiles()
  expect(Object.keys(files).sort()).toEqual(['structure.md', 'why-braces.md', 'why-braces.svg'])
  for (const [name, text] of Object.entries(files))
    expect(text, name).toBe(readFileSync(join(GUIDE, name), 'utf8'))
})
