import { defineConfig } from 'vitest/config'
import { REPORTS } from './src/build/reports.ts'
import { browserProjects } from './tests/browser/projects.ts'

/** Docks are many small objects: with room for more of them before they are looked through, the collector takes a tenth less of all time. */
const ROOM = ['--max-semi-space-size=64']

/** What compares times: by itself, one file after the other. */
const GROWTH = 'tests/**/growth.test.ts'

/** Every test, in one run: those that need no browser first, then those of the built page in one. */
export default defineConfig({
  test: {
    reporters: ['default', ['json', { outputFile: REPORTS.all }]],
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/browser/**', 'node_modules/**', GROWTH],
          testTimeout: 120_000,
          maxWorkers: 2,
          // Loading the engine anew for each of a hundred files takes longer than most of them.
          isolate: false,
          execArgv: ROOM,
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          name: 'growth',
          include: [GROWTH],
          testTimeout: 120_000,
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
      ...browserProjects,
    ],
  },
})
