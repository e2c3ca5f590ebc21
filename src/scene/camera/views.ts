/** The named views: from the shore, the lake, the end, above, under water. */
import type { Dock, Vec3 } from '../../../rules/index.ts'
import type { ViewState } from '../../state/store.ts'
import type { StripRange } from '../../state/strip-range.ts'
import type { Slab } from '../deck-rectangles.ts'
import { fitted, lookFrom, type Pose } from './pose.ts'

export interface Subject {
  readonly dock: Dock
  readonly bounds: Slab
  readonly range: StripRange
  readonly deck: number
  /** Level of the water shown, m. */
  readonly level: number
  /** Elevation of the ground that is drawn, m. */
  readonly ground: (x: number, y: number) => number
}

const deg = (degrees: number): number => (degrees * Math.PI) / 180
/** What stands on the deck: a person, and a little air, m. */
const HEAD = 1.5

export function poseOf(view: ViewState['view'], subject: Subject, aspect: number): Pose {
  switch (view) {
    case 'shore':
      return fromShore(subject, aspect)
    case 'lake':
      return fromLake(subject, aspect)
    case 'end':
      return fromEnd(subject, aspect)
    case 'above':
      return fromAbove(subject, aspect)
    case 'under':
      return underWater(subject, aspect)
  }
}

/** Corners of the deck, tops and feet of the legs: what must be in the picture. */
function outline({ dock, bounds, deck }: Subject): Vec3[] {
  const points: Vec3[] = []
  for (const x of [bounds.x0, bounds.x1])
    for (const y of [bounds.y0, bounds.y1]) points.push([x, y, deck], [x, y, deck - 0.2])
  for (const { x, y, bed, aboveDeck } of dock.legs) points.push([x, y, bed], [x, y, deck + (aboveDeck ?? 0)])
  points.push([(bounds.x0 + bounds.x1) / 2, (bounds.y0 + bounds.y1) / 2, deck + HEAD])
  return points
}

/** A tall picture looks more along the dock, a wide one more across it. */
const acrossBy = (aspect: number, tall: number, wide: number): number =>
  tall + (wide - tall) * Math.min(1, Math.max(0, (aspect - 0.7) / 1.1))

const fromShore = (subject: Subject, aspect: number): Pose =>
  fitted(
    outline(subject),
    {
      azimuth: deg(180 + acrossBy(aspect, 24, 48)),
      elevation: deg(acrossBy(aspect, 14, 10.5)),
      fov: deg(34),
    },
    aspect,
    { side: 0.06, above: acrossBy(aspect, 0.26, 0.23), below: 0.05 },
  )

const fromLake = (subject: Subject, aspect: number): Pose =>
  fitted(
    outline(subject),
    { azimuth: deg(-acrossBy(aspect, 24, 42)), elevation: deg(acrossBy(aspect, 14, 9)), fov: deg(34) },
    aspect,
    { side: 0.06, above: acrossBy(aspect, 0.25, 0.24), below: 0.06 },
  )

/**
 * Square from the lake, nearly level: each pair of legs with its brace, and a head's legs side by side, none of which the section along the
 * dock can show. The lens is long enough that legs compare, and short enough that the pairs behind are seen inside those before.
 */
const fromEnd = (subject: Subject, aspect: number): Pose =>
  fitted(outline(subject), { azimuth: 0, elevation: deg(5), fov: deg(11) }, aspect, {
    side: 0.1,
    above: 0.08,
    below: 0.08,
  })

const fromAbove = (subject: Subject, aspect: number): Pose => {
  const { bounds, deck, range } = subject
  const points: Vec3[] = [
    [range.x0, bounds.y0 - 1, deck],
    [range.x1, bounds.y1 + 1, deck],
    [range.x0, bounds.y1 + 1, deck],
    [range.x1, bounds.y0 - 1, deck],
  ]
  const tall = bounds.x1 - bounds.x0 > bounds.y1 - bounds.y0 === aspect < 1
  return fitted(points, { azimuth: deg(tall ? 180 : -90), elevation: deg(89), fov: deg(24) }, aspect, {
    side: 0.03,
    above: 0.05,
    below: 0.05,
  })
}

/** Among the legs, from deep water toward the shore. */
function underWater({ bounds, level, ground, deck }: Subject, aspect: number): Pose {
  const long = bounds.x1 - bounds.x0
  const eye: [number, number] = [bounds.x1 + Math.min(2.6, long * 0.3), bounds.y0 - (aspect < 1 ? 1.2 : 1.9)]
  const bed = ground(eye[0], eye[1])
  const depth = Math.max(0.3, level - bed)
  const from: Vec3 = [eye[0], eye[1], level - 0.5 * depth]
  const reach = Math.min(long, 6)
  return lookFrom(
    from,
    [bounds.x1 - reach * 0.55, (bounds.y0 + bounds.y1) / 2, Math.min(level - 0.34 * depth, deck)],
    deg(56),
  )
}
