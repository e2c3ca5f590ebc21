import { defineConfig } from 'vitest/config'
import { REPORTS } from './src/build/reports.ts'

/** Tests that need no browser. Those that do have their own: tests/browser/vitest.config.ts. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    testTimeout: 120_000,
    reporters: ['default', ['json', { outputFile: REPORTS.unit }]],
  },
})
