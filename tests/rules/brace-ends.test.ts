/** A brace's tube goes on past its holes, toward the legs that it braces: by less than there is room, in both shops' catalogs. */
import { describe, expect, it } from 'vitest'
import { clearances } from '../../rules/clearance/clearance.ts'
import { type Catalog, makeBed, type Stock } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { catalogs } from '../support/catalogs.ts'
import { contractDemo } from '../support/worked-designs.ts'

const across = (stock: Stock): number =>
  Number(stock.shape === 'round-tube' || stock.shape === 'round-bar' ? stock.diameter : stock.width)

/**
 * How near the end of a tube comes to its leg, m. The clamp's hole is `reach` from the leg's axis; from the hole the tube goes on by
 * `end`, at the angle whose cosine is span over holes, and is half its thickness wide square to that.
 */
function room(catalog: Catalog, brace: Catalog['braces'][number], spacing: number): number {
  const { reach } = catalog.clamp
  const level = (spacing - 2 * reach) / brace.holes
  const half = across(catalog.stock[brace.stock]!) / 2
  const thickest = Math.max(...catalog.legs.map((leg) => across(catalog.stock[leg.stock]!)))
  return reach - thickest / 2 - (brace.end * level + half * Math.sqrt(1 - level * level))
}

describe.each(catalogs)('the braces of $id', (catalog) => {
  it('end before their own legs, at every spacing that they are meant for', () => {
    expect(catalog.braces.length).toBeGreaterThan(3)
    for (const brace of catalog.braces)
      for (let i = 0; i <= 20; i++) {
        const { from, to } = brace.spacing
        const spacing = from + ((to - from) * i) / 20
        expect(room(catalog, brace, spacing), `${brace.code} at ${spacing}`).toBeGreaterThan(1e-4)
      }
  })

  it('do so in a dock, by as much', () => {
    const design = parsed({
      ...contractDemo,
      dock: { ...contractDemo.dock, frame: catalog.frames[0]!.code, extras: {} },
    })
    const dock = deriveAtOnce(design, catalog)
    const own = clearances(dock, catalog, makeBed(design.site), { within: 0.03 }).filter(({ a, b }) => {
      const pair = dock.pairs.find(({ id }) => id === a.of || id === b?.of)
      return (
        [a.kind, b?.kind].sort().join() === 'brace,leg' &&
        pair?.legs.some((leg) => [a.of, b!.of].includes(leg))
      )
    })
    const braced = dock.pairs.filter((pair) => pair.brace)
    expect(own).toHaveLength(2 * braced.length)
    for (const { a, b, gap } of own) {
      const { spacing, brace } = braced.find(({ id }) => id === a.of || id === b!.of)!
      const stock = catalog.braces.find(({ code }) => code === brace!.code)!
      expect(gap).toBeCloseTo(room(catalog, stock, spacing), 4)
    }
  })
})
