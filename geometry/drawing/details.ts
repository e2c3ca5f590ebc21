/** Hinge and hook joint at a larger scale, as they are built: what goes where, which wrench. */
import { type Dock, type Joint, type PartKind, wordsIn } from '../../rules/index.ts'
import { drawingWords } from '../../rules/words/drawing.ts'
import { dot } from '../vec.ts'
import type { Drawn } from './plan.ts'
import { type Eye, project } from './project.ts'
import { boundsOf, type View, type ViewNote, windowOf } from './view.ts'

/** Half of what is shown along and up, m. */
const HALF = { x: 0.24, up: 0.12, down: 0.26 }

const NAMED: Readonly<Record<'hinge' | 'hook', readonly PartKind[]>> = {
  hinge: ['hinge-bar', 'hinge-pin', 'bar-bolt', 'pin-bolt'],
  hook: ['hook-bracket', 'hook-bolt'],
}

/** The first joint of a kind from its side; null where the dock has none. */
export function jointView(drawn: Drawn, kind: 'hinge' | 'hook'): View | null {
  const { dock, catalog, units, lang } = drawn
  const joint = dock.joints.find((one) => one.kind === kind)
  if (!joint) return null
  const t = drawingWords(lang, units)
  const own = dock.placements.filter(({ of }) => of === joint.id)
  // Through a pin or a hook: what hangs the two together.
  const at =
    own.find(({ kind: part }) => part === (kind === 'hinge' ? 'hinge-pin' : 'hook-bracket')) ?? own[0]
  if (!at) return null
  const eye = across(dock, joint)
  const shown = project(
    dock.placements.filter(
      ({ kind: part, of }) =>
        of === joint.id || (joint.between.includes(of) && (part === 'frame' || part === 'deck-panel')),
    ),
    catalog,
    eye,
    undefined,
    dot(eye.toward, at.at) + 1e-4,
  )
  const place = boundsOf(project(own, catalog, eye).flatMap(({ path }) => path.points))
  const [cx, cy] = [(place.x0 + place.x1) / 2, place.y1]
  const names = wordsIn(lang).kinds
  const notes = NAMED[kind].flatMap((part): ViewNote[] => {
    const one = own.find((placement) => placement.kind === part)
    if (!one) return []
    const bolt = catalog.hardware.find(({ code }) => code === one.code)
    const name = names[part]
    return [
      {
        at: [dot(eye.right, one.at), dot(eye.up, one.at)],
        text: bolt ? t('bolts', { name, wrench: bolt.wrench }) : name,
        size: 2.4,
        prefer: 'right',
      },
    ]
  })
  return windowOf(
    {
      title: t(kind === 'hinge' ? 'detail-hinge' : 'detail-hook'),
      paths: shown.map(({ path }) => path),
      notes,
      dimensions: [],
      bounds: place,
    },
    { x0: cx - HALF.x, x1: cx + HALF.x, y0: cy - HALF.down, y1: cy + HALF.up },
  )
}

/** From the right of the section that carries, along the joint's edge. */
function across(dock: Dock, joint: Joint): Eye {
  const host = dock.sections.find(({ id }) => id === joint.between[0])!
  const guest = dock.sections.find(({ id }) => id === joint.between[1])!
  const turn = ((host.role === 'ramp' ? guest : host).heading * Math.PI) / 180
  const right = [Math.cos(turn), Math.sin(turn), 0] as const
  return { right, up: [0, 0, 1], toward: [right[1], -right[0], 0] }
}
