/** Names of the catalog's items by kind and code; the code where it has no such item. */
import type { Catalog } from '../catalog/index.ts'
import { shopOf } from '../catalog-index.ts'
import type { PartKind } from '../dock.ts'

export const nameOf = (catalog: Catalog, kind: PartKind, code: string): string =>
  shopOf(catalog).parts.find((part) => part.kind === kind && part.code === code)?.name ?? code
