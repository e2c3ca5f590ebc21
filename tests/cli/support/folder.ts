/** A folder of a test file's own, gone after it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll } from 'vitest'

export function ownFolder() {
  let folder = ''
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'leadline-'))
  })
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true })
  })
  const at = (name: string): string => join(folder, name)
  return {
    at,
    /** Writes a file there: text as it is, anything else as JSON. */
    file(name: string, content: unknown): string {
      writeFileSync(at(name), typeof content === 'string' ? content : JSON.stringify(content))
      return at(name)
    },
  }
}
