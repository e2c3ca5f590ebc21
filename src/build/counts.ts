/** The last lines of a CI run, from the report that the test run leaves: which tests passed only when tried again, which failed, each with what; then how many. */
import { existsSync, readFileSync } from 'node:fs'
import { relative } from 'node:path'
import { REPORTS } from './reports.ts'

interface Report {
  readonly numPassedTests: number
  readonly numFailedTests: number
  readonly numFailedTestSuites: number
  readonly numPendingTests: number
  readonly testResults: readonly {
    readonly name: string
    readonly status: string
    readonly message: string
    /** ms */
    readonly startTime: number
    readonly endTime: number
    readonly assertionResults: readonly {
      readonly fullName: string
      readonly status: string
      readonly failureMessages: readonly string[]
    }[]
  }[]
}

/** Files of which it is told how long they took. */
const SLOWEST = 8
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
    for (const one of file.assertionResults)
      if (one.status === 'passed' && one.failureMessages.length > 0)
        say(`passed when tried again: ${path}: ${one.fullName}\n${cut(one.failureMessages.join('\n'))}`)
    for (const one of fell) say(`failed: ${path}: ${one.fullName}\n${cut(one.failureMessages.join('\n'))}`)
  }
  const took = report.testResults.map(
    ({ name, startTime, endTime }) => [endTime - startTime, relative('tests', name)] as const,
  )
  const slowest = took.sort(([a], [b]) => b - a).slice(0, SLOWEST)
  say(`slowest: ${slowest.map(([ms, name]) => `${name} ${Math.round(ms / 1000)} s`).join(', ')}`)
  if (report.numPendingTests > 0) say(`skipped: ${report.numPendingTests}`)
} else say(`no report in ${REPORTS.all}`)
say(`${passed} passed, ${failed} failed`)
process.exitCode = failed > 0 ? 1 : 0
