/**
 * In which order nodes are eliminated, and which 6 × 6 blocks the factor then holds.
 *
 * Minimum degree: always the node with the fewest neighbors left. Feet, clamps and braces go first and cost next to
 * nothing, and what remains of a long dock is a chain eliminated from its ends. Only blocks that fill are kept: on a
 * dock of 40 sections of 18 nodes that takes 1,675 block updates, where the skyline of a reverse Cuthill–McKee order
 * takes 11,293, for it carries every foot and clamp along (6 nodes a section: 639 against 1,034).
 */

export interface BlockPattern {
  /** Eliminated nodes, in order. */
  readonly order: Int32Array
  /** Position of each node in `order`; -1 where a node takes no part. */
  readonly position: Int32Array
  /** First off-diagonal block of each column; one longer than `order`. */
  readonly start: Int32Array
  /** Row (a position) of each off-diagonal block, ascending within a column. */
  readonly row: Int32Array
  /**
   * For each column, for each pair a ≤ b of its blocks, in that order: the block which the pair changes.
   * Blocks 0 … n−1 are the diagonal ones, n + i is off-diagonal block i.
   */
  readonly target: Int32Array
}

/** Eliminates nodes on the graph; gives each column's rows as nodes, in order of elimination. */
function eliminate(
  neighbors: readonly number[][],
  takesPart: Uint8Array,
): { readonly order: number[]; readonly columns: number[][] } {
  const order: number[] = []
  const columns: number[][] = []
  const count = neighbors.length
  const gone = takesPart.map((part) => 1 - part)
  const seen = new Int32Array(count).fill(-1)
  /** Nodes by degree; entries that are no longer true are skipped when they come up. */
  const byDegree: number[][] = []
  const file = (node: number): void => {
    const degree = neighbors[node]!.length
    byDegree[degree] ??= []
    byDegree[degree].push(node)
  }
  for (let node = count - 1; node >= 0; node--) if (!gone[node]) file(node)
  for (let degree = 0; degree < byDegree.length; degree++) {
    const bucket = byDegree[degree]
    if (bucket === undefined) continue
    const node = bucket.pop()
    if (node === undefined) continue
    let lowest = degree
    if (!gone[node] && neighbors[node]!.length === degree) {
      gone[node] = 1
      const around = neighbors[node]!
      order.push(node)
      columns.push(around)
      for (const one of around) {
        const mine = neighbors[one]!
        mine.splice(mine.indexOf(node), 1)
        for (const other of mine) seen[other] = order.length
        for (const other of around) if (other !== one && seen[other] !== order.length) mine.push(other)
        for (const other of mine) seen[other] = -1
        lowest = Math.min(lowest, mine.length)
        file(one)
      }
    }
    degree = Math.min(lowest, degree) - 1
  }
  return { order, columns }
}

/**
 * @param takesPart 1 for each node that does; others get no block
 * @param from pairs of nodes that share a block: one of each pair
 * @param to the other
 */
export function blockPattern(takesPart: Uint8Array, from: Int32Array, to: Int32Array): BlockPattern {
  const neighbors: number[][] = Array.from(takesPart, () => [])
  for (let i = 0; i < from.length; i++) {
    const a = from[i]!
    const b = to[i]!
    if (a === b || !takesPart[a] || !takesPart[b] || neighbors[a]!.includes(b)) continue
    neighbors[a]!.push(b)
    neighbors[b]!.push(a)
  }
  const { order, columns } = eliminate(neighbors, takesPart)
  const position = new Int32Array(takesPart.length).fill(-1)
  order.forEach((node, at) => {
    position[node] = at
  })
  const start = new Int32Array(order.length + 1)
  let pairs = 0
  columns.forEach((column, at) => {
    start[at + 1] = start[at]! + column.length
    pairs += (column.length * (column.length + 1)) / 2
  })
  const row = new Int32Array(start[order.length]!)
  columns.forEach((column, at) => {
    row.set(Int32Array.from(column, (node) => position[node]!).sort(), start[at])
  })
  return {
    order: Int32Array.from(order),
    position,
    start,
    row,
    target: targets(order.length, start, row, pairs),
  }
}

function targets(count: number, start: Int32Array, row: Int32Array, pairs: number): Int32Array {
  const target = new Int32Array(pairs)
  const blockIn = new Int32Array(count)
  // Column by column of the target, so that each column's rows are laid out once.
  let next = 0
  for (let column = 0; column < count; column++) {
    for (let a = start[column]!; a < start[column + 1]!; a++) {
      const into = row[a]!
      target[next++] = into
      for (let i = start[into]!; i < start[into + 1]!; i++) blockIn[row[i]!] = count + i
      for (let b = a + 1; b < start[column + 1]!; b++) target[next++] = blockIn[row[b]!]!
    }
  }
  return target
}

/** Number of the block that two nodes share, numbered as in `target`; -1 if they share none. */
export function sharedBlock({ order, position, start, row }: BlockPattern, a: number, b: number): number {
  const column = Math.min(position[a]!, position[b]!)
  const wanted = Math.max(position[a]!, position[b]!)
  if (column < 0) return -1
  for (let i = start[column]!; i < start[column + 1]!; i++) if (row[i] === wanted) return order.length + i
  return -1
}
