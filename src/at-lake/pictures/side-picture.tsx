/** The dock from its side as far as it stands, in today's water, around the section that a step is about; who stands where. For small screens in the sun: few thick lines. */
import { peopleAt, spanOf } from '../../../geometry/drawing/people.ts'
import type { Dock, Project } from '../../../rules/index.ts'
import type { Crew } from '../../../rules/papers/steps/step.ts'

/** m, lakeward and up. */
type Place = readonly [x: number, z: number]
type Section = Dock['sections'][number]

interface SidePictureProps {
  readonly project: Project
  /** What it says to who cannot see it. */
  readonly label: string
  /** Sections that stand. */
  readonly standing: readonly string[]
  /** What the step is about; none: the whole dock. */
  readonly section?: Section | undefined
  readonly leg?: string | undefined
  /** The lake and the deck today, over the survey's water, m. */
  readonly level: number
  readonly deck: number
  /** What a leg stands on as it is known now, m. */
  readonly bedOf: (leg: string) => number
  readonly crew?: readonly Crew[]
  /** The section lies on the deck of the one before, its lake end just past the edge. */
  readonly lying?: boolean
}

/** px, and what is shown of the lake before and of the dock behind a section, of its length. */
const WIDE = 360
const TALL = 190
const BEHIND = 1.1
const BEFORE = 0.5
/** A section that lies on the deck before it is hung juts out over the edge by that, m: its legs are in reach. */
const JUTS = 0.35
/** Ground under the lowest foot, air over the highest head, depth of a frame, m. */
const UNDER = 0.25
const OVER = 0.15
const FRAME = 0.16

export function SidePicture(props: SidePictureProps) {
  const { project, label, standing, section, leg, level, deck, bedOf } = props
  const { x0, x1, ground, people, legs, shown } = sceneOf(props)
  const heights = people.flatMap(({ points }) => points.map(([, z]) => z))
  const top = Math.max(deck + 0.55, ...heights) + OVER
  const low = Math.min(level - 0.5, ...legs.map(({ id }) => bedOf(id))) - UNDER
  const scale = Math.min(WIDE / (x1 - x0), TALL / (top - low))
  const left = (WIDE - (x1 - x0) * scale) / 2
  const path = (points: readonly Place[]): string =>
    points
      .map(([x, z]) => `${(left + (x - x0) * scale).toFixed(1)} ${((top - z) * scale).toFixed(1)}`)
      .map((at, i) => (i === 0 ? 'M' : 'L') + at)
      .join('')
  // As wide as the picture, whatever is shown of the dock.
  const [edge0, edge1] = [x0 - left / scale, x1 + left / scale]
  const block = (a: number, b: number, z: number): Place[] => [
    [a, z],
    [b, z],
    [b, low],
    [a, low],
  ]
  return (
    <svg
      className="lake-picture"
      viewBox={`0 0 ${WIDE} ${((top - low) * scale).toFixed(1)}`}
      role="img"
      aria-label={label}
    >
      <path className="water" d={`${path(block(edge0, edge1, level))}Z`} />
      <path className="earth" d={`${path([[edge0, low], ...ground(edge0, edge1), [edge1, low]])}Z`} />
      {people.map(({ points }) => (
        <path key={path(points)} className="person" d={`${path(points)}Z`} />
      ))}
      {legs.map(({ id, x, aboveDeck, section: of }) => (
        <path
          key={id}
          className={`leg ${id === leg ? 'lit' : ''} ${standing.includes(of) ? '' : 'to-come'}`}
          d={path([
            [x, bedOf(id)],
            [x, deck + (aboveDeck ?? 0)],
          ])}
        />
      ))}
      {shown.map((one) => (
        <path
          key={one.id}
          className={`frame ${one.id === section?.id ? 'lit' : ''}`}
          d={`${path(one.id === section?.id ? lain(outlineOf(one, project, deck), props) : outlineOf(one, project, deck))}Z`}
        />
      ))}
    </svg>
  )
}

function sceneOf({ project, standing, section, level, deck, bedOf, crew = [] }: SidePictureProps) {
  const { dock, bed, design } = project
  const spans = dock.sections.map(spanOf)
  const [from, to] = section
    ? spanOf(section)
    : [Math.min(...spans.map(([a]) => a)), Math.max(...spans.map(([, b]) => b))]
  const length = section ? to - from : 1
  const [x0, x1] = [from - BEHIND * length, to + BEFORE * length]
  const shown = dock.sections.filter((one) => {
    const [a, b] = spanOf(one)
    return (standing.includes(one.id) || one.id === section?.id) && b > x0 && a < x1
  })
  const legs = dock.legs.filter((leg) => shown.some(({ id }) => id === leg.section))
  // The ground goes through what was measured at the legs.
  const known = [...legs].sort((a, b) => a.x - b.x)
  const moved = (x: number): number => {
    const ground = bed.bedAt(x, bed.lineY)
    const near = known.reduce<(typeof known)[number] | null>(
      (best, leg) => (best && Math.abs(best.x - x) <= Math.abs(leg.x - x) ? best : leg),
      null,
    )
    if (!near) return ground
    const fade = Math.max(0, 1 - Math.abs(near.x - x) / 2.5)
    return ground + (bedOf(near.id) - near.bed) * fade
  }
  const ground = (a: number, b: number): Place[] =>
    [...bed.knots(a, b), ...known.map(({ x }) => x)]
      .filter((x) => x >= a && x <= b)
      .sort((p, q) => p - q)
      .map((x): Place => [x, moved(x)])
  const people = section
    ? peopleAt(crew, section, { dock, deck: design.dock.deckHeight, bed, from: x0, to: x1 })
    : []
  const lift = deck - design.dock.deckHeight
  const onDeck = crew.some(({ place }) => place === 'deck')
  return {
    x0,
    x1,
    shown,
    legs,
    ground,
    level,
    people: people.map(({ points }) => ({
      points: points.map(([x, z]): Place => [x, z + (onDeck ? lift : 0)]),
    })),
  }
}

/** Moved shoreward onto the deck, of a section that is hung on the lake end of another. */
function lain(outline: Place[], { lying = false, section, project: { dock } }: SidePictureProps): Place[] {
  const on = lying && section ? dock.sections.find(({ id }) => id === section.on) : undefined
  if (!on || !section) return outline
  const [[a, b], [, end]] = [spanOf(section), spanOf(on)]
  return a < end - FRAME ? outline : outline.map(([x, z]): Place => [x - (b - end) + JUTS, z + FRAME])
}

/** A section's frame from the side; the ramp comes down to the shore. */
function outlineOf(section: Section, { dock, design }: Project, deck: number): Place[] {
  const [a, b] = spanOf(section)
  const lift = deck - design.dock.deckHeight
  const z = section.role === 'ramp' && dock.ramp ? dock.ramp.shoreZ : deck
  const shore = section.role === 'ramp' && dock.ramp ? z + FRAME : deck
  return [
    [a, section.role === 'ramp' ? shore : deck],
    [b, design.dock.deckHeight + lift],
    [b, deck - FRAME],
    [a, shore - FRAME],
  ]
}
