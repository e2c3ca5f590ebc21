/**
 * Builds the element as an ordinary input, not as a library: one entry of a fixed name, `leadline.js`, that a page names in its
 * script tag, and hashed chunks beside it. Nothing is inlined into it and nothing preloads, so that it runs from any folder
 * under a strict content security policy.
 */
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

export default defineConfig({
  base: './',
  plugins: [react()],
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: true,
    modulePreload: false,
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    rolldownOptions: {
      input: { leadline: 'src/element/index.ts' },
      preserveEntrySignatures: 'exports-only',
      output: {
        format: 'es',
        entryFileNames: '[name].js',
        chunkFileNames: 'leadline/[name]-[hash].js',
        assetFileNames: 'leadline/[name]-[hash][extname]',
      },
    },
  },
})
