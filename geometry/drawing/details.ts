/** Hinge and hook joint at a larger scale, as they are built: what goes where, which bolt. */

import { type Dock, formatLength, type Joint, kindWord, type PartKind } from '../../rules/index.ts'
import { stanceOf } from '../../rules/layout/footprint.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { type Eye, levelEye, nearness } from '../projection.ts'
import { boltSize } from './bolt-size.ts'
import { outlinesFrom, type Shown } from './outlines.ts'
import {
  type Bounds,
  boundsOf,
  SMALLEST,
  type View,
  type ViewDimension,
  type ViewNote,
  windowOf,
} from './view.ts'

/** Half of what is shown along and up, m. */
const HALF = { x: 0.11, up: 0.07, down: 0.19 }
/** From one name beside it to the next, m. */
const COLUMN = 0.032

const NAMED: Readonly<Record<'hinge' | 'hook', readonly PartKind[]>> = {
  hinge: ['hinge-bar', 'hinge-pin', 'bar-bolt', 'pin-bolt'],
  hook: ['hook-bracket', 'hook-bolt'],
}

/** The first joint of a kind from its side; null where the dock has none. */
export function jointView(drawn: Drawn, kind: 'hinge' | 'hook'): View | null {
  const { dock, catalog } = drawn
  const joint = dock.joints.find((one) => one.kind === kind)
  if (!joint) return null
  const t = wordsOf(DRAWING, drawn)
  const own = dock.placements.filter(({ of }) => of === joint.id)
  // Through a pin or a hook: what hangs the two together.
  const at =
    own.find(({ kind: part }) => part === (kind === 'hinge' ? 'hinge-pin' : 'hook-bracket')) ?? own[0]
  if (!at) return null
  const eye = across(dock, joint)
  const shown = outlinesFrom(
    dock.placements.filter(
      ({ kind: part, of }) =>
        of === joint.id || (joint.between.includes(of) && (part === 'frame' || part === 'deck-panel')),
    ),
    catalog,
    eye,
    undefined,
    nearness(eye, at.at) + 1e-4,
  )
  const place = boundsOf(outlinesFrom(own, catalog, eye).flatMap(({ path }) => path.points))
  const [cx, cy] = [(place.x0 + place.x1) / 2, place.y1]
  const bounds = { x0: cx - HALF.x, x1: cx + HALF.x, y0: cy - HALF.down, y1: cy + HALF.up }
  const named = NAMED[kind].flatMap((part): { at: Point; text: string }[] => {
    const seen = shown.filter(({ kind: one, of }) => one === part && of === joint.id)
    if (seen.length === 0) return []
    const box = boundsOf(seen.flatMap(({ path }) => path.points))
    const code = own.find((one) => one.kind === part)!.code
    const bolt = catalog.hardware.find((one) => one.code === code)
    const y = (box.y0 + box.y1) / 2
    return [
      {
        // Bolts at their right end, plates in their lower half, where nothing lies over them.
        at: bolt ? [box.x1 - 0.003, y] : [(box.x0 + box.x1) / 2, box.y0 + (box.y1 - box.y0) * 0.2],
        text: bolt
          ? t('bolts', { name: kindWord(part, drawn), size: boltSize(bolt, drawn) })
          : kindWord(part, drawn),
      },
    ]
  })
  // In a column beside the picture, in the order that their places come down it: leaders never cross.
  const notes = named
    .sort((a, b) => b.at[1] - a.at[1] || b.at[0] - a.at[0])
    .map(
      ({ at, text }, i): ViewNote => ({
        at,
        text,
        size: SMALLEST,
        prefer: 'right',
        stand: [bounds.x1 + 0.012, cy - 0.02 - i * COLUMN],
      }),
    )
  const view = windowOf(
    {
      title: t(kind === 'hinge' ? 'detail-hinge' : 'detail-hook'),
      paths: shown.map(({ path }) => path),
      notes,
      dimensions: [],
      bounds: place,
    },
    bounds,
  )
  return { ...view, dimensions: jointDimensions(drawn, shown, joint, bounds) }
}

/** The gap between the two frames, and from the deck surface down to the bolts that hold them. */
function jointDimensions(
  drawn: Drawn,
  shown: readonly Shown[],
  joint: Joint,
  bounds: Bounds,
): ViewDimension[] {
  const boxes = (kind: PartKind, of: string): Bounds[] =>
    shown
      .filter((one) => one.kind === kind && one.of === of)
      .map(({ path }) => boundsOf(path.points))
      .filter(({ x0, x1 }) => x1 > bounds.x0 && x0 < bounds.x1)
  const middle = (bounds.x0 + bounds.x1) / 2
  // Of each frame the beam at the joint: the one nearest to its middle.
  const [left, right] = joint.between
    .map((of) =>
      boxes('frame', of).reduce<Bounds | null>(
        (best, box) => (!best || off(box, middle) < off(best, middle) ? box : best),
        null,
      ),
    )
    .filter((box) => box !== null)
    .sort((a, b) => a.x0 - b.x0)
  if (!left || !right) return []
  const list: ViewDimension[] = []
  const gap = right.x0 - left.x1
  if (joint.kind === 'hook' && gap > 0.005)
    list.push({
      from: [left.x1, right.y0],
      to: [right.x0, right.y0],
      along: 'x',
      side: 'below',
      off: 4,
      line: bounds.y0,
      text: formatLength(gap, drawn),
    })
  const fixing = boxes(joint.kind === 'hook' ? 'hook-bolt' : 'hinge-pin', joint.id)[0]
  const deck = joint.between.flatMap((of) => boxes('deck-panel', of))
  if (!fixing || deck.length === 0) return list
  const [axis, surface] = [
    (fixing.y0 + fixing.y1) / 2,
    // Of the section that stands: a ramp's deck tilts.
    Math.min(...deck.map(({ y1 }) => y1)),
  ]
  list.push({
    from: [bounds.x0, axis],
    to: [bounds.x0, surface],
    along: 'y',
    side: 'left',
    off: 4,
    line: bounds.x0,
    text: formatLength(surface - axis, drawn),
  })
  return list
}
const off = ({ x0, x1 }: Bounds, x: number): number => Math.abs((x0 + x1) / 2 - x)

/** From the right of the section that carries, along the joint's edge. */
function across(dock: Dock, joint: Joint): Eye {
  const host = dock.sections.find(({ id }) => id === joint.between[0])!
  const guest = dock.sections.find(({ id }) => id === joint.between[1])!
  const { c, s } = stanceOf(host.role === 'ramp' ? guest : host)
  return levelEye([c, s, 0])
}
