/** The last line of a CI run: how many tests passed and failed, from the reports that vitest leaves. */
import { existsSync, readFileSync } from 'node:fs'
import { REPORTS } from './reports.ts'

let passed = 0
let failed = 0
for (const file of [REPORTS.unit]) {
  if (!existsSync(file)) {
    process.stdout.write(`no report of ${file}\n`)
    failed++
    continue
  }
  const report = JSON.parse(readFileSync(file, 'utf8')) as {
    numPassedTests: number
    numFailedTests: number
    numFailedTestSuites: number
  }
  passed += report.numPassedTests
  // A file that could not even be loaded has no failed test in it, and is a failure all the same.
  failed += Math.max(report.numFailedTests, report.numFailedTestSuites > 0 ? 1 : 0)
}
process.stdout.write(`${passed} passed, ${failed} failed\n`)
process.exitCode = failed > 0 ? 1 : 0
