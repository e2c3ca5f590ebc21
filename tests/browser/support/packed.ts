/**
 * The package as a host gets it: packed, unpacked into a project of its own beside nothing but what the package says it needs, and built
 * there with the bundlers that hosts use.
 */
import { execFileSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import * as esbuild from 'esbuild'
import { build as vite } from 'vite'
import webpackModule from 'webpack'

const ROOT = join(import.meta.dirname, '../../..')

export interface Packed {
  /** A project with the package installed. */
  readonly project: string
  /** The tarball. */
  readonly file: string
  remove(): void
}

/** Builds the package's modules, packs, and installs it. What it depends on is brought from the checkout; nothing is fetched. */
export function pack(): Packed {
  if (!existsSync(join(ROOT, 'dist/leadline.js')))
    throw new Error('No page in dist: run `npm run build:page` first')
  // The tests' own runner says `test` to every tool that asks.
  const env = { ...process.env, NODE_ENV: 'production' }
  execFileSync('npx', ['tsx', 'src/build/package/package.ts'], { cwd: ROOT, stdio: 'pipe', env })
  const project = mkdtempSync(join(tmpdir(), 'leadline-host-'))
  const told = execFileSync('npm', ['pack', '--ignore-scripts', '--json', '--pack-destination', project], {
    cwd: ROOT,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  const [{ filename }] = JSON.parse(told) as [{ filename: string }]
  const file = join(project, filename)
  execFileSync('tar', ['-xzf', file, '-C', project])
  mkdirSync(join(project, 'node_modules'))
  cpSync(join(project, 'package'), join(project, 'node_modules/leadline'), { recursive: true })
  rmSync(join(project, 'package'), { recursive: true })
  symlinkSync(join(ROOT, 'node_modules/valibot'), join(project, 'node_modules/valibot'))
  writeFileSync(join(project, 'package.json'), '{ "name": "host", "private": true, "type": "module" }\n')
  writeFileSync(join(project, 'main.js'), "import 'leadline'\n")
  writeFileSync(join(project, 'index.html'), page('/main.js'))
  return { project, file, remove: () => rmSync(project, { recursive: true, force: true }) }
}

const page = (script: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8" /><title>Host</title>` +
  `<link rel="icon" href="data:," /><link rel="stylesheet" href="/hostile.css" />` +
  `<script type="module" src="${script}"></script></head>` +
  `<body><leadline-dock start="example"></leadline-dock></body></html>\n`

type Bundle = (project: string, out: string) => Promise<void>

const withVite: Bundle = async (root, outDir) => {
  await vite({ root, configFile: false, logLevel: 'silent', build: { outDir, emptyOutDir: true } })
}

const withWebpack: Bundle = (context, path) =>
  new Promise((done, failed) => {
    webpackModule(
      {
        context,
        mode: 'production',
        // As a host has it that minifies; the same code in a third of the time.
        optimization: { minimize: false },
        entry: './main.js',
        experiments: { outputModule: true },
        output: { path, filename: 'main.js', module: true, chunkFormat: 'module', clean: true },
      },
      (error, stats) => {
        const wrong = error ?? (stats?.hasErrors() ? new Error(stats.toString('errors-only')) : null)
        if (wrong) return failed(wrong)
        writeFileSync(join(path, 'index.html'), page('/main.js'))
        done()
      },
    )
  })

/** Esbuild leaves addresses alone: what they name is copied beside its files. */
const withEsbuild: Bundle = async (absWorkingDir, outdir) => {
  await esbuild.build({
    absWorkingDir,
    entryPoints: ['main.js'],
    bundle: true,
    splitting: true,
    format: 'esm',
    outdir,
    logLevel: 'silent',
  })
  const es = join(absWorkingDir, 'node_modules/leadline/dist/es')
  cpSync(es, outdir, { recursive: true, filter: (path) => path === es || /-worker\.js$|\.ttf$/.test(path) })
  writeFileSync(join(outdir, 'index.html'), page('/main.js'))
}

/** No bundler: files as they lie in the package. */
const asFiles: Bundle = async (project, out) => {
  const dist = join(project, 'node_modules/leadline/dist')
  cpSync(join(dist, 'leadline.js'), join(out, 'leadline.js'))
  cpSync(join(dist, 'leadline'), join(out, 'leadline'), { recursive: true })
  writeFileSync(join(out, 'index.html'), page('/leadline.js'))
}

/** At every push the first three. */
export const WAYS: Readonly<Record<string, Bundle>> = {
  'files on any host': asFiles,
  Vite: withVite,
  esbuild: withEsbuild,
  webpack: withWebpack,
}
