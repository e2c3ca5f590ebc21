/** Legs to places: against every way there is on small docks, and against HiGHS on larger ones. */
import { describe, expect, it } from 'vitest'
import {
  type AssignPiece,
  type AssignPlace,
  type AssignResult,
  assignLegs,
} from '../../../rules/at-lake/index.ts'
import { type Asked, placesOf } from '../../../rules/at-lake/legs-at-hand.ts'
import type { LegSet } from '../../../rules/at-lake/types.ts'
import { projectFor } from '../../support/records.ts'
import { drawn } from './support/drawn.ts'
import { least, solver, sum } from './support/highs.ts'

const LENGTHS = [0.9144, 1.2192, 1.524, 1.8288, 2.1336]
const code = (i: number): string => `leg-${i + 3}`

/** Without a leg, on reserve, set ones changed, ready ones changed, over: what is kept least, the first first. */
type Score = readonly [number, number, number, number, number]

/** Null where it may not stand there. */
function scoreOf(place: AssignPlace, length: number | null, was: boolean): Score | null {
  const touched = place.ready !== null && !was
  const [set, ready] = [touched && place.set ? 1 : 0, touched && !place.set ? 1 : 0]
  if (length === null) return [1, 0, set, ready, 0]
  if (length < place.reaches - 1e-6 || (length > place.most + 1e-6 && !was)) return null
  return [0, length < place.least - 1e-6 ? 1 : 0, set, ready, Math.round(length * 1000)]
}

const added = (a: Score, b: Score): Score => [a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3], a[4] + b[4]]
const before = (a: Score, b: Score): boolean => {
  const i = a.findIndex((value, k) => value !== b[k])
  return i >= 0 && a[i]! < b[i]!
}
const ZERO: Score = [0, 0, 0, 0, 0]

function everyWay(places: readonly AssignPlace[], pieces: readonly AssignPiece[]): Score {
  let best: Score = [Infinity, 0, 0, 0, 0]
  const left = pieces.map(({ count }) => count)
  const go = (i: number, score: Score): void => {
    if (i === places.length) {
      if (before(score, best)) best = score
      return
    }
    const place = places[i]!
    pieces.forEach((piece, k) => {
      if (left[k] === 0) return
      const own = scoreOf(place, piece.length, place.ready === piece.code)
      if (!own) return
      left[k]!--
      go(i + 1, added(score, own))
      left[k]!++
    })
    go(i + 1, added(score, scoreOf(place, null, false)!))
  }
  go(0, ZERO)
  return best
}

function scoreOfResult(
  { given }: AssignResult,
  places: readonly AssignPlace[],
  pieces: readonly AssignPiece[],
): Score {
  const used = new Map<string, number>()
  const all = places.reduce((score, place, i) => {
    const { code: had } = given[i]!
    if (had !== null) used.set(had, (used.get(had) ?? 0) + 1)
    const own = scoreOf(
      place,
      pieces.find((piece) => piece.code === had)?.length ?? null,
      had !== null && had === place.ready,
    )
    expect(own, `${place.leg} may have ${had}`).not.toBeNull()
    return added(score, own!)
  }, ZERO)
  for (const { code: one, count } of pieces) expect(used.get(one) ?? 0).toBeLessThanOrEqual(count)
  return all
}

/** Each kind counts more than all that come after it can add up to: lengths in m, at most 52 of them over 24 legs. */
const weigh = ([none, short, set, ready, over]: Score): number =>
  none * 1e7 + short * 2e5 + set * 5e3 + ready * 100 + over / 1000

/** The weight of the best there is, by an exact solver. */
function bestOf(
  highs: Awaited<ReturnType<typeof solver>>,
  places: readonly AssignPlace[],
  pieces: readonly AssignPiece[],
): number {
  const names = places.flatMap((place, i) =>
    [...pieces, null].flatMap((piece, k) => {
      const own = scoreOf(place, piece?.length ?? null, piece !== null && place.ready === piece.code)
      return own ? [{ name: `x${i}_${k}`, i, k, cost: weigh(own) }] : []
    }),
  )
  return least(highs, {
    objective: sum(names.map(({ cost, name }) => [cost, name])),
    rows: [
      ...places.map((_, i) => `${sum(names.filter((x) => x.i === i).map(({ name }) => [1, name]))} = 1`),
      ...pieces.flatMap(({ count }, k) => {
        const there = names.filter((x) => x.k === k).map(({ name }) => [1, name] as const)
        return there.length > 0 ? [`${sum(there)} <= ${count}`] : []
      }),
    ],
    binary: names.map(({ name }) => name),
  })!.value
}

function randomCase(random: () => number, n: number): { places: AssignPlace[]; pieces: AssignPiece[] } {
  const counts = LENGTHS.map(() => 0)
  const places = Array.from({ length: n }, (_, i): AssignPlace => {
    const reaches = 0.6 + 1.4 * random()
    const planned = Math.min(
      4,
      LENGTHS.findIndex((length) => length > reaches - 0.25 + 0.5 * random()),
    )
    const ready = planned >= 0 && random() < 0.8 ? planned : null
    if (ready !== null) counts[ready]!++
    return {
      leg: `l${i}`,
      reaches,
      least: reaches + 0.1 * random(),
      most: reaches + 0.61,
      ready: ready === null ? null : code(ready),
      set: random() < 0.3,
    }
  })
  const pieces = LENGTHS.map((length, i) => ({
    code: code(i),
    length,
    count: counts[i]! + (random() < 0.4 ? 1 : 0),
  })).filter(({ count }) => count > 0)
  return { places, pieces }
}

describe('all legs at hand to all places', () => {
  it('as good as the best of every way there is, on docks of up to six legs', () => {
    const random = drawn(11)
    for (let time = 0; time < 400; time++) {
      const { places, pieces } = randomCase(random, 1 + (time % 6))
      const found = scoreOfResult(assignLegs(places, pieces), places, pieces)
      expect(found, `${time}`).toEqual(everyWay(places, pieces))
    }
  })

  it('as good as an exact solver finds, on docks of 24 legs', async () => {
    const highs = await solver()
    const random = drawn(5)
    for (let time = 0; time < 6; time++) {
      const { places, pieces } = randomCase(random, 24)
      const found = weigh(scoreOfResult(assignLegs(places, pieces), places, pieces))
      expect(found, `${time}`).toBeCloseTo(bestOf(highs, places, pieces), 3)
    }
  })
})

describe('a day, station after station: each is measured, given its leg and set', () => {
  it('no leg is there twice, none is lost, and each step is as good as an exact solver finds with the legs that there are', async () => {
    const highs = await solver()
    const random = drawn(17)
    const shop = projectFor().shop
    let freed = 0
    for (let time = 0; time < 5; time++) {
      const planned = Array.from({ length: 10 }, () => 0.7 + 1.1 * random())
      const asked = planned.map((height, i): Asked => {
        const code = shop.legs.find(({ length }) => length >= height + 0.1)!.code
        return { leg: `l${i}`, code, setHeight: height, sole: 0, stays: 0.1, mayBeBraced: true }
      })
      const own = new Map<string, number>()
      for (const { code } of asked) own.set(code!, (own.get(code!) ?? 0) + 1)
      const there = shop.legs.flatMap(({ code, length }) =>
        own.has(code) ? [{ code, length, count: own.get(code)! }] : [],
      )
      const found = [...asked]
      let set: LegSet[] = []
      for (let i = 0; i < asked.length; i++) {
        const setHeight = planned[i]! + 0.7 * (random() - 0.5)
        found[i] = { ...asked[i]!, setHeight }
        const { places, pieces } = placesOf(found, { set }, shop)
        expect(pieces).toEqual(there)
        const result = assignLegs(places, pieces)
        expect(weigh(scoreOfResult(result, places, there)), `${time} ${i}`).toBeCloseTo(
          bestOf(highs, places, there),
          3,
        )
        // What is told is done: legs that were set are taken out again where another is to stand there.
        set = result.given.flatMap(({ leg, code }, k): LegSet[] =>
          k > i || code === null ? [] : [{ leg, stock: code, height: found[k]!.setHeight }],
        )
        if (result.given[i]!.code !== asked[i]!.code) freed++
      }
    }
    // Otherwise nothing was asked.
    expect(freed).toBeGreaterThan(8)
  })
})

describe('what is told of it', () => {
  const place = (leg: string, reaches: number, ready: string | null, set = false): AssignPlace => ({
    leg,
    reaches,
    least: reaches + 0.1,
    most: reaches + 0.61,
    ready,
    set,
  })
  const pieces = (counts: Record<string, number>): AssignPiece[] =>
    LENGTHS.map((length, i) => ({ code: code(i), length, count: counts[code(i)] ?? 0 }))

  it('all stays where all does, though a shorter one would do', () => {
    const found = assignLegs([place('a', 0.7, 'leg-4')], pieces({ 'leg-4': 1, 'leg-3': 1 }))
    expect(found.moves).toEqual([])
    expect(found.left).toEqual([{ code: 'leg-3', count: 1 }])
    // 1.2192 less the 0.8 that it asks.
    expect(found.over).toBeCloseTo(0.4192, 9)
  })

  it('two legs exchanged: each is told where it comes from', () => {
    const found = assignLegs(
      [place('a', 1.3, 'leg-4'), place('b', 1.0, 'leg-5')],
      pieces({ 'leg-4': 1, 'leg-5': 1 }),
    )
    expect(found.moves).toEqual([
      { code: 'leg-5', from: 'b', to: 'a' },
      { code: 'leg-4', from: 'a', to: 'b' },
    ])
  })

  it('a spare from the shore before a leg that is set', () => {
    const found = assignLegs(
      [place('a', 1.3, 'leg-4'), place('b', 1.0, 'leg-5', true)],
      pieces({ 'leg-4': 1, 'leg-5': 1, 'leg-6': 1 }),
    )
    expect(found.moves).toEqual([{ code: 'leg-6', from: null, to: 'a' }])
  })

  it('none reaches: told, and the rest is served all the same', () => {
    const found = assignLegs(
      [place('a', 2.3, 'leg-7'), place('b', 1.0, 'leg-5')],
      pieces({ 'leg-7': 1, 'leg-5': 1 }),
    )
    expect(found.unserved).toEqual(['a'])
    expect(found.given[1]).toEqual({ leg: 'b', code: 'leg-5', enough: 'yes' })
  })

  it('on its reserve: it reaches, and what must stay is not left', () => {
    expect(assignLegs([place('a', 1.5, 'leg-5')], pieces({ 'leg-5': 1 })).given[0]!.enough).toBe('reserve')
  })

  it('two hundred and forty legs in time for the next station', () => {
    const { places, pieces: all } = randomCase(drawn(2), 240)
    const start = performance.now()
    assignLegs(places, all)
    expect(performance.now() - start).toBeLessThan(500)
  })
})
