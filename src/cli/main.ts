#!/usr/bin/env node
/** `leadline`: the engine from a terminal. */
import { Unusable } from './files.ts'
import { run } from './run.ts'

const args = process.argv.slice(2)

/** The day here, `YYYY-MM-DD`. */
function today(): string {
  const now = new Date()
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

if (args[0] === 'sheet' && !args.includes('--help') && !args.includes('-h')) {
  // What writes files is loaded only for this.
  const { put, sheet } = await import('./sheet.ts')
  try {
    const written = await sheet(args.slice(1), today())
    put(written)
    process.stderr.write(written.err)
    process.exitCode = written.code
  } catch (error) {
    if (!(error instanceof Unusable)) throw error
    process.stderr.write(`${error.lines.join('\n')}\n`)
    process.exitCode = 2
  }
} else {
  const { code, out, err } = run(args)
  process.stdout.write(out)
  process.stderr.write(err)
  process.exitCode = code
}
