/** How the tests in a browser are run: the root `vitest.config.ts` runs them after all others. */
import type { TestProjectInlineConfiguration } from 'vitest/config'

const HERE = 'tests/browser'
/** What measures time and memory: by itself, one file after the other. The rest goes by two: while one waits for a picture the other works. */
const ALONE = [`${HERE}/*speed.test.ts`, `${HERE}/weight.test.ts`]

export const shared = {
  globalSetup: [`${HERE}/support/setup.ts`],
  testTimeout: 120_000,
  hookTimeout: 60_000,
}

export const browserProjects: TestProjectInlineConfiguration[] = [
  {
    test: {
      ...shared,
      name: 'page',
      include: [`${HERE}/*.test.ts`],
      exclude: ALONE,
      maxWorkers: 2,
      // A browser on a machine that others work on too is now and then late. What passed only then is told: `src/build/counts.ts`.
      retry: process.env.CI ? 1 : 0,
      // Loading the engine and starting a browser anew for each file takes a good second of a processor.
      isolate: false,
      sequence: { groupOrder: 2 },
    },
  },
  {
    test: {
      ...shared,
      name: 'measured',
      include: ALONE,
      // Another process that works meanwhile spoils one measure, not three.
      retry: 2,
      fileParallelism: false,
      sequence: { groupOrder: 3 },
    },
  },
]
