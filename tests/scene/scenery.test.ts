/** Plants along the shore are set anew where the shore is another, and stay where only deep water is. */
import type { InstancedMesh } from 'three'
import { expect, it } from 'vitest'
import { extentOf } from '../../geometry/index.ts'
import { demoCatalog, demoDesign, derive, makeBed, parseDesign } from '../../rules/index.ts'
import { makeWorld } from '../../src/scene/materials/world.ts'
import { makeScenery } from '../../src/scene/scenery.ts'
import { makeLand } from '../../src/scene/terrain.ts'

const dock = derive(demoDesign, demoCatalog)
const soundings = [
  { distance: -2, depth: -0.6 },
  { distance: 2, depth: 0.4 },
  { distance: 6, depth: 0.8 },
  { distance: 12, depth: 1.3 },
  { distance: 20, depth: 1.8 },
]
type Soundings = typeof soundings

function landWith(change: (list: Soundings) => Soundings) {
  const parsed = parseDesign({ ...demoDesign, site: { ...demoDesign.site, soundings: change(soundings) } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const { site } = parsed.value
  return makeLand(makeBed(site), extentOf(dock, parsed.value), site, -1)
}

it('where a far sounding is dragged nothing is set anew, where the shore moves all is, as in a new scene', () => {
  const scenery = makeScenery(makeWorld())
  const [tufts] = scenery.group.children as InstancedMesh[]
  const grow = (change: (list: Soundings) => Soundings, of = scenery) =>
    of.grow(landWith(change), 0.4, 'sand')
  grow((list) => list)
  const { version } = tufts!.instanceMatrix
  const before = [...tufts!.instanceMatrix.array]
  expect(tufts!.count).toBeGreaterThan(50)
  const deeper = (list: Soundings) => list.map((s) => (s.distance === 20 ? { ...s, depth: 2.4 } : s))
  grow(deeper)
  expect(tufts!.instanceMatrix.version).toBe(version)
  const fresh = makeScenery(makeWorld())
  grow(deeper, fresh)
  expect([...(fresh.group.children[0] as InstancedMesh).instanceMatrix.array]).toEqual(before)
  grow((list) => list.map((s) => (s.distance === 2 ? { ...s, depth: 0.2 } : s)))
  expect(tufts!.instanceMatrix.version).toBeGreaterThan(version)
  expect([...tufts!.instanceMatrix.array]).not.toEqual(before)
})
