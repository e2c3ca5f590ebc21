import { describe, expect, it } from 'vitest'
import { groupPlacements, solidOf } from '../../geometry/index.ts'
import { demoCatalog, demoDesign, parseDesign } from '../../rules/index.ts'
import { makeWorld } from '../../src/scene/materials/world.ts'
import { makeParts } from '../../src/scene/parts/parts.ts'
import { MOST_INSTANCED, planInstanced } from '../../src/scene/parts/plan.ts'
import { shapeOf } from '../../src/scene/parts/shape.ts'
import { deriveAtOnce } from '../support/at-once.ts'

function dockOf(dock: Record<string, unknown>) {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...dock } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return deriveAtOnce(parsed.value, demoCatalog)
}

describe('what is drawn as instances', () => {
  it('is what there is much of, never more than the draw calls set aside for it', () => {
    const many = Array.from({ length: 50 }, (_, i) => ({
      key: `k${i}`,
      count: 10 + i,
      vertices: 300,
      looks: 1 + (i % 2),
    }))
    const chosen = planInstanced(many)
    const calls = many.filter(({ key }) => chosen.has(key)).reduce((sum, { looks }) => sum + looks, 0)
    expect(calls).toBeLessThanOrEqual(MOST_INSTANCED)
    expect(chosen.has('k49')).toBe(true)
    expect(chosen.has('k0')).toBe(false)
  })

  it('is not a single piece, nor what is baked at no cost', () => {
    expect(planInstanced([{ key: 'one', count: 1, vertices: 90_000, looks: 1 }])).toEqual(new Set())
    expect(planInstanced([{ key: 'few', count: 4, vertices: 100, looks: 1 }])).toEqual(new Set())
  })
})

describe('the parts in the scene', () => {
  it.each([
    ['the demo', {}],
    ['one section', { sections: 1, ramp: false }],
    ['a T of many', { sections: 12, head: { shape: 'tee', sections: 6 } }],
    ['100 sections', { sections: 100 }],
  ])('are the placements of the dock, each once: %s', (_, change) => {
    const parts = makeParts(makeWorld())
    const dock = dockOf(change)
    parts.update(dock, demoCatalog)
    expect(parts.instances()).toBe(dock.placements.length)
    expect(parts.items().map((item) => item.placement)).toHaveLength(dock.placements.length)
    expect(new Set(parts.items().map((item) => item.placement))).toEqual(new Set(dock.placements))
    parts.dispose()
  })

  it('have all triangles of their solids, whether instanced or baked', () => {
    const dock = dockOf({})
    const parts = makeParts(makeWorld())
    parts.update(dock, demoCatalog)
    let wanted = 0
    for (const placements of groupPlacements(dock).values()) {
      const { kind, code } = placements[0]!
      wanted += placements.length * solidOf(kind, code, demoCatalog).indices.length
    }
    let drawn = 0
    parts.group.traverse((object) => {
      const mesh = object as {
        geometry?: { index: { count: number }; drawRange: { count: number } }
        count?: number
      }
      if (!mesh.geometry) return
      drawn += Math.min(mesh.geometry.index.count, mesh.geometry.drawRange.count) * (mesh.count ?? 1)
    })
    expect(drawn).toBe(wanted)
  })

  it('follow a dock that grows and shrinks, in the same meshes where they are large enough', () => {
    const parts = makeParts(makeWorld())
    parts.update(dockOf({ sections: 5 }), demoCatalog)
    const before = [...parts.group.children]
    parts.update(dockOf({ sections: 5, deckHeight: 0.5 }), demoCatalog)
    expect(parts.group.children).toEqual(before)
    for (const sections of [40, 2, 9, 3]) {
      const dock = dockOf({ sections })
      parts.update(dock, demoCatalog)
      expect(parts.instances()).toBe(dock.placements.length)
    }
  })

  it('put a baked piece where an instance of it would be', () => {
    const dock = dockOf({})
    const parts = makeParts(makeWorld())
    parts.update(dock, demoCatalog)
    const bar = dock.placements.find(({ kind }) => kind === 'hinge-bar')!
    const shape = shapeOf(solidOf(bar.kind, bar.code, demoCatalog))
    // Its box in place: along y by its length, at its height.
    const [, y0, , , y1] = shape.box
    const found: number[] = []
    parts.group.traverse((object) => {
      const { geometry, isInstancedMesh } = object as never as {
        geometry?: { attributes: { position: { array: Float32Array } } }
        isInstancedMesh?: boolean
      }
      if (!geometry || isInstancedMesh) return
      const { array } = geometry.attributes.position
      for (let i = 0; i < array.length; i += 3)
        if (Math.abs(array[i]! - bar.at[0]) < 0.006 && Math.abs(array[i + 2]! - bar.at[2]) < 0.05)
          found.push(array[i + 1]!)
    })
    expect(Math.min(...found)).toBeCloseTo(bar.at[1] + y0, 5)
    expect(Math.max(...found)).toBeCloseTo(bar.at[1] + y1, 5)
  })
})
