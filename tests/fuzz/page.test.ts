/** What comes to the page from outside the files: links, patches, pasted tables, typed figures. */

import fc from 'fast-check'
import { deflateSync, strToU8 } from 'fflate'
import { describe } from 'vitest'
import {
  applyPatch,
  type Design,
  demoCatalog,
  demoDesign,
  type PatchOperation,
  parseDesign,
} from '../../rules/index.ts'
import { isLink, linkOf, readLink } from '../../src/autosave/link.ts'
import { isGrid, readPaste } from '../../src/section-strip/paste.ts'
import { parseMass } from '../../src/units/mass.ts'
import { type LengthUnit, parseLength } from '../../src/units/parse.ts'
import { parseSpeed } from '../../src/units/speed.ts'
import { anyCase } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { uncleanIn } from './support/clean.ts'
import { odd, pathsIn } from './support/hostile.ts'
import { dockBroken, parseBroken } from './support/laws.ts'
import { fuzz } from './support/runs.ts'

const ofDesign = (design: Design): string[] => dockBroken(design, demoCatalog, deriveAtOnce)

const PREFIX = '#leadline='
const linkTo = (text: string): string =>
  PREFIX + Buffer.from(deflateSync(strToU8(text))).toString('base64url')
/** What unpacks to a flood, or to a nest that no reader comes out of. */
const BOMBS = ['[', '{"a":', ' '].map((piece) => linkTo(piece.repeat(5e6 / piece.length)))
const CODE = 'ABCxyz019-_=+/% \u00e9\ud800'
const links: fc.Arbitrary<string> = anyCase.chain(({ design }) => {
  const link = linkOf(design) ?? linkOf(demoDesign)!
  const place = fc.integer({ min: PREFIX.length, max: link.length - 1 })
  return fc.oneof(
    fc.constant(link),
    place.map((end) => link.slice(0, end)),
    fc
      .tuple(place, fc.constantFrom(...CODE))
      .map(([i, letter]) => link.slice(0, i) + letter + link.slice(i + 1)),
    fc.tuple(place, place).map(([a, b]) => link.slice(0, a) + link.slice(b)),
    fc.base64String().map((text) => PREFIX + text),
    fc.jsonValue().map((value) => linkTo(JSON.stringify(value))),
    fc.constantFrom(...BOMBS),
    fc.string({ unit: 'binary' }).map((text) => linkTo(JSON.stringify({ ...design, name: text }))),
    fc.string({ unit: 'binary' }),
  )
})

const steps: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(...pathsIn(demoDesign)).map((path) => path.map((key) => `/${key}`).join('')),
  fc.constantFrom(
    '/__proto__/polluted',
    '/constructor/prototype/polluted',
    '/site/__proto__',
    '/site/soundings/-',
    '/site/soundings/01',
    '/site/soundings/1e0',
    '/site/soundings/99',
    '/site/soundings/length',
    '/name/0',
    '/toString',
    'site',
    '/',
    '~2',
    '/site/~1~0~01',
  ),
)
const patches: fc.Arbitrary<() => readonly PatchOperation[]> = fc
  .array(fc.record({ op: fc.constantFrom('add', 'replace', 'remove'), path: steps, value: odd }), {
    minLength: 1,
    maxLength: 3,
  })
  .map((list) => () => list.map(({ op, path, value }) => ({ op, path, value: value() })) as PatchOperation[])

function patchBroken(patch: readonly PatchOperation[]): { broken: string[]; made: Design | null } {
  const before = JSON.stringify(demoDesign)
  const broken: string[] = []
  let made: Design | null = null
  try {
    made = applyPatch(demoDesign, patch)
  } catch (error) {
    if (!(error instanceof Error) || !error.message.startsWith('applyPatch: '))
      broken.push(`threw ${String(error)}`)
  }
  if (JSON.stringify(demoDesign) !== before) broken.push('the design that was patched is another')
  if ('polluted' in {}) broken.push('every object has a key more')
  return { broken, made }
}

const PIECES = [
  ' ',
  '\t',
  '\n',
  ';',
  ',',
  '.',
  '-',
  '+',
  '"',
  "'",
  '′',
  '½',
  '1',
  '0',
  '12',
  '999',
  '1/2',
  '1/0',
  '0/0',
  'ft',
  'in',
  'm',
  'cm',
  'km',
  'mi',
  'e5',
  '1e9',
  '9'.repeat(310),
  '٣',
  '\ud800',
  '\u202e',
  'depth',
  'mph',
  'kg',
  't',
  'NaN',
  'Infinity',
  '(',
  '\\',
]
const typed = fc.oneof(
  fc.constantFrom(
    "7'2",
    '86"',
    '7.2ft',
    '210 cm',
    '2m10',
    '7½',
    '-0',
    "-0' 0",
    '12',
    '-3,5',
    '2000 lb',
    '22 mph',
    '10',
  ),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 8 }).map((list) => list.join('')),
  fc.string({ unit: 'binary' }),
)
const UNITS: readonly LengthUnit[] = ['ft', 'in', 'mi', 'm', 'cm', 'mm', 'km']

describe('the page', () => {
  fuzz(
    'links that were damaged',
    links,
    (link, tally) => [
      ...parseBroken(readLink, link, tally, ofDesign, parseDesign),
      ...(isLink(link) || !readLink(link).ok ? [] : ['a design of no link']),
    ],
    { taken: 0.1, refused: 0.4 },
  )

  fuzz(
    'patches',
    patches,
    (make, tally) => {
      const { broken, made } = patchBroken(make())
      if (made === null) {
        tally.refused++
        return broken
      }
      return [...broken, ...parseBroken(parseDesign, made, tally, ofDesign)]
    },
    { taken: 0.05, refused: 0.3 },
  )

  fuzz(
    'pasted tables',
    fc
      .array(typed, { maxLength: 6 })
      .chain((cells) => fc.constantFrom('\t', '\n', ';', ', ', '\r\n').map((mark) => cells.join(mark))),
    (text, tally) => {
      const rows = readPaste(text, 'ft')
      const cells = rows.flatMap(({ distance, depth }) => [distance, depth])
      if (cells.some(({ meters }) => meters !== null)) tally.taken++
      else tally.refused++
      isGrid(text)
      return [
        ...cells.flatMap(({ meters, fault }) => [
          ...uncleanIn(meters),
          ...((meters === null) === (fault === null) ? ['neither a length nor a fault, or both'] : []),
        ]),
        ...(rows.length > text.split(/[\r\n]/).length ? ['more rows than lines'] : []),
      ]
    },
    { taken: 0.15, refused: 0.15 },
  )

  fuzz(
    'typed figures',
    fc.tuple(typed, fc.constantFrom(...UNITS), fc.constantFrom('metric', 'imperial')),
    ([text, bare, units], tally) => {
      const length = parseLength(text, bare)
      const figures = [length.ok ? length.meters : null, parseMass(text, units), parseSpeed(text, units)]
      if (figures.some((figure) => figure !== null)) tally.taken++
      else tally.refused++
      return uncleanIn(figures)
    },
    { taken: 0.05, refused: 0.2 },
  )
})
