/** The ordinary docks that findings are counted on are what they are said to be. */
import { describe, expect, it } from 'vitest'
import { assessKit, deriveKit } from '../../rules/index.ts'
import { ordinaryDock } from '../../src/build/guide/ordinary-docks.ts'
import { CELLS } from '../../src/build/guide/quiet-count.ts'
import { catalogs } from '../support/catalogs.ts'

describe('ordinary docks', () => {
  const drawn = CELLS.flatMap((wanted) =>
    Array.from({ length: 6 }, (_, seed) => {
      const catalog = catalogs[seed % catalogs.length]!
      const design = ordinaryDock(seed, wanted, catalog)
      return { wanted, catalog, design, kit: deriveKit(design, catalog) }
    }),
  )

  it('are the same for a seed, but for the posts', () => {
    const [catalog] = catalogs
    const bare = ordinaryDock(3, { scene: 'quiet cove', posts: 0, boat: true }, catalog!)
    const held = ordinaryDock(3, { scene: 'quiet cove', posts: 4, boat: true }, catalog!)
    expect({ ...held, dock: { ...held.dock, extras: bare.dock.extras } }).toEqual(bare)
    expect(ordinaryDock(4, { scene: 'quiet cove', posts: 0, boat: true }, catalog!)).not.toEqual(bare)
  })

  it('have legs from the stock, on sounded ground, and the posts that were asked for', () => {
    for (const { kit, design, catalog, wanted } of drawn) {
      const post = catalog.extras.find(({ place }) => place === 'post')!
      expect(design.dock.extras[post.code] ?? 0).toBe(wanted.posts)
      for (const { stock, x, y } of kit.legs)
        expect([stock !== null, kit.bed.measured(x, y)], JSON.stringify(design)).toEqual([true, true])
    }
  })

  it('clear the high level by a hand’s breadth and stand in 0.7 to 2 m at the end, give or take the soundings', () => {
    for (const { kit, design } of drawn) {
      const { deckHeight, sections } = design.dock
      expect(deckHeight - design.site.levels.high).toBeGreaterThanOrEqual(0.16 - 1e-9)
      expect(sections).toBeGreaterThanOrEqual(3)
      expect(sections).toBeLessThanOrEqual(8)
      const end = kit.legs.reduce((a, b) => (b.x > a.x ? b : a))
      const depth = -kit.bed.bedAt(end.x, end.y)
      expect(depth).toBeGreaterThan(0.7 - 0.15)
      expect(depth).toBeLessThan(2 + 0.15)
    }
  })

  it('have a boat where one was asked for, and it floats', () => {
    for (const { kit, design, wanted } of drawn) {
      expect(design.dock.boat !== undefined).toBe(wanted.boat)
      const codes = assessKit(kit).findings.map(({ code }) => code)
      expect(codes).not.toContain('boat-aground')
    }
  })
})
