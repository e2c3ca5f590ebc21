/**
 * The level check against docks that are let down on their feet: stiff plates, each on the edge that carries it, as low as their feet allow
 * (least weight times height, by HiGHS). Fewest moves: every choice of legs that are left, each asked of HiGHS. Plates are worked out here
 * anew, from where the sections of the Dock lie.
 */
import type { LegacyHighs } from 'highs'
import { beforeAll, describe, expect, it } from 'vitest'
import { levelCheck } from '../../../rules/at-lake/index.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  projectOf,
  publishKit,
} from '../../../rules/index.ts'
import { drawn, normal } from './support/drawn.ts'
import { least, solver, sum } from './support/highs.ts'

let highs: LegacyHighs
beforeAll(async () => {
  highs = await solver()
})

const TOLERANCE = 0.003

const designOf = (dock: Partial<Design['dock']>): Design => ({
  ...demoDesign,
  dock: { ...demoDesign.dock, ...dock, extras: {} },
})
const projectFor = (design: Design) =>
  projectOf(design, demoCatalog, publishKit(deriveKit(design, demoCatalog)))

type Project = ReturnType<typeof projectFor>

/** Height of the deck at a place as a sum: h, slopes sx and sy of the standing section, a bend for each other one. */
function platesOf({ dock, catalog }: Project) {
  const sections = dock.sections.filter(({ role }) => role !== 'ramp')
  const root = sections.find(({ role }) => role === 'standing')!
  const gap = catalog.rules.jointGap.value
  const terms = (id: string, x: number, y: number): [number, string][] => {
    const out: [number, string][] = [
      [1, 'h'],
      [x - root.x, 'sx'],
      [y - root.y, 'sy'],
    ]
    for (let one = sections.find((s) => s.id === id)!; one.id !== root.id; ) {
      const turn = (one.heading * Math.PI) / 180
      out.push([(x - one.x) * Math.cos(turn) + (y - one.y) * Math.sin(turn) + gap, `b_${one.id}`])
      one = sections.find((s) => s.id === one.on)!
    }
    return out
  }
  const corners = sections.flatMap((s) => {
    const turn = (s.heading * Math.PI) / 180
    const [c, n] = [Math.cos(turn), Math.sin(turn)]
    return [
      [0, 1],
      [0, -1],
      [1, 1],
      [1, -1],
    ].map(([a, b]) => {
      const [along, across] = [a! * s.length, (b! * s.width) / 2]
      return terms(s.id, s.x + c * along - n * across, s.y + n * along + c * across)
    })
  })
  const legs = dock.legs.map((leg) => ({ id: leg.id, terms: terms(leg.section, leg.x, leg.y) }))
  const free = ['h', 'sx', 'sy', ...sections.filter((s) => s !== root).map((s) => `b_${s.id}`)]
  return { corners, legs, free }
}

type Plates = ReturnType<typeof platesOf>

/** As low as the feet allow. */
function letDown({ corners, legs, free }: Plates, feet: ReadonlyMap<string, number>) {
  const weight = new Map<string, number>()
  for (const corner of corners)
    for (const [factor, name] of corner) weight.set(name, (weight.get(name) ?? 0) + factor)
  const found = least(highs, {
    objective: sum([...weight].map(([name, factor]) => [factor, name] as const)),
    rows: legs.flatMap(({ id, terms }) => {
      const foot = feet.get(id)
      return foot === undefined ? [] : [`${sum(terms)} >= ${foot.toFixed(9)}`]
    }),
    free,
  })!
  return (terms: readonly (readonly [number, string])[]): number =>
    terms.reduce((all, [factor, name]) => all + factor * found.of(name), 0)
}

/** Can these legs be left while all corners come within the tolerance of one height? */
function canLeave(
  { corners, legs, free }: Plates,
  heights: ReadonlyMap<string, number>,
  left: readonly string[],
) {
  return (
    least(highs, {
      objective: '0 h',
      rows: [
        ...corners.flatMap((corner) => [
          `${sum([...corner, [-1, 'c']])} <= ${TOLERANCE}`,
          `${sum([...corner, [-1, 'c']])} >= -${TOLERANCE}`,
        ]),
        ...legs
          .filter(({ id }) => left.includes(id))
          .map(({ id, terms }) => `${sum(terms)} = ${heights.get(id)!.toFixed(9)}`),
      ],
      free: [...free, 'c'],
    }) !== null
  )
}

function mostLeft(plates: Plates, heights: ReadonlyMap<string, number>, legs: readonly string[]): number {
  for (let n = legs.length; n > 0; n--)
    for (const left of choices(legs, n)) if (canLeave(plates, heights, left)) return n
  return 0
}

function choices<T>(list: readonly T[], n: number): T[][] {
  if (n === 0) return [[]]
  return list.flatMap((one, i) => choices(list.slice(i + 1), n - 1).map((rest) => [one, ...rest]))
}

const DOCKS: readonly [name: string, design: Design, times: number, off: number][] = [
  ['one section', designOf({ sections: 2 }), 7, 0.012],
  ['two sections', designOf({ sections: 3 }), 5, 0.006],
  ['three sections, feet far off', designOf({ sections: 4 }), 4, 0.015],
  ['three sections, feet little off', designOf({ sections: 4 }), 4, 0.005],
  ['a head to the left', designOf({ sections: 3, head: { shape: 'left', sections: 1 } }), 4, 0.006],
]

describe('a dock with feet off at random', () => {
  for (const [name, design, times, off] of DOCKS)
    it(`${name}: comes level in the fewest moves`, () => {
      const project = projectFor(design)
      const plates = platesOf(project)
      const random = drawn(7)
      for (let time = 0; time < times; time++) {
        const feet = new Map(plates.legs.map(({ id }) => [id, 0.45 + (2 * random() - 1) * off]))
        const lies = letDown(plates, feet)
        const heights = new Map(plates.legs.map(({ id, terms }) => [id, lies(terms)]))
        const hanging = plates.legs.flatMap(({ id }) => (heights.get(id)! - feet.get(id)! > 1e-6 ? [id] : []))
        const readings = plates.legs.map(({ id }) => ({ leg: id, down: heights.get(id)! }))
        const check = levelCheck({ readings, hanging }, project)
        const carrying = plates.legs.map(({ id }) => id).filter((id) => !hanging.includes(id))
        const most = mostLeft(plates, heights, carrying)
        expect(check.moves.length, `${name} ${time}`).toBe(plates.legs.length - most)
        expect(check.fewest).toBe(true)

        // The crew does as it is told: feet that hang come last, let down until they stand.
        const set = new Map(feet)
        for (const { leg, by } of check.moves) {
          if (by === null) set.delete(leg)
          else set.set(leg, set.get(leg)! + by)
        }
        const now = letDown(plates, set)
        const at = plates.corners.map(now)
        expect(Math.max(...at) - check.over, `${name} ${time}`).toBeLessThan(TOLERANCE + 1e-6)
        expect(check.over - Math.min(...at), `${name} ${time}`).toBeLessThan(TOLERANCE + 1e-6)
      }
    })
})

it('read with an error of 2 mm: comes level within that and the tolerance, over draws', () => {
  const project = projectFor(designOf({ sections: 3 }))
  const plates = platesOf(project)
  const random = drawn(9)
  const deviate = normal(random)
  for (let time = 0; time < 8; time++) {
    // The outer pair 15 mm off: all feet stand.
    const truth = new Map(plates.legs.map(({ id }) => [id, id.startsWith('s3') ? 0.435 : 0.45]))
    const readings = plates.legs.map(({ id }) => ({ leg: id, down: truth.get(id)! + 0.002 * deviate() }))
    const check = levelCheck({ readings }, project)
    const set = new Map(truth)
    for (const { leg, by } of check.moves) set.set(leg, set.get(leg)! + by!)
    const at = plates.corners.map(letDown(plates, set))
    expect((Math.max(...at) - Math.min(...at)) / 2, `${time}`).toBeLessThan(TOLERANCE + 3 * check.error)
    expect((Math.max(...at) - Math.min(...at)) / 2).toBeLessThan(0.0075)
  }
})

/** Two sections: the standing one, and one that hangs on it. Twelve readings' worth of legs: s2 has four, s3 two. */
describe('what is read and said', () => {
  const project = projectFor(designOf({ sections: 3 }))
  const ids = project.dock.legs.map(({ id }) => id)
  const level = (off: Record<string, number> = {}) =>
    ids.map((leg) => ({ leg, down: 0.45 + (off[leg] ?? 0) }))

  it('the outer pair 12 mm low: these two go up by as much, in turns of a screw of 2 mm', () => {
    const screwed = {
      ...project,
      catalog: { ...demoCatalog, sleeve: { ...demoCatalog.sleeve, screw: 0.002 } },
    }
    const off = { 's3.end.left': -0.012, 's3.end.right': -0.012 }
    const check = levelCheck({ readings: level(off) }, screwed)
    expect(check.verdict).toBe('moves')
    expect(check.moves.map(({ leg }) => leg)).toEqual(['s3.end.left', 's3.end.right'])
    for (const { by, turns } of check.moves) {
      // All others are left where they are; corners out there a little farther than the legs.
      expect(by).toBeGreaterThan(0.009)
      expect(by).toBeLessThan(0.015)
      expect(turns).toBeCloseTo(by! / 0.002, 9)
    }
    expect(check.hanging).toEqual([])
    expect(levelCheck({ readings: level(off) }, project).moves[0]!.turns).toBeNull()
  })

  it('level within 3 mm is level, and to a height of its own it is not', () => {
    const check = levelCheck({ readings: level({ 's3.end.left': 0.002, 's3.end.right': 0.002 }) }, project)
    expect(check.verdict).toBe('level')
    expect(check.moves).toEqual([])
    const higher = levelCheck({ readings: level(), over: 0.47 }, project)
    expect(higher.moves.length).toBe(ids.length)
    for (const { by } of higher.moves) expect(by).toBeCloseTo(0.02, 6)
  })

  it('a foot that swings free is let down until it stands, and holds nothing else up', () => {
    const check = levelCheck({ readings: level(), hanging: ['s2.end.left'] }, project)
    expect(check.moves).toEqual([{ leg: 's2.end.left', by: null, turns: null }])
    expect(check.hanging).toEqual(['s2.end.left'])
  })

  it('a foot set over ground that lies 50 mm deeper hangs', () => {
    // 0.875 from sole to deck over a depth of 0.475: its foot would stand at a deck 0.40 over the water, and that is at 0.45.
    const set = [
      { leg: 's2.end.left', height: 0.875, depth: 0.475 },
      { leg: 's2.end.right', height: 0.875, depth: 0.43 },
    ]
    expect(levelCheck({ readings: level(), set }, project).hanging).toEqual(['s2.end.left'])
  })

  it('one reading 60 mm off what a stiff frame can have is measured again', () => {
    const check = levelCheck({ readings: level({ 's2.start.left': 0.06 }) }, project)
    expect(check.verdict).toBe('measure-again')
    expect(check.doubted).toContain('s2.start.left')
    expect(check.moves).toEqual([])
  })

  it('too few readings say of which legs nothing is known', () => {
    const check = levelCheck({ readings: level().filter(({ leg }) => leg.startsWith('s2')) }, project)
    expect(check.verdict).toBe('more-readings')
    expect(check.unsure).toEqual(['s3.end.left', 's3.end.right'])
  })

  it('a bubble along and across each section does as well: 10 mm low over its length', () => {
    const standing = project.dock.legs.filter(({ section }) => section === 's2')
    const check = levelCheck(
      {
        readings: [],
        inWater: ['s2'],
        bubbles: [
          { section: 's2', along: 'length', fall: 0.01, over: 1.2 },
          { section: 's2', along: 'width', fall: 0, over: 1.2 },
        ],
      },
      project,
    )
    // Lower lakeward: either the outer two go up or the inner two down, by the fall between the legs and within the tolerance.
    expect(check.moves.length).toBe(2)
    expect(new Set(check.moves.map(({ leg }) => leg.split('.')[1])).size).toBe(1)
    const [near, far] = [standing[0]!, standing[2]!]
    const fall = (0.01 / 1.2) * (far.x - near.x)
    for (const { by } of check.moves) expect(Math.abs(Math.abs(by!) - fall)).toBeLessThan(0.0061)
  })

  it('waves: crest and trough are read as the middle, with the error told', () => {
    const readings = ids.map((leg) => ({ leg, down: { high: 0.5, low: 0.4 } }))
    const wavy = levelCheck({ readings }, project)
    const still = levelCheck({ readings: level() }, project)
    expect(wavy.verdict).toBe('level')
    expect(wavy.over).toBeCloseTo(0.45, 9)
    expect(wavy.error).toBeGreaterThan(3 * still.error)
  })
})

it('sixty sections, every third pair off by up to 12 mm: come level, answered before the next reading', () => {
  const long = projectFor(designOf({ sections: 60 }))
  const random = drawn(3)
  const off = new Map<string, number>()
  for (const { section, corner } of long.dock.legs) {
    const pair = `${section} ${corner.split('.')[0]}`
    if (!off.has(pair)) off.set(pair, random() < 1 / 3 ? (2 * random() - 1) * 0.012 : 0)
  }
  const readings = long.dock.legs.map(({ id, section, corner }) => ({
    leg: id,
    down: 0.45 + off.get(`${section} ${corner.split('.')[0]}`)!,
  }))
  const beyond = long.dock.legs.filter(
    ({ section, corner }) => Math.abs(off.get(`${section} ${corner.split('.')[0]}`)!) > 0.0065,
  )
  const start = performance.now()
  const check = levelCheck({ readings }, long)
  // A fifth of a second alone on the machine that this was written on.
  expect(performance.now() - start).toBeLessThan(3000)
  expect(check.verdict).toBe('moves')
  expect(check.after).toBeLessThan(TOLERANCE + 1e-6)
  // Legs farther off than the whole band must move; hardly any other has to.
  const told = new Set(check.moves.map(({ leg }) => leg))
  for (const { id } of beyond) expect(told.has(id)).toBe(true)
})
