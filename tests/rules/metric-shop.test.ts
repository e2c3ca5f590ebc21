/**
 * The second shop: metric, square legs, other lengths, counts, braces and currency. The whole engine runs on it unchanged, and its
 * braces fit the pairs that they are meant for.
 *
 * Arithmetic of the fit, m. Leg axes 0.07 in from the sides, so spacing = width − 0.14; between clamp holes (reach 0.045) s =
 * spacing − 0.09: 0.77, 1.02, 1.27 for widths 1.0, 1.25, 1.5. Underside of the sleeves 0.03 + 0.2 = 0.23 under the deck. Over a level bed
 * with set height h the room is H = h − 0.23, and with the rise r = sqrt(B² − s²), half a clamp 0.03 and a pad 0.008 + 0.06 high:
 * over the pad (H − r)/2 − 0.03 − 0.068, at least 0.03; under the sleeve (H − r)/2 − 0.03, at least 0.05. So r ≤ H − 0.256.
 * A leg is the shortest that does from the reach of the next shorter one on, which reaches length + 0.008 − reserve 0.1:
 * - 1.5 m from h = 1.0 + 0.008 − 0.1 = 0.908: H = 0.678, r ≤ 0.422. B 0.84: sqrt(0.7056 − 0.5929) = 0.3357; 1.08: sqrt(1.1664 −
 *   1.0404) = 0.3550; 1.32: sqrt(1.7424 − 1.6129) = 0.3599.
 * - 2.0 m from h = 1.408: H = 1.178, r ≤ 0.922. B 1.08: 0.7573; 1.28: 0.7733; 1.48: 0.7599.
 * - 3.0 m from h = 2.408: H = 2.178, r ≤ 1.922. B 1.60: 1.4025; 1.75: 1.4220; 1.90: 1.4132.
 */
import { describe, expect, it } from 'vitest'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { metricCatalog } from '../support/catalogs.ts'
import { validate } from '../support/validate.ts'

const DECK = 0.5

function over(depth: number, dock: Record<string, unknown>) {
  const design = parsed({
    format: 'leadline/design',
    version: 1,
    site: {
      soundings: [
        { distance: -3, depth: -1 },
        { distance: 0, depth: 0 },
        { distance: 1, depth: depth / 2 },
        { distance: 2, depth },
        { distance: 7, depth },
        { distance: 12, depth },
        { distance: 17, depth },
      ],
      soundingError: 0.01,
      levels: { low: -0.3, high: 0.2 },
      bottom: 'sand',
    },
    dock: { deckHeight: DECK, ...dock },
  })
  const result = deriveAtOnce(design, metricCatalog)
  expect(validate(result, design, metricCatalog)).toEqual([])
  return result
}

/** frame, brace, leg, set heights from which (just over) and up to which that leg is the shortest, rise. */
const FITS: readonly [frame: string, brace: string, leg: number, from: number, to: number, rise: number][] = [
  ['R100', 'D100-K', 1.5, 0.908, 1.408, 0.335708],
  ['R125', 'D125-K', 1.5, 0.908, 1.408, 0.354965],
  ['R150', 'D150-K', 1.5, 0.908, 1.408, 0.359861],
  ['R100', 'D100-M', 2, 1.408, 1.908, 0.757298],
  ['R125', 'D125-M', 2, 1.408, 1.908, 0.773305],
  ['R150', 'D150-M', 2, 1.408, 1.908, 0.759934],
  ['R125', 'D125-M', 2.5, 1.908, 2.408, 0.773305],
  ['R100', 'D100-L', 3, 2.408, 2.908, 1.402533],
  ['R125', 'D125-L', 3, 2.408, 2.908, 1.422006],
  ['R150', 'D150-L', 3, 2.408, 2.908, 1.413188],
  ['R150', 'D150-L', 3.5, 2.908, 3.408, 1.413188],
]

describe('the metric shop', () => {
  it.each(FITS)(
    'frame %s: brace %s fits legs of %d m from the least height to the greatest',
    (frame, code, leg, from, to, rise) => {
      for (const height of [from + 0.002, (from + to) / 2, to - 0.002]) {
        const dock = over(height - DECK, { frame, sections: 3, ramp: false, start: 3 })
        const { brace } = dock.pairs.at(-1)!
        expect(dock.legs.at(-1)!.stock).toBe(leg)
        expect(brace?.code).toBe(code)
        expect(brace!.rise).toBeCloseTo(rise, 5)
        const room = height - 0.23
        expect(brace!.lowClearance).toBeCloseTo((room - rise) / 2 - 0.03 - 0.068, 5)
        expect(brace!.highClearance).toBeCloseTo((room - rise) / 2 - 0.03, 5)
      }
    },
  )

  it('does not brace what is shorter than 1.25 m', () => {
    const dock = over(0.3, { frame: 'R125', sections: 3, ramp: false, start: 3 })
    expect(dock.legs.every((l) => l.stock === 1)).toBe(true)
    expect(dock.pairs.some((p) => p.needsBrace)).toBe(false)
  })

  it('counts by its own rules, in euros, with its spares charged', () => {
    const dock = over(1, {
      frame: 'R125',
      sections: 4,
      ramp: true,
      head: { shape: 'wide', sections: 2 },
      extras: { fender: 2, ring: 3, pfahl: 2 },
    })
    const row = (kind: string) => dock.parts.find((r) => r.kind === kind)!
    // Ramp, standing section, two following, two beside: 0 + 4 + 2 + 2 + 2 + 2 legs.
    expect(dock.legs).toHaveLength(12)
    expect(row('set-bolt').quantity).toBe(3 * 12)
    expect(row('pad-bolt').quantity).toBe(2 * 12)
    // 4 carrying joints of 2 hooks of 2 brackets; two bolts on the carrying side, one on the hung.
    expect(row('hook-bracket').quantity).toBe(4 * 2 * 2)
    expect(row('hook-bolt').quantity).toBe(16 * 3)
    expect(['hinge-bar', 'bar-bolt', 'hinge-pin', 'pin-bolt'].map((k) => row(k).quantity)).toEqual([
      1, 4, 3, 6,
    ])
    expect(row('deck-panel').quantity).toBe(6 * 5)
    expect(row('deck-clip').quantity).toBe(6 * 5 * 3)
    expect(dock.parts.find((r) => r.code === 'KL-3')?.quantity).toBe(3)
    expect(dock.parts.find((r) => r.code === 'RG-P')?.quantity).toBe(3)
    expect(row('post-clamp').quantity).toBe(2 * 3)
    expect(dock.totals.currency).toBe('EUR')
    // 36 set bolts: a tenth rounded up is 4 spares, at 95 cents each, charged.
    expect([row('set-bolt').spares, row('set-bolt').price]).toEqual([4, 40 * 95])
  })

  it('takes stated masses as they are and computes the others', () => {
    const dock = over(1, { frame: 'R125', sections: 2, ramp: false })
    // Stated: 31.5 kg. Square leg 0.05 x 0.003: 4·0.003·0.047·2710 = 1.52844 kg/m, 1.5 m → 2.293 kg; the 2 m leg is stated.
    expect(dock.parts.find((r) => r.kind === 'frame')?.unitMass).toBe(31.5)
    expect(dock.parts.find((r) => r.code === 'ST200')?.unitMass).toBe(3.2)
    const shallow = over(0.6, { frame: 'R125', sections: 2, ramp: false })
    expect(shallow.parts.find((r) => r.code === 'ST150')?.unitMass).toBe(2.293)
    // Panel, no battens and no notch: 4 planks of 1.04 x 0.12 x 0.03 x 600 = 8.986 kg.
    expect(dock.parts.find((r) => r.kind === 'deck-panel')?.unitMass).toBe(8.986)
  })
})
