/** The last line of a CI run: how many tests passed and failed, from the report that the test run leaves. */
import { existsSync, readFileSync } from 'node:fs'
import { REPORTS } from './reports.ts'

interface Report {
  readonly numPassedTests: number
  readonly numFailedTests: number
  readonly numFailedTestSuites: number
}

let passed = 0
let failed = 1
if (existsSync(REPORTS.all)) {
  const report = JSON.parse(readFileSync(REPORTS.all, 'utf8')) as Report
  passed = report.numPassedTests
  // A file that could not even be loaded has no failed test in it, and is a failure all the same.
  failed = Math.max(report.numFailedTests, report.numFailedTestSuites > 0 ? 1 : 0)
} else process.stdout.write(`no report in ${REPORTS.all}\n`)
process.stdout.write(`${passed} passed, ${failed} failed\n`)
process.exitCode = failed > 0 ? 1 : 0
