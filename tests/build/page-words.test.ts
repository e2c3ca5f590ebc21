/** A page loads no words of the catalog editor, and all others as they are. */
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { withoutEditorWords } from '../../src/build/page-words.ts'

it('leaves the editor’s words out of a language, and nothing else', () => {
  const text = readFileSync('public/words/de.json', 'utf8')
  const { words, ...file } = JSON.parse(text)
  const { 'catalog-editor': editor, 'catalog-hints': hints, ...others } = words
  expect(Object.keys(editor).length + Object.keys(hints).length).toBeGreaterThan(500)
  expect(JSON.parse(withoutEditorWords(text))).toEqual({ ...file, words: others })
})
