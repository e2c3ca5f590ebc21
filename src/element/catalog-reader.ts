/** What reads a shop's own catalog. A chunk of its own: most pages have the demo's, which is read already. */
export { parseCatalogText, parsePlainCatalog } from '../../rules/catalog/parse.ts'
