/**
 * For the build: what makes the demo site work without a signal. Icons go in as files; when all is written the service worker is bundled with
 * the list of what stands there, and so is the script that registers it. Both are apart from the element: a host has its own, or none.
 */
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join, resolve } from 'node:path'
import { build } from 'esbuild'
import type { Plugin } from 'vite'

interface SiteFile {
  readonly url: string
  readonly revision: string | null
}

/** The site's own files beside `leadline/`. */
const PAGES =
  /^(?:(?:leadline|offline|page|lake|site-language)\.js|(?:index|lake)\.html|(?:page|lake)\.css|icon.*\.(?:svg|png)|lake\.webmanifest)$/
/** What reads and nobody runs. */
const TEXTS = /\.(?:md|txt)$|^(?:files|integrity)\.json$/
const HASHED = /-[\w-]{8}\.\w+$/

/** What a visitor without a signal needs: all that the page may ever load. */
export function siteFiles(dist: string): readonly SiteFile[] {
  const names = [
    ...readdirSync(dist).filter((name) => PAGES.test(name)),
    ...readdirSync(join(dist, 'leadline')).flatMap((name) => (TEXTS.test(name) ? [] : [`leadline/${name}`])),
  ]
  return names.sort().map((url) => {
    const revision = createHash('sha256')
      .update(readFileSync(join(dist, url)))
      .digest('hex')
      .slice(0, 16)
    return { url, revision: url.startsWith('leadline/') && HASHED.test(url) ? null : revision }
  })
}

/** For a host's own worker: what the element may ask for besides `leadline.js`, which names the rest and is not kept for good. */
function listFiles(dist: string): void {
  const files = readdirSync(join(dist, 'leadline')).filter((name) => HASHED.test(name))
  const text = JSON.stringify(files.sort().map((name) => `./leadline/${name}`))
  writeFileSync(join(dist, 'leadline', 'files.json'), `${text}\n`)
}

/** Of the library that the worker is made with, which asks that its terms go along. */
function terms(): string {
  const require = createRequire(import.meta.url)
  const folder = dirname(require.resolve('workbox-precaching/package.json'))
  return `/*! With parts of Workbox:\n${readFileSync(join(folder, 'LICENSE'), 'utf8')}*/`
}

const bundle = (dist: string, name: string, from: string, rest: object): Promise<unknown> =>
  build({
    entryPoints: { [name]: from },
    outdir: dist,
    bundle: true,
    minify: true,
    target: 'es2022',
    logLevel: 'warning',
    ...rest,
  })

/** The service worker with the list of what stands in `dist`, and the script that registers it. @param root of the sources */
export async function buildOffline(root: string, dist: string): Promise<void> {
  await bundle(dist, 'offline', join(root, 'src/offline/page.ts'), { format: 'esm' })
  await bundle(dist, 'service-worker', join(root, 'src/offline/service-worker.ts'), {
    format: 'iife',
    banner: { js: terms() },
    define: {
      SITE_FILES: JSON.stringify(siteFiles(dist)),
      'process.env.NODE_ENV': '"production"',
    },
  })
}

export const offline = (): Plugin => {
  let root = ''
  let dist = ''
  return {
    name: 'leadline:offline',
    apply: 'build',
    configResolved(config) {
      root = config.root
      dist = resolve(root, config.build.outDir)
    },
    async buildStart() {
      const { icons } = await import('./icons.ts')
      for (const [fileName, source] of icons(join(root, 'public')))
        this.emitFile({ type: 'asset', fileName, source })
    },
    closeBundle: {
      sequential: true,
      order: 'post',
      async handler(error?: Error) {
        // Where the build has failed, which is told elsewhere, nothing was written.
        if (error || !existsSync(join(dist, 'leadline'))) return
        listFiles(dist)
        await buildOffline(root, dist)
      },
    },
  }
}
