/** What a file tells to be owned already: a design, or a packing list that was saved as JSON. */
import { existingFrom, partsOfDesign } from '../../../rules/existing/from-parts.ts'
import type { ExistingParts } from '../../../rules/existing/owned.ts'
import type { Catalog, Issue } from '../../../rules/index.ts'
import { LIMITS, parseDesign } from '../../../rules/index.ts'
import { rowsOfList } from '../../../rules/papers/packing-list.ts'
import { parseText } from '../../../rules/validation.ts'

type Read =
  | { readonly ok: true; readonly value: ExistingParts }
  | { readonly ok: false; readonly issues: readonly Issue[] }

/** Never throws. */
export function readOwned(text: string, catalog: Catalog): Read {
  const json = parseText(text, LIMITS.textBytes)
  if (!json.ok) return json
  if ((json.value as { format?: unknown } | null)?.format === 'leadline/list') {
    const rows = rowsOfList(json.value)
    return rows.ok ? { ok: true, value: existingFrom(rows.value, catalog) } : rows
  }
  const design = parseDesign(json.value)
  return design.ok ? { ok: true, value: existingFrom(partsOfDesign(design.value, catalog), catalog) } : design
}
