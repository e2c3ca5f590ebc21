/** Clearances of a brace by hand: a brace as it hangs, over a bed that is told. */
import { describe, expect, it } from 'vitest'
import { shopOf } from '../../rules/catalog-index.ts'
import { demoCatalog, demoDesign, makeBed } from '../../rules/index.ts'
import { emitBrace } from '../../rules/parts/brace-parts.ts'
import {
  type BraceFit,
  braceAll,
  lowClearance,
  toBed,
  toBedAtLeg,
  toFrame,
  toPad,
} from '../../rules/parts/braces.ts'
import { triedOn } from '../../rules/parts/braces-tried.ts'
import type { PlacedLeg } from '../../rules/parts/legs.ts'
import type { PlacedPair } from '../../rules/parts/pairs.ts'
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

describe('which way a brace hangs', () => {
  /** One section on legs of 5 ft, over a bed that is told across the dock: by y, m. */
  const across = (bedAt: (y: number) => number) => {
    const design = parsed({
      ...demoDesign,
      dock: { ...demoDesign.dock, sections: 1, ramp: false, start: 3, extras: {}, reserve: 0.4 },
    })
    const bed = { ...makeBed(design.site), bedAt: (_x: number, y: number) => bedAt(y) }
    const site = { design, shop: shopOf(demoCatalog), bed }
    const [stock] = site.shop.legs.filter(({ length }) => Math.abs(length - 1.524) < 1e-6)
    const leg = (y: number) =>
      ({
        id: y > 0 ? 'left' : 'right',
        x: 5,
        y,
        bed: bedAt(y),
        stock,
        pad: demoCatalog.pads[0]!,
        section: { frame: demoCatalog.frames[0]! },
      }) as PlacedLeg
    const pair: PlacedPair = {
      id: 's1.end',
      legs: [leg(0.522287), leg(-0.522287)],
      spacing: 1.044574,
      across: true,
    }
    const [braced] = braceAll([pair], site)
    return { ...braced!, tried: triedOn(braced!, site) }
  }
  /** Legs 5 ft long are for 42 in braces: a rise of 0.49886 m, so over the pad (0.2722 − higher bed)/2 + what the low leg is deeper by. */
  const straight = (left: number, right: number) => (y: number) =>
    (left + right) / 2 + ((left - right) / 1.044574) * y

  it('with its low end left on level ground, right where only that fits', () => {
    expect(across(straight(-0.5, -0.5)).fit).toMatchObject({ low: { id: 'left' }, high: { id: 'right' } })
    // A bed 1 cm deeper on the right: left (0.2722 + 0.49)/2 = 0.3811 m, 0.38278 m are asked for; right 0.3911 m.
    const told = across(straight(-0.49, -0.5))
    expect(told).toMatchObject({ level: true, fit: { low: { id: 'right' } } })
    // And where neither does, both were tried.
    const none = across(straight(-0.48, -0.48))
    expect(none.fit).toBeNull()
    expect(none.tried.map(({ low }) => low.id)).toEqual(['left', 'right', 'left', 'right'])
  })

  it('with its low end on the deeper leg elsewhere, and no other way', () => {
    expect(across(straight(-0.7, -0.5)).fit).toMatchObject({ low: { id: 'left' } })
    expect(across(straight(-0.5, -0.7)).fit).toMatchObject({ low: { id: 'right' } })
    // A stone beside the deeper leg, up to 0.4 m under water, is in the way of the low end alone.
    const stone = (y: number) => (Math.abs(y - 0.35) < 0.08 ? -0.4 : straight(-0.7, -0.5)(y))
    const told = across(stone)
    expect(told.level).toBe(false)
    expect(told.fit).toBeNull()
    expect(new Set(told.tried.map(({ low }) => low.id))).toEqual(new Set(['left']))
  })

  it('piece by piece: tube up from the low hole, clamps facing each other, bolts square to it', () => {
    const { pair, fit } = across(straight(-0.7, -0.5))
    const seen: { kind: string; at: number[]; turn: readonly number[] }[] = []
    emitBrace(
      (type, _of, _section, x, y, z, turn) => void seen.push({ kind: type.kind, at: [x, y, z], turn }),
      pair,
      fit!,
      shopOf(demoCatalog),
    )
    /** Where the x axis of a turn points. */
    const ahead = ([x, y, z, w]: readonly number[]) => [
      1 - 2 * (y! * y! + z! * z!),
      2 * (x! * y! + z! * w!),
      2 * (x! * z! - y! * w!),
    ]
    const of = (kind: string) => seen.filter((one) => one.kind === kind)
    const near = (actual: readonly number[], expected: readonly number[]) => {
      actual.forEach((value, i) => {
        expect(value).toBeCloseTo(expected[i]!, 4)
      })
    }
    // Low on the left: the holes 2 in from the legs' axes, 0.942974 m apart, the upper 0.49886 m up. Middle: (0.2722 − 0.5)/2 = −0.1139 m.
    const [low, high] = [-0.1139 - 0.24943, -0.1139 + 0.24943]
    const [tube] = of('brace')
    near(tube!.at, [5, 0.522287 - 0.0508, low])
    near(ahead(tube!.turn), [0, -0.942974 / 1.0668, 0.49886 / 1.0668])
    const clamps = of('brace-clamp')
    near(
      clamps.flatMap(({ at }) => at),
      [5, 0.522287, low, 5, -0.522287, high],
    )
    near(
      clamps.flatMap(({ turn }) => ahead(turn)),
      [0, -1, 0, 0, 1, 0],
    )
    const bolts = of('brace-bolt')
    near(
      bolts.flatMap(({ at }) => at),
      [5, 0.471487, low, 5, -0.471487, high],
    )
    for (const { turn } of bolts) near(ahead(turn), [1, 0, 0])
  })
})
