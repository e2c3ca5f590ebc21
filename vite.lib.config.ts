/** Builds the engine and the terminal for plain Node: `leadline/rules` and the `leadline` command. */
import { defineConfig } from 'vite'

export default defineConfig({
  publicDir: false,
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist/node',
    emptyOutDir: true,
    minify: false,
    rolldownOptions: {
      input: { rules: 'rules/index.ts', cli: 'src/cli/main.ts' },
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'shared/[name].js' },
    },
  },
})
