/**
 * For the build: which React draws what. The screen (`src/` but for the scene) needs components, state and events, and is the first thing
 * that a page loads: there `react` is Preact's stand-in for it, an eighth of React's bytes. The scene is drawn by @react-three/fiber,
 * which is built on React's own inside: in `src/scene/` and in packages `react` is React.
 *
 * The two never meet in one tree. The scene is given a host element and the store, and no component, context or element of one is
 * handed to the other. What the screen uses must be in both: types, and tools that know React, still see React.
 */
import { sep } from 'node:path'
import type { Plugin } from 'vite'

const STAND_INS: Readonly<Record<string, string>> = {
  react: 'preact/compat',
  'react/jsx-runtime': 'preact/jsx-runtime',
  'react-dom/client': 'preact/compat/client',
}

/** True for a file whose `react` is Preact's. */
export const isScreen = (file: string): boolean => {
  const path = file.split(sep).join('/')
  return /\/src\/[^?]*\.tsx?$/.test(path) && !/\/(?:node_modules|src\/scene)\//.test(path)
}

export const screenReact = (): Plugin => ({
  name: 'leadline:screen-react',
  enforce: 'pre',
  resolveId: {
    filter: { id: /^react(?:-dom)?(?:\/|$)/ },
    handler(id, importer) {
      if (!importer || !isScreen(importer)) return null
      const standIn = STAND_INS[id]
      if (standIn === undefined) this.error(`${id} has no stand-in for the screen, in ${importer}`)
      return this.resolve(standIn, importer, { skipSelf: true })
    },
  },
})
