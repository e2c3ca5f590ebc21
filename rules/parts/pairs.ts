/**
 * Leg pairs: two legs in line, near enough for a stock brace (common practice).
 *
 * First the two legs of one start or end edge. Legs left over pair nearest first if they stand within the catalog's tolerance of
 * one line square to a start edge, or along it, and within reach of a stock brace. A leg is in one pair at most; pairs for lengthwise
 * braces come on top (`along.ts`).
 */
import type { Shop } from '../catalog-index.ts'
import type { ClampAt } from './braces.ts'
import type { PlacedLeg } from './legs.ts'

export interface PlacedPair {
  readonly id: string
  /** The left one first where the pair stands across; else the one nearer the shore. */
  readonly legs: readonly [PlacedLeg, PlacedLeg]
  /** Between the axes, m. */
  readonly spacing: number
  /** Across its section (or the dock): has a left and a right end. */
  readonly across: boolean
  /** Of a pair for a lengthwise brace (`along.ts`): the clamps on its legs already. Absent: any other pair. */
  readonly along?: readonly ClampAt[]
}

/** `first`: side that goes first where nothing else decides, so that a mirrored dock pairs its mirrored legs. */
export function pairLegs(legs: readonly PlacedLeg[], shop: Shop, first: 'left' | 'right'): PlacedPair[] {
  const pairs: PlacedPair[] = []
  const left: PlacedLeg[] = []
  for (let i = 0; i < legs.length; i++) {
    const a = legs[i]!
    const b = legs[i + 1]
    // Corners come as start.left, start.right, end.left, end.right: two of one edge stand side by side.
    if (b && a.section === b.section && atEnd(a) === atEnd(b)) {
      const id = a.section.id + (atEnd(a) ? '.end' : '.start')
      pairs.push({ id, legs: [a, b], spacing: apart(a, b), across: true })
      i++
    } else left.push(a)
  }
  const further = pairLeftOver(left, shop, first)
  if (further.length === 0) return pairs
  return [...pairs, ...further].sort((p, q) => sectionOf(p) - sectionOf(q))
}

const atEnd = (leg: PlacedLeg): boolean => leg.corner === 'end.left' || leg.corner === 'end.right'

/** Index of the section that a pair comes with, for an order from the shore. */
const sectionOf = ({ legs: [a, b] }: PlacedPair): number => Math.max(a.section.index, b.section.index)

/** Two legs that could be a pair, by their places among those left over. */
interface Candidate {
  readonly a: number
  readonly b: number
  /** Whole micrometers: distances equal to the last bits in one frame may not be in its mirror image. */
  readonly apart: number
  /** Places of the two in the order of their sections and corners, for those equally far apart. */
  readonly low: number
  readonly high: number
}

/** Of legs that all stand in one heap so many pairs are weighed, fifty a leg of the largest dock: others come near to none of it. */
const MOST_CANDIDATES = 1_000_000
const NO_LEGS: readonly number[] = []
/** A number for a cell of a grid. Cells far from each other may share one: what is in them is too far apart to be taken. */
const cell = (x: number, y: number): number => x * 65_536 + y

function pairLeftOver(legs: readonly PlacedLeg[], shop: Shop, first: 'left' | 'right'): PlacedPair[] {
  const { pairAlign } = shop.rules
  const braces = shop.braces.filter(({ along }) => !along)
  const reach = braces.reduce((most, brace) => Math.max(most, brace.spacing.to), 0)
  const least = braces.reduce((low, brace) => Math.min(low, brace.spacing.from), Number.POSITIVE_INFINITY)
  if (legs.length < 2 || reach === 0) return []

  const order = legs.map((leg) => leg.section.index * 4 + rank(leg, first))
  const grid = new Map<number, number[]>()
  const candidates: Candidate[] = []
  for (let i = 0; i < legs.length && candidates.length < MOST_CANDIDATES; i++) {
    const leg = legs[i]!
    const cx = Math.floor(leg.x / reach)
    const cy = Math.floor(leg.y / reach)
    for (let gx = cx - 1; gx <= cx + 1; gx++)
      for (let gy = cy - 1; gy <= cy + 1; gy++)
        for (const k of grid.get(cell(gx, gy)) ?? NO_LEGS) {
          const dx = Math.abs(leg.x - legs[k]!.x)
          const dy = Math.abs(leg.y - legs[k]!.y)
          const d = Math.hypot(dx, dy)
          if (d > reach + 1e-6 || d < least - 1e-6) continue
          if (offLine(leg, legs[k]!) > pairAlign + 1e-6 && offLine(legs[k]!, leg) > pairAlign + 1e-6) continue
          const low = Math.min(order[k]!, order[i]!)
          candidates.push({ a: k, b: i, apart: Math.round(d * 1e6), low, high: order[k]! + order[i]! - low })
        }
    const there = grid.get(cell(cx, cy))
    if (there) there.push(i)
    else grid.set(cell(cx, cy), [i])
  }
  candidates.sort((p, q) => p.apart - q.apart || p.low - q.low || p.high - q.high)
  const taken = new Uint8Array(legs.length)
  const pairs: PlacedPair[] = []
  for (const candidate of candidates) {
    if (taken[candidate.a] || taken[candidate.b]) continue
    taken[candidate.a] = 1
    taken[candidate.b] = 1
    const a = legs[candidate.a]!
    const b = legs[candidate.b]!
    const across = Math.abs(a.y - b.y) > Math.abs(a.x - b.x)
    // Across the dock the left one has the greater y; lengthwise the one nearer the shore comes first.
    const swap = across ? b.y > a.y : b.x < a.x
    const [p, q] = swap ? [b, a] : [a, b]
    const ids = a.section.index <= b.section.index ? [a.id, b.id] : [b.id, a.id]
    pairs.push({ id: ids.join('~'), legs: [p, q], spacing: apart(a, b), across })
  }
  return pairs
}

/** How far the other stands off a line square to the start edge of a leg's own section, or along it, whichever is less, m. */
const offLine = ({ x, y, section: { c, s } }: PlacedLeg, other: PlacedLeg): number =>
  Math.min(Math.abs(c * (other.x - x) + s * (other.y - y)), Math.abs(c * (other.y - y) - s * (other.x - x)))

const rank = (leg: PlacedLeg, first: 'left' | 'right'): number =>
  (atEnd(leg) ? 2 : 0) + (leg.corner.endsWith(first) ? 0 : 1)

export const apart = (a: PlacedLeg, b: PlacedLeg): number =>
  Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y))
