/** What stands in the way stays there: no way around it, and nothing beside it that says that all is well. */
import { beforeAll, describe, expect, it } from 'vitest'
import { type Day, type DayState, dayAt } from '../../rules/at-lake/index.ts'
import { seasonState } from '../../rules/record/index.ts'
import { isGuess } from '../../src/at-lake/guess.ts'
import { legOf } from '../../src/at-lake/lake.ts'
import { keptFor } from '../../src/at-lake/limits.tsx'
import { afterMeasure, LEVEL_LATER, nextStage, pastMeasured, setUpStages } from '../../src/at-lake/stages.ts'
import { cannotBeSet, isFlooded, saidKey, stillStops, stopsAt } from '../../src/at-lake/stops-at.ts'
import { tooDeepFor } from '../../src/at-lake/too-deep.ts'
import { keepUnits, keptUnits } from '../../src/state/kept-units.ts'
import { begun, phone, projectFor, write } from '../support/records.ts'

const STATE: DayState = { level: 0, from: 'mark', keep: 'planned', measured: [], set: [] }
let dayIn: (state: Partial<DayState>) => Day

beforeAll(() => {
  const at = dayAt(projectFor())
  dayIn = (state) => at({ ...STATE, ...state })
})

describe('a leg at which a stop stands', () => {
  const record = begun()
  const leg = record.legs[0]!.id
  /** So deep that no leg of the shop reaches, and measured twice. */
  const measured = [{ leg, depth: 4.5, how: 'measured', again: true }] as const

  it('is where one goes on, though it was measured', () => {
    const day = dayIn({ measured })
    const at = legOf(day, leg)!
    expect(at.limit.say).toBe('stop-and-call')
    expect([stopsAt(at), cannotBeSet(at)]).toEqual([true, true])
    const stages = setUpStages(day.order, () => false)
    const on = phone(record, 'phone-a')
    // All before it is done, and a later leg is measured.
    const here = stages.findIndex((stage) => stage.kind === 'measure' && stage.leg === leg)
    write(on, { kind: 'step', key: LEVEL_LATER, done: true })
    for (const { key } of stages.slice(0, here)) write(on, { kind: 'step', key, done: true })
    write(on, { kind: 'sounding', leg, depth: 4.5, level: 0, how: 'measured' })
    const state = seasonState(on.record)
    expect(nextStage(stages, state, day)).toBe(here)
    // Without it one would go past.
    expect(nextStage(stages, state)).toBe(here + 1)
    // What the shop says is written down for this depth, and no other.
    write(on, { kind: 'step', key: saidKey(at), done: true })
    expect(stillStops(at, seasonState(on.record))).toBe(false)
    expect(stillStops({ ...at, depth: 4.6 }, seasonState(on.record))).toBe(true)
  })

  it('that the next leg of the pair brings is gone back to, and can be passed', () => {
    const [, , , , , , seventh, eighth] = record.legs
    const found = [seventh!, eighth!].map(({ id }, i) => ({
      ...{ leg: id, depth: i === 0 ? 4.5 : 1, how: 'measured' as const },
      again: true,
    }))
    const day = dayIn({ measured: found })
    const stages = setUpStages(day.order, () => false)
    const at = stages.findIndex((stage) => stage.kind === 'measure' && stage.leg === eighth!.id)
    const on = phone(record, 'phone-a')
    for (const { leg, depth } of found) write(on, { kind: 'sounding', leg, depth, level: 0, how: 'measured' })
    const state = seasonState(on.record)
    expect(afterMeasure(stages, at, state, day)).toBe(at - 1)
    expect(afterMeasure(stages, at, state, dayIn({}))).toBe(at + 1)
    expect(pastMeasured(stages, at - 1, state)).toBe(at + 1)
  })

  it('says where legs are that would do, when they are kept for deeper places', () => {
    const [, , , , , , seventh, eighth, ninth, tenth] = record.legs.map(({ id }) => id)
    // 1.36 m deep and the deck 0.45 over it, 1.81: legs of 6 ft, 1.835 with the sole, just reach. Those of 7 ft lie ready for 9 and 10.
    const found = [seventh!, eighth!].map(
      (leg) => ({ leg, depth: 1.36, how: 'measured', again: true }) as const,
    )
    const at = legOf(dayIn({ measured: found }), seventh!)!
    expect(at.limit.reasons).toContain('on-reserve')
    expect(keptFor(at, dayIn({ measured: found }))).toEqual([ninth, tenth])
    // With two more of them there is nothing to be said.
    const atHand = [3, 4, 5, 6, 7].map((feet) => ({ code: `leg-${feet}`, count: feet === 7 ? 4 : 2 }))
    const more = dayIn({ measured: found, legsAtHand: atHand })
    expect(stopsAt(legOf(more, seventh!)!)).toBe(false)
    // Nor where none that is here would do.
    const deep = legOf(dayIn({ measured }), leg)!
    expect(keptFor(deep, dayIn({ measured }))).toEqual([])
  })

  it('has no set height where its frame would be in the bottom', () => {
    // The lake 7 1/4 ft up by mistake, the deck where it was planned.
    const day = dayIn({ level: 2.2098, measured: [{ leg, depth: 0.18, how: 'measured' }] })
    const at = legOf(day, leg)!
    expect(at.heights.frame).toBeLessThan(0)
    expect(cannotBeSet(at)).toBe(true)
    const on = phone(record, 'phone-a')
    write(on, { kind: 'level', level: 2.2098, from: 'said', keep: 'planned' })
    const state = seasonState(on.record)
    expect(isFlooded({ kind: 'set' }, { day, state })).toBe(true)
    expect(isFlooded({ kind: 'level' }, { day, state })).toBe(false)
    expect(isFlooded({ kind: 'set' }, { day: dayIn({}), state })).toBe(false)
  })

  it('none stands where all is as planned', () => {
    const day = dayIn({})
    for (const at of day.stations.flatMap(({ legs }) => legs)) expect(stopsAt(at)).toBe(false)
  })
})

it('nobody stands in water over the chest', () => {
  const crew = [
    { place: 'water', people: 2 },
    { place: 'shore', people: 1 },
  ] as const
  const section = dayIn({}).stations.at(-1)!.section
  // The farthest legs of the demo stand in 1.25 m on the survey day.
  expect(tooDeepFor(crew, section, dayIn({}))).toBeCloseTo(1.249, 3)
  expect(tooDeepFor(crew, section, dayIn({ level: -0.1 }))).toBeNull()
  expect(tooDeepFor([crew[1]], section, dayIn({}))).toBeNull()
})

it('a depth that may as well be nothing is told without a figure for its error', () => {
  // Half the range of the lake's levels over a depth of 142 mm: true, and no help.
  const [first] = dayIn({ from: 'survey' }).stations.flatMap(({ legs }) => legs)
  expect(2 * first!.others.sd).toBeGreaterThan(first!.others.depth)
  expect(isGuess(first!.others)).toBe(true)
  expect(isGuess({ depth: 1.2, sd: 1 })).toBe(true)
  expect(isGuess({ depth: 1.2, sd: 0.05 })).toBe(false)
  expect(isGuess({ depth: 0.05, sd: 0.04 })).toBe(false)
})

it('units are kept on the device, and a browser that keeps nothing is no fault', () => {
  const kept = new Map<string, string>()
  const storage = () =>
    ({
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, to: string) => void kept.set(key, to),
    }) as Storage
  expect(keptUnits(storage)).toBeNull()
  keepUnits('metric', storage)
  expect(keptUnits(storage)).toBe('metric')
  const none = (): Storage => {
    throw new Error('denied')
  }
  keepUnits('metric', none)
  expect(keptUnits(none)).toBeNull()
})
