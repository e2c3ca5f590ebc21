/**
 * The dock as seen from the side, in m: distance from the water's edge, elevation over the survey water. Read from the Dock's
 * placements; what the strip draws is this and nothing else.
 */
import { type Flat, inDock, SIDE, seenFrom } from '../../geometry/projection.ts'
import { rotate } from '../../geometry/vec.ts'
import { type Project, sectionProperties, type Vec3 } from '../../rules/index.ts'
import { ownCorner } from '../../rules/layout/footprint.ts'
import { factsOf } from '../../rules/part-kinds.ts'

/** Distance and elevation. */
export type Point = Flat

export interface SideShape {
  /** Id of the section, leg, pair or extra. */
  readonly id: string
  readonly points: readonly Point[]
  /** Across the line of sight, where there are several: the nearer is drawn over the farther. */
  readonly y: number
}

export interface SideLeg extends SideShape {
  /** False where no stock leg is long enough: drawn as wanted. */
  readonly found: boolean
  /** Outside diameter, m. */
  readonly width: number
}

export interface SideView {
  readonly ground: readonly Point[]
  readonly frames: readonly SideShape[]
  readonly legs: readonly SideLeg[]
  readonly pads: readonly SideShape[]
  readonly braces: readonly SideShape[]
  readonly extras: readonly SideShape[]
}

/** `x0` to `x1`: what is shown, m. `y`: offset of the section; null: where the depths were taken. */
export function sideView(
  { dock, design, catalog, shop, bed }: Project,
  x0: number,
  x1: number,
  y: number | null = null,
): SideView {
  const ground = bed.knots(x0, x1).map((x): Point => [x, bed.bedAt(x, y ?? bed.lineY)])
  const frames: SideShape[] = []
  const pads: SideShape[] = []
  const braces: SideShape[] = []
  const extras: SideShape[] = []
  const post = new Map(
    catalog.extras.flatMap((e) => (e.place === 'post' ? e.posts.map((p) => [p.code, p]) : [])),
  )
  const size = new Map(catalog.extras.flatMap((e) => e.parts.map((p) => [p.code, p.size])))

  for (const placement of dock.placements) {
    const { kind, code, of, at, turn } = placement
    const seen = (own: Vec3): Point => seenFrom(SIDE, inDock(placement, own))
    if (kind === 'frame') {
      const frame = shop.frames.get(code)!
      const { depth } = shop.shape(frame)
      // From its most shoreward corner to its most lakeward one: lengthwise it shows its side, crosswise its end.
      const out = (i: number): number => rotate(turn, [...ownCorner(frame, i), 0])[0]
      const corners = [0, 1, 2, 3].sort((i, k) => out(i) - out(k))
      const [a, b] = [corners[0]!, corners[3]!].map((i): Vec3 => [...ownCorner(frame, i), 0]) as [Vec3, Vec3]
      const down = ([x, y]: Vec3): Vec3 => [x, y, -depth]
      frames.push({ id: of, y: at[1], points: [seen(a), seen(b), seen(down(b)), seen(down(a))] })
    } else if (kind === 'foot-pad') {
      const { plate, lip, sole } = shop.pads.get(code)!
      const h = plate.length / 2
      pads.push({
        id: of,
        y: at[1],
        points: [seen([-h, 0, sole]), seen([-h, 0, 0]), seen([h, 0, 0]), seen([h, 0, lip])],
      })
    } else if (kind === 'brace') {
      const { holes } = shop.braces.find((brace) => brace.code === code)!
      braces.push({ id: of, y: at[1], points: [seen([0, 0, 0]), seen([holes, 0, 0])] })
    } else if (kind === 'anchor-post') {
      const length = post.get(code)?.length ?? 0
      extras.push({ id: of, y: at[1], points: [seen([0, 0, 0]), seen([0, 0, length])] })
    } else if (factsOf(kind).strip && size.has(code)) {
      const [, along, high] = size.get(code)!
      const ends: readonly Vec3[] =
        factsOf(kind).strip === 'y'
          ? [
              [0, -along / 2, 0],
              [0, along / 2, 0],
            ]
          : [
              [0, 0, -high],
              [0, 0, 0],
            ]
      extras.push({ id: of, y: at[1], points: ends.map(seen) })
    }
  }
  const farFirst = <T extends SideShape>(list: T[]): T[] => list.sort((a, b) => b.y - a.y)
  return {
    ground,
    frames: farFirst(frames),
    legs: farFirst(legsSeen(dock, design, catalog)),
    pads: farFirst(pads),
    braces: farFirst(braces),
    extras: farFirst(extras),
  }
}

const legsSeen = (
  { legs }: Project['dock'],
  { dock: { deckHeight } }: Project['design'],
  catalog: Project['catalog'],
): SideLeg[] =>
  legs.map((leg) => {
    const part = catalog.legs.find((stock) => stock.code === leg.code) ?? catalog.legs[0]!
    const stock = catalog.stock[part.stock]!
    return {
      id: leg.id,
      y: leg.y,
      found: leg.stock !== null,
      width: sectionProperties(stock).width,
      points: [
        [leg.x, leg.bed],
        [leg.x, deckHeight + (leg.aboveDeck ?? 0)],
      ],
    }
  })
