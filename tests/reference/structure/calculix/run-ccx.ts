/**
 * Runs CalculiX (Debian package calculix-ccx) on a deck and reads what it prints.
 */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { isDeep } from '../../../support/runs.ts'

/** The version that is installed, as it tells it; undefined if none is. */
export function ccxVersion(): string | undefined {
  try {
    return /Version (\S+)/.exec(execFileSync('ccx', ['-v'], { encoding: 'utf8', stdio: 'pipe' }))?.[1]
  } catch (error) {
    // `ccx -v` prints its version and exits with 1 in some builds.
    const out = (error as { stdout?: string }).stdout
    return typeof out === 'string' ? /Version (\S+)/.exec(out)?.[1] : undefined
  }
}

/**
 * The version that `npm run test:deep` runs anew. Every push goes by the stored results, as a machine without it does: tests hold
 * the decks that are written now to those that the results were made of.
 */
export const ccxRunNow = (): string | undefined => (isDeep ? ccxVersion() : undefined)

/** What CalculiX writes to its .dat file. */
export function runCcx(inp: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'ccx-'))
  try {
    writeFileSync(join(folder, 'frame.inp'), inp)
    execFileSync('ccx', ['frame'], {
      cwd: folder,
      stdio: 'pipe',
      env: { ...process.env, OMP_NUM_THREADS: '1' },
    })
    return readFileSync(join(folder, 'frame.dat'), 'utf8')
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Rows of a number and three values under 'displacements', by node number. */
export function readDisplacements(dat: string, joints: number): number[][] {
  const found = new Map<number, number[]>()
  for (const line of dat.split('\n')) {
    const [node, ...values] = line.trim().split(/\s+/).map(Number)
    if (values.length === 3 && values.every(Number.isFinite)) found.set(node!, values)
  }
  return Array.from({ length: joints }, (_, i) => {
    const row = found.get(i + 1)
    if (row === undefined) throw new Error(`ccx printed no displacement of node ${i + 1}`)
    return row
  })
}

/** The lowest positive one of the factors printed. */
export function readFactor(dat: string): number {
  const after = dat.slice(dat.indexOf('FACTOR'))
  const factors = after.split('\n').flatMap((line) => {
    const parts = line.trim().split(/\s+/).map(Number)
    return parts.length === 2 && parts.every(Number.isFinite) ? [parts[1]!] : []
  })
  const positive = factors.filter((factor) => factor > 0)
  if (positive.length === 0) throw new Error('ccx printed no positive buckling factor')
  return Math.min(...positive)
}
