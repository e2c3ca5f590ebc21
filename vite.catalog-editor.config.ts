/**
 * Builds the catalog editor, one file of a fixed name beside the page's: by itself, so that nothing of it comes into what a dock's page
 * loads. What the schema says of its fields is what the form says: nothing is left out of it here.
 */
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { screenReact } from './src/build/screen-react.ts'

export default defineConfig({
  base: './',
  publicDir: false,
  plugins: [react(), screenReact()],
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: false,
    modulePreload: false,
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    license: { fileName: 'catalog-editor.THIRD-PARTY.md' },
    rolldownOptions: {
      input: { 'catalog-editor': 'src/catalog-editor/index.ts' },
      treeshake: {
        moduleSideEffects: (id) =>
          !/\/(?:rules|geometry)\/[^?]*\.(?:ts|json)$|\/robust-predicates\//.test(id),
      },
      preserveEntrySignatures: 'exports-only',
      output: { format: 'es', entryFileNames: '[name].js', codeSplitting: false },
    },
  },
})
