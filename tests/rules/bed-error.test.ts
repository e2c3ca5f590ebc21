/**
 * The standard error of the bed: on random beds made apart from the model the true bed lies within 1.96 of it at 19 of 20 places.
 *
 * Two kinds. `walks`: sums of independent steps over a grid, along the dock and, of each step, along the shore, as the model takes a bed to
 * be, at a roughness of their own that the model is not told. `bars`: an even slope with five humps and hollows, which no walk made: there
 * the error may be cautious, and no more is asked than that it is not too small.
 */
import { describe, expect, it } from 'vitest'
import type { Sounding } from '../../rules/design/index.ts'
import { makeBed } from '../../rules/index.ts'
import { errorsOf } from '../../rules/site/error-at.ts'
import { siteOf } from '../support/beds/surveys.ts'
import {
  type Chance,
  chance,
  DX,
  DY,
  EDGE,
  type Grid,
  MIDDLE,
  NX,
  NY,
  node,
  walks,
} from '../support/beds/walks.ts'
import { runs } from '../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 20_251)
const BEDS = runs(84)
const PLACES = 50

function bars({ uniform }: Chance): Grid {
  const fall = uniform(0.03, 0.2)
  const humps = Array.from({ length: 5 }, () => [
    uniform(-0.3, 0.3),
    uniform(1, 18),
    uniform(-5, 5),
    uniform(0.8, 3),
    uniform(2, 8),
  ]) as [number, number, number, number, number][]
  return (i, j) => {
    const [x, y] = [(i - EDGE) * DX, (j - MIDDLE) * DY]
    const hump = humps.reduce(
      (sum, [high, at, side, long, wide]) =>
        sum + high * Math.exp(-(((x - at) / long) ** 2) - ((y - side) / wide) ** 2),
      0,
    )
    return (x < 0 ? -0.3 * x : -fall * x) + hump
  }
}

/** How far the true bed is off, in standard errors, at places of random beds; soundings by turns good and bad ones. */
function misses(bedOf: (random: Chance) => Grid, kind: 'line' | 'few' | 'area' | 'many'): number[] {
  const random = chance(SEED)
  const pick = (n: number): number => Math.floor(random.uniform() * n)
  const beds = kind === 'many' ? Math.ceil(BEDS / 25) : BEDS
  const places = kind === 'many' ? 25 * PLACES : PLACES
  const out: number[] = []
  for (let b = 0; b < beds; b++) {
    const error = b % 2 === 0 ? 0.01 : 0.05
    const truth = bedOf(random)
    const list = new Map<string, Sounding>()
    const sound = (i: number, j: number): void =>
      void list.set(`${i} ${j}`, { ...node(i, j), depth: error * random.normal() - truth(i, j) })
    for (const i of [0, EDGE, NX]) sound(i, MIDDLE)
    const n = { line: 5 + pick(6), few: 6 + pick(5), area: 15 + pick(30), many: 500 }[kind]
    for (let k = 0; k < n; k++)
      sound(
        pick(NX + 1),
        kind === 'line' || (kind === 'few' && random.uniform() < 0.6)
          ? MIDDLE
          : kind === 'few'
            ? MIDDLE - 4 + pick(9)
            : pick(NY + 1),
      )
    const bed = makeBed(siteOf([...list.values()], { soundingError: error }))
    const errors = errorsOf(bed)
    for (let k = 0; k < places; k++) {
      const [i, j] = [pick(NX + 1), 4 + pick(NY - 7)]
      const { distance, offset } = node(i, j)
      out.push(Math.abs(truth(i, j) - bed.bedAt(distance, offset)) / errors.at(distance, offset))
    }
  }
  return out
}

/** Share of misses within 1.96 standard errors, these times `factor`. */
const within = (list: readonly number[], factor = 1): number =>
  list.filter((miss) => miss <= 1.96 * factor).length / list.length

describe(`the standard error (seed ${SEED}, ${BEDS} beds)`, () => {
  it.each(['line', 'few', 'area'] as const)(
    'holds the true bed of walks at 93 to 97 of 100 places (soundings: %s), and would not if it were a third less or two thirds more',
    (kind) => {
      const list = misses(walks, kind)
      expect(within(list)).toBeGreaterThan(0.93)
      expect(within(list)).toBeLessThan(0.97)
      expect(within(list, 2 / 3)).toBeLessThan(0.93)
      expect(within(list, 5 / 3)).toBeGreaterThan(0.97)
    },
  )

  it('holds the bed of bars, which it does not expect, at 92 of 100 places at least', () => {
    for (const kind of ['line', 'few', 'area'] as const)
      expect(within(misses(bars, kind))).toBeGreaterThan(0.92)
  })

  it('of many soundings is cautious: 93 of 100 places at least', () => {
    for (const bed of [walks, bars]) expect(within(misses(bed, 'many'))).toBeGreaterThan(0.93)
  })

  it('grows with the distance from soundings, and is theirs at a sounding', () => {
    const list = [
      [-3, 0, -0.9],
      [0, 0, 0],
      [4, 0, 0.5],
      [8, 0, 0.9],
      [8, 3, 1.1],
      [12, 0, 1.2],
    ].map(([distance, offset, depth]) => ({ distance: distance!, offset: offset!, depth: depth! }))
    const errors = errorsOf(makeBed(siteOf(list)))
    for (const s of list) expect(errors.at(s.distance, s.offset)).toBeCloseTo(0.03, 6)
    expect(errors.at(6, 0)).toBeGreaterThan(0.03)
    const grows = (x: number, y: number, dx: number, dy: number): void =>
      expect(errors.at(x + dx, y + dy)).toBeGreaterThan(errors.at(x, y))
    grows(12.5, 0, 1.5, 0)
    grows(4, 1, 0, 2)
    grows(8, -1, 0, -3)
    grows(-3.5, 0, -2.5, 0)
  })

  it('of a wall’s top and of a bank’s, however far landward, is that of where it begins', () => {
    const list = [
      { distance: 0, offset: 0, depth: 0 },
      { distance: 4, offset: 0, depth: 0.5 },
      { distance: 8, offset: 2, depth: 0.9 },
    ]
    const behind = (kind: 'wall' | 'bank', x: number): number =>
      errorsOf(makeBed(siteOf(list, { shore: { kind, height: 0.1 } }))).at(x, 0)
    expect(behind('wall', -40)).toBe(0.03)
    expect(behind('bank', -40)).toBe(behind('bank', -30))
    expect(behind('bank', -40)).toBeLessThan(0.3)
  })
})
