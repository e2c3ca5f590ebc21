/** A section dragged by mouse, pen or finger: shown where it would hang while the hand moves, taken when it lets go. */
import { type PointerEvent, useRef } from 'react'
import type { Shop } from '../../rules/catalog-index.ts'
import type { Operation } from '../../rules/plan/operations.ts'
import type { Lying } from '../../rules/plan/troubles.ts'
import { dragged } from './hand.ts'
import type { useShaping } from './use-shaping.ts'
import type { View } from './view.ts'

/** A hand that moves less means a touch, px. */
const STILL = 7

interface DragProps {
  readonly lying: Lying
  readonly shop: Shop
  readonly view: View
  readonly shaping: Pick<ReturnType<typeof useShaping>, 'show' | 'tryOut' | 'perform'>
}

interface Held {
  readonly id: string
  readonly pointer: number
  readonly x: number
  readonly y: number
  moved: boolean
  /** What it comes to so far. */
  operation: Operation | null
}

export function useDrag({ lying, shop, view, shaping: { show, tryOut, perform } }: DragProps) {
  const held = useRef<Held | null>(null)
  const dropped = useRef(false)
  const end = (event: PointerEvent, take: boolean): void => {
    const now = held.current
    if (now?.pointer !== event.pointerId) return
    held.current = null
    dropped.current = now.moved
    if (!now.moved) return
    if (take && now.operation) perform(now.operation)
    else show(null)
  }
  return {
    /** Not the click that a browser makes of the end of a drag. */
    wasClick(): boolean {
      const click = !dropped.current
      dropped.current = false
      return click
    },
    handlers: (id: string) => ({
      onPointerDown(event: PointerEvent) {
        dropped.current = false
        if (event.button !== 0 || held.current) return
        held.current = {
          id,
          pointer: event.pointerId,
          x: event.clientX,
          y: event.clientY,
          moved: false,
          operation: null,
        }
        event.currentTarget.setPointerCapture(event.pointerId)
      },
      onPointerMove(event: PointerEvent) {
        const now = held.current
        if (now?.pointer !== event.pointerId) return
        const [right, down] = [event.clientX - now.x, event.clientY - now.y]
        if (!now.moved && Math.hypot(right, down) < STILL) return
        now.moved = true
        now.operation = dragged(lying, id, -down / view.scale, -right / view.scale, shop)
        show(now.operation && tryOut(now.operation))
      },
      onPointerUp: (event: PointerEvent) => end(event, true),
      onPointerCancel: (event: PointerEvent) => end(event, false),
    }),
  }
}
