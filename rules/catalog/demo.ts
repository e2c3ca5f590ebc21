import demo from './demo.json' with { type: 'json' }
import type { Catalog } from './schema.ts'

/** The demo shop (invented). The schema neither fills in nor changes anything, so the file is its own parsed form; a test holds that. */
export const demoCatalog = demo as unknown as Catalog
