/** The bed from above: soundings and what lies on the bed, picked, moved, added and taken away. */
import { type KeyboardEvent, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { useWidth } from '../../section-strip/use-width.ts'
import { useLeadline, usePlaced } from '../../state/store.ts'
import { Hint } from '../../ui/controls.tsx'
import { Select } from '../../ui/select.tsx'
import { useSheet } from '../../ui/use-sheet.ts'
import { useWords } from '../../ui/use-words.ts'
import { keyStep, snap } from '../../units/steps.ts'
import { BED_PLAN } from '../../words/bed-plan.ts'
import { meters, text } from '../../words/index.ts'
import css from './bed-plan.css?inline'
import { addedObstacle, addedSounding, moved, type Obstacle, removed } from './edits.ts'
import { makePainter, type Painter } from './paint.ts'
import { PickedFields } from './picked-fields.tsx'
import { nextOf, type Picked, placeOf, planView } from './plan-view.ts'
import { useDrag } from './use-drag.ts'

/** What a tap beside everything puts there. */
type Put = 'nothing' | 'sounding' | Obstacle['kind']
const PUTS: readonly Put[] = ['nothing', 'sounding', 'boulder', 'stump', 'other']
const GESTURE = 'bed-plan-keys'

export function BedPlan() {
  const sheet = useSheet<HTMLDivElement>(css)
  const [box, width] = useWidth<HTMLDivElement>()
  const { t } = useWords(BED_PLAN)
  return (
    <div className="bed-plan" ref={sheet}>
      <Hint>{t('hint')}</Hint>
      <div ref={box}>{width > 0 && <Plan width={width} />}</div>
    </div>
  )
}

function Plan({ width }: { readonly width: number }) {
  const { t } = useWords(BED_PLAN)
  const design = useLeadline((s) => s.design)
  const [picked, pick] = useState<Picked | null>(null)
  const [put, setPut] = useState<Put>('nothing')
  const { stage, canvas, hands, keys, told, remove } = usePlan({ width, picked, pick, put, setPut })
  const at = picked && placeOf(design, picked)
  return (
    <>
      <div className="put">
        <Select name={t('put')} value={put} options={PUTS} wordOf={(one) => t(`put.${one}`)} set={setPut} />
      </div>
      <div
        ref={stage}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move what is picked in it.
        tabIndex={0}
        role="application"
        aria-label={t('canvas')}
        aria-describedby="bed-plan-how"
        {...keys}
      >
        <canvas
          ref={canvas}
          data-picked={picked ? `${picked.what} ${picked.index}` : undefined}
          data-follows={picked ? '' : undefined}
          {...hands}
        />
      </div>
      <p className="unseen" id="bed-plan-how">
        {t('how')}
      </p>
      <p className="hint" role="status">
        {told ??
          (at &&
            picked &&
            t(`picked.${picked.what}`, {
              name: text(picked.what === 'obstacle' ? design.site.obstacles![picked.index]!.id : ''),
              distance: meters(at[0]),
              aside: text(
                t(at[1] === 0 ? 'aside.none' : at[1] < 0 ? 'aside.right' : 'aside.left', {
                  offset: meters(Math.abs(at[1])),
                }),
              ),
            }))}
      </p>
      {picked && at && <PickedFields picked={picked} remove={remove} />}
    </>
  )
}

interface PlanState {
  readonly width: number
  readonly picked: Picked | null
  readonly put: Put
  pick(to: Picked | null): void
  setPut(to: Put): void
}

/** The canvas, and what is painted on it. While something is dragged the picture stays as it is, whatever it is dragged over. */
function usePicture(width: number, picked: Picked | null) {
  const design = useLeadline((s) => s.design)
  const theme = useLeadline((s) => s.theme)
  const { sections } = usePlaced()
  const canvas = useRef<HTMLCanvasElement>(null)
  const painter = useRef<Painter | null>(null)
  const frame = useRef(0)
  const view = useMemo(() => planView(design, sections, width), [design, sections, width])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another theme has other inks.
  useLayoutEffect(() => {
    if (!canvas.current) return
    painter.current ??= makePainter(canvas.current)
    painter.current.base(design, sections, view, picked)
    painter.current.draw(design, view, picked, picked && placeOf(design, picked))
  }, [design, sections, view, picked, theme])
  useEffect(() => () => cancelAnimationFrame(frame.current), [])
  const draw = (at: readonly [number, number] | null): void => {
    cancelAnimationFrame(frame.current)
    frame.current = requestAnimationFrame(() => painter.current?.draw(design, view, picked, at))
  }
  return { design, view, canvas, draw }
}

function usePlan({ width, picked, put, pick, setPut }: PlanState) {
  const { design, view, canvas, draw } = usePicture(width, picked)
  const bed = useLeadline((s) => s.project.bed)
  const edit = useLeadline((s) => s.edit)
  const endGesture = useLeadline((s) => s.endGesture)
  const { t, units } = useWords(BED_PLAN)
  const [told, tell] = useState<string | null>(null)
  const stage = useRef<HTMLDivElement>(null)

  const settle = (item: Picked, x: number, y: number, gesture?: string): void => {
    const [sx, sy] = gesture === undefined ? [snap(x, units), snap(y, units)] : [x, y]
    const issues = edit((d) => moved(d, item, sx, sy), gesture === undefined ? {} : { gesture })
    tell(issues.length > 0 ? t('refused') : null)
    if (issues.length > 0) draw(placeOf(design, item))
  }
  const added = (x: number, y: number): void => {
    const [sx, sy] = [snap(x, units), snap(y, units)]
    const kind = put
    const issues = edit((d) =>
      kind === 'sounding' || kind === 'nothing'
        ? addedSounding(d, sx, sy, Math.round(-bed.bedAt(sx, sy) * 1e3) / 1e3 + 0)
        : addedObstacle(d, kind, sx, sy),
    )
    tell(issues.length > 0 ? t('refused') : null)
    if (issues.length > 0) return
    pick(
      kind === 'sounding'
        ? { what: 'sounding', index: design.site.soundings.length }
        : { what: 'obstacle', index: design.site.obstacles?.length ?? 0 },
    )
    setPut('nothing')
  }
  const remove = (): void => {
    if (!picked) return
    const only = picked.what === 'sounding' && design.site.soundings.length < 2
    if (!only) edit((d) => removed(d, picked))
    tell(only ? t('last') : null)
    if (!only) pick(null)
    stage.current?.focus({ preventScroll: true })
  }
  const hands = useDrag({
    design,
    view,
    picked,
    tap(item, x, y) {
      stage.current?.focus({ preventScroll: true })
      if (put !== 'nothing') added(x, y)
      else {
        tell(null)
        pick(item)
      }
    },
    follow(item, x, y) {
      if (picked?.what !== item.what || picked.index !== item.index) pick(item)
      draw([x, y])
    },
    drop: (item, x, y) => settle(item, x, y),
    cancel: () => draw(picked && placeOf(design, picked)),
  })
  const onKeyDown = (event: KeyboardEvent): void => {
    const by = keyStep(units, event.shiftKey)
    const step = STEPS[event.key]
    const at = picked && placeOf(design, picked)
    if (step && picked && at) settle(picked, at[0] + step[0] * by, at[1] + step[1] * by, GESTURE)
    else if (event.key === 'Delete' || event.key === 'Backspace') remove()
    else if (event.key === 'PageDown' || event.key === 'PageUp') {
      tell(null)
      pick(nextOf(design, picked, event.key === 'PageDown' ? 1 : -1))
    } else if (event.key === 'Escape') pick(null)
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  return { stage, canvas, hands, keys: { onKeyDown, onKeyUp: endGesture, onBlur: endGesture }, told, remove }
}

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}
