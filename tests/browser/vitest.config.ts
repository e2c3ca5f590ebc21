import { defineConfig } from 'vitest/config'
import { REPORTS } from '../../src/build/reports.ts'

/** Tests of the built page in a real browser, one file after the other: a machine of two cores draws one scene at a time. */
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/browser/support/setup.ts'],
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 60_000,
    reporters: ['default', ['json', { outputFile: REPORTS.browser }]],
  },
})
