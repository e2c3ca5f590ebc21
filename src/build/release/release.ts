/**
 * Makes a release in `release/`: the package, the files for a static host, what is in them and under which terms, and their sums. All of it is
 * built twice, from what is committed and nothing else, in two folders, by two clocks and in two languages; where one byte differs there is no
 * release. Run by `npm run release`.
 */
import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { standalone, zipOf } from './archive.ts'
import { differences, filesIn } from './compare.ts'
import { placesIn, versionOf } from './versions.ts'

const ROOT = fileURLToPath(new URL('../../..', import.meta.url))
const OUT = join(ROOT, 'release')

/** What a build could take from where and when it is made. */
const ELSEWHERE = [
  { folder: 'a', env: { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' } },
  { folder: 'another-place/b', env: { TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' } },
] as const

/** Notices of what is in the files, by where the builds write them. */
const NOTICES = {
  'page.md': 'dist/leadline/THIRD-PARTY.md',
  'modules.md': 'dist/es/THIRD-PARTY.md',
  'terminal.md': 'dist/node/THIRD-PARTY.md',
  'catalog-editor.md': 'dist/catalog-editor.THIRD-PARTY.md',
  'fonts.txt': 'dist/leadline/ROBOTO-LICENSE.txt',
} as const

const say = (line: string): void => {
  process.stdout.write(`${line}\n`)
}

const git = (...args: string[]): string =>
  execFileSync('git', args, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1024 * 1024 * 1024 })

/** Packages lie in the tree, as they do where it is checked out: where they are from there is written into files that are not made small. */
function takePackages(at: string): void {
  const from = join(ROOT, 'node_modules')
  const to = join(at, 'node_modules')
  try {
    // As further names of the same files, where that can be done.
    execFileSync('cp', ['-al', from, to], { stdio: 'ignore' })
  } catch {
    rmSync(to, { recursive: true, force: true })
    cpSync(from, to, { recursive: true, verbatimSymlinks: true })
  }
}

/** Builds and packs in a folder of its own; what a release has is put into `out`. */
function make(sources: Buffer, at: string, env: Readonly<Record<string, string>>, version: string): string {
  mkdirSync(at, { recursive: true })
  execFileSync('tar', ['-x', '-C', at], { input: sources })
  takePackages(at)
  const run = (...args: string[]): void => {
    const told = spawnSync('npm', args, {
      cwd: at,
      env: { ...process.env, ...env, NODE_ENV: 'production' },
      encoding: 'utf8',
    })
    if (told.status !== 0) throw new Error(`npm ${args.join(' ')} failed\n${told.stdout}${told.stderr}`)
  }
  run('run', '--silent', 'build')
  const out = join(at, 'release')
  mkdirSync(join(out, 'notices'), { recursive: true })
  run('pack', '--silent', '--ignore-scripts', '--pack-destination', out)
  const { files } = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8')) as {
    readonly files: readonly string[]
  }
  writeFileSync(join(out, `leadline-${version}.zip`), zipOf(standalone(at, files)))
  cpSync(join(at, 'dist/sbom.cdx.json'), join(out, 'sbom.cdx.json'))
  for (const [name, from] of Object.entries(NOTICES)) cpSync(join(at, from), join(out, 'notices', name))
  return out
}

/** What a tarball has in it, in a folder. */
function unpacked(tarball: string): string {
  const folder = `${tarball}-unpacked`
  mkdirSync(folder)
  execFileSync('tar', ['-xzf', tarball, '-C', folder])
  return folder
}

/** Sums as `sha256sum -c` reads them. */
const sums = (folder: string): string =>
  filesIn(folder)
    .map(
      (file) =>
        `${createHash('sha256')
          .update(readFileSync(join(folder, file)))
          .digest('hex')}  ${file}\n`,
    )
    .join('')

function release(work: string): void {
  const changed = git('status', '--porcelain')
  if (changed !== '')
    throw new Error(`not committed, and so not of the release:\n${changed}A release is of what is committed.`)
  const version = versionOf(placesIn(ROOT))
  const sources = execFileSync('git', ['archive', '--format=tar', 'HEAD'], {
    cwd: ROOT,
    maxBuffer: 1024 * 1024 * 1024,
  })
  say(`${version} of ${git('rev-parse', 'HEAD').trim()}`)
  const [first, second] = ELSEWHERE.map(({ folder, env }) => {
    const begun = Date.now()
    const out = make(sources, join(work, folder), env, version)
    say(`built in ${folder}, ${Math.round((Date.now() - begun) / 1000)} s`)
    return out
  }) as [string, string]
  const name = `leadline-${version}.tgz`
  const told = [
    // The files first: a tarball only says that something in it is not the same.
    ...differences(join(work, ELSEWHERE[0].folder, 'dist'), join(work, ELSEWHERE[1].folder, 'dist')),
    ...differences(unpacked(join(first, name)), unpacked(join(second, name))),
  ]
  for (const each of [first, second]) rmSync(join(each, `${name}-unpacked`), { recursive: true })
  told.push(...differences(first, second))
  if (told.length > 0) throw new Error(`two builds of the same are not the same:\n${told.join('\n')}`)
  rmSync(OUT, { recursive: true, force: true })
  cpSync(first, OUT, { recursive: true })
  writeFileSync(join(OUT, 'SHA256SUMS'), sums(OUT))
  say(`the same twice, to the byte\n${readFileSync(join(OUT, 'SHA256SUMS'), 'utf8')}`)
}

const work = mkdtempSync(join(ROOT, 'release-'))
try {
  release(work)
} catch (error) {
  process.stderr.write(`No release: ${error instanceof Error ? error.message : error}\n`)
  process.exitCode = 1
} finally {
  rmSync(work, { recursive: true, force: true })
}
