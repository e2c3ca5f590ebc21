/** The screens of the day in the order of work, and what their lines say: the demo dock by hand. */
import { expect, it } from 'vitest'
import { type DayState, dayAt, edgeToday } from '../../rules/at-lake/index.ts'
import { demoDesign, english, formatLength, wordsOf } from '../../rules/index.ts'
import { autumn } from '../../rules/papers/steps/set-up.ts'
import { seasonState } from '../../rules/record/index.ts'
import { extraLines } from '../../src/at-lake/extra-lines.ts'
import type { Begun } from '../../src/at-lake/lake.ts'
import { lineText } from '../../src/at-lake/line-text.ts'
import { outStages, type Stage, setUpStages } from '../../src/at-lake/stages.ts'
import { WATERSIDE } from '../../src/words/waterside.ts'
import { begun, phone, projectFor, write } from '../support/records.ts'

const project = projectFor(demoDesign)
const dayOn = dayAt(project)
const record = begun()
const reader = english('imperial')
const say = { t: wordsOf(WATERSIDE, reader), reader, ...reader } as unknown as Parameters<typeof lineText>[3]
const length = (meters: number): string => formatLength(meters, reader)
const STATE: DayState = { level: 0, from: 'mark', keep: 'planned', measured: [], set: [] }

function at(more: Partial<DayState> = {}, over: Partial<Begun> = {}): Begun {
  const day = dayOn({ ...STATE, ...more })
  const known = { record, project, day, season: '2026', state: seasonState(record, '2026'), last: null }
  return { ...known, ...over } as unknown as Begun
}

const upStages = (now: Begun, known = false): Stage[] => setUpStages(now.day!.order, () => known)
const downStages = (): Stage[] =>
  outStages(
    autumn(project).steps.map((step) => ({ step, tighten: {}, legs: [] })),
    record,
  )
const lineIn = (stages: readonly Stage[], key: string, id: string) =>
  stages
    .flatMap((stage) => (stage.kind === 'step' && stage.key === key ? stage.lines : []))
    .find((line) => line.id === id)!

it('measures, carries out, sets, and only then hangs; the clamp of a hung leg stands on its own screen', () => {
  const stages = upStages(at())
  const of3 = stages.filter(({ key }) => /s3\.end|in\.s3/.test(key)).map(({ key }) => key)
  expect(of3).toEqual([
    'measure/s3.end.left',
    'measure/s3.end.right',
    'in.s3/carry',
    'set/s3.end.left',
    'set/s3.end.right',
    'in.s3',
  ])
  const last = stages.find(({ key }) => key === 'in.s3')!
  const works = last.kind === 'step' ? last.lines.map(({ work }) => work) : []
  expect(works).toEqual(['brace-high', 'drop-in', 'lock', 'panels'])
})

it('asks for buried lines once, before anybody begins', () => {
  const ready = upStages(at()).find(({ key }) => key === 'ready')!
  const keys = ready.kind === 'step' ? ready.lines.map(({ say: { key } }) => key) : []
  expect(keys).toContain('up-ready-sort')
  expect(keys).not.toContain('up-ready-services')
})

it('lays out cartons the first year, and what lay in the boathouse after that', () => {
  const stages = upStages(at())
  const line = lineIn(stages, 'ready', 'ready/up-ready-sort')
  expect(lineText(line, 'up', at(), say)).toContain('packing list')
  const again = at({}, { last: seasonState(record, '2025') })
  expect(lineText(line, 'up', again, say)).not.toContain('carton')
})

it('takes a section out in the papers’ order: unhung, its legs drawn up at the edge, and then onto the deck', () => {
  const stages = downStages()
  const step = stages.find(({ key }) => key === 'out/in.s5')!
  const works = step.kind === 'step' ? step.lines.map(({ work }) => work) : []
  const papers = autumn(project)
    .steps.find(({ id }) => id === 'in.s5')!
    .lines.map(({ work }) => work)
  expect(works).toEqual(papers.filter((work) => work !== 'sound'))
  expect(works.indexOf('set-leg')).toBeGreaterThan(works.indexOf('drop-in'))
  expect(works.lastIndexOf('set-leg')).toBeLessThan(works.indexOf('carry'))
  const now = at()
  const said = (work: string) =>
    lineText(
      step.kind === 'step' ? step.lines.find((line) => line.work === work)! : never(),
      'down',
      now,
      say,
    )
  expect(said('drop-in')).toContain('only until its legs are at the edge')
  expect(said('carry')).toContain('Its legs are drawn up')
})

function never(): never {
  throw new Error('no such line')
}

it('sees in autumn how every leg stands before anything is loosened, and tells each leg as it was set', () => {
  const stages = downStages()
  const first = stages.find(({ kind }) => kind === 'step')!
  const keys = first.kind === 'step' ? first.lines.map(({ say: { key } }) => key) : []
  expect(keys).toContain('down-ready-stood')
  const on = phone(record, 'phone-b')
  write(on, { kind: 'level', level: 0, from: 'survey', keep: 'planned' }, '2026')
  const leg = 's4.end.left'
  write(
    on,
    { kind: 'set', leg, stock: 'leg-6', height: 1.5, frame: 1.4, level: 0, keep: 'planned', how: 'measured' },
    '2026',
  )
  const now = at({}, { record: on.record, state: seasonState(on.record, '2026') })
  const line = lineIn(stages, 'out/in.s4', `in.s4/set-leg/${leg}`)
  expect(lineText(line, 'down', now, say)).toContain(`Leg 7 stands ${length(1.4)} to the frame`)
})

it('says on the shore where clamps and frame tops come: about, by the plan, and for certain by last year', () => {
  const now = at()
  const clamps = lineIn(upStages(now), 'dry.s3', 'dry.s3/clamps')
  const { brace, legs } = project.dock.pairs.find(({ id }) => id === 's3.end')!
  const bed = (id: string): number => project.dock.legs.find((leg) => leg.id === id)!.bed
  const said = lineText(clamps, 'up', now, say)
  expect(said).toContain('about')
  for (const leg of legs) {
    const up = (leg === brace!.low ? brace!.lowZ : brace!.highZ) - bed(leg)
    expect(said).toContain(length(up))
  }
  const known = lineText(clamps, 'up', at({}, { last: seasonState(record, '2025') }), say)
  expect(known).toContain('Mark their places')
  expect(known).not.toContain('about')
})

it('says plainly that the brace is turned round, in spring and in autumn', () => {
  // Leg 5 was planned to have the low end; with leg 6 a hand deeper the low end goes there.
  const depth = (leg: string): number => -project.dock.legs.find(({ id }) => id === leg)!.bed
  const [a, b] = ['s3.end.left', 's3.end.right'] as const
  const { brace } = project.dock.pairs.find(({ id }) => id === 's3.end')!
  expect(brace!.low).toBe(a)
  const how = 'measured' as const
  const now = at({
    measured: [
      { leg: a, depth: depth(a), how },
      { leg: b, depth: depth(b) + 0.08, how },
    ],
  })
  const legNow = now.day!.stations.flatMap(({ legs }) => legs).find(({ leg }) => leg === b)!
  expect(legNow.brace).toMatchObject({ fits: 'fits', turnedFrom: a })
  const line = lineIn(upStages(now), 'dry.s3', 'dry.s3/brace-low/s3.end')
  expect(lineText(line, 'up', now, say)).toContain('its low end is on leg 6 now, not on leg 5')
  const back = lineIn(downStages(), 'out/dry.s3', 'dry.s3/brace-low/s3.end')
  expect(lineText(back, 'down', now, say)).toContain('off leg 6: its low end stood there, not on leg 5')
  expect(lineText(line, 'up', at(), say)).not.toContain('round')
})

it('tells extras alike in one line, each with its place, posts with their depth', () => {
  const now = at()
  const stage = upStages(now).find(({ key }) => key === 'extras')!
  const lines = extraLines(stage.kind === 'step' ? stage.lines : [], 'up', now, say)
  const names = new Set(project.dock.placements.flatMap(({ kind }) => (kind === 'bumper' ? ['bumper'] : [])))
  expect(names.size).toBe(1)
  const bumpers = project.dock.placements.filter(({ kind }) => kind === 'bumper').length
  const of = lines.filter((line) => /bumper/i.test(line))
  expect(of).toHaveLength(1)
  expect(of[0]).toMatch(new RegExp(`^${bumpers} x `))
  expect(of[0]!.match(/edge, .* from its shore end/g)).not.toBeNull()
  const post = lines.find((line) => line.includes('turned in'))!
  const extra = project.catalog.extras.find(({ place }) => place === 'post')!
  expect(post).toContain(extra.place === 'post' ? `the top ${length(extra.above)} over the deck` : 'never')
})

it('finds today’s water’s edge: on a bottom that falls 1 in 10 the water 0.2 lower meets it 2 m farther out', () => {
  const slope = { bedAt: (x: number): number => -x / 10, lineY: 0 }
  expect(edgeToday(slope, -0.2)).toBeCloseTo(2, 6)
  expect(edgeToday(slope, 0.3)).toBeCloseTo(-3, 6)
  expect(edgeToday(slope, 0)).toBeCloseTo(0, 6)
  expect(edgeToday({ bedAt: () => -1, lineY: 0 }, 0)).toBeNull()
})

it('says of a section how far from today’s water’s edge it stands', () => {
  const now = at({ level: -0.178 })
  const line = lineIn(upStages(now), 'in.s2/carry', 'in.s2/carry')
  const x = project.dock.sections.find(({ id }) => id === 's2')!.x
  const edge = edgeToday(project.bed, -0.178)!
  expect(edge).toBeGreaterThan(0)
  expect(lineText(line, 'up', now, say)).toContain(length(Math.abs(x - edge)))
})
