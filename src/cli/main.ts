#!/usr/bin/env node
/** `leadline`: the engine from a terminal. */
import { isatty } from 'node:tty'
import { visibleLines } from '../documents/files/visible-text.ts'
import { type Arguments, parseArguments } from './args.ts'
import { Unusable, Unwritable } from './errors.ts'
import { lines } from './lines.ts'
import { checkOutput, write } from './output.ts'
import { type Outcome, perform } from './run.ts'

interface Told {
  readonly code: number
  readonly err: string
}

/** The day here, `YYYY-MM-DD`. */
function today(): string {
  const now = new Date()
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

async function told(args: readonly string[]): Promise<Told> {
  const asked = parseArguments(args)
  // `list dock.json >> dock.json`
  checkOutput('-', asked.inputs)
  const told = asked.values.help || asked.values.version
  if (asked.command === 'sheet' && !told) return sheet(asked)
  if (asked.command === 'soundings' && !told)
    return printed((await import('./soundings.ts')).soundings(asked))
  if (asked.command === 'record' && !told) return record(asked)
  return printed(perform(asked))
}

async function record(asked: Arguments): Promise<Told> {
  const [{ recordCommand }, { put }] = await Promise.all([import('./record.ts'), import('./sheet.ts')])
  const made = await recordCommand(asked, today())
  if ('out' in made) return printed(made)
  put(made, isatty(1))
  return made
}

async function sheet(asked: Arguments): Promise<Told> {
  // What makes papers and models is loaded only for this.
  const { make, put } = await import('./sheet.ts')
  const made = await make(asked, today())
  put(made, isatty(1))
  return made
}

async function printed(given: Outcome | Promise<Outcome>): Promise<Told> {
  const made = await given
  write('-', new TextEncoder().encode(isatty(1) ? visibleLines(made.out) : made.out))
  return made
}

/** A fault of the program's own: never the 1 of a dock that must not be built. */
function broken(error: unknown): Told {
  const stack = (error instanceof Error && error.stack) || String(error)
  const [what, where = ''] = stack.split('\n')
  return {
    code: 4,
    err: lines([`leadline: broke (${what}${where.replace(/^\s*/, ' ')}); expected a result`]),
  }
}

let end: Told
try {
  end = await told(process.argv.slice(2))
} catch (error) {
  end =
    error instanceof Unusable || error instanceof Unwritable
      ? { code: error.code, err: lines(error.lines) }
      : broken(error)
}
try {
  if (end.err !== '') write('/dev/stderr', new TextEncoder().encode(end.err))
} catch {
  // Nobody to tell; the exit code does.
}
process.exitCode = end.code
