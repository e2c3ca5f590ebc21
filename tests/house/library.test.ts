/** The engine as a package: `leadline/rules` in plain Node, from the built files. */
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive, ENGINE_VERSION } from '../../rules/index.ts'

const ROOT = join(import.meta.dirname, '../..')
const run = (command: string, args: string[]): string =>
  execFileSync(command, args, { cwd: ROOT, encoding: 'utf8' })

beforeAll(() => {
  run('npx', ['vite', 'build', '-c', 'vite.lib.config.ts', '--logLevel', 'error'])
}, 120_000)

describe('leadline/rules', () => {
  it('imports in plain Node and derives the same dock', () => {
    const script = `
      import { derive, deriveKit, assess, demoCatalog, demoDesign, parseDesign, parseCatalog } from 'leadline/rules'
      const parsed = parseDesign(demoDesign)
      if (!parsed.ok || !parseCatalog(demoCatalog).ok) throw new Error('not parsed')
      console.log(JSON.stringify(derive(parsed.value, demoCatalog)))
      if (JSON.stringify(assess(deriveKit(parsed.value, demoCatalog))) !== JSON.stringify(derive(parsed.value, demoCatalog))) throw new Error('differs')`
    const dock = JSON.parse(run(process.execPath, ['--input-type=module', '-e', script]))
    expect(dock).toEqual(derive(demoDesign, demoCatalog))
  })

  it('is of the version that package.json says', () => {
    expect(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).version).toBe(ENGINE_VERSION)
  })

  it('runs as a command from its built file', () => {
    expect(existsSync(join(ROOT, 'dist/node/cli.js'))).toBe(true)
    expect(run(process.execPath, ['dist/node/cli.js', '--version']).trim()).toBe(ENGINE_VERSION)
  })
})
