/** Reading files for the terminal: a size limit before the content, and every fault with its place. */
import { readFileSync, statSync } from 'node:fs'
import {
  type Catalog,
  type Design,
  demoCatalog,
  type Issue,
  parseCatalog,
  parseDesign,
} from '../../rules/index.ts'

/** Larger files are no design, catalog or list. */
const MOST_BYTES = 8 * 1024 * 1024

/** What ends a command with exit code 2: one line a problem. */
export class Unusable extends Error {
  readonly lines: readonly string[]
  constructor(lines: readonly string[]) {
    super(lines.join('\n'))
    this.lines = lines
  }
}

const line = (file: string, message: string): Unusable => new Unusable([`${file}: ${message}`])

export function readJson(file: string): unknown {
  let text: string
  try {
    if (file !== '-') {
      const { size } = statSync(file)
      if (size > MOST_BYTES) throw line(file, `${size} bytes; expected at most ${MOST_BYTES}`)
    }
    text = readFileSync(file === '-' ? 0 : file, 'utf8')
  } catch (error) {
    if (error instanceof Unusable) throw error
    const { code } = error as NodeJS.ErrnoException
    throw line(file, `cannot be read (${code ?? error}); expected a JSON file`)
  }
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch (error) {
    throw line(file, `not JSON (${(error as Error).message}); expected a whole JSON file`)
  }
}

/** Issues as lines: `PATH: what is wrong; expected …`; the file's own name where the fault is the whole file. */
export const issueLines = (file: string, issues: readonly Issue[]): string[] =>
  issues.map(({ path, message }) => `${path === '' ? file : path}: ${message}`)

export interface Read<T> {
  readonly value: T
  /** What was kept and is worth telling. */
  readonly notices: readonly string[]
}

export function readDesign(file: string): Read<Design> {
  const parsed = parseDesign(readJson(file))
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return { value: parsed.value, notices: parsed.notices.map(({ path, message }) => `${path}: ${message}`) }
}

/** The catalog named, or the demo shop's. */
export function readCatalog(file: string | undefined): Read<Catalog> {
  if (file === undefined) return { value: demoCatalog, notices: [] }
  const parsed = parseCatalog(readJson(file))
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return { value: parsed.value, notices: parsed.notices.map(({ path, message }) => `${path}: ${message}`) }
}
