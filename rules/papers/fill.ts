/** Rows of a parts list, piece by piece into loads that keep a limit of mass and of pieces. */
import type { PartRow } from '../dock.ts'
import { grams } from '../numbers.ts'

/** What of one row is in a load. */
export interface Share {
  readonly row: PartRow
  readonly quantity: number
  readonly spares: number
}

export type Load = readonly Share[]

export const gramsOf = (row: Pick<PartRow, 'unitMass'>): number => grams(row.unitMass)

export const loadGrams = (load: Load): number =>
  load.reduce((sum, { row, quantity, spares }) => sum + gramsOf(row) * (quantity + spares), 0)

interface Open {
  grams: number
  pieces: number
  readonly shares: { row: PartRow; quantity: number; spares: number }[]
}

/** In the rows' order; a load is closed when the next piece has no room in it. A piece over the limit is a load of its own. */
export function fill(
  rows: readonly PartRow[],
  most: { readonly grams: number; readonly pieces: number },
): Load[] {
  const loads: Open[] = []
  let open: Open | null = null
  for (const row of rows) {
    const unit = gramsOf(row)
    for (const what of ['quantity', 'spares'] as const)
      for (let left = row[what]; left > 0; ) {
        let room = open ? roomIn(open, unit, most) : 0
        if (!open || room === 0) {
          open = { grams: 0, pieces: 0, shares: [] }
          loads.push(open)
          room = Math.max(1, roomIn(open, unit, most))
        }
        const n = Math.min(left, room)
        put(open, row, what, n)
        open.grams += unit * n
        open.pieces += n
        left -= n
      }
  }
  return loads.map(({ shares }) => shares)
}

function roomIn(
  { grams: full, pieces }: Open,
  unit: number,
  most: { grams: number; pieces: number },
): number {
  const mass = most.grams - full
  if (mass < 0) return 0
  return Math.max(
    0,
    Math.min(unit === 0 ? Number.POSITIVE_INFINITY : Math.floor(mass / unit), most.pieces - pieces),
  )
}

function put({ shares }: Open, row: PartRow, what: 'quantity' | 'spares', n: number): void {
  let share = shares.at(-1)
  if (share?.row !== row) {
    share = { row, quantity: 0, spares: 0 }
    shares.push(share)
  }
  share[what] += n
}
