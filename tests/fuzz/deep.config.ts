import { readdirSync, readFileSync } from 'node:fs'
import { defineConfig } from 'vitest/config'

/** The files that ask how many random cases they are to try, or run CalculiX anew. */
const RANDOM = readdirSync('tests', { recursive: true, encoding: 'utf8' })
  .map((file) => `tests/${file.replaceAll('\\', '/')}`)
  .filter((file) => /^tests\/(?!fuzz\/|browser\/).*\.test\.ts$/.test(file))
  .filter((file) => /support\/runs\.ts|run-ccx\.ts/.test(readFileSync(file, 'utf8')))

/** A group of files with so many cases for each thousand of every push, unless `LEADLINE_RUNS` says how many. */
const deep = (name: string, include: string[], runs: number) => ({
  test: {
    name,
    include,
    env: { LEADLINE_RUNS: process.env.LEADLINE_RUNS ?? String(runs) },
    testTimeout: 7_200_000,
    hookTimeout: 7_200_000,
    maxWorkers: 2,
    isolate: false,
  },
})

/** `npm run test:deep`: ten times the random cases of every push, and twenty times the fuzz's. */
export default defineConfig({
  test: { projects: [deep('laws', RANDOM, 10_000), deep('fuzz', ['tests/fuzz/**/*.test.ts'], 20_000)] },
})
