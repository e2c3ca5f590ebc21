/**
 * The guide's tables and plots, from the engine's own numbers: into the marked places of `public/guide/*.md`, and SVG beside them. Run by
 * `npm run build:guide`; a test holds them to what the engine says now.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Catalog, Design } from '../../../rules/index.ts'
import { PUSH } from '../../../rules/structure/dock/basic-loads.ts'
import { SOFTENED } from '../../../rules/structure/dock/soften.ts'
import { swayWord } from '../../../rules/structure/strength/index.ts'
import { svg } from './plot.ts'
import {
  BRACE_ALL,
  BRACE_NONE,
  evenDock,
  type Judged,
  judge,
  shopWith,
  worstBrace,
  worstFoot,
  worstLeg,
} from './sweeps.ts'

export const GUIDE = join(dirname(fileURLToPath(import.meta.url)), '../../../public/guide')

const FOOT = 0.3048
const feet = (m: number): string => `${Math.round(m / FOOT)} ft`
const mm = (m: number): string => (m * 1000).toFixed(m < 0.01 ? 1 : 0)
const factor = (n: number | null): string => (n === null ? 'none' : n.toFixed(n < 10 ? 1 : 0))
const percent = (n: number): string => `${(n * 100).toFixed(0)} %`
/** Of a leg in its worst case; where dead load and people alone are past what the frame can be softened by there is no such figure. */
const legUsed = ({ structure }: Judged): string =>
  structure.falls.includes('D+L') ? 'gives way' : percent(worstLeg(structure))
const WORDS = { 'not-felt': 'not felt', felt: 'felt', loose: 'loose' } as const

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string => {
  const wide = head.map((cell, i) => Math.max(cell.length, ...rows.map((row) => row[i]!.length)))
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((c, i) => c.padStart(wide[i]!)).join(' | ')} |`
  return [line(head), `| ${wide.map((n) => `${'-'.repeat(n - 1)}:`).join(' | ')} |`, ...rows.map(line)].join(
    '\n',
  )
}

const DEPTHS = Array.from({ length: 12 }, (_, i) => (i + 2) / 5)

interface Braced {
  readonly depth: number
  readonly none: Judged
  readonly all: Judged
}

const braced = (): Braced[] =>
  DEPTHS.flatMap((depth) => {
    const none = judge(evenDock(depth), BRACE_NONE)
    const all = judge(evenDock(depth), BRACE_ALL)
    return none && all ? [{ depth, none, all }] : []
  })

function whyBraces(sweep: readonly Braced[]): Record<string, string> {
  const across = table(
    ['water', 'leg', 'sway without', '', 'with a brace', ''],
    sweep.map(({ depth, none, all }) => [
      `${depth.toFixed(1)} m`,
      feet(none.leg),
      `${mm(none.structure.swayAcross)} mm`,
      WORDS[swayWord(none.structure.swayAcross, PUSH)],
      all.braced ? `${mm(all.structure.swayAcross)} mm` : 'none fits',
      all.braced ? WORDS[swayWord(all.structure.swayAcross, PUSH)] : '',
    ]),
  )
  const other = table(
    ['water', 'leg', 'sway along, without', 'with', 'buckling, without', 'with', 'leg used, without', 'with'],
    sweep.map(({ depth, none, all }) => [
      `${depth.toFixed(1)} m`,
      feet(none.leg),
      `${mm(none.structure.swayAlong)} mm`,
      all.braced ? `${mm(all.structure.swayAlong)} mm` : '',
      factor(none.structure.buckling),
      all.braced ? factor(all.structure.buckling) : '',
      legUsed(none),
      all.braced ? legUsed(all) : '',
    ]),
  )
  return { 'across.md': across, 'other.md': other }
}

function plot(sweep: readonly Braced[]): string {
  const five = sweep.find(({ none }) => none.leg >= 5 * FOOT - 0.01)!.depth
  const of = (what: (s: Braced) => number | null): (readonly [number, number])[] =>
    sweep.flatMap((s) => {
      const v = what(s)
      return v === null ? [] : [[s.depth, v * 1000] as const]
    })
  const without = of(({ none }) => none.structure.swayAcross)
  const withBrace = of(({ all }) => (all.braced ? all.structure.swayAcross : null))
  const along = of(({ none }) => none.structure.swayAlong)
  return svg({
    title: 'How far a dock gives under a shove of 890 N (200 lb)',
    x: { name: 'water, m (deck 0.45 m over it)', from: 0.4, to: 2.6, step: 0.2 },
    y: { name: 'sway, mm', to: 140, step: 20 },
    lines: [
      {
        name: 'across, no braces',
        color: '#9c2b2b',
        points: without,
        at: Math.floor(without.length / 2),
        up: 12,
      },
      { name: 'across, braced', color: '#0d5c63', points: withBrace, at: withBrace.length - 2, up: 8 },
      { name: 'along', color: '#5b5b8a', dash: '8 4', points: along, at: along.length - 2, up: 8 },
    ],
    limits: [
      { y: (PUSH / 50_000) * 1000, name: 'felt above' },
      { y: (PUSH / 10_000) * 1000, name: 'loose above' },
    ],
    marks: [{ x: five, name: 'legs of 5 ft from here on' }],
  })
}

/** Leg used with other sleeves; under the factor that the frame can be softened by there is no such figure. */
const withSleeves = ({ buckling, legUse }: Judged['structure']['sleeves'][number]): string =>
  legUse === null || (buckling !== null && buckling < SOFTENED) ? 'gives way' : percent(legUse)

function sleeves(): string {
  return table(
    ['water', 'buckling ½', '1', '2', 'leg used ½', '1', '2', 'sway along ½', '1', '2'],
    [0.6, 1, 1.4, 1.8, 2.2, 2.6].flatMap((depth) => {
      const judged = judge(evenDock(depth))
      if (!judged) return []
      const { structure } = judged
      const [half, double] = structure.sleeves
      return [
        [
          `${depth.toFixed(1)} m`,
          factor(half!.buckling),
          factor(structure.buckling),
          factor(double!.buckling),
          withSleeves(half!),
          legUsed(judged),
          withSleeves(double!),
          `${mm(half!.swayAlong)} mm`,
          `${mm(structure.swayAlong)} mm`,
          `${mm(double!.swayAlong)} mm`,
        ],
      ]
    }),
  )
}

/** One input by a fifth less and more; what each verdict becomes, as part of what it was. */
function sensitivity(): string {
  const depth = 1.4
  const dock = { load: 1915, extras: { 'anchor-post': 4 } }
  const inputs: [string, (part: number) => [Design, Catalog?]][] = [
    ['water depth', (p) => [evenDock(depth * p, dock)]],
    ['deck height', (p) => [evenDock(depth, { ...dock, deckHeight: 0.45 * p })]],
    ['people', (p) => [evenDock(depth, { ...dock, load: 1915 * p })]],
    ['wind', (p) => [evenDock(depth, dock, { wind: { speed: 10 * p, fetch: 400 } })]],
    ['fetch', (p) => [evenDock(depth, dock, { wind: { speed: 10, fetch: 400 * p } })]],
    ['wall of the leg', (p) => [evenDock(depth, dock), shopWith((shop) => (shop.stock['pipe-2'].wall *= p))]],
    [
      'sleeve’s stiffness',
      (p) => [evenDock(depth, dock), shopWith((shop) => (shop.sleeve.stiffness = 22_352 * p))],
    ],
    ['sleeve’s slack', (p) => [evenDock(depth, dock), shopWith((shop) => (shop.sleeve.slack *= p))]],
    [
      'wall of the brace',
      (p) => [evenDock(depth, dock), shopWith((shop) => (shop.stock['brace-tube'].wall *= p))],
    ],
    [
      'wall of the rails',
      (p) => [evenDock(depth, dock), shopWith((shop) => (shop.stock['rail-6x2'].wall *= p))],
    ],
    [
      'width of the pads',
      (p) => [evenDock(depth, dock), shopWith((shop) => (shop.pads[0].plate.width *= p))],
    ],
  ]
  const figures = ({ structure }: Judged): number[] => [
    worstLeg(structure),
    worstBrace(structure),
    structure.railUse ?? 0,
    worstFoot(structure),
    structure.slides.push,
    structure.swayAcross,
    structure.swayAlong,
    structure.buckling ?? 0,
  ]
  const base = judge(evenDock(depth, dock))!
  const before = figures(base)
  const rows = inputs.map(([name, make]) => {
    const [less, more] = [0.8, 1.2].map((part) => {
      const judged = judge(...make(part))
      return judged ? figures(judged) : null
    })
    const cell = (i: number): string => {
      const told = (set: number[] | null | undefined): string =>
        set ? `${Math.round((set[i]! / before[i]! - 1) * 100)}` : '–'
      return `${told(less)} / ${told(more)}`.replaceAll('-', '−').replaceAll('−0 ', '0 ').replace(/−0$/, '0')
    }
    return [name, ...before.map((_, i) => cell(i))]
  })
  const unit = [
    percent(before[0]!),
    percent(before[1]!),
    percent(before[2]!),
    `${(before[3]! / 1000).toFixed(0)} kPa`,
    percent(before[4]!),
    `${mm(before[5]!)} mm`,
    `${mm(before[6]!)} mm`,
    factor(before[7]!),
  ]
  return table(
    ['', 'leg', 'brace', 'rail', 'foot', 'sliding', 'sway across', 'sway along', 'buckling'],
    [['as it is', ...unit], ...rows],
  )
}

/** Text of every file of the guide that holds figures, by its name. */
export function guideFiles(): Record<string, string> {
  const sweep = braced()
  const why = whyBraces(sweep)
  const put = (file: string, places: Readonly<Record<string, string>>): string =>
    Object.entries(places).reduce(
      (text, [place, content]) => {
        const pattern = new RegExp(`(<!-- ${place} -->\\n)[\\s\\S]*?(<!-- end -->)`)
        if (!pattern.test(text)) throw new Error(`${file}: no place for ${place}`)
        return text.replace(pattern, (_, open: string, close: string) => `${open}\n${content}\n\n${close}`)
      },
      readFileSync(join(GUIDE, file), 'utf8'),
    )
  return {
    'why-braces.svg': plot(sweep),
    'why-braces.md': put('why-braces.md', { across: why['across.md']!, other: why['other.md']! }),
    'structure.md': put('structure.md', { sleeves: sleeves(), sensitivity: sensitivity() }),
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [name, text] of Object.entries(guideFiles())) writeFileSync(join(GUIDE, name), text)
