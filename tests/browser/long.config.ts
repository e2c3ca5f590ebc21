import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { defineConfig } from 'vitest/config'
import { shared } from './projects.ts'

/** The files that look at more sizes, devices or bundlers when they are asked to. */
const AT_LENGTH = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith('.test.ts'))
  .filter((name) => readFileSync(join(import.meta.dirname, name), 'utf8').includes('support/at-length.ts'))
  .map((name) => `tests/browser/${name}`)

/** `npm run test:long`: what nobody wants to wait for at every change. */
export default defineConfig({
  test: {
    ...shared,
    include: ['tests/browser/*.long.ts', ...AT_LENGTH],
    env: { LEADLINE_AT_LENGTH: '1' },
    testTimeout: 3_600_000,
    fileParallelism: false,
  },
})
