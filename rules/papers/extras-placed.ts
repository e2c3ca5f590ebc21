/** Where each extra goes, as a crew finds it: on which section, at which of its edges, how far along that. */
import type { Edge, PartKind } from '../dock.ts'
import { stanceOf } from '../layout/footprint.ts'
import { round6 } from '../numbers.ts'
import { factsOf } from '../part-kinds.ts'
import type { Project } from '../project.ts'
import { nameOf } from './names.ts'

export interface ExtraPlaced {
  readonly id: string
  readonly name: string
  readonly section: string
  /** The nearest. */
  readonly edge: Edge
  /** Its middle along that edge, m: from the shore end (`left`, `right`), or from the left (`start`, `end`). */
  readonly along: number
}

const isExtra = (kind: PartKind): boolean => ['extras', 'posts'].includes(factsOf(kind).list)

/** In the Dock's own order; a post with its clamps and auger is one, and goes by the post's name. */
export function extrasPlaced({ dock, shop }: Pick<Project, 'dock' | 'shop'>): ExtraPlaced[] {
  const sections = new Map(dock.sections.map((section) => [section.id, section]))
  const seen = new Map<string, ExtraPlaced>()
  for (const { kind, code, of, section: on, at } of dock.placements) {
    const section = sections.get(on)
    if (!section || !isExtra(kind)) continue
    const name = nameOf(shop, kind, code)
    const known = seen.get(of)
    if (known && kind === 'anchor-post') seen.set(of, { ...known, name })
    if (known) continue
    const { x, y, c, s } = stanceOf(section)
    const along = c * (at[0] - x) + s * (at[1] - y)
    const across = -s * (at[0] - x) + c * (at[1] - y)
    const half = section.width / 2
    const gaps = {
      left: Math.abs(half - across),
      right: Math.abs(half + across),
      start: Math.abs(along),
      end: Math.abs(section.length - along),
    }
    const edge = (Object.keys(gaps) as Edge[]).reduce((best, one) => (gaps[one] < gaps[best] ? one : best))
    seen.set(of, {
      id: of,
      name,
      section: on,
      edge,
      along: round6(edge === 'left' || edge === 'right' ? along : half - across),
    })
  }
  return [...seen.values()]
}
