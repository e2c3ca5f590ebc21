/** The dock from above: sections to choose and drag, free edges to hang more on, and what was asked for where it cannot be. */
import { type KeyboardEvent, useEffect, useMemo, useRef } from 'react'
import type { Shop } from '../../rules/catalog-index.ts'
import { isSquare } from '../../rules/layout/footprint.ts'
import { footprint, type PlacedSection } from '../../rules/layout/index.ts'
import { outline } from '../../rules/layout/place.ts'
import { type FreeEdge, freeEdges } from '../../rules/plan/free-edges.ts'
import type { Hanging } from '../../rules/plan/operations.ts'
import { hangingOf } from '../../rules/plan/spots.ts'
import type { Lying, Tried } from '../../rules/plan/troubles.ts'
import { useLeadline } from '../state/store.ts'
import { Sign } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { keyStep } from '../units/steps.ts'
import { text } from '../words/index.ts'
import { PLAN_EDITOR } from '../words/plan-editor.ts'
import { stepped } from './hand.ts'
import type { Offered } from './new-section.ts'
import { labelOf, nameOf, shortOf } from './sentences.ts'
import { useDrag } from './use-drag.ts'
import type { useShaping } from './use-shaping.ts'
import { type View, viewOf } from './view.ts'

type Shaping = ReturnType<typeof useShaping>

interface PictureProps {
  readonly lying: Lying
  readonly shop: Shop
  /** What is hung at a free edge. */
  readonly next: Offered
  readonly chosen: PlacedSection | null
  readonly choose: (id: string | null) => void
  readonly shaping: Shaping
}

const WAYS: Readonly<Record<string, { readonly x: number; readonly y: number }>> = {
  ArrowUp: { x: 1, y: 0 },
  ArrowDown: { x: -1, y: 0 },
  ArrowLeft: { x: 0, y: 1 },
  ArrowRight: { x: 0, y: -1 },
}

export function PlanPicture(props: PictureProps) {
  const { lying, shop, next, chosen, choose, shaping } = props
  const { placed } = lying.layout
  const { tried, moving, at } = shaping
  const { t } = useWords(PLAN_EDITOR)
  const goal = useRef<HTMLButtonElement>(null)
  // What had the focus may be gone: it goes on with what was added, moved, or carried what was taken away.
  useEffect(() => {
    if (at) goal.current?.focus()
  }, [at])
  const ghosts = useMemo(() => ghostsOf(tried), [tried])
  // Without what is being tried: dragged over the rim it does not move what is under the hand.
  const view = useMemo(() => viewOf(placed.map(footprint)), [placed])
  const free = useMemo(() => freeEdges(lying, shop, { ...next, moving }), [lying, shop, next, moving])
  const drag = useDrag({ lying, shop, view, shaping })
  const keyed = useKeys(props)
  const touched = new Set(tried?.ok ? tried.touched : [])
  return (
    <div className="plan-scroll">
      {/* biome-ignore lint/a11y/useSemanticElements: a picture of buttons, not of fields. */}
      <div
        className="plan-picture"
        role="group"
        aria-label={t('plan')}
        style={{ width: `${view.width}px`, height: `${view.height}px` }}
      >
        {placed.map((p) => (
          <span key={p.id} className="plan-piece">
            <button
              type="button"
              className="plan-section"
              data-role={p.role}
              data-touched={touched.has(p.id) || undefined}
              aria-pressed={chosen?.id === p.id}
              aria-label={labelOf(t, lying, p.id)}
              data-id={p.id}
              ref={at?.id === p.id ? goal : null}
              style={{
                ...lyingAt(view, p),
                fontSize: letters(shortOf(t, lying, p.id), wideOf(view, p)),
              }}
              onClick={() => drag.wasClick() && choose(chosen?.id === p.id ? null : p.id)}
              onKeyDown={(event) => keyed(event, p.id)}
              {...drag.handlers(p.id)}
            >
              {shortOf(t, lying, p.id)}
            </button>
            {(free.get(p.id) ?? []).map((one) => (
              <AddButton key={one.hanging.edge} {...props} free={one} view={view} />
            ))}
          </span>
        ))}
        {ghosts.map(({ id, at, wrong }) => (
          <span key={id} className="plan-ghost" data-wrong={wrong || undefined} style={lyingAt(view, at)}>
            {wrong ? '!' : ''}
          </span>
        ))}
      </div>
    </div>
  )
}

/** Keys on the section that is chosen. */
function useKeys({ lying, shop, chosen, shaping }: PictureProps): (event: KeyboardEvent, id: string) => void {
  const units = useLeadline((s) => s.units)
  const { tried, show, perform, remove } = shaping
  return (event, id) => {
    if (chosen?.id !== id || event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Delete' || event.key === 'Backspace') remove(id)
    else if (event.key === 'Escape') show(null)
    else if (WAYS[event.key]) {
      const now = hangingOf(lying, id)
      // From where it has been asked to, if that could not be: a step further may do.
      const from =
        tried?.ok && tried.operation.kind === 'hang' && tried.operation.id === id ? tried.operation : now
      const by = event.shiftKey ? keyStep(units, false) : null
      const step = from && stepped(lying, id, hangingIn(from), WAYS[event.key]!, shop, by)
      if (step) perform(step)
    } else return
    event.preventDefault()
  }
}

const hangingIn = ({ on, edge, with: mate, along }: Hanging): Hanging => ({ on, edge, with: mate, along })

/** So large that the longest word of a name stays within its section. */
const letters = (name: string, wide: number): string =>
  `${Math.min(14, (wide - 3) / (0.64 * Math.max(...name.split(' ').map((word) => word.length))))}px`

const pixels = (box: { left: number; top: number; width: number; height: number }) => ({
  left: `${box.left}px`,
  top: `${box.top}px`,
  width: `${box.width}px`,
  height: `${box.height}px`,
})

/** For its name, px: as it is seen, or as it would be before it was turned. */
const wideOf = (view: View, p: PlacedSection): number =>
  isSquare(p, p.frame) ? view.box(footprint(p)).width : p.frame.width * view.scale

/** As it lies: what lies askew is turned on the screen, a corner piece cut out of the rectangle around it. */
function lyingAt(view: View, p: PlacedSection) {
  const around = view.box(footprint(p))
  if (isSquare(p, p.frame)) return pixels(around)
  if (p.frame.turn) {
    const cut = outline(p).map(([x, y]) => {
      const [left, top] = view.at(x, y)
      return `${left - around.left}px ${top - around.top}px`
    })
    return { ...pixels(around), clipPath: `polygon(${cut.join(', ')})` }
  }
  const { width, length } = p.frame
  const [wide, high] = [width * view.scale, length * view.scale]
  return {
    ...pixels({
      left: around.left + (around.width - wide) / 2,
      top: around.top + (around.height - high) / 2,
      width: wide,
      height: high,
    }),
    transform: `rotate(${-p.heading}deg)`,
  }
}

/** Where the sections would lie that were asked for: wrong where the trouble is about them. */
function ghostsOf(tried: Tried | null) {
  if (!tried?.ok || tried.operation.kind === 'remove') return []
  const wrong = new Set(tried.brought.flatMap(({ sections }) => sections))
  const ids = new Set(tried.touched)
  return tried.after.layout.placed
    .filter(({ id }) => ids.has(id))
    .map((p) => ({ id: p.id, at: p, wrong: wrong.has(p.id) }))
}

/** How far off the edge a + stands, px. */
const OFF = 16

interface FreeEdgeProps extends PictureProps {
  readonly free: FreeEdge
  readonly view: View
}

function AddButton({ free, view, lying, chosen, shaping, next }: FreeEdgeProps) {
  const { moving, perform, add } = shaping
  const { t } = useWords(PLAN_EDITOR)
  const { hanging, line, way } = free
  const [left, top] = view.at(free.x, free.y)
  const section = text(nameOf(t, lying, hanging.on))
  return (
    <button
      type="button"
      className="plan-add"
      data-what={moving === null ? 'add' : 'here'}
      tabIndex={moving !== null || chosen?.id === hanging.on ? 0 : -1}
      aria-label={t(`${moving === null ? 'add' : 'here'}.${way}`, { section })}
      style={{ left: `${left - line.ny * OFF}px`, top: `${top - line.nx * OFF}px` }}
      onClick={() =>
        moving === null ? add(hanging, next.frame.code) : perform({ kind: 'hang', id: moving, ...hanging })
      }
    >
      <Sign d="M4 9h10M9 4v10" />
    </button>
  )
}
