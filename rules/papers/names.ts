/** Names of the catalog's items by kind and code; the code where it has no such item. */
import type { Shop } from '../catalog-index.ts'
import type { PartKind } from '../dock.ts'

export const nameOf = ({ parts }: Shop, kind: PartKind, code: string): string =>
  parts.find((part) => part.kind === kind && part.code === code)?.name ?? code
