/** How a crew sees that a dock lies in line, square and level, with the figures of this dock. Geometry of the Dock alone. */
import type { Section } from '../dock.ts'
import { stanceOf, toPlan } from '../layout/footprint.ts'
import { round6 } from '../numbers.ts'
import type { Project } from '../project.ts'

/** Sides of a section as they are seen when looking at the lake. */
export type SeenSide = 'left' | 'right' | 'shore' | 'lake'

/**
 * Of sections that turn off one that carries them, alike: from its corner where it begins, on the side that they go off to, to their
 * corner where they end, straight across, m.
 */
export interface TurnCheck {
  readonly sections: readonly string[]
  readonly on: string
  /** At a right angle, not over a corner piece. */
  readonly square: boolean
  /** The corner of what carries it, and its own. */
  readonly from: SeenSide
  readonly to: SeenSide
  readonly across: number
}

type Far = Pick<TurnCheck, 'to' | 'across'>

export interface Straight {
  /** A cord along the left edge of the run: how far left of the surveyed line (right: negative), and how far out it reaches from the stake, m. */
  readonly line: { readonly aside: number; readonly to: number }
  /** Corner to corner, the same both ways, m: of the first section, and from it to the end of the run where that has more of them. */
  readonly first: { readonly section: string; readonly diagonal: number }
  readonly run: { readonly section: string; readonly diagonal: number } | null
  readonly turns: readonly TurnCheck[]
  /** The deck's surface over the survey's mark, m; null without a mark. */
  readonly overMark: number | null
}

/** Own left and right of a section, as seen. */
export function seenSide({ heading }: Pick<Section, 'heading'>, own: 'left' | 'right'): SeenSide {
  const quarter = ((Math.round(heading / 90) % 4) + 4) % 4
  const left = (['left', 'shore', 'right', 'lake'] as const)[quarter]!
  const right = (['right', 'lake', 'left', 'shore'] as const)[quarter]!
  return own === 'left' ? left : right
}

const carrierOf = ({ on }: Section, sections: readonly Section[]): Section | undefined =>
  sections.find(({ id }) => id === on)

/** Null for a dock without a section that stands. */
export function straightOf({ dock, design }: Pick<Project, 'dock' | 'design'>): Straight | null {
  const { sections } = dock
  const first = sections.find(({ role }) => role === 'standing')
  if (!first) return null
  const run = sections.filter(
    ({ role, heading, y, width, turn }) =>
      role !== 'ramp' &&
      turn === undefined &&
      heading === 0 &&
      Math.abs(y - first.y) < 1e-6 &&
      width === first.width,
  )
  const last = run.reduce((far, one) => (one.x + one.length > far.x + far.length ? one : far), first)
  const end = last.x + last.length
  const square = ({ id, x, length }: Section) => ({
    section: id,
    diagonal: round6(Math.hypot(x + length - first.x, first.width)),
  })
  const turns: (TurnCheck & { readonly sections: string[] })[] = []
  for (const section of sections) {
    // Over a corner piece it is seen from what carries that: the piece itself is no rectangle.
    let on = sections.find(({ id }) => id === section.on)
    while (on?.turn !== undefined) on = carrierOf(on, sections)
    if (!on || on.role === 'ramp' || section.turn !== undefined || section.heading % 180 === on.heading % 180)
      continue
    const [host, guest] = [stanceOf(on), stanceOf(section)]
    const left = host.c * guest.s - host.s * guest.c > 0
    const from = toPlan(host, 0, left ? on.width / 2 : -on.width / 2)
    const [a, b] = (['left', 'right'] as const).map((own) => {
      const to = toPlan(guest, section.length, own === 'left' ? section.width / 2 : -section.width / 2)
      return { to: seenSide(section, own), across: round6(Math.hypot(to[0] - from[0], to[1] - from[1])) }
    }) as [Far, Far]
    const far = a.across > b.across ? a : b
    const alike = turns.find(
      (turn) => turn.on === on.id && turn.to === far.to && Math.abs(turn.across - far.across) < 1e-5,
    )
    if (alike) alike.sections.push(section.id)
    else
      turns.push({
        sections: [section.id],
        on: on.id,
        from: seenSide(on, left ? 'left' : 'right'),
        square: (section.heading - on.heading) % 90 === 0,
        ...far,
      })
  }
  const { stake, benchmark } = design.site
  return {
    line: { aside: round6(first.y + first.width / 2), to: round6(end - (stake?.x ?? 0)) },
    first: square(first),
    run: last === first ? null : square(last),
    turns,
    overMark: benchmark ? round6(design.dock.deckHeight - benchmark.above) : null,
  }
}
