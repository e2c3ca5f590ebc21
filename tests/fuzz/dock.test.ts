/** Designs and catalogs at the edges of what the schemas let in: every dock is finite, plain and told in clean sentences. */
import fc from 'fast-check'
import { describe } from 'vitest'
import { CatalogSchema } from '../../rules/catalog/schema.ts'
import { DesignSchema } from '../../rules/design/schema.ts'
import { type Catalog, type Design, parseCatalog, parseDesign } from '../../rules/index.ts'
import { anyCase } from '../support/arbitraries.ts'
import { dockBroken, found, parseBroken } from './support/laws.ts'
import { fuzz, type Tally } from './support/runs.ts'
import { atEdges } from './support/schema.ts'

interface Pair {
  readonly design: Design
  readonly catalog: Catalog
}
const told = (pair: Pair, from: Pair): Pair => ({
  ...pair,
  ...{
    [fc.toStringMethod]: () =>
      `${changes(from, pair).join('\n')}\nof ${JSON.stringify(from.design)}, ${from.catalog.id}`,
  },
})

/** What of one value is another in the other: `path = value`. */
function changes(a: unknown, b: unknown, path = ''): string[] {
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object')
    return Object.is(a, b) ? [] : [`${path} = ${JSON.stringify(b)}`]
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) =>
    changes((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${path}.${key}`),
  )
}

const designs = anyCase.chain((one) =>
  atEdges(DesignSchema, one.design).map((design) => told({ ...one, design }, one)),
)
const catalogs = anyCase.chain((one) =>
  atEdges(CatalogSchema, one.catalog).map((catalog) => told({ ...one, catalog }, one)),
)
const both = anyCase.chain((one) =>
  fc
    .record({ design: atEdges(DesignSchema, one.design, 2), catalog: atEdges(CatalogSchema, one.catalog, 3) })
    .map((pair) => told(pair, one)),
)

const laws = ({ design, catalog }: Pair, tally: Tally): string[] => {
  const aside: Tally = { taken: 0, refused: 0 }
  let shop: Catalog | undefined
  const broken = parseBroken(parseCatalog, catalog, aside, (value) => {
    shop = value
    return []
  })
  if (!shop) {
    tally.refused++
    return broken
  }
  const taken = shop
  return [...broken, ...parseBroken(parseDesign, design, tally, (value) => dockBroken(value, taken, found))]
}

describe('every dock', () => {
  fuzz('designs at the edges of the schema', designs, laws, { taken: 0.6 })
  fuzz('catalogs at the edges of the schema', catalogs, laws, { taken: 0.6 })
  fuzz('both at once', both, laws, { taken: 0.5 })
})
