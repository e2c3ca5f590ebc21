/**
 * For the build: a worker made of the page's own chunks. Vite would build each worker by itself, with all of the engine in it once more;
 * as an entry of the page's build it brings only what is its own.
 */
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'

/** `new Worker(new URL('./name.ts', import.meta.url)`, as it stands in our sources. */
const WORKER = /new Worker\(\s*new URL\(\s*'(\.[^']+)',\s*import\.meta\.url\s*,?\s*\)/g

/** A page may ask for addresses of scripts that a policy has passed. */
const TRUSTED = fileURLToPath(new URL('../platform/trusted-url.ts', import.meta.url))

export const workersOfPage = (): Plugin => ({
  name: 'leadline:workers-of-page',
  apply: 'build',
  // Before Vite's own way with workers sees it.
  enforce: 'pre',
  async transform(code, id) {
    if (!code.includes('new Worker(')) return null
    let made = code
    for (const [whole, path] of code.matchAll(WORKER)) {
      const worker = await this.resolve(path!, id)
      if (!worker) this.error(`no worker ${path} for ${id}`)
      const name = path!.replace(/^.*\/|\.\w+$/g, '')
      const file = this.emitFile({ type: 'chunk', id: worker.id, name, preserveSignature: false })
      made = made.replace(whole, `new Worker(__leadlineTrusted(import.meta.ROLLUP_FILE_URL_${file})`)
    }
    if (made !== code)
      made += `\nimport { trustedScript as __leadlineTrusted } from ${JSON.stringify(TRUSTED)}\n`
    return { code: made, map: null }
  },
})
