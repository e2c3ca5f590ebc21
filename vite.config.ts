/**
 * Builds the element as an ordinary input, not as a library: one entry of a fixed name, `leadline.js`, that a page names in its
 * script tag, and hashed chunks beside it. Nothing is inlined into it and nothing preloads, so that it runs from any folder
 * under a strict content security policy.
 */
import { rmSync } from 'node:fs'
import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'
import { screenReact } from './src/build/screen-react.ts'
import { workersOfPage } from './src/build/shared-worker.ts'
import { trimThree } from './src/build/trim-three/plugin.ts'

/** Nothing is preloaded, so a dynamic import is just that: the build's own helper for it would be dead weight at first sight. */
const plainImports: Plugin = {
  name: 'leadline:plain-imports',
  enforce: 'pre',
  transform: {
    filter: { id: /vite\/preload-helper/ },
    handler: () => 'export const __vitePreload = (load) => load()',
  },
}

/** What the PDF library would load to draw web pages, which no paper asks for: left out, with the 100 kB that it weighs. */
const NOT_ASKED = /^(?:html2canvas|dompurify|canvg)$/
const NOT_ASKED_FOR = '\0not-asked-for'
const papersAlone: Plugin = {
  name: 'leadline:papers-alone',
  enforce: 'pre',
  resolveId: { filter: { id: NOT_ASKED }, handler: () => NOT_ASKED_FOR },
  load: { filter: { id: new RegExp(NOT_ASKED_FOR) }, handler: () => 'export default null' },
}

/** What an earlier build left of hashed chunks goes; the library that is built beside the page stays. */
const clearChunks = (): Plugin => {
  let chunks = ''
  return {
    name: 'leadline:clear-chunks',
    apply: 'build',
    configResolved: ({ root, build }) => {
      chunks = resolve(root, build.outDir, 'leadline')
    },
    buildStart: () => rmSync(chunks, { recursive: true, force: true }),
  }
}

/**
 * What is found of a dock after its frame is worked out later and beside the page: these modules are in reach of the first picture by the engine's index
 * alone, which exports the whole engine, and are kept out of its file. So is what writes files: its worker is an entry too.
 */
const LATER =
  /\/rules\/(?:derive|remedies|stand|with-structure|clearance|structure|checks\/structure|words\/(?:structure-words|language-file|en\/structure))|\/src\/assessment\/(?:assessment-worker|assess)\.ts|\/src\/panel\/mending\/mending(?:-worker)?\.ts|\/src\/documents\/files\//

export default defineConfig({
  base: './',
  plugins: [react(), papersAlone, screenReact(), trimThree(), workersOfPage(), plainImports, clearChunks()],
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: false,
    modulePreload: false,
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    rolldownOptions: {
      input: { leadline: 'src/element/index.ts' },
      // Importing a module of the engine does nothing by itself: what is not used of it is left out.
      treeshake: { moduleSideEffects: (id) => !/\/(?:rules|geometry)\/[^?]*\.(?:ts|json)$/.test(id) },
      preserveEntrySignatures: 'exports-only',
      output: {
        format: 'es',
        entryFileNames: '[name].js',
        chunkFileNames: 'leadline/[name]-[hash].js',
        assetFileNames: 'leadline/[name]-[hash][extname]',
        // All that the first picture needs is one file that can be kept for good; `leadline.js` itself only names it.
        // The scene is one file too, though parts that come later use some of it. Solids are of use without it.
        codeSplitting: {
          groups: [
            { name: 'app', tags: ['$initial'], test: (id) => !LATER.test(id), priority: 3 },
            { name: 'solids', test: /\/geometry\/(?!drawing|export|paper|sheets)/, priority: 2 },
            { name: 'clearance', test: /\/rules\/clearance\/(?!clashes)/, priority: 2 },
            { name: 'scene', test: /\/src\/scene\/scene\.tsx$/, priority: 1 },
            // Of use to several chunks that come when they are asked for.
            { name: 'zip', test: /\/node_modules\/fflate\//, priority: 0 },
            { name: 'qr', test: /\/node_modules\/uqr\//, priority: 0 },
          ],
        },
      },
    },
  },
})
