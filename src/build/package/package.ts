/**
 * Builds what the package has beside the page's files (`vite build`): `dist/es`, the element as a module for bundlers, its workers each in
 * one file; `dist/node`, engine and terminal, with all that they use in them; `dist/types`. Run by `npm run build:package`; with a folder,
 * only engine and terminal, into it.
 */
import { execFileSync } from 'node:child_process'
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { build, type InlineConfig } from 'vite'
import { fontLicense } from '../font-license.ts'
import { noticeOf, sbomOf, wholeLicenses } from '../notices.ts'
import { papersAlone } from '../papers-alone.ts'
import { plainImports } from '../plain-imports.ts'
import { screenReact } from '../screen-react.ts'
import { terseSchemas } from '../terse-schemas.ts'
import { trimDxf } from '../trim-dxf.ts'
import { trimThree } from '../trim-three/plugin.ts'
import { beside, workerFile } from './beside.ts'
import { keepReachable } from './types.ts'

const ROOT = fileURLToPath(new URL('../../..', import.meta.url))
const DIST = join(ROOT, 'dist')
const ES = join(DIST, 'es')
const TYPES = join(DIST, 'types')
const FONTS = {
  'Roboto_400Regular.ttf': '400Regular/Roboto_400Regular.ttf',
  'Roboto_700Bold.ttf': '700Bold/Roboto_700Bold.ttf',
  'ROBOTO-LICENSE.txt': 'LICENSE_FONT',
}

/** What the modules in these files come from, and under which terms: for the element with its workers, for the terminal with the engine. */
const LICENSES = { fileName: 'THIRD-PARTY.md' }

const common: InlineConfig = {
  root: ROOT,
  configFile: false,
  publicDir: false,
  logLevel: 'warn',
}

/** As the page is built, but for names: a host's bundler hashes and minifies. */
const element = (input: Record<string, string>, found: (worker: string) => void): InlineConfig => ({
  ...common,
  plugins: [
    terseSchemas,
    react(),
    papersAlone,
    screenReact(),
    trimThree(),
    trimDxf,
    beside(ES, found),
    plainImports,
    fontLicense('ROBOTO-LICENSE.txt'),
    ...(input.leadline === undefined ? [] : [wholeLicenses(LICENSES.fileName)]),
  ],
  define: { 'process.env.NODE_ENV': '"production"' },
  build: {
    target: 'es2022',
    outDir: ES,
    emptyOutDir: false,
    modulePreload: false,
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    minify: false,
    license: input.leadline === undefined ? false : LICENSES,
    rolldownOptions: {
      input,
      treeshake: {
        moduleSideEffects: (id) =>
          !/\/(?:rules|geometry)\/[^?]*\.(?:ts|json)$|\/robust-predicates\//.test(id),
      },
      preserveEntrySignatures: 'exports-only',
      output: {
        format: 'es',
        banner: noticeOf,
        entryFileNames: '[name].js',
        chunkFileNames: 'chunk-[name].js',
      },
    },
  },
})

async function buildElement(): Promise<void> {
  rmSync(ES, { recursive: true, force: true })
  const workers = new Set<string>()
  await build(element({ leadline: 'src/element/index.ts' }, (worker) => workers.add(worker)))
  for (const worker of workers) {
    const config = element({ [workerFile(worker).replace(/\.js$/, '')]: worker }, () => {
      throw new Error(`${worker} begins a worker of its own`)
    })
    // A bundler takes a worker for a page of its own: chunks that it shares with the page would be there twice, or in a circle.
    // Nothing else says that it is a module.
    Object.assign(config.build!.rolldownOptions!.output!, { codeSplitting: false, footer: 'export {}' })
    await build(config)
  }
}

async function buildNode(folder: string): Promise<void> {
  rmSync(folder, { recursive: true, force: true })
  const output = {
    format: 'es',
    banner: noticeOf,
    entryFileNames: '[name].js',
    chunkFileNames: 'chunk-[name].js',
  } as const
  // The engine asks for nothing of Node: it runs in a browser, a worker, wherever there is JavaScript.
  await build({
    ...common,
    build: {
      target: 'es2022',
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      modulePreload: false,
      reportCompressedSize: false,
      rolldownOptions: {
        input: { rules: 'rules/index.ts', record: 'rules/record/index.ts', geometry: 'geometry/index.ts' },
        preserveEntrySignatures: 'strict',
        output,
      },
    },
  })
  await build({
    ...common,
    plugins: [wholeLicenses(LICENSES.fileName)],
    ssr: { noExternal: true },
    build: {
      ssr: true,
      target: 'node20',
      license: LICENSES,
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        input: { cli: 'src/cli/main.ts' },
        output: { ...output, chunkFileNames: 'cli-[name].js' },
      },
    },
  })
  const require = createRequire(import.meta.url)
  mkdirSync(join(folder, 'fonts'), { recursive: true })
  for (const [name, font] of Object.entries(FONTS))
    copyFileSync(require.resolve(`@expo-google-fonts/roboto/${font}`), join(folder, 'fonts', name))
}

function buildTypes(): void {
  rmSync(TYPES, { recursive: true, force: true })
  execFileSync('npx', ['tsc', '-p', 'src/build/package/tsconfig.json'], { cwd: ROOT, stdio: 'inherit' })
  keepReachable(TYPES, ROOT.replace(/\/$/, ''), [
    'src/element/index.d.ts',
    'src/element/react.d.ts',
    'rules/index.d.ts',
    'rules/record/index.d.ts',
    'geometry/index.d.ts',
  ])
}

/** Of the manifest's schema (custom-elements-manifest 1.0.0), what is touched here. */
interface Manifest {
  readonly modules: {
    path: string
    readonly declarations: {
      members?: { readonly privacy?: string }[] | undefined
      events?: { readonly name: string }[] | undefined
    }[]
    readonly exports: { readonly declaration: { module?: string } }[]
  }[]
}

/** What editors and page builders know of the element. */
function buildManifest(): void {
  const args = ['cem', 'analyze', '--globs', 'src/element/leadline-dock.ts', '--outdir', 'dist', '--quiet']
  execFileSync('npx', args, { cwd: ROOT, stdio: 'inherit' })
  const manifest = join(DIST, 'custom-elements.json')
  const told = JSON.parse(readFileSync(manifest, 'utf8')) as Manifest
  for (const module of told.modules) {
    module.path = 'dist/es/leadline.js'
    for (const one of module.declarations) {
      // What a host has no business with; and an event whose name is only known when it is told.
      one.members = one.members?.filter(({ privacy }) => privacy !== 'private')
      one.events = one.events?.filter(({ name }) => name.startsWith('leadline-'))
    }
    for (const one of module.exports) if (one.declaration.module) one.declaration.module = module.path
  }
  writeFileSync(manifest, `${JSON.stringify(told, null, 2)}\n`)
}

const only = process.argv[2]
await buildNode(only === undefined ? join(DIST, 'node') : resolve(only))
if (only === undefined) {
  await buildElement()
  buildTypes()
  buildManifest()
  const lists = [join(DIST, 'leadline'), ES, join(DIST, 'node')].map((folder) =>
    join(folder, LICENSES.fileName),
  )
  writeFileSync(join(DIST, 'sbom.cdx.json'), sbomOf(ROOT, lists))
}
