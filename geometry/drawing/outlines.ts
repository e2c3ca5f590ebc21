/** Parts as they are seen from one side: the outlines of their true shapes, far ones first. */
import type { Catalog, Dock, PartKind, Placement, Vec3 } from '../../rules/index.ts'
import { factsOf } from '../../rules/part-kinds.ts'
import type { Point } from '../paper/marks.ts'
import { type Eye, inDock, nearness, seenFrom } from '../projection.ts'
import { solidOf } from '../solids/index.ts'
import type { ViewPath } from './view.ts'

/** Convex outline of points, counter-clockwise (Andrew, 1979; memory). */
export function outline(points: readonly Point[]): readonly Point[] {
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
  /** Of a part that goes into the ground: where it does. */
  readonly into: Vec3 | null
}

/** Lines across what a cut goes through (ISO 128-3): neighbors lean the other way, decking has them closer. mm on paper. */
const ACROSS = { frame: 1.8, deck: 1.2 } as const

/** Inside of a hollow outline, `wall` thick all round; nothing where it is solid. Counter-clockwise. */
function inside(points: readonly Point[], wall: number): readonly Point[] | undefined {
  if (wall <= 0) return undefined
  const lines = points.map((a, i) => {
    const b = points[(i + 1) % points.length]!
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
    const [ux, uy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
    return { at: [a[0] - uy * wall, a[1] + ux * wall] as const, ux, uy }
  })
  return lines.map(({ at, ux, uy }, i): Point => {
    const before = lines[(i + lines.length - 1) % lines.length]!
    const turn = before.ux * uy - before.uy * ux
    if (Math.abs(turn) < 1e-9) return at
    const far = ((at[0] - before.at[0]) * uy - (at[1] - before.at[1]) * ux) / turn
    return [before.at[0] + before.ux * far, before.at[1] + before.uy * far]
  })
}

/** Of a frame's end beams or a panel's planks, m; 0 for what is solid. */
function wallOf(kind: PartKind, code: string, { stock, frames, decking }: Catalog): number {
  const name =
    kind === 'frame'
      ? frames.find((one) => one.code === code)?.ends
      : decking.panels.find((one) => one.code === code)?.plank.stock
  const own = name === undefined ? undefined : stock[name]
  return own?.shape === 'rect-tube' ? own.wall : 0
}

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
  const sections: string[] = []
  const cutThrough = (
    kind: PartKind,
    code: string,
    section: string,
    points: readonly Point[],
  ): Pick<ViewPath, 'hatch' | 'hollow'> => {
    if (!sections.includes(section)) sections.push(section)
    const deck = kind === 'deck-panel'
    const leans = (sections.indexOf(section) % 2 === 1) !== deck
    const hollow = inside(points, wallOf(kind, code, catalog))
    return {
      hatch: { angle: leans ? 135 : 45, every: deck ? ACROSS.deck : ACROSS.frame },
      ...(hollow && { hollow }),
    }
  }
  for (const placement of placements) {
    const { kind, code, of, section } = placement
    const { list, frame } = factsOf(kind)
    const into = list === 'posts' || frame === 'post-at-bed' ? placement.at : null
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
        into,
        near: through ? Number.NEGATIVE_INFINITY : Math.max(...along),
        path: {
          layer: factsOf(kind).layer,
          points,
          closed: true,
          of: [of, section],
          fill: '#ffffff',
          ...(through && cutThrough(kind, code, section, points)),
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
