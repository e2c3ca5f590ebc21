export type { BottomKind } from './bottom.ts'
export { demoCatalog } from './demo.ts'
export { parseCatalog, parseCatalogText } from './parse.ts'
export type {
  AluminumStrength,
  Bolt,
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
