import { defineConfig } from 'vitest/config'
import { REPORTS } from '../../src/build/reports.ts'
import { browserProjects } from './projects.ts'

/** The tests in a browser by themselves, of the page as it is built: `npm run test:browser`. */
export default defineConfig({
  test: {
    reporters: ['default', ['json', { outputFile: REPORTS.browser }]],
    projects: browserProjects,
  },
})
