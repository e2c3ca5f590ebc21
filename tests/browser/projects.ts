/** How the tests in a browser are run: the root `vitest.config.ts` runs them after all others. */
import type { TestProjectInlineConfiguration } from 'vitest/config'

const HERE = 'tests/browser'
/** What draws the scene, and what measures: one file after the other, since a machine of two cores draws one scene at a time. */
const ALONE = [`${HERE}/scene-*.test.ts`, `${HERE}/stage.test.ts`, `${HERE}/weight.test.ts`]

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
      sequence: { groupOrder: 1 },
    },
  },
  {
    test: {
      ...shared,
      name: 'scene',
      include: ALONE,
      fileParallelism: false,
      sequence: { groupOrder: 2 },
    },
  },
]
