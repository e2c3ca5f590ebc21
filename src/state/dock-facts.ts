/** What the summary says of a dock in one line: read from the Dock, nothing worked out that another view could show differently. */
import type { Design, Dock } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import type { Word } from '../words/index.ts'

export interface Facts {
  readonly shape: Word
  readonly sections: number
  /** From its shoreward end to its outermost edge, along the dock, m. */
  readonly length: number
  /** Distance of its outermost edge from the water's edge, m. */
  readonly reach: number
  /** Deepest water under a leg on the day of the survey, m. */
  readonly depth: number
}

export function dockFacts(dock: Dock, design: Design): Facts {
  const { x0, x1: reach } = footprintOfAll(dock.sections) ?? { x0: 0, x1: 0 }
  const shape = design.dock.plan
    ? 'plan'
    : (design.dock.head?.sections ?? 0) > 0
      ? design.dock.head!.shape
      : 'straight'
  return {
    shape: dock.sections.length === 0 ? 'what.empty' : `what.${shape}`,
    sections: dock.sections.length,
    length: reach - x0,
    reach,
    depth: dock.legs.reduce((deepest, leg) => Math.max(deepest, -leg.bed), 0),
  }
}
