/** Loaded before each test file while coverage is measured: which functions it runs. */
import { appendFileSync } from 'node:fs'
import { afterAll, expect } from 'vitest'

declare global {
  var leadlineHits: Set<number>
}

globalThis.leadlineHits = new Set()

afterAll(() => {
  const line = { test: expect.getState().testPath, hits: [...globalThis.leadlineHits] }
  appendFileSync(process.env.LEADLINE_HITS!, `${JSON.stringify(line)}\n`)
})
