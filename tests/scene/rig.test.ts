/** The camera by hand and by itself: never in the ground, in the water only where it was sent or tilted, and always back to the whole dock. */
import fc from 'fast-check'
import { PerspectiveCamera, Vector3 } from 'three'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, makeBed, projectOf } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { makeRig } from '../../src/scene/camera/rig.ts'
import { poseOf, type Subject } from '../../src/scene/camera/views.ts'
import { stripRange } from '../../src/state/strip-range.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { runs } from '../support/runs.ts'

const ASPECT = 1.4
const dock = deriveAtOnce(demoDesign, demoCatalog)
const { bedAt } = makeBed(demoDesign.site)
const bounds = footprintOfAll(dock.sections)!
const subject = (level: number): Subject => ({
  dock,
  bounds,
  range: stripRange(projectOf(demoDesign, demoCatalog, dock)),
  deck: demoDesign.dock.deckHeight,
  level,
  ground: bedAt,
})

function begun() {
  const camera = new PerspectiveCamera(35, ASPECT, 0.1, 1000)
  let level = 0
  let now = 0
  const rig = makeRig(
    camera,
    () => {},
    bedAt,
    () => level,
    () => ({ reach: bounds.x1 - bounds.x0, center: [(bounds.x0 + bounds.x1) / 2, 0] }),
  )
  rig.goTo(poseOf('shore', subject(0), ASPECT), false)
  return {
    camera,
    rig,
    setLevel: (to: number) => {
      level = to
    },
    level: () => level,
    tick: (ms: number) => {
      now += ms
      rig.tick(now)
    },
  }
}

type Step = readonly [name: 'turn' | 'tilt' | 'zoom' | 'pan' | 'go' | 'level', amount: number, more: number]
const VIEWS = ['shore', 'lake', 'above'] as const

const steps = (tilt: { readonly min: number; readonly max: number }, views: number) =>
  fc.array(
    fc.oneof(
      fc.tuple(fc.constant('turn' as const), fc.double({ min: -2, max: 2, noNaN: true }), fc.constant(0)),
      fc.tuple(fc.constant('tilt' as const), fc.double({ ...tilt, noNaN: true }), fc.constant(0)),
      fc.tuple(fc.constant('zoom' as const), fc.double({ min: 0.1, max: 2, noNaN: true }), fc.constant(0)),
      fc.tuple(
        fc.constant('pan' as const),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
      ),
      fc.tuple(fc.constant('go' as const), fc.integer({ min: 0, max: views - 1 }), fc.constant(0)),
      fc.tuple(
        fc.constant('level' as const),
        fc.double({ min: -0.3, max: 0.4, noNaN: true }),
        fc.constant(0),
      ),
    ),
    { maxLength: 14 },
  )

function follow(list: readonly Step[], check: (seen: ReturnType<typeof begun>) => void) {
  const seen = begun()
  const { rig } = seen
  for (const [name, amount, more] of list) {
    if (name === 'turn') rig.orbit(amount, 0)
    if (name === 'tilt') rig.orbit(0, amount)
    if (name === 'zoom') rig.zoom(amount)
    if (name === 'pan') rig.pan(amount, more)
    if (name === 'level') seen.setLevel(amount)
    if (name === 'go') {
      const view = ([...VIEWS, 'under'] as const)[amount]!
      rig.goTo(poseOf(view, subject(seen.level()), ASPECT), true)
    }
    for (let i = 0; i < 4; i++) {
      seen.tick(300)
      check(seen)
    }
  }
  return seen
}

const RUNS = runs(400)

describe('the camera', () => {
  it(`stays over the water through ${RUNS} random moves that neither tilt it down nor ask for the view under water`, () => {
    fc.assert(
      fc.property(steps({ min: 0, max: 1 }, VIEWS.length), (list) => {
        follow(list, ({ camera, level }) => {
          const { x, y, z } = camera.position
          expect(z).toBeGreaterThan(bedAt(x, y))
          expect(z).toBeGreaterThan(level())
        })
      }),
      { numRuns: RUNS, seed: 1209 },
    )
  })

  it(`stays over the ground through ${RUNS} random moves of every kind, and then shows the whole dock again`, () => {
    fc.assert(
      fc.property(steps({ min: -1, max: 1 }, VIEWS.length + 1), (list) => {
        const { rig, camera, tick, level } = follow(list, ({ camera }) => {
          const { x, y, z } = camera.position
          expect(z).toBeGreaterThan(bedAt(x, y))
        })
        rig.goTo(poseOf('lake', subject(level()), ASPECT), true)
        // From the first tick of a move to its end.
        for (const ms of [1, 400, 600]) tick(ms)
        expect(rig.byHand).toBe(false)
        for (const leg of dock.legs)
          for (const z of [leg.bed, demoDesign.dock.deckHeight]) {
            const p = new Vector3(leg.x, leg.y, z).project(camera)
            expect(Math.max(Math.abs(p.x), Math.abs(p.y)), leg.id).toBeLessThan(1)
          }
      }),
      { numRuns: RUNS, seed: 1210 },
    )
  })

  it('goes under water where it is tilted there, and comes up with the tilt', () => {
    const { rig, camera } = begun()
    rig.goTo(poseOf('lake', subject(0), ASPECT), false)
    rig.orbit(0, -1)
    expect(camera.position.z).toBeLessThan(0)
    rig.zoom(0.9)
    expect(camera.position.z).toBeLessThan(0)
    rig.orbit(0, 1)
    rig.zoom(0.05)
    expect(camera.position.z).toBeGreaterThan(0)
  })
})
