import { defineConfig } from 'vitest/config'

/** `npm run test:deep`: the fuzz with twenty thousand cases, unless `LEADLINE_RUNS` says how many. */
export default defineConfig({
  test: {
    include: ['tests/fuzz/**/*.test.ts'],
    env: { LEADLINE_RUNS: process.env.LEADLINE_RUNS ?? '20000' },
    testTimeout: 7_200_000,
    maxWorkers: 2,
    isolate: false,
  },
})
