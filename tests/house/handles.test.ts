/** One place on the screen reaches another by a typed handle (`src/ui/handles.ts`), never by looking for a class or a tag. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const SRC = join(import.meta.dirname, '../../src')

/**
 * May look something up: the element, where it stands among others on the page; its methods, the drawing that they make a picture of; the frame's
 * page, its element and the origins it names; the demo page's script, that page's sentences; a dialog, its own fields.
 */
const MAY = [
  'element/leadline-dock.ts',
  'element/methods.ts',
  'frame/page.ts',
  'offline/page.ts',
  'quote-request/request-dialog.tsx',
]

it('Nothing on the screen is looked up by a selector', () => {
  const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file))
  expect(files.length).toBeGreaterThan(100)
  const looks = files.filter((file) =>
    /\.(querySelector(All)?|getElement\w+)\b/.test(readFileSync(join(SRC, file), 'utf8')),
  )
  expect(looks.sort()).toEqual(MAY)
})
