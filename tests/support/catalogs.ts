/** The two shops that the tests run on: the demo's, and a quite different one. */
import { type Catalog, demoCatalog, parseCatalog } from '../../rules/index.ts'
import metricFile from './metric-shop.json' with { type: 'json' }

const parsed = parseCatalog(metricFile)
if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))

export const metricCatalog: Catalog = parsed.value
export const catalogs: readonly Catalog[] = [demoCatalog, metricCatalog]
