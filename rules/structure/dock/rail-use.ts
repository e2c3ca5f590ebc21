/** What each section's rails use of their strength, and how far they go down under people. */
import type { RailUse } from '../../dock.ts'
import { round6 } from '../../numbers.ts'
import type { Analysis } from './analysis.ts'
import type { DockFrame } from './frame.ts'
import { railJudges } from './part-judges.ts'

interface RailsJudge {
  visit(forces: Float64Array, name: string): void
  /** The worst of each section's rails. */
  uses(analysis: Analysis): RailUse[]
}

export function railsJudge(frame: DockFrame): RailsJudge {
  const judges = railJudges(frame)
  return {
    visit(forces, name) {
      for (const judge of judges) judge.visit(forces, name)
    },
    uses: (analysis) => {
      const bySection = new Map<string, RailUse>()
      frame.rails.forEach((rail, i) => {
        const { use, case: name } = judges[i]!.worst()
        const side = rail.edge === 'left' || rail.edge === 'right'
        const { deflection, span } = side ? sag(frame, rail, analysis) : { deflection: 0, span: 0 }
        const known = bySection.get(rail.section.id)
        bySection.set(rail.section.id, {
          section: rail.section.id,
          use: round6(Math.max(use, known?.use ?? 0)),
          case: known && known.use >= use ? known.case : name,
          deflection: round6(Math.max(deflection, known?.deflection ?? 0)),
          span: round6(Math.max(span, known?.span ?? 0)),
        })
      })
      return [...bySection.values()]
    },
  }
}

/** How far a rail goes down under people below the line between its ends, at its nodes and half way between them, m. */
function sag(
  frame: DockFrame,
  rail: DockFrame['rails'][number],
  { liveMovement: movement, live }: Analysis,
): { deflection: number; span: number } {
  const first = rail.nodes[0]!
  const last = rail.nodes.at(-1)!
  const a = frame.nodes[first]!
  const far = (node: number): number => Math.hypot(frame.nodes[node]!.x - a.x, frame.nodes[node]!.y - a.y)
  const span = far(last)
  const z = (node: number): number => movement[node * 6 + 2]!
  const line = (t: number): number => z(first) * (1 - t) + z(last) * t
  let deflection = 0
  rail.members.forEach((member, i) => {
    const from = rail.nodes[i]!
    const to = rail.nodes[i + 1]!
    const length = far(to) - far(from)
    const ux = (frame.nodes[to]!.x - frame.nodes[from]!.x) / length
    const uy = (frame.nodes[to]!.y - frame.nodes[from]!.y) / length
    const slope = (node: number): number => uy * movement[node * 6 + 3]! - ux * movement[node * 6 + 4]!
    const { E, Iy } = frame.members[member]!
    // Its own even load, from the half of it that goes to the end.
    const q = (2 * live.onMembers[member * 12 + 2]!) / length
    const own = (q * length ** 4) / (384 * E * Iy)
    const middle = (z(from) + z(to)) / 2 + ((slope(from) - slope(to)) * length) / 8 + own
    deflection = Math.max(
      deflection,
      line(far(to) / span) - z(to),
      line((far(from) + far(to)) / 2 / span) - middle,
    )
  })
  return { deflection, span }
}
