/** For the build: nothing is preloaded, so a dynamic import is just that. The build's own helper for it would be dead weight at first sight. */
import type { Plugin } from 'vite'

export const plainImports: Plugin = {
  name: 'leadline:plain-imports',
  enforce: 'pre',
  transform: {
    filter: { id: /vite\/preload-helper/ },
    handler: () => 'export const __vitePreload = (load) => load()',
  },
}
