/**
 * A language as a dock's page loads it: without the words of the catalog editor, which is a script of its own and reads the whole file, as it
 * lies in `words/`.
 */
import type { Plugin } from 'vite'

const EDITORS = ['catalog-editor', 'catalog-hints'] as const

export function withoutEditorWords(json: string): string {
  const file = JSON.parse(json) as { words: Record<string, unknown> }
  const words = Object.fromEntries(
    Object.entries(file.words).filter(([subject]) => !EDITORS.some((one) => one === subject)),
  )
  return JSON.stringify({ ...file, words })
}

export const pageWords: Plugin = {
  name: 'leadline:page-words',
  apply: 'build',
  enforce: 'pre',
  transform: (code, id) =>
    /\/public\/words\/[\w-]+\.json$/.test(id) ? { code: withoutEditorWords(code), map: null } : null,
}
