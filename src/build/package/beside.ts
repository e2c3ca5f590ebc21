/**
 * For the package's build: workers and fonts as files beside the module, named by `new URL('./name', import.meta.url)`, the one form
 * that bundlers know and that a browser takes as it is. Vite would write an address of its own making, which no other bundler reads.
 */
import { copyFileSync, mkdirSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { Plugin } from 'vite'

const WORKER = /new Worker\(\s*new URL\(\s*'(\.[^']+)',\s*import\.meta\.url\s*,?\s*\)/g
const FONT = /\.ttf\?url$/
/** Stands for an address until the chunk is written: until then every tool would take the address for its own. */
const PLACE = /__leadlineBeside\(["'`]([^"'`]+)["'`]\)/g

export const beside = (folder: string, found: (worker: string) => void = () => {}): Plugin => ({
  name: 'leadline:beside',
  enforce: 'pre',
  async resolveId(id, importer) {
    if (!FONT.test(id)) return null
    const font = await this.resolve(id.replace('?url', ''), importer, { skipSelf: true })
    if (!font) this.error(`no font ${id} for ${importer}`)
    return `\0font:${font.id}`
  },
  load: {
    filter: { id: /^\0font:/ },
    handler(id) {
      const from = id.slice('\0font:'.length)
      mkdirSync(folder, { recursive: true })
      copyFileSync(from, join(folder, basename(from)))
      return `export default __leadlineBeside("${basename(from)}").href`
    },
  },
  async transform(code, id) {
    if (!code.includes('new Worker(')) return null
    let made = code
    for (const [whole, path] of code.matchAll(WORKER)) {
      const worker = await this.resolve(path!, id)
      if (!worker) this.error(`no worker ${path} for ${id}`)
      found(worker.id)
      made = made.replace(whole, `new Worker(__leadlineBeside("${workerFile(worker.id)}")`)
    }
    return { code: made, map: null }
  },
  // Vite's helper has a name that the build of a host which is Vite's too would declare once more.
  generateBundle(_, bundle) {
    for (const chunk of Object.values(bundle))
      if (chunk.type === 'chunk') chunk.code = chunk.code.replaceAll('__vitePreload', '__load')
  },
  renderChunk: (code) => ({
    code: code.replace(PLACE, (_, name: string) => `new URL('./${name}', import.meta.url)`),
    map: null,
  }),
})

export const workerFile = (path: string): string => `${basename(path).replace(/\.\w+$/, '')}.js`
