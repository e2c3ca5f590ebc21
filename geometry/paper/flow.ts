/**
 * What flows down a sheet: blocks that are never cut in two, one under the other, on as many sheets as it takes.
 * A block knows its width when it is made; where it comes to stand it is told when it is drawn.
 */
import type { Mark, Point, Tag } from './marks.ts'

export interface Block {
  readonly height: number
  /** White above it, mm; left out at the top of a sheet. */
  readonly before: number
  /** Never last on a sheet: goes on with what follows. */
  readonly keep: boolean
  /** Drawn above it where it comes to the top of a sheet: the head of its table. */
  readonly head: Block | null
  /** Of a table's head: the table. */
  readonly table?: Tag
  /** What a sheet is called by on which it is the first that has a name; empty for none. */
  readonly name: string
  readonly marks: (x: number, y: number) => readonly Mark[]
}

export const block = (
  height: number,
  marks: Block['marks'],
  more: Partial<Pick<Block, 'before' | 'keep' | 'head' | 'name' | 'table'>> = {},
): Block => ({ height, marks, before: 0, keep: false, head: null, name: '', ...more })

/** White. */
export const space = (height: number): Block => block(height, () => [])

/** What follows begins a new sheet. */
export const BREAK = 'break'
export type Flow = readonly (Block | typeof BREAK)[]

/** Height of blocks one under the other, the first one's white left out. */
export const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, { height, before }, i) => sum + height + (i === 0 ? 0 : before), 0)

/** Blocks as one, which is not cut. */
export function together(
  blocks: readonly Block[],
  more: Partial<Pick<Block, 'before' | 'keep'>> = {},
): Block {
  return block(heightOf(blocks), (x, y) => drawn(blocks, x, y), { before: blocks[0]?.before ?? 0, ...more })
}

function drawn(blocks: readonly Block[], x: number, y: number): Mark[] {
  let top = y
  return blocks.flatMap((one, i) => {
    top += i === 0 ? 0 : one.before
    const marks = one.marks(x, top)
    top += one.height
    return marks
  })
}

/** Runs of blocks that stay together: each ends with one that need not keep with the next. */
function* runsOf(flow: Flow): Generator<readonly Block[] | typeof BREAK> {
  let run: Block[] = []
  for (const item of flow) {
    if (item === BREAK) {
      if (run.length > 0) yield run
      run = []
      yield BREAK
      continue
    }
    run.push(item)
    if (item.keep) continue
    yield run
    run = []
  }
  if (run.length > 0) yield run
}

export interface Filled {
  readonly marks: readonly Mark[]
  /** Of the first block with a name that stands on it. */
  readonly name: string
}

/** Marks with what they are part of; those that know it already keep it, unless `all`. */
export const withTag = (marks: readonly Mark[], tag: Tag, all = false): readonly Mark[] =>
  marks.map((mark) => (mark.tag && !all ? mark : { ...mark, tag }))

/** Whatever stands in a table between its rows is a row of it. */
function inTable({ head }: Block, marks: readonly Mark[]): readonly Mark[] {
  if (!head?.table) return marks
  const { columns } = head.table
  const cell: Tag = {
    role: 'TD',
    in: { role: 'TR', in: head.table },
    ...(columns !== undefined && { columns }),
  }
  return marks.map((mark) =>
    mark.kind !== 'text' || isIn(mark.tag, head.table!) ? mark : { ...mark, tag: cell },
  )
}

const isIn = (tag: Tag | undefined, table: Tag): boolean =>
  tag !== undefined && (tag === table || isIn(tag.in, table))

/** Marks sheet by sheet; `room` is the height on the sheet of that number, from 0, and where its top left corner is. */
export function paginate(
  flow: Flow,
  room: (sheet: number) => { readonly at: Point; readonly height: number },
): readonly Filled[] {
  const sheets: { marks: Mark[]; name: string }[] = []
  let top = 0
  let left = 0
  /** The table whose head stands on this sheet already. */
  let headed: Block | null = null
  const seen = new Set<Block>()
  let empty = true
  let end = 0
  const turn = (): void => {
    const { at, height } = room(sheets.length)
    sheets.push({ marks: [], name: '' })
    ;[left, top] = at
    end = top + height
    headed = null
    empty = true
  }
  const put = (one: Block): void => {
    const sheet = sheets.at(-1)!
    if (sheet.name === '') sheet.name = one.name
    if (one.head && one.head !== headed) {
      // Also where a table starts: its head is drawn by whichever row comes first.
      if (!empty) top += one.head.before
      const marks = one.head.marks(left, top)
      // Read once, however often it stands there.
      sheet.marks.push(...(seen.has(one.head) ? withTag(marks, { role: 'Artifact' }, true) : marks))
      seen.add(one.head)
      top += one.head.height
      empty = false
    }
    headed = one.head
    if (!empty) top += one.before
    sheet.marks.push(...inTable(one, one.marks(left, top)))
    top += one.height
    empty = false
  }
  const heightHere = (run: readonly Block[]): number => {
    let [height, bare, head] = [0, empty, headed]
    for (const one of run) {
      if (one.head && one.head !== head) {
        height += one.head.height + (bare ? 0 : one.head.before)
        bare = false
      }
      head = one.head
      height += one.height + (bare ? 0 : one.before)
      bare = false
    }
    return height
  }
  turn()
  for (const run of runsOf(flow)) {
    if (run === BREAK) {
      if (!empty) turn()
      continue
    }
    if (!empty && top + heightHere(run) > end + 1e-6) turn()
    for (const one of run) {
      // A run that is higher than a sheet is cut between its blocks.
      if (!empty && top + heightHere([one]) > end + 1e-6) turn()
      put(one)
    }
  }
  return sheets
}
