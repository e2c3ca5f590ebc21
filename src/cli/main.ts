#!/usr/bin/env node
/** `leadline`: the engine from a terminal. */
import { run } from './run.ts'

const { code, out, err } = run(process.argv.slice(2))
process.stdout.write(out)
process.stderr.write(err)
process.exitCode = code
