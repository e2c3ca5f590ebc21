/** Places of a catalog that a few letters are of: what a field is called, what the schema says of it, what stands in it. */
import { isObject, type JsonObject, type Path, valueAt } from './draft.ts'
import { CATALOG_FORM, leavesOf, type SectionName, sectionOf } from './form/catalog-form.ts'

export interface Found {
  readonly path: Path
  readonly section: SectionName
  /** Names of the entries that it is in. */
  readonly of: string
  readonly label: string
}

/** All words of the query, in any order. @param labelOf what a field is called */
export function searchIn(draft: JsonObject, query: string, labelOf: (path: Path) => string): Found[] {
  const words = plain(query)
    .split(' ')
    .filter((word) => word !== '')
  if (words.length === 0) return []
  return leavesOf(CATALOG_FORM, draft).flatMap(({ path, node, value }): Found[] => {
    const section = sectionOf(path)
    if (!section || node.kind === 'fixed') return []
    // A rule is found by its own name.
    const named = path[0] === 'rules' && path.at(-1) === 'value' ? path.slice(0, -1) : path
    const of = ownersOf(draft, path)
    const label = labelOf(named)
    const text = plain(
      `${label} ${of} ${node.says} ${typeof value === 'string' && value.length < 400 ? value : ''}`,
    )
    return words.every((word) => text.includes(word)) ? [{ path, section, of, label }] : []
  })
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/\s+/g, ' ')
    .trim()

function ownersOf(draft: JsonObject, path: Path): string {
  return path
    .slice(0, -1)
    .flatMap((key, i) => {
      const at = valueAt(draft, path.slice(0, i + 1))
      if (isObject(at) && (typeof at.name === 'string' || typeof at.code === 'string'))
        return [String(at.name ?? at.code)]
      // A record's own names.
      return (path[0] === 'stock' || path[0] === 'materials') && i === 1 ? [String(key)] : []
    })
    .join(', ')
}
