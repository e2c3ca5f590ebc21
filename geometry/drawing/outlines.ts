/** Parts as they are seen from one side: the outlines of their true shapes, far ones first. */
import type { Catalog, Dock, PartKind, Placement, Vec3 } from '../../rules/index.ts'
import { factsOf } from '../../rules/part-kinds.ts'
import type { Ink, Point } from '../paper/marks.ts'
import { type Eye, inDock, nearness, seenFrom } from '../projection.ts'
import { solidOf } from '../solids/index.ts'
import type { ViewPath } from './view.ts'

/** Convex outline of points, counter-clockwise (Andrew, 1979; memory). */
function outline(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = []
    for (const p of list) {
      for (;;) {
        const [a, b] = [chain.at(-2), chain.at(-1)]
        if (!a || !b || (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-12) break
        chain.pop()
      }
      chain.push(p)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.reverse())]
}

export interface Shown {
  readonly kind: PartKind
  readonly of: string
  /** The section that it counts to. */
  readonly section: string
  readonly path: ViewPath
  /** Toward the reader, of the nearest point, m. */
  readonly near: number
}

/** What a cut goes through. */
const CUT: Ink = '#dfe3e6'

/**
 * @param whole true where one outline of the whole part is enough (a deck panel without its planks)
 * @param cut where frames and decking are cut through, along the look, m: what the cut does not meet is left out
 */
export function outlinesFrom(
  placements: readonly Placement[],
  catalog: Catalog,
  eye: Eye,
  whole: (kind: PartKind) => boolean = () => false,
  cut?: number,
): Shown[] {
  const shown: Shown[] = []
  for (const placement of placements) {
    const { kind, code, of, section } = placement
    const { positions, indices, bodies } = solidOf(kind, code, catalog)
    const all: Vec3[] = []
    for (let i = 0; i < positions.length; i += 3)
      all.push(inDock(placement, [positions[i]!, positions[i + 1]!, positions[i + 2]!]))
    const draw = (vertices: readonly Vec3[]): void => {
      const points = outline(vertices.map((place) => seenFrom(eye, place)))
      if (points.length < 2) return
      const along = vertices.map((place) => nearness(eye, place))
      const through = cut !== undefined && (kind === 'frame' || kind === 'deck-panel')
      if (through && !(Math.min(...along) < cut && cut < Math.max(...along))) return
      shown.push({
        kind,
        of,
        section,
        near: through ? Number.NEGATIVE_INFINITY : Math.max(...along),
        path: {
          layer: factsOf(kind).layer,
          points,
          closed: true,
          of: [of, section],
          fill: through ? CUT : '#ffffff',
        },
      })
    }
    if (whole(kind)) draw(all)
    else
      for (const { start, count } of bodies)
        draw([...new Set(indices.subarray(start, start + count))].map((vertex) => all[vertex]!))
  }
  return shown.sort((a, b) => a.near - b.near)
}

export const placementsOf = (dock: Dock, drawn: (kind: PartKind) => boolean): readonly Placement[] =>
  dock.placements.filter(({ kind }) => drawn(kind))
