/** One version everywhere. What the package has in it: `tests/browser/package.test.ts`. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { ENGINE_VERSION } from '../../rules/index.ts'

it('is of the version that package.json says', () => {
  const text = readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8')
  expect(JSON.parse(text).version).toBe(ENGINE_VERSION)
})
