/** For the build: the script of `frame.html`, and last of all the list of what every file's bytes are. */
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'esbuild'
import type { Plugin } from 'vite'

const SCRIPTS = ['leadline.js', 'frame.js', 'frame-host.js']

/** By address from the folder of `leadline.js`, as an import map has it: `{ "integrity": { "./leadline.js": "sha384-…" } }`. */
export function integrityOf(dist: string): { readonly integrity: Readonly<Record<string, string>> } {
  const names = [
    ...SCRIPTS.filter((name) => existsSync(join(dist, name))),
    ...readdirSync(join(dist, 'leadline'))
      .filter((name) => name.endsWith('.js'))
      .map((name) => `leadline/${name}`),
  ]
  const hash = (name: string): string =>
    createHash('sha384')
      .update(readFileSync(join(dist, name)))
      .digest('base64')
  return { integrity: Object.fromEntries(names.sort().map((name) => [`./${name}`, `sha384-${hash(name)}`])) }
}

export const besideElement = (): Plugin => {
  let root = ''
  let dist = ''
  return {
    name: 'leadline:beside-element',
    apply: 'build',
    configResolved(config) {
      root = config.root
      dist = resolve(root, config.build.outDir)
    },
    closeBundle: {
      sequential: true,
      order: 'post',
      async handler(error?: Error) {
        if (error || !existsSync(join(dist, 'leadline'))) return
        await build({
          entryPoints: { frame: join(root, 'src/frame/page.ts') },
          outdir: dist,
          bundle: true,
          minify: true,
          format: 'esm',
          target: 'es2022',
          logLevel: 'warning',
        })
        writeFileSync(
          join(dist, 'leadline', 'integrity.json'),
          `${JSON.stringify(integrityOf(dist), null, 1)}\n`,
        )
      },
    },
  }
}
