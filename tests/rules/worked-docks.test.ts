/**
 * Three docks worked by hand on the demo shop's catalog, the arithmetic beside each figure.
 *
 * What all three share (demo catalog, m): decking 0.0254 over the frame top; rail 0.1524 and sleeve 0.1524, so the underside is
 * 0.1778 under the deck. Leg axis 0.087313 in from both edges. Pitch 2.4384 + 0.0254 = 2.4638, so end legs follow a section's
 * start at 2.4384 − 0.087313 = 2.351087. Sole 0.00635; pad's top 0.00635 + 0.0762 = 0.08255 over the bed.
 * Braces: clamp reach 0.0508 at both legs; half a clamp 0.0254 beyond each hole. A level pair over bed b under a frame with
 * underside u: middle m = (u + b) / 2, holes at m ∓ rise / 2, low clearance = low hole − 0.0254 − (b + 0.08255),
 * high clearance = u − high hole − 0.0254.
 *
 * Unit masses, g (areas x length x density: aluminum 2700, cedar 370, steel 7850 kg/m3):
 * - 6x2 rail: 0.0508·0.1524 − 0.04445·0.14605 = 1.2499975e-3 m2. 2x2: 0.0508² − 0.04445² = 6.048375e-4. 2 in pipe:
 *   π·0.003912·(0.060325 − 0.003912) = 6.933107e-4. 2-1/2 in pipe: π·0.005156·0.067869 = 1.0993456e-3.
 *   Brace tube: π·0.003175·0.028575 = 2.850230e-4.
 * - frame 4x8: rails 2·2.4384, ends 2·(1.2192 − 0.1016) = 2·1.1176 of 6x2: 7.112·1.2499975e-3 = 8.889982e-3 m3; cross
 *   3·1.1176·6.048375e-4 = 2.027899e-3; sleeves 4·0.1524·1.0993456e-3 = 6.701611e-4; sum 1.1588043e-2·2700 = 31.288 kg.
 * - frame 5x8: rails 4.8768 + 2·1.4224 = 7.7216 → 9.651981e-3; cross 3·1.4224·6.048375e-4 = 2.580963e-3; sleeves as
 *   above; sum 1.2903105e-2·2700 = 34.838 kg.
 * - legs: 6.933107e-4·2700 = 1.8719390 kg/m: 3 ft 1.712, 4 ft 2.282, 5 ft 2.853, 6 ft 3.423, 7 ft 3.994, 8 ft 4.565.
 * - pad: plate 0.3048·0.254·0.00635 + lip 0.254·0.00635·(0.0381 − 0.00635) = 4.916119e-4 + 5.120958e-5 = 5.428215e-4; socket
 *   0.0762·1.0993456e-3 = 8.377013e-5; sum 6.265916e-4·2700 = 1.692 kg.
 * - braces: 2.850230e-4·2700 = 0.7695620 kg/m · (holes + 2·0.0254): 42 in 1.1176 → 0.860; 54 in 1.4224 → 1.095;
 *   53 in 1.397 → 1.075; 63 in 1.651 → 1.271.
 * - panel 4x4: 8 planks, pitch (1.21285 − 0.14605)/7 = 0.1524; the notch reaches in to 1.21285 − 0.1397 = 1.07315; the 7th
 *   plank ends at 6·0.1524 + 0.14605 = 1.06045, so only the 8th is cut, by 2·0.1397 = 0.2794. Planks (8·1.2192 − 0.2794)
 *   ·0.00370967·370 = 9.4742·1.3725779 = 13.004; battens 3·1.0668·0.00338709·370 = 4.011; sum 17.015 kg.
 * - panel 5x4: planks (8·1.524 − 0.2794)·1.3725779 = 16.351; battens 4·1.0668·1.2532233 = 5.348; sum 21.699 kg.
 * - hinge bar: 0.009525·0.0762·1.016·2700 = 1.991 kg.
 */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { expectBraces, expectLegs, expectParts, parsed } from '../support/by-hand.ts'
import { validate } from '../support/validate.ts'
import { contractDemo, workedL, workedStraight } from '../support/worked-designs.ts'

const [FT3, FT4, FT5, FT6, FT7, FT8] = [0.9144, 1.2192, 1.524, 1.8288, 2.1336, 2.4384]

describe('the demo dock, by hand', () => {
  const design = parsed(contractDemo)
  const dock = deriveAtOnce(design, demoCatalog)

  it('is the design that the engine carries as its demo', () => {
    expect(parsed(demoDesign)).toEqual(design)
  })

  it('stands, with no stop, and keeps every law', () => {
    expect(dock.findings.filter((f) => f.severity === 'stop')).toEqual([])
    expect(validate(dock, design, demoCatalog)).toEqual([])
  })

  it('starts at 1.05 m, the most lakeward step with the ramp on ground 0.4024 m up', () => {
    // Hinge axis at 0.45 − 0.0635 = 0.3865. Lower shoreward edge 2.4384 along and 0.0254 + 0.1524 − 0.0635 = 0.1143 below the
    // axis: R² = 5.94579456 + 0.01306449 = 5.95885905. Least ground 0.25 + 0.1524 = 0.4024, on the bank (0.3 in 1) at
    // x = −1.341333. There the axis is sqrt(5.95885905 − 0.0159²) = 2.441025 farther out: start ≤ 1.099692, so 1.05 of 0.05 steps.
    expect(dock.start).toBe(1.05)
  })

  it('has its ramp end at −1.390884 m, sloping 0.059514 down to the dock', () => {
    // u = 1.05 − x: (0.3u − 0.7015)² + u² = R² → 1.09u² − 0.4209u − 5.4667568 = 0 → u = (0.4209 + 4.900226)/2.18 = 2.440884.
    // x = 1.05 − 2.440884, z = 0.3·1.390884. Tilt = atan((0.3865 − 0.417265)/2.440884) − atan(0.1143/2.4384)
    // = −0.0126035 − 0.0468406 = −0.0594441; its tangent is the slope.
    expect(dock.ramp?.shoreX).toBeCloseTo(-1.390884, 5)
    expect(dock.ramp?.shoreZ).toBeCloseTo(0.417265, 5)
    expect(dock.ramp?.slope).toBeCloseTo(-0.059514, 5)
    expect(dock.ramp?.onEdge).toBe(false)
    // Deck's shoreward edge: 0.3865 − 2.4384·sin(−0.0594441) + 0.0635·cos = 0.594751, at x = 1.05 − 2.4384·cos(…) −
    // 0.0635·sin(…) = −1.380321, over ground at 0.3·1.380321 = 0.414096: a step of 0.180655.
    expect(dock.ramp?.step).toBeCloseTo(0.180655, 5)
  })

  it('has every leg at its height and length', () => {
    // Beds: 0.125 in 1 to 4 m, 0.1 in 1 to 8 m, 0.125 in 1 beyond. Set height = 0.45 − bed. Reserve: 1.64·0.03 + 0.03 (sand)
    // = 0.0792 < 0.1524. Required = set height + 0.1524 − 0.00635. y = 0.6096 − 0.087313 = 0.522287.
    // x: 1.05 + 0.087313; then 1.05 + 2.351087 and on by 2.4638.
    const at = (x: number, bed: number, set: number, required: number, stock: number, above: number) =>
      [bed, set, 0.1524, required, stock, above, x] as const
    const stations: [string, ReturnType<typeof at>][] = [
      // −0.125·1.137313; 3 ft: 0.9144 + 0.00635 − 0.592164
      ['s2.start', at(1.137313, -0.142164, 0.592164, 0.738214, FT3, 0.328586)],
      // −0.125·3.401087; over 3 ft, so 4 ft: 1.2192 + 0.00635 − 0.875136
      ['s2.end', at(3.401087, -0.425136, 0.875136, 1.021186, FT4, 0.350414)],
      // −0.5 − 0.1·1.864887; 5 ft: 1.524 + 0.00635 − 1.136489
      ['s3.end', at(5.864887, -0.686489, 1.136489, 1.282539, FT5, 0.393861)],
      // −0.9 − 0.125·0.328687; 6 ft: 1.8288 + 0.00635 − 1.391086
      ['s4.end', at(8.328687, -0.941086, 1.391086, 1.537136, FT6, 0.444064)],
      // −0.9 − 0.125·2.792487; over 6 ft by 16 mm, so 7 ft: 2.1336 + 0.00635 − 1.699061
      ['s5.end', at(10.792487, -1.249061, 1.699061, 1.845111, FT7, 0.440889)],
    ]
    expectLegs(
      dock,
      stations.flatMap(([edge, [bed, set, reserve, required, stock, above, x]]) => [
        [`${edge}.left`, x, 0.522287, bed, set, reserve, required, stock, above],
        [`${edge}.right`, x, -0.522287, bed, set, reserve, required, stock, above],
      ]),
    )
  })

  it('has every brace, alternating from the left on its level bed', () => {
    // Spacing 2·0.522287 = 1.044574, between holes 0.942974. Underside 0.45 − 0.1778 = 0.2722.
    // 42 in: rise = sqrt(1.0668² − 0.942974²) = sqrt(0.248862) = 0.498861. 54 in: sqrt(1.3716² − 0.942974²) = 0.996035.
    expectBraces(dock, [
      ['s2.start', null],
      ['s2.end', null],
      // m = (0.2722 − 0.686489)/2 = −0.207144; low clearance −0.456575 − 0.0254 + 0.603939; high 0.2722 − 0.042286 − 0.0254
      ['s3.end', 'brace-42', 0.498861, 's3.end.left', -0.456575, 0.042286, 0.121964, 0.204514],
      // m = −0.334443; −0.583873 − 0.0254 + 0.858536; 0.2722 + 0.085012 − 0.0254
      ['s4.end', 'brace-42', 0.498861, 's4.end.right', -0.583873, -0.085012, 0.249262, 0.331812],
      // m = −0.488430; −0.986448 − 0.0254 + 1.166511; 0.2722 − 0.009587 − 0.0254
      ['s5.end', 'brace-54', 0.996035, 's5.end.left', -0.986448, 0.009587, 0.154663, 0.237213],
    ])
  })

  it('lists every part, with masses and prices that add up', () => {
    expectParts(
      dock,
      [
        ['frame', '4x8', 5, 0, 31288, 38900],
        ['leg', 'leg-3', 2, 0, 1712, 6950],
        ['leg', 'leg-4', 2, 0, 2282, 8300],
        ['leg', 'leg-5', 2, 0, 2853, 9650],
        ['leg', 'leg-6', 2, 0, 3423, 11000],
        ['leg', 'leg-7', 2, 0, 3994, 12350],
        ['foot-pad', 'pad-10x12', 10, 0, 1692, 2400],
        ['pad-bolt', 'bolt-3/8-pad', 10, 1, 70, 140], // 10 · 0.05 → 1
        ['leg-cap', 'leg-cap', 10, 1, 50, 280],
        ['sleeve-cap', 'sleeve-cap', 10, 1, 60, 260], // 5·4 sleeves − 10 legs
        ['set-bolt', 'bolt-1/2-set', 20, 1, 90, 180], // 2 a sleeve; 20 · 0.05 = 1
        ['hook-bracket', 'hook-bracket', 6, 0, 950, 2150], // 3 joints, 2 each
        ['hook-bolt', 'bolt-5/16-hook', 12, 1, 50, 110],
        ['hinge-bar', 'hinge-bar', 1, 0, 1991, 5400],
        ['bar-bolt', 'bolt-3/8-bar', 3, 1, 70, 140],
        ['hinge-pin', 'hinge-pin', 2, 0, 420, 1300],
        ['pin-bolt', 'bolt-3/8-pin', 2, 1, 60, 130],
        ['brace', 'brace-42', 2, 0, 841, 3900],
        ['brace', 'brace-54', 1, 0, 1075, 4700],
        ['brace-clamp', 'brace-clamp', 6, 0, 360, 1250],
        ['brace-bolt', 'bolt-3/8-brace', 6, 1, 60, 130],
        ['deck-panel', 'panel-4x4', 10, 0, 17015, 14900],
        ['deck-clip', 'deck-clip', 20, 2, 60, 240], // 20 · 0.05 = 1, at least 2
        ['bumper', 'bumper-18', 4, 0, 1400, 3400],
        ['auger', 'auger-8', 2, 0, 3100, 5900],
        ['post-clamp', 'post-clamp', 4, 0, 800, 2300],
      ],
      ['anchor-post'],
    )
    // Which posts depends on where the rule puts them: each must be the shortest that reaches from 0.9144 under the bed to
    // 0.1524 over the deck (validate asks that); here that there are two, and that the rest adds up without them.
    const posts = dock.parts.filter((row) => row.kind === 'anchor-post')
    expect(posts.reduce((n, row) => n + row.quantity, 0)).toBe(2)
    const postGrams = posts.reduce((n, row) => n + Math.round(row.mass * 1000), 0)
    const postCents = posts.reduce((n, row) => n + row.price, 0)
    // Frames 156.440 + legs 28.528 + pads 16.920 + bolts at pads 0.700, sleeves 1.800, hooks 0.600, bar 0.210, pins 0.120, braces
    // 0.360 + caps 1.100 + brackets 5.700 + bar 1.991 + pins 0.840 + braces 2.757 + clamps 2.160 + panels 170.150 + clips 1.200
    // + bumpers 5.600 + augers 6.200 + post clamps 3.200 = 406.576 kg.
    expect(Math.round(dock.totals.mass * 1000) - postGrams).toBe(406_576)
    // Frames 194500, legs 96500, pads 24000, pad bolts 1400, leg caps 2800, sleeve caps 2600, set bolts 3600, brackets 12900,
    // hook bolts 1320, bar 5400, bar bolts 420, pins 2600, pin bolts 260, braces 12500, clamps 7500, brace bolts 780, panels
    // 149000, clips 4800, bumpers 13600, augers 11800, post clamps 9200. Spares are not charged.
    expect(dock.totals.price - postCents).toBe(557_480)
    expect(dock.totals.currency).toBe('USD')
  })

  it('goes in standing section first, then the ramp, then outward', () => {
    expect(dock.workOrder).toEqual(['s2', 's1', 's3', 's4', 's5'])
    expect(dock.sections.map((s) => [s.id, s.role, s.on])).toEqual([
      ['s1', 'ramp', null],
      ['s2', 'standing', null],
      ['s3', 'following', 's2'],
      ['s4', 'following', 's3'],
      ['s5', 'following', 's4'],
    ])
  })
})

describe("the trade's worked check, by hand", () => {
  const design = parsed(workedStraight)
  const dock = deriveAtOnce(design, demoCatalog)

  it('stands, with no stop, and keeps every law', () => {
    expect(dock.findings.filter((f) => f.severity === 'stop')).toEqual([])
    expect(validate(dock, design, demoCatalog)).toEqual([])
  })

  it('starts at 1.65 m with the ramp rising 0.016885', () => {
    // Axis at 0.5334 − 0.0635 = 0.4699; least ground 0.15 + 0.1524 = 0.3024 at x = −0.756 (0.4 in 1); sqrt(5.95885905 −
    // 0.1675²) = 2.435324 → start ≤ 1.679324 → 1.65. u = 1.65 − x: ground 0.4u − 0.66, less the axis 0.4u − 1.1299:
    // 1.16u² − 0.90392u − 4.68218504 = 0 → u = (0.90392 + sqrt(0.817071 + 21.725339))/2.32 = 2.436123.
    // x = −0.786123, z = 0.314449. Tilt = atan((0.4699 − 0.314449)/2.436123) − 0.0468406 = 0.0637243 − 0.0468406 = 0.0168837.
    expect(dock.start).toBe(1.65)
    expect(dock.ramp?.shoreX).toBeCloseTo(-0.786123, 5)
    expect(dock.ramp?.shoreZ).toBeCloseTo(0.314449, 5)
    expect(dock.ramp?.slope).toBeCloseTo(0.016885, 5)
    // Deck's edge 0.4699 − 2.4384·0.0168829 + 0.0635·0.9998575 = 0.492224 at x = 1.65 − 2.438052 − 0.001072 = −0.789125, over
    // ground at 0.315650.
    expect(dock.ramp?.step).toBeCloseTo(0.176574, 5)
  })

  it('has 0, 4, 2 and 2 legs, and where it is 29 in deep a set height of 50 in on 5 ft legs', () => {
    expect(['s1', 's2', 's3', 's4'].map((id) => dock.legs.filter((l) => l.section === id).length)).toEqual([
      0, 4, 2, 2,
    ])
    // Beds: 0.175 in 1 to 2 m, 0.125 to 4 m, 0.0683 to 6 m, level. Set height = 0.5334 − bed; required = + 0.14605.
    const row = (x: number, bed: number, set: number, required: number, stock: number, above: number) =>
      [x, bed, set, required, stock, above] as const
    const stations: [string, ReturnType<typeof row>][] = [
      // 1.65 + 0.087313; −0.175·1.737313; 1.2192 + 0.00635 − 0.837430
      ['s2.start', row(1.737313, -0.30403, 0.83743, 0.98348, FT4, 0.38812)],
      // 1.65 + 2.351087; −0.6 − 0.0683·0.001087; over 4 ft
      ['s2.end', row(4.001087, -0.600074, 1.133474, 1.279524, FT5, 0.396876)],
      // 50 in = 1.27; 1.27 + 0.1524 − 0.00635; 10 in + the sole of 1/4 in = 0.26035 over the deck
      ['s3.end', row(6.464887, -0.7366, 1.27, 1.41605, FT5, 0.26035)],
      ['s4.end', row(8.928687, -0.7366, 1.27, 1.41605, FT5, 0.26035)],
    ]
    expectLegs(
      dock,
      stations.flatMap(([edge, [x, bed, set, required, stock, above]]) => [
        [`${edge}.left`, x, 0.522287, bed, set, 0.1524, required, stock, above],
        [`${edge}.right`, x, -0.522287, bed, set, 0.1524, required, stock, above],
      ]),
    )
  })

  it('has the short brace at all three pairs of 5 ft legs', () => {
    // Underside 0.5334 − 0.1778 = 0.3556; rise 0.498861 as in the demo.
    expectBraces(dock, [
      ['s2.start', null],
      // m = (0.3556 − 0.600074)/2 = −0.122237; −0.371668 − 0.0254 + 0.517524; 0.3556 − 0.127193 − 0.0254
      ['s2.end', 'brace-42', 0.498861, 's2.end.left', -0.371668, 0.127193, 0.120457, 0.203007],
      // m = −0.1905; −0.439930 − 0.0254 + 0.65405; 0.3556 − 0.058930 − 0.0254
      ['s3.end', 'brace-42', 0.498861, 's3.end.right', -0.43993, 0.05893, 0.18872, 0.27127],
      ['s4.end', 'brace-42', 0.498861, 's4.end.left', -0.43993, 0.05893, 0.18872, 0.27127],
    ])
  })

  it('lists every part: 8 pads, 8 leg caps, 8 sleeve caps, 16 set bolts, 1 bar, 3 bar bolts, 2 pins, 4 brackets', () => {
    expectParts(dock, [
      ['frame', '4x8', 4, 0, 31288, 38900],
      ['leg', 'leg-4', 2, 0, 2282, 8300],
      ['leg', 'leg-5', 6, 0, 2853, 9650],
      ['foot-pad', 'pad-10x12', 8, 0, 1692, 2400],
      ['pad-bolt', 'bolt-3/8-pad', 8, 1, 70, 140],
      ['leg-cap', 'leg-cap', 8, 1, 50, 280],
      ['sleeve-cap', 'sleeve-cap', 8, 1, 60, 260],
      ['set-bolt', 'bolt-1/2-set', 16, 1, 90, 180], // 0.8 → 1
      ['hook-bracket', 'hook-bracket', 4, 0, 950, 2150],
      ['hook-bolt', 'bolt-5/16-hook', 8, 1, 50, 110],
      ['hinge-bar', 'hinge-bar', 1, 0, 1991, 5400],
      ['bar-bolt', 'bolt-3/8-bar', 3, 1, 70, 140],
      ['hinge-pin', 'hinge-pin', 2, 0, 420, 1300],
      ['pin-bolt', 'bolt-3/8-pin', 2, 1, 60, 130],
      ['brace', 'brace-42', 3, 0, 841, 3900],
      ['brace-clamp', 'brace-clamp', 6, 0, 360, 1250],
      ['brace-bolt', 'bolt-3/8-brace', 6, 1, 60, 130],
      ['deck-panel', 'panel-4x4', 8, 0, 17015, 14900],
      ['deck-clip', 'deck-clip', 16, 2, 60, 240], // 0.8 → 1, at least 2
    ])
    // 125.152 + 21.682 + 13.536 + 0.560 + 0.400 + 0.480 + 1.440 + 3.800 + 0.400 + 1.991 + 0.210 + 0.840 + 0.120 + 2.523 + 2.160
    // + 0.360 + 136.120 + 0.960 = 312.734 kg
    expect(Math.round(dock.totals.mass * 1000)).toBe(312_734)
    // 155600 + 74500 + 19200 + 1120 + 2240 + 2080 + 2880 + 8600 + 880 + 5400 + 420 + 2600 + 260 + 11700 + 7500 + 780 + 119200 + 3840
    expect(dock.totals.price).toBe(418_800)
  })
})

describe('an L on a cross slope, by hand', () => {
  const design = parsed(workedL)
  const dock = deriveAtOnce(design, demoCatalog)

  it('stands, with no stop, and keeps every law', () => {
    expect(dock.findings.filter((f) => f.severity === 'stop')).toEqual([])
    expect(validate(dock, design, demoCatalog)).toEqual([])
  })

  it('starts at −0.70 m, the most shoreward step at which the frame clears the bank', () => {
    // Underside 0.5 − 0.1778 = 0.3222, less 0.1016: the bed may rise to 0.2206. No sounding is on the shore, so the water's edge
    // (0, 0) is added; landward the bank rises on 0.25 in 1. The shallower, right side at y = −0.762 is 0.03·1.262 = 0.03786
    // higher than the soundings' line: −0.25x + 0.03786 ≤ 0.2206 → x ≥ −0.73096 → −0.70 of 0.05 steps.
    expect(dock.start).toBe(-0.7)
    expect(dock.ramp).toBeNull()
  })

  it('hangs the head on the right side of s4, flush with its end', () => {
    // s4 starts at −0.7 + 3·2.4638 = 6.6914 and ends at 9.1298. h1's start edge is 1.524 wide, its middle at 9.1298 − 0.762; from
    // the right side (−0.762) over the gap of 0.0254 at y = −0.7874; it looks right: 270°. h2 one pitch on.
    const h1 = dock.sections.find((s) => s.id === 'h1')!
    const h2 = dock.sections.find((s) => s.id === 'h2')!
    expect([h1.x, h1.y, h1.heading, h1.on]).toEqual([8.3678, -0.7874, 270, 's4'])
    expect([h2.x, h2.y, h2.heading, h2.on]).toEqual([8.3678, -3.2512, 270, 'h1'])
    expect(dock.sections.map((s) => s.id)).toEqual(['s1', 's2', 's3', 's4', 'h1', 'h2'])
  })

  it('has every leg at its height and length', () => {
    // Bed = f(x) − 0.03·(y − 0.5); f through (0, 0), (2, −0.5), (5, −0.9), (8, −1.45 firm), (11, −1.6). Run: y = ±(0.762 −
    // 0.087313) = ±0.674687, so left −0.03·0.174687 = −0.005241 and right +0.03·1.174687 = +0.035241.
    // Reserve 1.64·0.08 + 0.025 = 0.1562 + scour and sinkage (sand 0.01, gravel 0.005) of the bottom that the nearest sounding states, else the site's: rock 0 near the
    // soundings at 0 and 2, sand 0.03 near the one at 5 (3.5 to 6.5), gravel 0.02 near the one at 8 (6.5 to 9.5).
    // Required = 0.5 − bed + reserve − 0.00635. Above deck = stock + 0.00635 − set height.
    const [ROCK, SAND, GRAVEL] = [0.1562, 0.1962, 0.1812]
    expectLegs(dock, [
      // f(−0.612687) = 0.153172
      ['s1.start.left', -0.612687, 0.674687, 0.147931, 0.352069, ROCK, 0.501919, FT3, 0.568681],
      ['s1.start.right', -0.612687, -0.674687, 0.188412, 0.311588, ROCK, 0.461438, FT3, 0.609162],
      // f(1.651087) = −0.412772
      ['s1.end.left', 1.651087, 0.674687, -0.418012, 0.918012, ROCK, 1.067862, FT4, 0.307538],
      ['s1.end.right', 1.651087, -0.674687, -0.377531, 0.877531, ROCK, 1.027381, FT4, 0.348019],
      // f(4.114887) = −0.5 − 0.133333·2.114887 = −0.781985
      ['s2.end.left', 4.114887, 0.674687, -0.787226, 1.287226, SAND, 1.477076, FT5, 0.243124],
      ['s2.end.right', 4.114887, -0.674687, -0.746744, 1.246744, SAND, 1.436594, FT5, 0.283606],
      // f(6.578687) = −0.9 − 0.183333·1.578687 = −1.189426; both need more than 6 ft, the right by 0.2 mm
      ['s3.end.left', 6.578687, 0.674687, -1.194667, 1.694667, GRAVEL, 1.869517, FT7, 0.445283],
      ['s3.end.right', 6.578687, -0.674687, -1.154185, 1.654185, GRAVEL, 1.829035, FT7, 0.485765],
      // f(9.042487) = −1.45 − 0.05·1.042487 = −1.502124; over 7 ft by 8 mm at the right
      ['s4.end.left', 9.042487, 0.674687, -1.507365, 2.007365, GRAVEL, 2.182215, FT8, 0.437385],
      ['s4.end.right', 9.042487, -0.674687, -1.466884, 1.966884, GRAVEL, 2.141734, FT8, 0.477866],
      // Head: own left is lakeward. x = 9.1298 − 0.087313 and 9.1298 − 1.524 + 0.087313 = 7.693113, f = −0.9 − 0.183333·2.693113
      // = −1.393737. y = −0.7874 − 2.351087 = −3.138487: +0.03·3.638487 = +0.109155; one pitch on +0.183069.
      ['h1.end.left', 9.042487, -3.138487, -1.39297, 1.89297, GRAVEL, 2.06782, FT7, 0.24698],
      ['h1.end.right', 7.693113, -3.138487, -1.284583, 1.784583, GRAVEL, 1.959433, FT7, 0.355367],
      ['h2.end.left', 9.042487, -5.602287, -1.319056, 1.819056, GRAVEL, 1.993906, FT7, 0.320894],
      ['h2.end.right', 7.693113, -5.602287, -1.210669, 1.710669, GRAVEL, 1.885519, FT7, 0.429281],
    ])
  })

  it('has every brace with its low end on the deeper leg, the longer leg of a pair deciding which', () => {
    // Spacing 1.349374, between holes 1.247774. 53 in: rise sqrt(1.3462² − 1.247774²) = 0.505287; 63 in: sqrt(1.6002² −
    // 1.247774²) = 1.001848. Underside 0.3222; m over the higher bed; low clearance over the deeper leg's pad. The run's beds
    // differ by 0.03·1.349374 = 0.040481 > 0.025.
    expectBraces(dock, [
      ['s1.start', null],
      ['s1.end', null],
      // m = (0.3222 − 0.746744)/2 = −0.212272; low −0.464915 − 0.0254 + 0.787226 − 0.08255; high 0.3222 − 0.040372 − 0.0254
      ['s2.end', 'brace-53', 0.505287, 's2.end.left', -0.464915, 0.040371, 0.21436, 0.256429],
      // Firm bottom is sounded at 8 m only: between 5 and 11 m the bed's surface is higher, and it is what a brace must clear:
      // f(6.578687) = −0.9 − 0.133333·1.578687 = −1.110492, f(7.693113) = −1.259082, f(9.042487) = −1.404249.
      // 7 ft: the long one. Surfaces −1.115732 and −1.075251: m = −0.376525; −0.877450 − 0.0254 over the pad's top at
      // −1.194667 + 0.08255 = −1.112117; 0.3222 − 0.124399 − 0.0254
      ['s3.end', 'brace-63', 1.001848, 's3.end.left', -0.87745, 0.124399, 0.209267, 0.172401],
      // Surfaces −1.409489 and −1.369008, m = −0.523404; now the bed is over the pad's top (−1.424815): −1.024328 − 0.0254
      // + 1.409489; 0.3222 + 0.022480 − 0.0254
      ['s4.end', 'brace-63', 1.001848, 's4.end.left', -1.024328, -0.02248, 0.359761, 0.31928],
      // Surfaces −1.295094 and −1.149927: m = −0.413864; −0.914788 − 0.0254 + 1.295094; 0.3222 − 0.087061 − 0.0254
      ['h1.end', 'brace-63', 1.001848, 'h1.end.left', -0.914788, 0.087061, 0.354906, 0.209739],
      // Surfaces −1.221180 and −1.076013: m = −0.376907; −0.877831 − 0.0254 + 1.221180; 0.3222 − 0.124018 − 0.0254
      ['h2.end', 'brace-63', 1.001848, 'h2.end.left', -0.877831, 0.124018, 0.317949, 0.172782],
    ])
  })

  it('lists every part, with masses and prices that add up', () => {
    expectParts(dock, [
      ['frame', '5x8', 6, 0, 34838, 43900],
      ['leg', 'leg-3', 2, 0, 1712, 6950],
      ['leg', 'leg-4', 2, 0, 2282, 8300],
      ['leg', 'leg-5', 2, 0, 2853, 9650],
      ['leg', 'leg-7', 6, 0, 3994, 12350],
      ['leg', 'leg-8', 2, 0, 4565, 13700],
      ['foot-pad', 'pad-10x12', 14, 0, 1692, 2400],
      ['pad-bolt', 'bolt-3/8-pad', 14, 1, 70, 140],
      ['leg-cap', 'leg-cap', 14, 1, 50, 280],
      ['sleeve-cap', 'sleeve-cap', 10, 1, 60, 260], // 24 − 14
      ['set-bolt', 'bolt-1/2-set', 28, 2, 90, 180], // 1.4 → 2
      ['hook-bracket', 'hook-bracket', 10, 0, 950, 2150], // 5 joints
      ['hook-bolt', 'bolt-5/16-hook', 20, 1, 50, 110],
      ['brace', 'brace-53', 1, 0, 1056, 4600],
      ['brace', 'brace-63', 4, 0, 1251, 5300],
      ['brace-clamp', 'brace-clamp', 10, 0, 360, 1250],
      ['brace-bolt', 'bolt-3/8-brace', 10, 1, 60, 130],
      ['deck-panel', 'panel-5x4', 12, 0, 21699, 17900],
      ['deck-clip', 'deck-clip', 24, 2, 60, 240], // 1.2 → 2
      ['accessory', 'cleat-8', 2, 0, 700, 1900],
      ['accessory', 'ladder-4', 1, 0, 8600, 24900],
    ])
    // 209.028 + legs 46.788 + 23.688 + 0.980 + 0.700 + 0.600 + 2.520 + 9.500 + 1.000 + braces 6.060 + 3.600 + 0.600 + 260.388 + 1.440
    // + 1.400 + 8.600 = 576.892 kg
    expect(Math.round(dock.totals.mass * 1000)).toBe(576_892)
    // 263400 + legs 151300 + 33600 + 1960 + 3920 + 2600 + 5040 + 21500 + 2200 + 25800 + 12500 + 1300 + 214800 + 5760 + 3800 + 24900
    expect(dock.totals.price).toBe(774_380)
  })

  it('joins five times and hinges nowhere', () => {
    expect(dock.joints.map((j) => `${j.kind} ${j.id}`).sort()).toEqual(
      ['hook h1~h2', 'hook s1~s2', 'hook s2~s3', 'hook s3~s4', 'hook s4~h1'].sort(),
    )
    expect(dock.workOrder).toEqual(['s1', 's2', 's3', 's4', 'h1', 'h2'])
  })
})
