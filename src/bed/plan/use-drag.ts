/**
 * Picking and dragging on the canvas. A mouse drags what it presses. A finger taps first, and what was tapped follows it then: one that
 * lands anywhere on its way down the page scrolls the page. While something is dragged only the picture moves; it is one change of the
 * design, and so one step of undo, when it is let go.
 */
import { type PointerEvent, useRef } from 'react'
import type { Design } from '../../../rules/index.ts'
import { type Picked, type PlanView, pickAt, placeOf } from './plan-view.ts'

/** A finger hits what is within this of it, a mouse within the other, px. */
const REACH = { touch: 26, mouse: 12 } as const
/** A press that moves less is a tap, px. */
const SLOP = 5

interface Press {
  readonly id: number
  readonly px: number
  readonly py: number
  readonly item: Picked | null
  /** From the pointer to the middle of what it took, m. */
  readonly off: readonly [number, number]
  dragging: boolean
}

interface Doing {
  readonly design: Design
  readonly view: PlanView
  readonly picked: Picked | null
  /** Nothing under it: the place, where something may be put. */
  tap(item: Picked | null, x: number, y: number): void
  /** While it is dragged. */
  follow(item: Picked, x: number, y: number): void
  /** Let go. */
  drop(item: Picked, x: number, y: number): void
  /** Taken away by the browser: as it was. */
  cancel(): void
}

const same = (a: Picked | null, b: Picked | null): boolean =>
  a !== null && b !== null && a.what === b.what && a.index === b.index

export function useDrag(doing: Doing) {
  const press = useRef<Press | null>(null)
  const local = (event: PointerEvent<HTMLCanvasElement>): readonly [number, number] => {
    const box = event.currentTarget.getBoundingClientRect()
    const { view } = doing
    return [
      ((event.clientX - box.left) * view.width) / box.width,
      ((event.clientY - box.top) * view.height) / box.height,
    ]
  }
  const begin = (event: PointerEvent<HTMLCanvasElement>): void => {
    if (!event.isPrimary || event.button !== 0) return
    const { design, view, picked } = doing
    const [px, py] = local(event)
    const touch = event.pointerType === 'touch'
    const reach = touch ? REACH.touch : REACH.mouse
    const at = picked && placeOf(design, picked)
    // What is picked already comes first: among thousands it is what is meant.
    const [qx, qy] = at ? view.toScreen(...at) : [Number.POSITIVE_INFINITY, 0]
    const item = Math.hypot(qx - px, qy - py) <= reach ? picked : pickAt(design, view, px, py, reach)
    const follows = item !== null && (!touch || same(item, picked))
    const place = item && placeOf(design, item)
    const [x, y] = view.toPlan(px, py)
    press.current = {
      id: event.pointerId,
      px,
      py,
      item: follows ? item : null,
      off: place ? [place[0] - x, place[1] - y] : [0, 0],
      dragging: false,
    }
    if (follows) event.currentTarget.setPointerCapture(event.pointerId)
  }
  const to = (now: Press, [px, py]: readonly [number, number]): readonly [number, number] => {
    const [x, y] = doing.view.toPlan(px, py)
    return [x + now.off[0], y + now.off[1]]
  }
  const move = (event: PointerEvent<HTMLCanvasElement>): void => {
    const now = press.current
    if (now?.id !== event.pointerId || !now.item) return
    const place = local(event)
    if (!now.dragging && Math.hypot(place[0] - now.px, place[1] - now.py) < SLOP) return
    now.dragging = true
    doing.follow(now.item, ...to(now, place))
  }
  const end = (event: PointerEvent<HTMLCanvasElement>): void => {
    const now = press.current
    press.current = null
    if (now?.id !== event.pointerId) return
    const [px, py] = local(event)
    if (now.dragging && now.item) {
      doing.drop(now.item, ...to(now, [px, py]))
      return
    }
    if (Math.hypot(px - now.px, py - now.py) >= SLOP) return
    const reach = event.pointerType === 'touch' ? REACH.touch : REACH.mouse
    doing.tap(now.item ?? pickAt(doing.design, doing.view, px, py, reach), ...doing.view.toPlan(px, py))
  }
  const cancel = (): void => {
    press.current = null
    doing.cancel()
  }
  return { onPointerDown: begin, onPointerMove: move, onPointerUp: end, onPointerCancel: cancel }
}
