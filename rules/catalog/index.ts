import demo from './demo.json' with { type: 'json' }
import type { Catalog } from './schema.ts'

export { parseCatalog, parseCatalogText } from './parse.ts'
export type {
  AluminumStrength,
  Bolt,
  BottomKind,
  BraceStock,
  Catalog,
  DeckingChoice,
  Extra,
  Frame,
  LegStock,
  Pad,
  Panel,
  RuleName,
  Service,
  SteelStrength,
  Stock,
  Strength,
} from './schema.ts'

/** The demo shop (invented). The schema neither fills in nor changes anything, so the file is its own parsed form; a test holds that. */
export const demoCatalog = demo as unknown as Catalog
