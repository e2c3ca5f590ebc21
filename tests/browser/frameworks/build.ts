/** The small pages of this folder as a site of their own would bundle them, each with its framework as published. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { build } from 'vite'

export const FRAMEWORKS = ['react', 'vue', 'preact', 'plain'] as const

/** A folder with a page for each: `react.html?shop=…`. The element is defined before the page's own code runs, or with `late` after it. */
export async function buildFrameworks(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'leadline-frameworks-'))
  const here = resolve('tests/browser/frameworks')
  await build({
    configFile: false,
    root: here,
    logLevel: 'error',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir: join(folder, 'frameworks'),
      emptyOutDir: false,
      rolldownOptions: {
        input: Object.fromEntries(FRAMEWORKS.map((name) => [name, join(here, `${name}.js`)])),
        output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  })
  writeFileSync(join(folder, 'given.js'), "window.shop = new URLSearchParams(location.search).get('shop')\n")
  for (const name of FRAMEWORKS)
    for (const late of [false, true]) {
      const scripts = ['./leadline.js', `./frameworks/${name}.js`]
      writeFileSync(
        join(folder, `${name}${late ? '-late' : ''}.html`),
        `<!doctype html><meta charset="utf-8"><link rel="icon" href="./icon.svg"><title>${name}</title><div id="app"></div>` +
          ['./given.js', ...(late ? scripts.reverse() : scripts)]
            .map((from) => `<script type="module" src="${from}"></script>`)
            .join(''),
      )
    }
  return folder
}
