/** Clearances of a brace by hand: a brace as it hangs, over a bed that is told. */
import { describe, expect, it } from 'vitest'
import { shopOf } from '../../rules/catalog-index.ts'
import { demoCatalog, demoDesign, makeBed } from '../../rules/index.ts'
import { type BraceFit, lowClearance, toBed, toBedAtLeg, toFrame, toPad } from '../../rules/parts/braces.ts'
import type { PlacedLeg } from '../../rules/parts/legs.ts'
import { parsed } from '../support/by-hand.ts'

/** A clamp of the demo shop is 50.8 mm high; its braces' tube is 31.75 mm across, so at an end the clamp counts. */
const CLAMP = 0.0508 / 2
const TUBE = 0.03175 / 2

/** A brace from x = 2 m, its low hole at −0.5 m, to x = 4 m and +0.1 m, over a bed that is told by its soundings. */
function hung(soundings: readonly { distance: number; depth: number; firm?: number }[], deckHeight = 0.5) {
  const design = parsed({
    ...demoDesign,
    site: { ...demoDesign.site, soundings },
    dock: { ...demoDesign.dock, deckHeight },
  })
  const site = { design, shop: shopOf(demoCatalog), bed: makeBed(design.site) }
  const leg = (x: number) =>
    ({
      x,
      y: 0,
      bed: site.bed.firmAt(x, 0),
      pad: demoCatalog.pads[0]!,
      section: { frame: demoCatalog.frames[0]! },
    }) as PlacedLeg
  const brace = demoCatalog.braces[0]!
  expect(site.shop.tubeHalf(brace)).toBeCloseTo(TUBE, 9)
  const fit: BraceFit = { brace, low: leg(2), high: leg(4), lowZ: -0.5, highZ: 0.1 }
  return { fit, site }
}

describe('a brace over its bed', () => {
  it('is nearest by the underside of its tube where the bed comes up between its legs', () => {
    // At x = 3 m its middle is at −0.2 m, the bed at −0.4 m: 0.2 m less half of the tube. At the low leg 1.0 − 0.5 less half of the clamp.
    const { fit, site } = hung([
      { distance: 0, depth: 1 },
      { distance: 2, depth: 1 },
      { distance: 3, depth: 0.4 },
      { distance: 4, depth: 1 },
      { distance: 8, depth: 1 },
    ])
    expect(toBed(fit, site)).toBeCloseTo(0.2 - TUBE, 9)
    expect(toBedAtLeg(fit, site)).toBeCloseTo(0.5 - CLAMP, 9)
  })

  it('is nearest by its clamp on a level bed, and by its tube where a bank stands at the high leg', () => {
    const level = hung([
      { distance: 0, depth: 1 },
      { distance: 8, depth: 1 },
    ])
    expect(toBed(level.fit, level.site)).toBeCloseTo(0.5 - CLAMP, 9)
    // The bank is a meter up in a meter: at x = 4 m the bed is at 0, the tube's middle at 0.1 m; at 3.9 m 0.1 m lower, the tube 0.03 m.
    const bank = hung([
      { distance: 0, depth: 1 },
      { distance: 3, depth: 1 },
      { distance: 4, depth: 0 },
      { distance: 8, depth: 0 },
    ])
    expect(toBed(bank.fit, bank.site)).toBeCloseTo(0.1 - TUBE, 9)
  })

  it('is looked at every 10 cm: a ridge between two such places counts as high as it is there', () => {
    // A ridge at x = 3.05 m, −0.4 m, falling by 0.6 in 1: −0.43 m at 3.0 and 3.1 m, where the tube's middle is at −0.2 and −0.17 m.
    const { fit, site } = hung([
      { distance: 0, depth: 1 },
      { distance: 2.05, depth: 1 },
      { distance: 3.05, depth: 0.4 },
      { distance: 4.05, depth: 1 },
      { distance: 8, depth: 1 },
    ])
    expect(toBed(fit, site)).toBeCloseTo(0.23 - TUBE, 9)
  })

  it('is measured to the pad on firm bottom under soft, and told to the nearer of bed and pad', () => {
    const { fit, site } = hung([
      { distance: 0, depth: 0.8, firm: 1 },
      { distance: 8, depth: 0.8, firm: 1 },
    ])
    // The soft bed 0.3 m under the hole; the pad's top over firm bottom: sole 6.35 mm and socket 76.2 mm.
    const pad = 0.00635 + 0.0762
    expect(toBedAtLeg(fit, site)).toBeCloseTo(0.3 - CLAMP, 9)
    expect(toPad(fit, site)).toBeCloseTo(0.5 - CLAMP - pad, 9)
    expect(lowClearance(fit, site)).toBeCloseTo(0.3 - CLAMP, 9)
    const firm = hung([
      { distance: 0, depth: 0.8 },
      { distance: 8, depth: 0.8 },
    ])
    expect(lowClearance(firm.fit, firm.site)).toBeCloseTo(0.3 - CLAMP - pad, 9)
  })

  it('is measured up to the underside of frame and sleeve', () => {
    // Deck at 0.5 m; planks 25.4 mm, rails 152.4 mm, sleeves no longer: the underside is at 0.3222 m.
    const { fit, site } = hung([
      { distance: 0, depth: 1 },
      { distance: 8, depth: 1 },
    ])
    expect(toFrame(fit, site)).toBeCloseTo(0.3222 - 0.1 - CLAMP, 9)
  })
})
