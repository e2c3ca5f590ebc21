/**
 * Wrench sizes against the bolts' standards: the width across flats that a hex head of that thread has.
 *
 * - ASME B18.2.1, hex bolts, width across flats (basic): read second-hand in a fastener dealer's copy of the table
 *   (1/4 .438 = 7/16, 5/16 .500, 3/8 .562 = 9/16, 7/16 .625, 1/2 .750, 5/8 .938 = 15/16, 3/4 1.125 in).
 * - ISO 4014 / ISO 4017, width across flats: read second-hand in a fastener catalog (M6 10, M8 13, M10 16, M12 18, M16 24,
 *   M20 30 mm; the withdrawn DIN 931/933 had 17 for M10 and 19 for M12).
 */
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog } from '../../rules/index.ts'
import { metricCatalog } from '../support/catalogs.ts'

const INCH = 0.0254
/** The catalog keeps its diameters to that. */
const MICROMETER = 1e-6

/** ASME B18.2.1: thread (in) to wrench as stamped, and F max in inches. */
const ASME_B18_2_1: readonly [thread: number, stamped: string, flats: number][] = [
  [1 / 4, '7/16 in', 0.438],
  [5 / 16, '1/2 in', 0.5],
  [3 / 8, '9/16 in', 0.562],
  [7 / 16, '5/8 in', 0.625],
  [1 / 2, '3/4 in', 0.75],
  [5 / 8, '15/16 in', 0.938],
]

/** ISO 4014 and ISO 4017: thread to width across flats, mm. */
const ISO_4014: readonly [thread: number, flats: number][] = [
  [6, 10],
  [8, 13],
  [10, 16],
  [12, 18],
  [16, 24],
  [20, 30],
]

const stampedInches = (text: string): number => {
  const [, top, bottom] = /^(\d+)\/(\d+) in$/.exec(text) ?? []
  return Number(top) / Number(bottom)
}

const bolts = (catalog: Catalog) => catalog.hardware.map((b) => [b.code, b] as const)

describe('wrenches', () => {
  it.each(bolts(demoCatalog))('fit the inch bolt %s (ASME B18.2.1)', (_code, bolt) => {
    const row = ASME_B18_2_1.find(([thread]) => Math.abs(bolt.diameter - thread * INCH) < MICROMETER)
    expect(row, `${bolt.diameter} m is no inch thread`).toBeDefined()
    expect(bolt.wrench).toBe(row![1])
    expect(Math.abs(stampedInches(bolt.wrench) - row![2])).toBeLessThan(0.0006)
  })

  it.each(bolts(metricCatalog))('fit the metric bolt %s (ISO 4014, ISO 4017)', (_code, bolt) => {
    const row = ISO_4014.find(([thread]) => Math.abs(bolt.diameter * 1000 - thread) < 1e-9)
    expect(row, `${bolt.diameter} m is no metric thread`).toBeDefined()
    expect(bolt.wrench).toBe(`${row![1]} mm`)
  })

  it('are the three that the trade names for set, brace and hook bolts', () => {
    const of = (kind: string) => demoCatalog.hardware.find((b) => b.kind === kind)
    expect([of('set-bolt')?.wrench, of('brace-bolt')?.wrench, of('hook-bolt')?.wrench]).toEqual([
      '3/4 in',
      '9/16 in',
      '1/2 in',
    ])
  })
})
