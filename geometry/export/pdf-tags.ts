/**
 * What a PDF says to who does not see it (ISO 32000-1, 14.7 and 14.8): headings, paragraphs, lists, tables with their heads, figures with
 * what is said of them, in the order in which they stand; all else is an artifact.
 */
import type { Tag } from '../paper/marks.ts'

/** Of the writer: a line of what is being written, and objects of the file. */
export interface Writer {
  write(line: string): void
  newObjectDeferred(): number
  newObjectDeferredBegin(id: number, write: boolean): void
}

interface Element {
  readonly tag: Tag | null
  readonly parent: Element | null
  readonly kids: (Element | { readonly page: number; readonly id: number })[]
  id: number
}

export interface Tagging {
  /** Marks of the next page follow. */
  page(): void
  /** The next mark is of this element. */
  to(tag: Tag): void
  /** No more marks on this page. */
  done(): void
  /** Number of the current page's entry in the parent tree. */
  objects(pageIds: readonly number[], textOf: (text: string) => string): number
}

const ARTIFACT: Tag = { role: 'Artifact' }

export { ARTIFACT }

export function tagging(writer: Writer): Tagging {
  const { write } = writer
  const root: Element = { tag: null, parent: null, kids: [], id: 0 }
  const known = new Map<Tag, Element>()
  /** By page, the element of each piece of marked content. */
  const pages: Element[][] = []
  let open: Tag | null = null

  const elementOf = (tag: Tag): Element => {
    const old = known.get(tag)
    if (old) return old
    const parent = tag.in ? elementOf(tag.in) : root
    // A row makes all its cells.
    const again = known.get(tag)
    if (again) return again
    const made: Element = { tag, parent, kids: [], id: 0 }
    known.set(tag, made)
    parent.kids.push(made)
    for (const cell of tag.cells ?? []) elementOf(cell)
    return made
  }
  const close = (): void => {
    if (open) write('EMC')
    open = null
  }
  return {
    page: () => pages.push([]),
    to(tag) {
      if (tag === open) return
      close()
      open = tag
      if (tag.role === 'Artifact') {
        write('/Artifact BMC')
        return
      }
      const here = pages.at(-1)!
      const element = elementOf(tag)
      element.kids.push({ page: pages.length - 1, id: here.length })
      write(`/${tag.role} <</MCID ${here.length}>> BDC`)
      here.push(element)
    },
    done: close,
    objects: (pageIds, textOf) => writeTree(writer, root, pages, pageIds, textOf),
  }
}

/** The objects of the tree; the number of its root. */
function writeTree(
  { write, newObjectDeferred, newObjectDeferredBegin }: Writer,
  root: Element,
  pages: readonly (readonly Element[])[],
  pageIds: readonly number[],
  textOf: (text: string) => string,
): number {
  const all: Element[] = []
  const number = (element: Element): void => {
    element.id = newObjectDeferred()
    all.push(element)
    for (const kid of element.kids) if ('kids' in kid) number(kid)
  }
  const put = (id: number, object: string): void => {
    newObjectDeferredBegin(id, true)
    write(object)
    write('endobj')
  }
  const tree = newObjectDeferred()
  number(root)
  const parents = newObjectDeferred()
  for (const element of all) put(element.id, elementText(element, tree, pageIds, textOf))
  const rows = pages.map((here, i) => `${i} [${here.map(({ id }) => `${id} 0 R`).join(' ')}]`)
  put(parents, `<</Nums [${rows.join(' ')}]>>`)
  put(
    tree,
    `<</Type/StructTreeRoot/K ${root.id} 0 R/ParentTree ${parents} 0 R/ParentTreeNextKey ${pages.length}>>`,
  )
  return tree
}

function elementText(
  { tag, parent, kids }: Element,
  tree: number,
  pageIds: readonly number[],
  textOf: (text: string) => string,
): string {
  const first = kids.find((kid) => 'page' in kid)
  const page = first && 'page' in first ? first.page : null
  const list = kids.map((kid) =>
    'kids' in kid
      ? `${kid.id} 0 R`
      : kid.page === page
        ? String(kid.id)
        : `<</Type/MCR/Pg ${pageIds[kid.page]} 0 R/MCID ${kid.id}>>`,
  )
  return [
    `<</S/${tag?.role ?? 'Document'}/P ${parent?.id ?? tree} 0 R`,
    page === null ? '' : `/Pg ${pageIds[page]} 0 R`,
    list.length === 0 ? '' : `/K ${list.length === 1 ? list[0] : `[${list.join(' ')}]`}`,
    tag?.alt === undefined ? '' : `/Alt ${textOf(tag.alt)}`,
    tag?.role === 'TH' ? '/A<</O/Table/Scope/Column>>' : '',
    tag?.role === 'TD' && tag.columns !== undefined ? `/A<</O/Table/ColSpan ${tag.columns}>>` : '',
    '>>',
  ].join('')
}
