/** A finger in a glove, held against every pixel around it: what is picked is seen, and nothing is seen nearer. */
import { PerspectiveCamera, Vector3 } from 'three'
import { describe, expect, it } from 'vitest'
import { solidOf } from '../../geometry/index.ts'
import { demoCatalog, demoDesign, makeBed, type Placement, projectOf, type Vec3 } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { eyeOf } from '../../src/scene/camera/pose.ts'
import { poseOf } from '../../src/scene/camera/views.ts'
import type { Item } from '../../src/scene/parts/parts.ts'
import { pick } from '../../src/scene/parts/pick.ts'
import { pickNear } from '../../src/scene/parts/pick-near.ts'
import { shapeOf } from '../../src/scene/parts/shape.ts'
import { stripRange } from '../../src/state/strip-range.ts'
import { deriveAtOnce } from '../support/at-once.ts'

/** The picture of a phone, px. */
const [WIDTH, HEIGHT] = [390, 281]
const REACH = 24
/** Rings are this far apart, so a part may be told as that much farther off, px. */
const EXACT = 4.5

function pictureOf(change: Record<string, unknown>, view: 'shore' | 'lake' | 'above' | 'under') {
  const design = { ...demoDesign, dock: { ...demoDesign.dock, ...change } }
  const dock = deriveAtOnce(design, demoCatalog)
  const items: Item[] = dock.placements.map((placement) => ({
    placement,
    shape: shapeOf(solidOf(placement.kind, placement.code, demoCatalog)),
  }))
  const pose = poseOf(
    view,
    {
      dock,
      bounds: footprintOfAll(dock.sections)!,
      range: stripRange(projectOf(design, demoCatalog, dock)),
      deck: design.dock.deckHeight,
      level: 0,
      ground: makeBed(design.site).bedAt,
    },
    WIDTH / HEIGHT,
  )
  const camera = new PerspectiveCamera((pose.fov * 180) / Math.PI, WIDTH / HEIGHT, 0.05, 5000)
  camera.up.set(0, 0, 1)
  camera.position.set(...(eyeOf(pose) as [number, number, number]))
  camera.lookAt(...(pose.target as [number, number, number]))
  camera.updateMatrixWorld()
  const ray = (x: number, y: number) => ({
    from: camera.position.toArray() as Vec3,
    along: new Vector3((x / WIDTH) * 2 - 1, 1 - (y / HEIGHT) * 2, 0.5)
      .unproject(camera)
      .sub(camera.position)
      .normalize()
      .toArray() as Vec3,
  })
  const at = (...point: [number, number, number]) => {
    const p = new Vector3(...point).project(camera)
    return { x: ((p.x + 1) / 2) * WIDTH, y: ((1 - p.y) / 2) * HEIGHT }
  }
  return { dock, deck: design.dock.deckHeight, items, ray, at }
}

const isDeck = ({ of, section }: Placement): boolean => of === section

const PICTURES = [
  [{}, 'shore', 24],
  [{}, 'lake', 12],
  [{ head: { shape: 'tee', sections: 2 } }, 'above', 24],
  [{}, 'under', 12],
] as const

describe('a finger 24 px around what it means', () => {
  for (const [change, view, thin] of PICTURES)
    it(`picks the nearest that is seen, legs ${thin} px before the deck: ${JSON.stringify(change)} from ${view}`, () => {
      const { dock, deck, items, ray, at } = pictureOf(change, view)
      let legs = 0
      dock.legs.forEach((leg, i) => {
        // By its true place, and off it: over it, under it, to either side.
        const place = at(leg.x, leg.y, i % 2 === 0 ? deck + (leg.aboveDeck ?? 0) * 0.7 : leg.bed + 0.4)
        const x = Math.round(place.x + [0, 9, -17, 22][i % 4]!)
        const y = Math.round(place.y + [0, -6, 4][i % 3]!)
        if (x < 0 || y < 0 || x > WIDTH || y > HEIGHT) return
        const finger = {
          ray: (dx: number, dy: number) => ray(x + dx, y + dy),
          off: (to: Vec3) => {
            const seen = at(...(to as [number, number, number]))
            return { dx: seen.x - x, dy: seen.y - y }
          },
          reach: REACH,
          thin,
        }
        // Every pixel around, whatever is told of how parts are found.
        const nearest = new Map<string, number>()
        let least = 99
        const look = (step: number): void => {
          for (let dy = -REACH; dy <= REACH; dy += step)
            for (let dx = -REACH; dx <= REACH; dx += step) {
              const off = Math.hypot(dx, dy)
              if (off > REACH) continue
              const hit = pick(ray(x + dx, y + dy), items)
              if (!hit) continue
              const told = off + (isDeck(hit.placement) ? thin : 0)
              if (told < (nearest.get(hit.placement.of) ?? 99)) nearest.set(hit.placement.of, told)
              // What is smaller than a pixel or two nobody means: a bolt, a clamp from above.
              if (hit.placement.kind === 'leg' || hit.placement.kind === 'brace' || isDeck(hit.placement))
                least = Math.min(least, told)
            }
        }
        look(1)
        const found = pickNear(finger, items)
        // Seen between two pixels.
        if (found && !nearest.has(found.of)) look(0.25)
        if (nearest.size === 0) expect(found).toBeNull()
        else {
          expect(found, `${leg.id} at ${x} ${y}`).not.toBeNull()
          expect(nearest.has(found!.of), `${found!.of} is seen near ${x} ${y}`).toBe(true)
          expect(nearest.get(found!.of)! - least).toBeLessThan(EXACT)
        }
        if (found && !isDeck(found)) legs++
      })
      expect(legs).toBeGreaterThan(dock.legs.length / 2)
    })
})
