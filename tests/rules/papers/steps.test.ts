/** The set-up and autumn sheets: every piece of the dock is put once, each section, leg, brace and joint where it belongs, in the order of work. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  deriveKit,
  english,
  projectOf,
  wordsOf,
} from '../../../rules/index.ts'
import {
  autumn,
  PAPERS,
  type Saying,
  type Step,
  type Steps,
  sentence,
  steps,
  type Work,
} from '../../../rules/papers.ts'
import { anyCase, parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { groupBy } from '../../support/laws/law.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_002)
const RUNS = runs(250)

const words = [wordsOf(PAPERS, english('imperial')), wordsOf(PAPERS, english('metric'))]
const seen = { docks: 0, sections: 0, braced: 0, across: 0, ties: 0, hinges: 0, empty: 0, heavy: 0 }

const sayingsOf = ({ title, lines, lift, loose, tools }: Step): Saying[] => [
  title,
  ...lines.map(({ say }) => say),
  ...(lift ? [lift.say] : []),
  ...loose,
  ...tools.map(({ say }) => say),
]

/** Words of a sentence that look like an id of a section, leg, pair or joint. */
const idsIn = (text: string): string[] =>
  text.match(/\b[sh]\d+(\.(start|end)(\.(left|right))?)?(~[sh]\d+(\.(start|end)\.(left|right))?)?/g) ?? []

function faults(sheet: Steps, dock: Dock, catalog: Catalog): string[] {
  const out: string[] = []
  const say = (wrong: boolean, text: string): void => {
    if (wrong) out.push(`${sheet.season}: ${text}`)
  }
  const lines = sheet.steps.flatMap((step) => step.lines.map((line) => ({ ...line, step })))

  // Every piece once: the lines together are the parts list, spares left out.
  const counts = new Map<string, number>()
  for (const { kind, code, count } of lines.flatMap(({ parts }) => parts))
    counts.set(`${kind} ${code}`, (counts.get(`${kind} ${code}`) ?? 0) + count)
  say(counts.size !== dock.parts.length, `${counts.size} kinds of parts, expected ${dock.parts.length}`)
  for (const { kind, code, quantity } of dock.parts)
    say(
      counts.get(`${kind} ${code}`) !== quantity,
      `${code}: ${counts.get(`${kind} ${code}`)}, expected ${quantity}`,
    )

  const named = new Map<string, number>()
  for (const { work, about } of lines)
    for (const id of about) named.set(`${work} ${id}`, (named.get(`${work} ${id}`) ?? 0) + 1)
  const times = (id: string, work: Work): number => named.get(`${work} ${id}`) ?? 0
  const pieces = new Map<string, number>()
  for (const { work, about, parts } of lines)
    for (const id of about)
      for (const { kind, count } of parts)
        pieces.set(`${work} ${id} ${kind}`, (pieces.get(`${work} ${id} ${kind}`) ?? 0) + count)
  const piecesOf = (work: Work, id: string, kind: string): number => pieces.get(`${work} ${id} ${kind}`) ?? 0
  const once = (id: string, work: Work, n: number): void =>
    say(times(id, work) !== n, `${work} of ${id}: ${times(id, work)} times, expected ${n}`)
  const brackets = groupBy(
    dock.placements.filter(({ kind }) => kind === 'hook-bracket'),
    ({ of }) => of,
  )
  const panelled = new Set(
    dock.placements.flatMap(({ kind, section }) => (kind === 'deck-panel' ? [section] : [])),
  )

  for (const { id, role } of dock.sections) {
    once(id, 'frame', 1)
    once(id, 'carry', role === 'ramp' ? 0 : 1)
    once(id, 'lay-ramp', role === 'ramp' ? 1 : 0)
    once(id, 'drop-in', role === 'following' ? 1 : 0)
    once(id, 'panels', panelled.has(id) ? 1 : 0)
  }
  const following = new Set(dock.sections.flatMap(({ id, role }) => (role === 'following' ? [id] : [])))
  for (const { id, section, code } of dock.legs) {
    once(id, 'set-leg', 1)
    once(id, 'legs', code === null ? 0 : 1)
    once(id, 'pads', 1)
    const told = lines.find((line) => line.work === 'set-leg' && line.about.includes(id))?.say.key
    say(told?.endsWith('set-leg-none') !== (code === null), `${id} is told as ${told}`)
    once(id, 'leg-caps', 1)
    once(id, 'set-bolts', 1)
    once(id, 'sound', following.has(section) ? 1 : 0)
    const braced = dock.pairs.some(({ brace, legs }) => brace && legs.includes(id))
    once(id, 'clamp-place', braced ? 1 : 0)
  }
  for (const { id, brace } of dock.pairs) {
    once(id, 'brace-low', brace ? 1 : 0)
    once(id, 'brace-high', brace ? 1 : 0)
    say(times(id, 'clamps') > 0 !== (brace !== null), `clamps of ${id}`)
    const bolts = (work: Work): number => piecesOf(work, id, 'brace-bolt')
    const level = !brace || Math.abs(brace.highZ - brace.lowZ) < 1e-5
    if (!level && catalog.rules.braceBolts.value === 2)
      say(bolts('brace-low') !== 1 || bolts('brace-high') !== 1, `bolts of the brace of ${id}`)
  }
  for (const { id, kind } of dock.joints) {
    const bolts = (brackets.get(id)?.length ?? 0) * catalog.rules.boltsHung.value
    if (bolts > 0)
      say(piecesOf('lock', id, 'hook-bolt') !== bolts, `${id} is locked by other than ${bolts} bolts`)
    once(id, 'hooks', brackets.has(id) ? 1 : 0)
    once(id, 'lock', brackets.has(id) ? 1 : 0)
    once(id, 'drop-in', kind === 'hook' ? 1 : 0)
    once(id, 'tie', kind === 'tie' ? 1 : 0)
    once(id, 'hinge-bar', kind === 'hinge' ? 1 : 0)
    once(id, 'first-pin', kind === 'hinge' && catalog.rules.hingePins.value > 1 ? 1 : 0)
    once(id, 'pins', kind === 'hinge' ? 1 : 0)
    once(id, 'lay-ramp', kind === 'hinge' ? 1 : 0)
  }

  // Nothing is named that the dock has not.
  const ids = new Set([
    ...[...dock.sections, ...dock.legs, ...dock.pairs, ...dock.joints].map(({ id }) => id),
    ...dock.placements.map(({ of }) => of),
  ])
  for (const { id, about } of lines)
    for (const one of about) say(!ids.has(one), `${id} is about ${one}, which is not there`)
  for (const step of sheet.steps)
    for (const text of sayingsOf(step).map((one) => sentence(one, words[0]!)))
      for (const id of idsIn(text)) say(!ids.has(id), `${step.id} names ${id}: ${text}`)
  for (const step of sheet.steps)
    for (const one of sayingsOf(step))
      for (const inWords of words) {
        const text = sentence(one, inWords)
        say(/[{}]|undefined|NaN|null/.test(text) || text.length === 0, `${step.id}: ${text}`)
      }

  // Numbers, hands and tools.
  sheet.steps.forEach((step, i) => {
    for (const { id } of step.lines) say(!id.startsWith(`${step.id}/`), `${id} is in ${step.id}`)
    say(step.number !== i + 1, `${step.id} is number ${step.number}`)
    const { lift } = step
    if (lift) {
      const person = catalog.packing?.person ?? 29
      const section = dock.sections.find(({ id }) => id === lift.section)!
      say(lift.mass !== section.lift, `${step.id}: lifts ${lift.mass}, expected ${section.lift}`)
      say(lift.people * person < lift.mass - 1e-6, `${step.id}: ${lift.people} people for ${lift.mass} kg`)
      say(lift.people < 2, `${step.id}: someone lifts alone`)
      say(lift.people > 2 && (lift.people - 1) * person >= lift.mass, `${step.id}: more people than needed`)
      say(
        (lift.screen !== null) !== (step.phase === 'dry'),
        `${step.id}: a screen for dry land off it, or none on it`,
      )
      const hands = step.crew.reduce((sum, { people }) => sum + people, 0)
      say(hands < lift.people, `${step.id}: ${hands} people to lift with ${lift.people}`)
      if (lift.people > 2) seen.heavy++
    }
    for (const { kind } of step.lines.flatMap(({ parts }) => parts)) {
      const wrench = catalog.hardware.find((bolt) => bolt.kind === kind)?.wrench
      say(
        wrench !== undefined && !step.tools.some(({ size }) => size === wrench),
        `${step.id}: no wrench ${wrench}`,
      )
    }
    const wet = step.crew.some(({ place }) => place === 'water')
    say(wet !== (step.phase === 'first'), `${step.id}: in the water, or not`)
  })
  return out
}

/** Where the order of work is broken. */
function disorder(sheet: Steps, dock: Dock): string[] {
  const out: string[] = []
  const lines = sheet.steps.flatMap((step) => step.lines)
  const places = new Map<string, number>()
  lines.forEach(({ work, about }, i) => {
    for (const id of about) if (!places.has(`${work} ${id}`)) places.set(`${work} ${id}`, i)
  })
  const at = (work: Work, id: string): number => places.get(`${work} ${id}`) ?? -1
  const before = (a: [Work, string], b: [Work, string]): void => {
    const [i, k] = [at(...a), at(...b)]
    if (i >= 0 && k >= 0 && i >= k) out.push(`${a.join(' of ')} comes after ${b.join(' of ')}`)
  }
  const standing = dock.sections.find(({ role }) => role === 'standing')?.id ?? ''
  const pairOf = new Map(
    dock.pairs.flatMap(({ id, brace, legs }) => (brace ? legs.map((leg) => [leg, id] as const) : [])),
  )
  for (const { id, on, role } of dock.sections) {
    const out: Work = role === 'ramp' ? 'lay-ramp' : 'carry'
    before(['frame', id], [out, id])
    before(['carry', standing], [out === 'carry' && id === standing ? 'panels' : out, id])
    if (role !== 'following') continue
    // From the deck: the panels of what carries it lie before it comes.
    before(['panels', on!], ['carry', id])
    before(['carry', id], ['drop-in', id])
    before(['drop-in', id], ['panels', id])
    before(['panels', standing], ['carry', id])
    const ramp = dock.sections.find((section) => section.role === 'ramp')
    if (ramp) before(['lay-ramp', ramp.id], ['carry', id])
  }
  // Standing section, ramp, level, upper brace ends, panels on both.
  for (const { id, role } of dock.sections) {
    if (role === 'following') continue
    if (role === 'ramp') before(['lay-ramp', id], ['level', standing])
    before(['level', standing], ['panels', id])
    for (const { id: pair, legs } of dock.pairs) {
      if (!legs.every((leg) => leg.startsWith(`${standing}.`))) continue
      before(['level', standing], ['brace-high', pair])
      before(['brace-high', pair], ['panels', id])
    }
  }
  for (const { id, section } of dock.legs) {
    before(['set-bolts', id], ['legs', id])
    before(['legs', id], ['pads', id])
    before(['pads', id], ['set-leg', id])
    before(['sound', id], ['set-leg', id])
    before(['set-leg', id], ['drop-in', section])
    // A clamp is tightened where hands reach: from the deck before the leg is let down, in the water when it stands.
    const hung = dock.sections.some((one) => one.id === section && one.role === 'following')
    if (hung) {
      before(['carry', section], ['clamp-place', id])
      before(['clamp-place', id], ['set-leg', id])
    } else before(['set-leg', id], ['clamp-place', id])
    before(['clamps', pairOf.get(id) ?? ''], ['clamp-place', id])
    before(['set-leg', id], ['leg-caps', id])
  }
  for (const { id, legs, brace } of dock.pairs) {
    if (!brace) continue
    before(['clamps', id], ['pads', brace.low])
    before(['brace-low', id], ['brace-high', id])
    // When both legs are at height.
    for (const leg of legs) before(['set-leg', leg], ['brace-high', id])
  }
  for (const { id, between, kind } of dock.joints) {
    before(['hooks', id], ['drop-in', id])
    before(['drop-in', id], ['lock', id])
    before(['hinge-bar', id], ['lay-ramp', id])
    before(['first-pin', id], ['lay-ramp', id])
    before(['lay-ramp', id], ['pins', id])
    if (kind === 'tie') for (const section of between) before(['drop-in', section], ['tie', id])
  }
  const last = (work: Work): number => lines.findLastIndex((line) => line.work === work)
  const first = (works: readonly Work[]): number => {
    const i = lines.findIndex((line) => works.includes(line.work))
    return i < 0 ? Number.POSITIVE_INFINITY : i
  }
  if (last('panels') > first(['clips'])) out.push('clips before the last panels')
  if (Math.max(last('clips'), last('extra')) > first(['leg-caps', 'sleeve-caps']))
    out.push('caps before clips')
  return out
}

function check(design: Design, catalog: Catalog): void {
  const dock = deriveAtOnce(design, catalog)
  seen.docks++
  seen.sections += dock.sections.length
  if (dock.sections.length === 0) seen.empty++
  seen.braced += dock.pairs.filter(({ brace }) => brace).length
  seen.across += dock.pairs.filter(({ id, brace }) => brace && id.includes('~')).length
  seen.ties += dock.joints.filter(({ kind }) => kind === 'tie').length
  seen.hinges += dock.joints.filter(({ kind }) => kind === 'hinge').length
  const up = steps(projectOf(design, catalog, dock))
  const down = autumn(projectOf(design, catalog, dock))
  expect([...faults(up, dock, catalog), ...faults(down, dock, catalog), ...disorder(up, dock)]).toEqual([])
  const work = (sheet: Steps): Step[] => sheet.steps.filter(({ phase }) => phase !== 'ready')
  expect(work(down).map(({ id }) => id)).toEqual(
    work(up)
      .map(({ id }) => id)
      .reverse(),
  )
  const linesOf = (sheet: Steps): string[] => work(sheet).flatMap((step) => step.lines.map(({ id }) => id))
  expect(linesOf(down)).toEqual(linesOf(up).reverse())
  expect(new Set(linesOf(up)).size).toBe(linesOf(up).length)
  // What stands after each step grows to the whole dock, and in autumn goes to nothing.
  const stood = [work(up), work(down)].map((all) => [...(all.at(-1)?.standing ?? [])].sort())
  expect(stood).toEqual([[...dock.workOrder].sort(), []])
}

describe(`set-up and autumn (seed ${SEED}, ${RUNS} docks)`, () => {
  it('put and take every piece once, in the order of work, and name nothing that is not there', () => {
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => check(design, catalog)),
      { seed: SEED, numRuns: RUNS },
    )
  })

  it('take a brace between two sections when the later of them is at height', () => {
    const plan = [
      { id: 's1', on: null },
      { id: 's2', on: 's1', edge: 'start', with: 'left', along: 1.415 },
      { id: 's3', on: 's1', edge: 'start', with: 'start', frame: '5x8' },
      { id: 's5', on: 's2', edge: 'right', with: 'start' },
      { id: 's7', on: 's5', edge: 'start', with: 'left', along: 0.076, frame: '4x10' },
    ]
    const soundings = [
      { distance: 0, depth: 0 },
      { distance: 5, depth: 1.2 },
      { distance: 60, depth: 1.3 },
    ]
    const design = parsedDesign({
      format: 'leadline/design',
      version: 1,
      site: { soundings, levels: { low: -0.2, high: 0.2 }, bottom: 'sand' },
      dock: { deckHeight: 0.41, frame: '4x8', start: 23.432, plan },
    })
    const dock = deriveAtOnce(design, demoCatalog)
    const pair = dock.pairs.find(({ id, brace }) => brace && id.includes('~'))
    expect(pair?.id).toBe('s3.start.left~s7.start.right')
    const line = steps(projectOf(design, demoCatalog, dock)).steps.find(({ lines }) =>
      lines.some(({ work, about }) => work === 'brace-high' && about.includes(pair!.id)),
    )
    const later = dock.workOrder.indexOf('s3') > dock.workOrder.indexOf('s7') ? 's3' : 's7'
    expect(line?.id).toBe(`in.${later}`)
    check(design, demoCatalog)
  })

  it('were looked at where it is hard: braces across sections, ties, hinges, heavy sections', () => {
    expect(seen.docks).toBeGreaterThanOrEqual(RUNS)
    expect(seen.braced / seen.docks).toBeGreaterThan(0.5)
    expect(seen.across).toBeGreaterThan(0)
    expect(seen.ties / seen.docks).toBeGreaterThan(0.1)
    expect(seen.hinges / seen.docks).toBeGreaterThan(0.2)
    expect(seen.heavy / seen.docks).toBeGreaterThan(0.1)
  })
})

describe('the demo dock’s sheet', () => {
  const dock = assessKit(deriveKit(demoDesign, demoCatalog))
  const sheet = steps(projectOf(demoDesign, demoCatalog, dock))

  it('goes: shore, standing section, ramp, level, outward, extras, clips, caps', () => {
    expect(sheet.steps.map(({ id }) => id)).toEqual([
      'ready',
      ...['s2', 's1', 's3', 's4', 's5'].map((id) => `dry.${id}`),
      ...['in.s2', 'in.s1', 'level', 'in.s3', 'in.s4', 'in.s5'],
      ...['extras', 'clips', 'caps'],
    ])
  })

  it('is told to be wrong without a step, and with two in the other order', () => {
    const without = { ...sheet, steps: sheet.steps.filter(({ id }) => id !== 'in.s4') }
    expect(faults(without, dock, demoCatalog)).not.toEqual([])
    const swapped = [...sheet.steps]
    const i = swapped.findIndex(({ id }) => id === 'in.s4')
    ;[swapped[i], swapped[i + 1]] = [swapped[i + 1]!, swapped[i]!]
    expect(disorder({ ...sheet, steps: swapped }, dock)).not.toEqual([])
  })

  it('has whoever is in the water together, and warns of what is buried where posts are driven', () => {
    for (const { crew } of sheet.steps)
      for (const { place, people } of crew) if (place === 'water') expect(people).toBeGreaterThanOrEqual(2)
    expect(sheet.steps.find(({ id }) => id === 'extras')!.cautions).toContain('caution-services')
    const { extras: _none, ...plain } = demoDesign.dock
    const bare = { ...demoDesign, dock: { ...plain, extras: {} } }
    const without = steps(projectOf(bare, demoCatalog, assessKit(deriveKit(bare, demoCatalog))))
    expect(without.steps.flatMap(({ cautions }) => cautions)).not.toContain('caution-services')
    expect(without.steps.some(({ id }) => id === 'extras')).toBe(false)
  })

  it('says first that it must not be built, where something forbids it, and in autumn to be out before ice', () => {
    const deep = { ...demoDesign, dock: { ...demoDesign.dock, sections: 40 } }
    const stopped = deriveAtOnce(deep, demoCatalog)
    expect(stopped.findings.some(({ severity }) => severity === 'stop')).toBe(true)
    expect(steps(projectOf(deep, demoCatalog, stopped)).cautions[0]).toBe('caution-stop')
    expect(sheet.cautions).not.toContain('caution-stop')
    expect(autumn(projectOf(demoDesign, demoCatalog, dock)).cautions[0]).toBe('caution-ice')
  })

  it('has in autumn how every leg stands written down before the first bolt is loosened', () => {
    const back = autumn(projectOf(demoDesign, demoCatalog, dock))
    expect(back.steps[0]!.lines.map(({ say }) => say.key)).toContain('down-ready-stood')
    expect(back.steps[0]!.lines.flatMap(({ parts }) => parts)).toEqual([])
    // Nothing later asks for what can only be seen while it stands.
    const later = back.steps.slice(1).flatMap(({ lines }) => lines.map(({ say }) => sentence(say, words[0]!)))
    expect(later.filter((said) => /write down how|how level/.test(said))).toEqual([])
  })

  it('draws the legs of a hung section up before it is carried ashore', () => {
    const back = autumn(projectOf(demoDesign, demoCatalog, dock))
    const step = back.steps.find(({ id }) => id === 'in.s5')!
    const works = step.lines.map(({ work }) => work)
    expect(works.lastIndexOf('set-leg')).toBeLessThan(works.indexOf('carry'))
    expect(works.indexOf('drop-in')).toBeLessThan(works.indexOf('set-leg'))
  })
})

describe('the papers’ words', () => {
  it('tell a first section that begins up the bank by a distance without a sign', () => {
    const upTheBank = { ...demoDesign, dock: { ...demoDesign.dock, ramp: false, start: -0.4 } }
    const dock = deriveAtOnce(upTheBank, demoCatalog)
    const { x } = dock.sections.find(({ role }) => role === 'standing')!
    expect(x).toBeCloseTo(-0.4, 9)
    const said = steps(projectOf(upTheBank, demoCatalog, dock)).steps.flatMap(({ lines }) =>
      lines.map(({ say }) => sentence(say, words[1]!)),
    )
    expect(said.filter((one) => one.includes('0.40 m up the bank'))).toHaveLength(1)
    expect(said.filter((one) => /(^|\s)[-−]\d/.test(one))).toEqual([])
  })

  it('have each line of work for both seasons', async () => {
    const { default: en } = await import('../../../rules/words/en/papers.json')
    const keys = Object.keys(en)
    const only = (season: string): string[] =>
      keys.flatMap((key) =>
        key.startsWith(`${season}-`) && !key.includes('-ready') ? [key.slice(season.length + 1)] : [],
      )
    expect(only('down').sort()).toEqual(only('up').sort())
    expect(groupBy(keys, (key) => key).size).toBe(keys.length)
  })
})
