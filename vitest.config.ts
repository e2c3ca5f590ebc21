import { defineConfig } from 'vitest/config'
import { REPORTS } from './src/build/reports.ts'
import { browserProjects } from './tests/browser/projects.ts'

/** Every test, in one run: those that need no browser first, then those of the built page in one. */
export default defineConfig({
  test: {
    reporters: ['default', ['json', { outputFile: REPORTS.all }]],
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/browser/**', 'node_modules/**'],
          testTimeout: 120_000,
          sequence: { groupOrder: 0 },
        },
      },
      ...browserProjects,
    ],
  },
})
