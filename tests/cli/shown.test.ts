/** What a file holds is shown by a terminal, never obeyed. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { plainOf } from '../../rules/plain-data.ts'
import { lines } from '../../src/cli/lines.ts'
import { run } from '../../src/cli/run.ts'
import { sheet } from '../../src/cli/sheet.ts'
import { jsonText, visible } from '../../src/documents/files/visible-text.ts'
import { ownFolder } from './support/folder.ts'

const { file } = ownFolder()

/** A window's title, a cleared screen, C1's own escape, delete, a turned line, breaks of four kinds, a tag, half a sign. */
const SIGNS = [
  '\u001b]0;title\u0007',
  '\u001b[2J',
  '\u009b31m',
  '\u007f',
  '\u202Etxt.exe',
  '\u2066',
  '\r\n',
  '\u0085',
  '\u2028',
  '\u2029',
  '\u200b',
  '\u0000',
  '\u{E0041}',
]
const EVIL = SIGNS.join('x')
/** All that a terminal could obey or hide: what is left must be text, with the line ends of the command's own. */
const obeyed = (text: string): string[] => text.match(/[^\P{C}\n\u200C\u200D]|[\u2028\u2029]/gu) ?? []

describe('visible', () => {
  it.each([...SIGNS, '\ud800', 'a\udc00'])('writes out %j', (text) => {
    expect(obeyed(text).length + Number(text.includes('\n'))).toBeGreaterThan(0)
    expect(visible(text)).toMatch(/\\u[0-9a-f]{4}/)
    expect(obeyed(visible(text))).toEqual([])
    expect(JSON.parse(`"${visible(text)}"`)).toBe(text)
  })

  it('leaves what is to be read: letters of any script, joiners, signs of two halves, no-break spaces', () => {
    const text = 'Müller — 木 दे\u200dव می\u200cخواهم 👩\u200d🔧 1\u00a0000\u202f€ C:\\dock'
    expect(visible(text)).toBe(text)
  })

  it('keeps the beginning and the end of a line that nobody could read', () => {
    const [line, rest] = lines([`k${'x'.repeat(3e6)}: not known`]).split('\n')
    expect(line).toMatch(/^kx+ … x+: not known$/)
    expect(line!.length).toBeLessThan(2000)
    expect(rest).toBe('')
  })
})

/** What a file's text is once it is read: nothing in it turns, and what cannot be shown is told. */
const mended = (text: string): string => plainOf(text).value as string

describe('a name, key or value with signs that a terminal obeys', () => {
  const named = () => file('named.json', { ...demoDesign, name: EVIL, [`key ${EVIL}`]: 1 })
  const shop = () => {
    const catalog = structuredClone(demoCatalog)
    return file('shop.json', {
      ...catalog,
      name: EVIL,
      frames: catalog.frames.map((frame) => ({ ...frame, name: `=${EVIL}` })),
    })
  }

  it.each<[string, () => string[]]>([
    ['list', () => ['list', named(), '--catalog', shop()]],
    ['list --json', () => ['list', named(), '--catalog', shop(), '--json']],
    [
      'list --have',
      () => [
        'list',
        file('long.json', { ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } }),
        '--catalog',
        shop(),
        '--have',
        named(),
      ],
    ],
    ['derive', () => ['derive', named(), '--catalog', shop()]],
    ['check', () => ['check', named(), shop()]],
    [
      'a wrong value',
      () => ['derive', file('v.json', { ...demoDesign, site: { ...demoDesign.site, bottom: EVIL } })],
    ],
    [
      'a wrong key',
      () => [
        'derive',
        file('k.json', JSON.stringify(demoDesign).replace('{', `{${JSON.stringify(EVIL)}:{"__proto__":1},`)),
      ],
    ],
    ['what is no JSON', () => ['derive', file('n.json', EVIL)]],
    ['check of what is none', () => ['check', file('n.json', EVIL)]],
    ['a file that is not there', () => ['derive', 'no\u001b[2J\nfile']],
    ['an option', () => ['derive', 'a', '--\u001b[2J\nb']],
    ['a command', () => ['\u001b[2J\nb']],
  ])('%s: shown', (_, args) => {
    const { out, err } = run(args())
    expect(out + err).not.toBe('')
    expect(obeyed(out)).toEqual([])
    expect(obeyed(err)).toEqual([])
    // No line of the file's own making.
    expect(`${out}${err}`).not.toMatch(/^(x|file|b)/m)
  })

  it('of a sheet, in its notices and its figures as JSON; which come back the same', async () => {
    const { bytes, err } = await sheet([named(), '--out', 'x.json', '--what', 'quote'], '2026-05-01')
    const text = Buffer.from(bytes).toString()
    expect([obeyed(text), obeyed(err)]).toEqual([[], []])
    expect(JSON.parse(text).design.name).toBe(mended(EVIL))
    expect(err).toContain('name: letters that cannot be shown')
    expect(err).toMatch(/^\["key .*not known to this version/m)
  })

  it('stays as it is in CSV, a file for others to read, but begins no formula', () => {
    const { out } = run(['list', named(), '--catalog', shop(), '--csv'])
    expect(out).toContain(`'=${mended(EVIL)}`)
  })

  it('is written out in JSON that says the same', () => {
    const value = { [EVIL]: [EVIL, { deep: '\ud800' }] }
    expect(obeyed(jsonText(value))).toEqual([])
    expect(JSON.parse(jsonText(value))).toEqual(value)
  })
})

it.each([
  [100_000, 0],
  [500_000, 2],
])('a file with %i unknown keys floods nobody', (length, expected) => {
  const many = Object.fromEntries(Array.from({ length }, (_, i) => [`k${i}`, 1]))
  const { code, out, err } = run(['check', file('many.json', { ...demoDesign, ...many })])
  expect(code).toBe(expected)
  expect(`${out}${err}`.split('\n').length).toBeLessThan(110)
})
