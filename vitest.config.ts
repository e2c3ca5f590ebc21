import { defineConfig } from 'vitest/config'
import { REPORTS } from './src/build/reports.ts'

/** Tests that need no browser. Those that do have their own: tests/browser/vitest.config.ts. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    // tests/bench gates a ratio of times: `npm run bench` on a quiet machine.
    exclude: ['tests/browser/**', 'tests/bench/**', 'node_modules/**'],
    testTimeout: 120_000,
    reporters: ['default', ['json', { outputFile: REPORTS.unit }]],
  },
})
