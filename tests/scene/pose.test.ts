import { PerspectiveCamera, Vector3 } from 'three'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, makeBed, projectOf, type Vec3 } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { eyeOf, mixPose, type Pose } from '../../src/scene/camera/pose.ts'
import { poseOf, type Subject } from '../../src/scene/camera/views.ts'
import { stripRange } from '../../src/state/strip-range.ts'
import { deriveAtOnce } from '../support/at-once.ts'

function subjectOf(change: Record<string, unknown>): Subject {
  const design = { ...demoDesign, dock: { ...demoDesign.dock, ...change } }
  const dock = deriveAtOnce(design, demoCatalog)
  return {
    dock,
    bounds: footprintOfAll(dock.sections)!,
    range: stripRange(projectOf(design, demoCatalog, dock)),
    deck: design.dock.deckHeight,
    level: 0,
    ground: makeBed(design.site).bedAt,
  }
}

function cameraAt(pose: Pose, aspect: number): PerspectiveCamera {
  const camera = new PerspectiveCamera((pose.fov * 180) / Math.PI, aspect, 0.05, 5000)
  camera.up.set(0, 0, 1)
  camera.position.set(...(eyeOf(pose) as [number, number, number]))
  camera.lookAt(...(pose.target as [number, number, number]))
  camera.updateMatrixWorld()
  return camera
}

/** On the picture, -1 to 1 both ways. */
const seen = (point: Vec3, camera: PerspectiveCamera): Vector3 => new Vector3(...point).project(camera)

const DOCKS = [
  ['the demo', {}],
  ['a short one', { sections: 2 }],
  ['a long one', { sections: 20 }],
  ['a T', { sections: 4, head: { shape: 'tee', sections: 6 } }],
] as const

describe('the views', () => {
  for (const [name, change] of DOCKS)
    for (const aspect of [0.8, 1.6, 3])
      it(`from shore, lake and above hold the whole dock: ${name}, ${aspect} wide to 1 high`, () => {
        const subject = subjectOf(change)
        for (const view of ['shore', 'lake', 'above'] as const) {
          const camera = cameraAt(poseOf(view, subject, aspect), aspect)
          for (const { x, y, bed, aboveDeck } of subject.dock.legs)
            for (const z of [bed, subject.deck + (aboveDeck ?? 0)]) {
              const p = seen([x, y, z], camera)
              expect(Math.max(Math.abs(p.x), Math.abs(p.y)), `${view} ${x} ${y} ${z}`).toBeLessThan(1)
            }
        }
      })

  it('from the end show every pair of legs level and square: left on the right, from foot to deck', () => {
    for (const [, change] of DOCKS)
      for (const aspect of [0.9, 1.4, 3]) {
        const subject = subjectOf(change)
        const camera = cameraAt(poseOf('end', subject, aspect), aspect)
        for (const { id, x, y, bed } of subject.dock.legs) {
          const [foot, head] = [bed, subject.deck].map((z) => seen([x, y, z], camera)) as [Vector3, Vector3]
          expect(Math.max(Math.abs(foot.x), Math.abs(foot.y), Math.abs(head.y)), id).toBeLessThan(1)
          expect(head.x - foot.x).toBeCloseTo(0, 2)
        }
        for (const pair of subject.dock.pairs) {
          const [a, b] = pair.legs.map((id) => subject.dock.legs.find((leg) => leg.id === id)!)
          if (!a || !b || Math.abs(a.x - b.x) > 1e-6) continue
          const [p, q] = [a, b].map(({ x, y }) => seen([x, y, subject.deck], camera)) as [Vector3, Vector3]
          expect(p.y).toBeCloseTo(q.y, 6)
          expect(Math.sign(p.x - q.x)).toBe(Math.sign(a.y - b.y))
        }
      }
  })

  it('under water have the eye in the water, over the ground', () => {
    const subject = subjectOf({})
    const [x, y, z] = eyeOf(poseOf('under', subject, 1.6))
    expect(z).toBeLessThan(0)
    expect(z).toBeGreaterThan(subject.ground(x, y))
  })

  it('go over into each other the short way round', () => {
    const a: Pose = { target: [0, 0, 0], azimuth: 3, elevation: 0.2, span: 4, fov: 0.6 }
    const b: Pose = { target: [2, 0, 0], azimuth: -3, elevation: 0.4, span: 16, fov: 0.05 }
    expect(mixPose(a, b, 0)).toEqual(a)
    const half = mixPose(a, b, 0.5)
    expect(Math.cos(half.azimuth)).toBeCloseTo(-1, 3)
    expect(half.span).toBeCloseTo(8, 9)
    const end = mixPose(a, b, 1)
    expect(Math.sin(end.azimuth - b.azimuth)).toBeCloseTo(0, 9)
    expect(end.fov).toBeCloseTo(b.fov, 9)
  })
})
