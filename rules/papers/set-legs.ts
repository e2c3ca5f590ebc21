/**
 * How each leg is set on the day, in the order of the numbers that stand on every paper: where it stands, how deep it should be there, how
 * high it is set, and by how much the bed may differ before another leg is needed.
 */
import { braceHoles, type LegPlace, legNumber, legPlace } from '../leg-places.ts'
import { round6 } from '../numbers.ts'
import { mustStay } from '../parts/legs.ts'
import type { Project } from '../project.ts'

export interface SetLeg {
  readonly number: number
  readonly leg: string
  readonly place: LegPlace
  /** Lakeward from the stake, or from the water's edge where there is none, m. */
  readonly out: number
  /** Water over what the pad is to stand on, on the survey day, m; negative ashore. */
  readonly depth: number
  /** Sole of the foot pad to the deck surface, and to the frame's top, m. */
  readonly setHeight: number
  readonly setHeightFrame: number
  /** Length, m; null where none is long enough. */
  readonly stock: number | null
  readonly aboveDeck: number | null
  /**
   * How much deeper it may turn out with this leg, m: what is left over what must stay (`mustStay`), as the page tells it. Null without
   * a leg.
   */
  readonly deeper: number | null
  /** Code of its brace, which end of it is here, how far up the leg its hole is, m. */
  readonly braces: readonly { readonly code: string; readonly end: 'low' | 'high'; readonly up: number }[]
}

export function setLegs(project: Pick<Project, 'dock' | 'design' | 'shop' | 'bed'>): SetLeg[] {
  const { dock, design, shop } = project
  const stake = design.site.stake?.x ?? 0
  return dock.legs.map((leg): SetLeg => {
    const { id, x, y, bed, setHeight, setHeightFrame, stock, aboveDeck } = leg
    const pad = shop.pads.get(leg.pad)!
    return {
      number: legNumber(dock, id),
      leg: id,
      place: legPlace(dock, leg),
      out: round6(x - stake),
      depth: round6(-bed),
      ...{ setHeight, setHeightFrame, stock, aboveDeck },
      deeper: aboveDeck === null ? null : round6(Math.max(0, aboveDeck - mustStay({ x, y, pad }, project))),
      braces: braceHoles(dock, leg).map(({ code, end, up }) => ({ code, end, up: round6(up) })),
    }
  })
}
