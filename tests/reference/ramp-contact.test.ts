/**
 * Where the ramp touches a straight bank, against closed-form geometry: the circle of its lower shoreward edge about the hinge axis
 * meets the line of the bank. No published source; the geometry is exact.
 *
 * Bank z = −m·x, axis at (s, a), radius R. With u = s − x: z = m·u − m·s, so u² + (m·u − m·s − a)² = R², and of the two
 * roots the shoreward one is u = [m(m·s + a) + sqrt(m²(m·s + a)² − (1 + m²)((m·s + a)² − R²))] / (1 + m²).
 */
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { metricCatalog } from '../support/catalogs.ts'

interface Shop {
  readonly catalog: Catalog
  readonly frame: string
  readonly length: number
  /** Deck surface to hinge axis, and hinge axis to the lower edge, square to the deck. */
  readonly drop: number
  readonly below: number
  readonly margin: number
  readonly step: number
}

const DEMO: Shop = {
  catalog: demoCatalog,
  frame: '4x8',
  length: 2.4384,
  drop: 0.0635,
  below: 0.0254 + 0.1524 - 0.0635,
  margin: 0.1524,
  step: 0.05,
}
/** Decking 0.03 and rail 0.15 over a hinge 0.05 under the deck. The sleeves hang lower, but not at the ramp's edge. */
const METRIC: Shop = {
  catalog: metricCatalog,
  frame: 'R125',
  length: 2.5,
  drop: 0.05,
  below: 0.03 + 0.15 - 0.05,
  margin: 0.1,
  step: 0.1,
}

function design(shop: Shop, bank: number, deckHeight: number, start: number | null, high = 0.2) {
  return parsed({
    format: 'leadline/design',
    version: 1,
    site: {
      soundings: [
        { distance: -12, depth: -12 * bank },
        { distance: 0, depth: 0 },
        { distance: 2, depth: 2 * bank },
        { distance: 6, depth: 2 * bank + 0.4 },
        { distance: 14, depth: 2 * bank + 0.8 },
      ],
      levels: { low: -0.3, high },
      bottom: 'gravel',
    },
    dock: { deckHeight, frame: shop.frame, sections: 3, ramp: true, start },
  })
}

function contact(shop: Shop, bank: number, deckHeight: number, start: number) {
  const radius2 = shop.length ** 2 + shop.below ** 2
  const q = bank * start + deckHeight - shop.drop
  const u =
    (bank * q + Math.sqrt(bank ** 2 * q ** 2 - (1 + bank ** 2) * (q ** 2 - radius2))) / (1 + bank ** 2)
  const x = start - u
  const z = -bank * x
  const tilt = Math.atan2(deckHeight - shop.drop - z, u) - Math.atan2(shop.below, shop.length)
  return { x, z, slope: Math.tan(tilt) }
}

describe('the ramp on a straight bank', () => {
  it.each([
    ['demo', DEMO, 0.15, 0.45, 0.8],
    ['demo', DEMO, 0.3, 0.45, 1.05],
    ['demo', DEMO, 0.3, 0.9, 1.6],
    ['demo', DEMO, 0.45, 0.6, 1.3],
    ['demo', DEMO, 0.05, 0.35, -0.5],
    ['metric', METRIC, 0.2, 0.5, 1.1],
    ['metric', METRIC, 0.35, 0.75, 1.4],
  ] as const)('%s shop: touches where circle and line meet (%#)', (_name, shop, bank, deck, start) => {
    const dock = deriveAtOnce(design(shop, bank, deck, start), shop.catalog)
    const exact = contact(shop, bank, deck, start)
    expect(dock.ramp).not.toBeNull()
    expect(dock.ramp!.shoreX).toBeCloseTo(exact.x, 5)
    expect(dock.ramp!.shoreZ).toBeCloseTo(exact.z, 5)
    expect(dock.ramp!.slope).toBeCloseTo(exact.slope, 5)
    expect(dock.ramp!.onEdge).toBe(false)
  })

  it.each([
    ['demo', DEMO, 0.3, 0.6, 0.2],
    ['demo', DEMO, 0.2, 0.7, 0.15],
    ['demo', DEMO, 0.45, 0.8, 0.3],
    ['metric', METRIC, 0.25, 0.6, 0.2],
    ['metric', METRIC, 0.4, 0.7, 0.25],
  ] as const)(
    '%s shop: by rule starts at the last step over ground high enough (%#)',
    (_name, shop, bank, deck, high) => {
      // Ground z = high + margin is at x = −z/m; the axis stands sqrt(R² − (a − z)²) farther out.
      const z = high + shop.margin
      const reach = Math.sqrt(shop.length ** 2 + shop.below ** 2 - (deck - shop.drop - z) ** 2)
      const exact = Math.floor((reach - z / bank) / shop.step + 1e-9) * shop.step
      expect(deriveAtOnce(design(shop, bank, deck, null, high), shop.catalog).start).toBeCloseTo(exact, 6)
    },
  )

  it('moves onto lower ground as it starts farther out, and slopes less down to it', () => {
    const at = (start: number) => deriveAtOnce(design(DEMO, 0.3, 0.45, start), demoCatalog).ramp!
    expect(at(1.3).shoreZ).toBeLessThan(at(1).shoreZ)
    expect(at(1.3).slope).toBeGreaterThan(at(1).slope)
  })
})

describe('the ramp on a wall', () => {
  const onWall = (height: number, deckHeight: number) =>
    deriveAtOnce(
      parsed({
        format: 'leadline/design',
        version: 1,
        site: {
          soundings: [
            { distance: 0.5, depth: 0.4 },
            { distance: 3, depth: 0.8 },
            { distance: 8, depth: 1.1 },
            { distance: 14, depth: 1.4 },
          ],
          levels: { low: -0.3, high: 0.2 },
          bottom: 'gravel',
          shore: { kind: 'wall', height },
        },
        dock: { deckHeight, frame: METRIC.frame, sections: 3, ramp: true },
      }),
      metricCatalog,
    )

  it.each([
    [0.6, 0.6],
    [0.72, 0.65],
    [0.7, 0.9],
  ])('rests on its top, never on its face (wall %d, deck %d)', (height, deckHeight) => {
    const { ramp, start } = onWall(height, deckHeight)
    expect(ramp!.shoreZ).toBeCloseTo(height, 5)
    // Its underside passes through the place that carries it, `below` under the axis, square to the deck.
    const tilt = Math.atan(ramp!.slope)
    const axis = deckHeight - METRIC.drop
    const underside = axis - METRIC.below / Math.cos(tilt) - (start! - ramp!.shoreX) * ramp!.slope
    expect(underside).toBeCloseTo(height, 4)
  })

  it.each([
    [0.6, 0.6],
    [0.72, 0.65],
    [0.7, 0.9],
  ])('is stepped onto from the wall (wall %d, deck %d)', (height, deckHeight) => {
    const dock = onWall(height, deckHeight)
    // The deck's shoreward edge is the ramp section's start.
    expect(dock.ramp!.step).toBeCloseTo(dock.sections[0]!.z - height, 4)
  })
})
