/** For the build: the papers' fonts go with their license. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Plugin } from 'vite'

/** @param fileName within the output */
export const fontLicense = (fileName: string): Plugin => ({
  name: 'leadline:font-license',
  apply: 'build',
  buildStart() {
    const path = createRequire(import.meta.url).resolve('@expo-google-fonts/roboto/LICENSE_FONT')
    this.emitFile({ type: 'asset', fileName, source: readFileSync(path, 'utf8') })
  },
})
