/** What a shop learns: docks are simulated whose soundings are off by a known error, and whose feet go in by a known depth. */
import { describe, expect, it } from 'vitest'
import { applyPatch } from '../../../rules/design/patch.ts'
import { type Design, demoCatalog, demoDesign, parseCatalog } from '../../../rules/index.ts'
import { LEARN_LEAST, learn, type SeasonRecord } from '../../../rules/record/index.ts'
import { begun, phone, taken, write } from '../../support/records.ts'

/** Mulberry32, and normal numbers of it by Box and Muller. */
function normals(seed: number): () => number {
  let a = seed
  const uniform = (): number => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
}

/** Depths of a bed that is straight between these, so that only errors of soundings are left, m. */
const TRUE = [
  [-3, -0.9],
  [0, 0],
  [2, 0.25],
  [4, 0.5],
  [6, 0.7],
  [8, 0.9],
  [10, 1.15],
  [12, 1.4],
] as const
const depthAt = (x: number): number => {
  const k = Math.max(0, TRUE.findIndex(([at]) => at >= x) - 1)
  const [[x0, d0], [x1, d1]] = [TRUE[k]!, TRUE[k + 1]!]
  return d0 + ((x - x0) / (x1 - x0)) * (d1 - d0)
}

/** A dock whose soundings are off by `sd`, and whose crew measures no better; its level is off by `offset`. */
function simulated(draw: () => number, sd: number, offset: number): SeasonRecord {
  const soundings = TRUE.map(([distance, depth]) => ({ distance, offset: 0, depth: depth + sd * draw() }))
  const design: Design = { ...demoDesign, site: { ...demoDesign.site, soundings, soundingError: 0.03 } }
  const on = phone(begun(design), 'p')
  for (const { id, x } of on.record.legs)
    write(on, {
      kind: 'sounding',
      leg: id,
      depth: depthAt(x!) + sd * draw() + offset,
      level: 0,
      how: 'measured',
    })
  return on.record
}

describe('soundings', () => {
  const draw = normals(11)
  const records = (sd: number, docks: number): SeasonRecord[] =>
    Array.from({ length: docks }, (_, i) => simulated(draw, sd, 0.05 * Math.sin(i)))

  it.each([0.02, 0.05])(
    'that are off by %f m are found to be, within three of the errors that it states',
    (sd) => {
      const { sounding, patch } = learn(records(sd, 30), demoCatalog)
      expect(sounding!.docks).toBe(30)
      expect(sounding!.count).toBe(300)
      expect(Math.abs(sounding!.sd - sd)).toBeLessThan(3 * sounding!.error)
      expect(sounding!.error).toBeLessThan(sd / 5)
      // One level of all legs of a dock is no error of soundings.
      expect(Math.abs(sounding!.offset)).toBeLessThan(0.05)
      const catalog = taken(parseCatalog(applyPatch(demoCatalog as never, patch)))
      expect(catalog.survey).toEqual({
        soundingError: Math.round(sounding!.sd * 1000) / 1000,
        measurements: 300,
      })
    },
  )

  it('state an error that holds: of forty shops two thirds are within one of it', () => {
    const within = Array.from({ length: 40 }, () => learn(records(0.04, 6), demoCatalog).sounding!).filter(
      ({ sd, error }) => Math.abs(sd - 0.04) <= error,
    ).length
    // Binomial of 40 and 0.68: mean 27, three standard deviations are 9.
    expect(within).toBeGreaterThanOrEqual(18)
    expect(within).toBeLessThanOrEqual(39)
  })

  it('that nobody measured teach nothing', () => {
    const on = phone(begun(), 'p')
    for (const { id, planned } of on.record.legs)
      write(on, { kind: 'sounding', leg: id, depth: -planned!.bed, level: 0, how: 'as-planned' })
    expect(learn([on.record], demoCatalog)).toMatchObject({ sounding: null, patch: [] })
    const bare = { ...simulated(draw, 0.02, 0), design: null }
    expect(learn([bare], demoCatalog)).toMatchObject({ sounding: null, withoutDesign: 1 })
  })
})

describe('settling', () => {
  const LEGS = begun().legs.length
  /** Foot k of a dock goes in by `by(k)`; a level check makes its leg longer by that. */
  const settled = (by: (k: number) => number): SeasonRecord => {
    const on = phone(begun(), 'p')
    on.record.legs.forEach(({ id }) => {
      write(on, { kind: 'set', leg: id, stock: null, height: 1, level: 0, keep: 'planned', how: 'measured' })
    })
    write(on, {
      kind: 'check',
      readings: on.record.legs.map(({ id }) => ({ leg: id, down: 0.45 })),
      verdict: 'moves',
    })
    on.record.legs.forEach(({ id }, k) => {
      if (by(k) !== 0)
        write(on, { kind: 'set', leg: id, stock: null, height: 1 + by(k), level: 0, how: 'by-check' })
    })
    return on.record
  }

  it('is the mean of all that were looked at, those that did not move too: 0, 10, 20 mm over and over', () => {
    const docks = [settled((k) => (k % 3) / 100), settled((k) => (k % 3) / 100)]
    const { settling, patch } = learn(docks, demoCatalog)
    const values = Array.from({ length: 2 * LEGS }, (_, k) => ((k % LEGS) % 3) / 100)
    const mean = values.reduce((a, b) => a + b) / values.length
    const sd = Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1))
    const [one, ...more] = settling
    expect(more).toEqual([])
    expect(one).toMatchObject({ bottom: 'sand', pad: demoCatalog.pads[0]!.code, count: 2 * LEGS })
    expect(one!.mean).toBeCloseTo(mean, 6)
    expect(one!.sd).toBeCloseTo(sd, 6)
    expect(one!.error).toBeCloseTo(sd / Math.sqrt(2 * LEGS), 6)
    expect(patch).toEqual([
      { op: 'replace', path: '/pads/0/sinkage/sand', value: Math.round(mean * 1000) / 1000 },
    ])
    expect(taken(parseCatalog(applyPatch(demoCatalog as never, patch))).pads[0]!.sinkage.sand).toBe(
      patch[0]!.value,
    )
  })

  it('is the same whether the foot that went in was set longer, or all others shorter', () => {
    const up = learn([settled((k) => (k === 2 ? 0.03 : 0))], demoCatalog).settling[0]!
    const down = learn([settled((k) => (k === 2 ? 0 : -0.03))], demoCatalog).settling[0]!
    expect(down.mean).toBeCloseTo(up.mean, 6)
    expect(up.mean).toBeCloseTo(0.03 / LEGS, 6)
  })

  it('of few legs is told, and not offered; of legs that nobody looked at again nothing is said', () => {
    const on = phone(begun(), 'p')
    for (const { id } of on.record.legs.slice(0, LEARN_LEAST - 1))
      write(on, { kind: 'set', leg: id, stock: null, height: 1, level: 0, how: 'measured', sunk: 0.04 })
    const few = learn([on.record], demoCatalog)
    expect([few.settling[0]!.count, few.settling[0]!.mean, few.patch]).toEqual([LEARN_LEAST - 1, 0.04, []])
    const none = phone(begun(), 'p')
    for (const { id } of none.record.legs)
      write(none, { kind: 'set', leg: id, stock: null, height: 1, level: 0, how: 'measured' })
    expect(learn([none.record], demoCatalog).settling).toEqual([])
  })
})
