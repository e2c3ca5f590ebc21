import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { extentOf } from '../../geometry/index.ts'
import { type Design, demoCatalog, demoDesign, makeBed, projectOf, type Waves } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { makeWorld } from '../../src/scene/materials/world.ts'
import { makeLand } from '../../src/scene/terrain.ts'
import { makePlay } from '../../src/scene/water/animation.ts'
import { edgeGeometry, seaGeometry } from '../../src/scene/water/surface-mesh.ts'
import { type Sea, seaOf, shareAt, surfaceAt } from '../../src/scene/water/wave-trains.ts'
import { stripRange } from '../../src/state/strip-range.ts'
import { deriveAtOnce } from '../support/at-once.ts'

const WINDS = [
  { speed: 12, fetch: 300 },
  { speed: 15, fetch: 1800 },
  { speed: 18, fetch: 5000 },
  { speed: 22, fetch: 15_000 },
]

function shoreOf(wind: Design['site']['wind']) {
  const design: Design = { ...demoDesign, site: { ...demoDesign.site, wind } }
  const dock = deriveAtOnce(design, demoCatalog)
  const land = makeLand(
    makeBed(design.site),
    extentOf(dock, design),
    design.site,
    stripRange(projectOf(design, demoCatalog, dock)).x0,
  )
  const waves = dock.waves as Waves
  return { waves, sea: seaOf(waves, 0) as Sea, land, bounds: footprintOfAll(dock.sections)! }
}

describe('the surface that moves', () => {
  it.each(WINDS)('has the significant height that was worked out, about still water: %j', (wind) => {
    const { waves, sea } = shoreOf(wind)
    let [sum, squares] = [0, 0]
    const n = 60_000
    for (let i = 0; i < n; i++) {
      const z = surfaceAt(sea, 7, 2, i * 0.137)
      sum += z
      squares += z * z
    }
    const significant = 4 * Math.sqrt(squares / n - (sum / n) ** 2)
    // Sharper crests bring a little more.
    expect(significant / waves.height).toBeGreaterThan(0.99)
    expect(significant / waves.height).toBeLessThan(1.07)
    expect(Math.abs(sum / n)).toBeLessThan(0.01 * waves.height)
  })

  it.each(WINDS)(
    'crests in an hour as high as one wave in ten is told to, and not much higher: %j',
    (wind) => {
      const { waves, sea } = shoreOf(wind)
      let most = 0
      for (let i = 0; i < 36_000; i++) most = Math.max(most, surfaceAt(sea, 7, 2, i * 0.1))
      const tenth = 0.7 * 1.27 * waves.height
      expect(most / tenth).toBeGreaterThan(0.9)
      expect(most / tenth).toBeLessThan(1.25)
    },
  )

  it.each(WINDS)('runs ashore with the length, the period and the speed that were worked out: %j', (wind) => {
    const { waves, sea } = shoreOf(wind)
    const { kx, ky, omega } = sea.trains[0]!
    expect((2 * Math.PI) / Math.hypot(kx, ky)).toBeCloseTo(waves.length, 4)
    expect((2 * Math.PI) / omega).toBeCloseTo(waves.period, 5)
    expect(omega / Math.hypot(kx, ky)).toBeCloseTo(waves.speed, 4)
    expect(kx).toBeLessThan(0)
    expect(ky).toBeCloseTo(0, 9)
    // It is the largest; a crest of it is met again where it has gone to.
    expect(Math.max(...sea.trains.map((train) => train.amplitude))).toBe(sea.trains[0]!.amplitude)
    const alone = { ...sea, trains: [sea.trains[0]!] }
    expect(surfaceAt(alone, 9 - 3 * waves.speed, 0, 3)).toBeCloseTo(surfaceAt(alone, 9, 0, 0), 6)
  })

  it('comes from where the wind does', () => {
    const { waves } = shoreOf(WINDS[1]!)
    const [lake, left] = [seaOf(waves, 0)!.trains[0]!, seaOf(waves, 90)!.trains[0]!]
    expect(left.ky).toBeCloseTo(lake.kx, 9)
    expect(left.kx).toBeCloseTo(0, 9)
  })

  it('stands no higher anywhere than 0.78 of the depth, and never folds over', () => {
    for (const wind of WINDS) {
      const { waves, sea } = shoreOf(wind)
      fc.assert(
        fc.property(fc.double({ min: -1, max: 20, noNaN: true }), (depth) => {
          expect(waves.tenth * shareAt(sea, depth)).toBeLessThanOrEqual(0.78 * Math.max(0, depth) + 1e-9)
          expect(shareAt(sea, depth)).toBeLessThanOrEqual(1)
        }),
      )
      const most = sea.trains.reduce((sum, { amplitude }) => sum + amplitude, 0)
      expect(2 * sea.sharpness * most).toBeLessThan(1)
    }
  })

  it('is not there without a wind, and wakes alone do not make it', () => {
    expect(seaOf(null, 0)).toBeNull()
    expect(seaOf({ ...shoreOf(WINDS[0]!).waves, height: 0, period: 0, length: 0, wake: 0.4 }, 0)).toBeNull()
  })
})

describe('its mesh', () => {
  it.each(WINDS)('is fine at the dock, ends at the shore, and stays small: %j', (wind) => {
    const { sea, land, bounds } = shoreOf(wind)
    const { position, aSea } = seaGeometry(sea, land, bounds, 0).attributes
    const triangles = seaGeometry(sea, land, bounds, 0).index!.count / 3
    expect(triangles).toBeLessThan(40_000)
    expect(triangles).toBeGreaterThan(5_000)
    let shore = 0
    const columns = new Set<number>()
    for (let i = 0; i < position!.count; i++) {
      const [x, y] = [position!.getX(i), position!.getY(i)]
      if (x < bounds.x0 - 1 || x > bounds.x1 + sea.length || Math.abs(y) > 3) continue
      const depth = -land.at(x, y)
      expect(depth).toBeGreaterThan(-0.1)
      // All of the height that the depth lets stand.
      if (depth > 0.1) expect(aSea!.getX(i)).toBeCloseTo(shareAt(sea, depth), 5)
      if (aSea!.getX(i) === 0) shore++
      if (x > bounds.x1) columns.add(x)
    }
    expect(shore).toBeGreaterThan(2)
    expect(columns.size).toBeGreaterThanOrEqual(7)
  })

  it('where the lake is cut it follows the ground out of the water and goes on to the horizon', () => {
    const { sea, land, bounds } = shoreOf(WINDS[1]!)
    const { attributes, index } = edgeGeometry(sea, land, bounds, 0.1, {
      across: false,
      at: bounds.y0 - 0.45,
      keep: 1,
    })
    const used = [...index!.array].map((i) => attributes.position!.getX(i))
    const shore = used.reduce((least, x) => Math.min(least, x), Number.POSITIVE_INFINITY)
    expect(-land.at(shore, bounds.y0 - 0.45) + 0.1).toBeLessThanOrEqual(0)
    expect(Math.max(...used)).toBeGreaterThan(4000)
    expect(shore).toBeGreaterThan(-3)
  })
})

describe('its clock', () => {
  it('runs while played, skips pauses, and is set back where it stands', () => {
    const world = makeWorld()
    const play = makePlay(world)
    const { sea } = shoreOf(WINDS[1]!)
    expect(play.moving).toBe(false)
    play.tick(1000)
    expect(world.uTime.value).toBe(0)
    play.show(sea, true)
    expect(play.moving).toBe(true)
    for (let now = 2000; now <= 4000; now += 50) play.tick(now)
    expect(world.uTime.value).toBeCloseTo(2, 9)
    expect(world.uSeaLook.value.x).toBe(1)
    const train = sea.trains[0]!
    expect(Math.cos(world.uSea.value[0]!.z)).toBeCloseTo(Math.cos(train.phase - 2 * train.omega), 6)
    // Out of sight for a minute.
    play.tick(64_000)
    play.tick(64_050)
    expect(world.uTime.value).toBeCloseTo(3.05, 9)
    // Another dock while it plays: the water goes on.
    play.show(shoreOf(WINDS[2]!).sea, true)
    expect(world.uTime.value).toBeCloseTo(3.05, 9)
    play.show(null, true)
    expect([play.moving, world.uTime.value, world.uSeaLook.value.x]).toEqual([false, 0, 0])
    play.show(sea, false)
    expect([play.moving, world.uTime.value, world.uSeaLook.value.x]).toEqual([false, 0, 1])
  })
})
