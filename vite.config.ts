/**
 * Builds the element as an ordinary input, not as a library: one entry of a fixed name, `leadline.js`, that a page names in its
 * script tag, and hashed chunks beside it. Nothing is inlined into it and nothing preloads, so that it runs from any folder
 * under a strict content security policy.
 */
import { rmSync } from 'node:fs'
import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'
import { besideElement } from './src/build/beside-element.ts'
import { fontLicense } from './src/build/font-license.ts'
import { noticeOf, wholeLicenses } from './src/build/notices.ts'
import { offline } from './src/build/offline/plugin.ts'
import { pageWords } from './src/build/page-words.ts'
import { papersAlone } from './src/build/papers-alone.ts'
import { plainImports } from './src/build/plain-imports.ts'
import { screenReact } from './src/build/screen-react.ts'
import { workersOfPage } from './src/build/shared-worker.ts'
import { terseSchemas } from './src/build/terse-schemas.ts'
import { trimDxf } from './src/build/trim-dxf.ts'
import { trimThree } from './src/build/trim-three/plugin.ts'

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
 * What checks a dock, and what is found of it after its frame, comes later, and so does what reads a shop's catalog: these modules are in reach of the first picture by the engine's index
 * alone, which exports the whole engine, and are kept out of its file. So is what writes files: its worker is an entry too.
 */
const LATER =
  /\/rules\/(?:assess-kit|limits|layout\/room|leg-places|catalog\/parse|catalog\/schema|derive|fit|reasons|remedies|design\/patch|papers\/packaging|parts\/(?:braces-tried|ramp-legs)|site\/error|site\/obstacles|site\/waves\/(?:crest|trains|short-crested)|stand|with-structure|checks|clearance|structure|words\/(?:finding-words|structure-words|fit-text|language-(?:file|of)|part-names|en\/(?:findings|fit|obstacles|structure)))|\/src\/assessment\/(?:assessment-worker|assess|slices)\.ts|\/src\/panel\/mending\/mending(?:-worker)?\.ts|\/src\/parameters\/depth-search\/search(?:-worker)?\.ts|\/src\/documents\/files\/|\/geometry\/paper\/paper-of\.ts/

export default defineConfig({
  base: './',
  plugins: [
    terseSchemas,
    react(),
    papersAlone,
    pageWords,
    screenReact(),
    trimThree(),
    trimDxf,
    workersOfPage(),
    plainImports,
    fontLicense('leadline/ROBOTO-LICENSE.txt'),
    wholeLicenses('leadline/THIRD-PARTY.md'),
    clearChunks(),
    offline(),
    besideElement(),
  ],
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: false,
    modulePreload: false,
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    license: { fileName: 'leadline/THIRD-PARTY.md' },
    rolldownOptions: {
      input: { leadline: 'src/element/index.ts' },
      // Importing a module of the engine does nothing by itself: what is not used of it is left out.
      treeshake: {
        moduleSideEffects: (id) =>
          !/\/(?:rules|geometry)\/[^?]*\.(?:ts|json)$|\/robust-predicates\//.test(id),
      },
      preserveEntrySignatures: 'exports-only',
      output: {
        format: 'es',
        // After what makes it small, which takes comments out.
        postBanner: noticeOf,
        entryFileNames: '[name].js',
        chunkFileNames: 'leadline/[name]-[hash].js',
        assetFileNames: 'leadline/[name]-[hash][extname]',
        // All that the first picture needs is one file that can be kept for good; `leadline.js` itself only names it.
        // The scene is one file too, though parts that come later use some of it. Solids are of use without it.
        codeSplitting: {
          groups: [
            { name: 'app', tags: ['$initial'], test: (id) => !LATER.test(id), priority: 3 },
            { name: 'solids', test: /\/geometry\/(?!drawing|export|paper|sheets)/, priority: 2 },
            {
              name: 'clearance',
              test: /\/rules\/clearance\/(?!clashes|obst|hull|ways|leave|boats)/,
              priority: 2,
            },
            // What judges in the frame of an edit, and its words: of use to the page and to its workers.
            {
              name: 'checks',
              test: /\/rules\/(?:assess-kit|limits\/|layout\/room|checks\/(?!structure\/)|words\/finding-words)|\/src\/assessment\/slices/,
              priority: 2,
            },
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
