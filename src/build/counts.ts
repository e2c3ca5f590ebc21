/** The last lines of a CI run, from the report that the test run leaves: which tests failed and with what, then how many passed and failed. */
import { existsSync, readFileSync } from 'node:fs'
import { relative } from 'node:path'
import { REPORTS } from './reports.ts'

interface Report {
  readonly numPassedTests: number
  readonly numFailedTests: number
  readonly numFailedTestSuites: number
  readonly testResults: readonly {
    readonly name: string
    readonly status: string
    readonly message: string
    readonly assertionResults: readonly {
      readonly fullName: string
      readonly status: string
      readonly failureMessages: readonly string[]
    }[]
  }[]
}

/** Of a message: enough to know what fell, in a log of which only the end may be kept. */
const LINES = 12

const say = (text: string): void => {
  process.stdout.write(`${text}\n`)
}
const cut = (message: string): string => message.split('\n').slice(0, LINES).join('\n')

let passed = 0
let failed = 1
if (existsSync(REPORTS.all)) {
  const report = JSON.parse(readFileSync(REPORTS.all, 'utf8')) as Report
  passed = report.numPassedTests
  // A file that could not even be loaded has no failed test in it, and is a failure all the same.
  failed = Math.max(report.numFailedTests, report.numFailedTestSuites > 0 ? 1 : 0)
  for (const file of report.testResults) {
    const fell = file.assertionResults.filter(({ status }) => status === 'failed')
    const path = relative(process.cwd(), file.name)
    if (fell.length === 0 && file.status === 'failed') say(`failed: ${path}\n${cut(file.message)}`)
    for (const one of fell) say(`failed: ${path}: ${one.fullName}\n${cut(one.failureMessages.join('\n'))}`)
  }
} else say(`no report in ${REPORTS.all}`)
say(`${passed} passed, ${failed} failed`)
process.exitCode = failed > 0 ? 1 : 0
