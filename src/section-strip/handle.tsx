/**
 * Something in the strip that is dragged: by pointer, or focused and moved by arrow keys (Shift for larger steps). Read aloud as a
 * slider whose value is an elevation, so that Up is up for eye and ear alike. By a finger it is tapped first, and follows it then: a finger
 * that lands on it on its way down the page scrolls the page and moves nothing.
 */
import {
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
  type ReactNode,
  useRef,
  useState,
} from 'react'
import type { Units } from '../../rules/index.ts'
import { useLeadlineStore } from '../state/store.ts'
import { keyStep, snap } from '../units/steps.ts'

export interface HandleProps {
  readonly x: number
  readonly y: number
  readonly className: string
  /** What it is, and its value in words. */
  readonly label: string
  readonly valueText: string
  /** Elevation of what is dragged, and how far it may go, m. */
  readonly z: number
  readonly range: readonly [min: number, max: number]
  /** Distance of what is dragged, m; absent where it only moves up and down. */
  readonly along?: number
  readonly perX: number
  readonly perZ: number
  readonly describedBy: string
  /** One name a gesture: all moves of it are one step of undo. */
  readonly gesture: string
  move(to: { readonly z?: number; readonly along?: number }): void
  remove?(): void
  readonly children: ReactNode
}

/** How far around a mark a finger takes it, px. */
export const REACH = 22

/** How far a pointer moves before the direction of a drag is decided, px. */
const SLOP = 5

interface Drag {
  readonly id: number
  readonly x: number
  readonly y: number
  readonly z: number
  readonly along: number
  axis: 'x' | 'z' | null
}

/** A finger's first tap readies the mark; until that is over a finger that moves on it means the page. */
function useTouch() {
  const [ready, setReady] = useState(false)
  const touched = useRef(false)
  return {
    ready,
    begins(event: PointerEvent<SVGGElement>): boolean {
      touched.current = event.pointerType === 'touch'
      return ready || !touched.current
    },
    tap(event: MouseEvent<SVGGElement>): void {
      if (!touched.current) return
      event.currentTarget.focus({ preventScroll: true })
      setReady(true)
    },
    end(then: () => void): void {
      setReady(false)
      then()
    },
  }
}

const begun = ({ pointerId, clientX, clientY }: PointerEvent, z: number, along = 0): Drag => ({
  id: pointerId,
  x: clientX,
  y: clientY,
  z,
  along,
  axis: null,
})

/** Where an arrow key moves it; null where the key is none of its. */
function movedBy(
  event: KeyboardEvent,
  { z, along }: HandleProps,
  units: Units,
): Parameters<HandleProps['move']>[0] | null {
  const by = keyStep(units, event.shiftKey || event.key.startsWith('Page'))
  const up = { ArrowUp: by, PageUp: by, ArrowDown: -by, PageDown: -by }[event.key]
  const side = along === undefined ? undefined : { ArrowRight: by, ArrowLeft: -by }[event.key]
  if (up !== undefined) return { z: z + up }
  return side === undefined ? null : { along: along! + side }
}

export function Handle(props: HandleProps) {
  const { x, y, z, along, range, move } = props
  const store = useLeadlineStore()
  const drag = useRef<Drag | null>(null)
  const touch = useTouch()
  const clamp = (value: number): number => Math.min(range[1], Math.max(range[0], value))

  const down = (event: PointerEvent<SVGGElement>): void => {
    if (event.button !== 0 || drag.current) return
    if (!touch.begins(event)) return
    event.currentTarget.setPointerCapture(event.pointerId)
    drag.current = begun(event, z, along)
  }
  const go = (event: PointerEvent<SVGGElement>): void => {
    const from = drag.current
    if (!from || from.id !== event.pointerId) return
    const dx = event.clientX - from.x
    const dy = event.clientY - from.y
    if (from.axis === null) {
      if (Math.hypot(dx, dy) < SLOP) return
      // A slanting drag counts as vertical: depths are set far more often than distances.
      from.axis = along !== undefined && Math.abs(dx) > Math.abs(dy) * 1.2 ? 'x' : 'z'
    }
    const { units } = store.getState()
    if (from.axis === 'x') move({ along: snap(from.along + dx / props.perX, units) })
    else move({ z: clamp(snap(from.z - dy / props.perZ, units)) })
  }
  const up = (event: PointerEvent<SVGGElement>): void => {
    if (drag.current?.id !== event.pointerId) return
    drag.current = null
    store.getState().endGesture()
  }
  const key = (event: KeyboardEvent<SVGGElement>): void => {
    const to = movedBy(event, props, store.getState().units)
    if (to) move(to.z === undefined ? to : { z: clamp(to.z) })
    else if (props.remove && (event.key === 'Delete' || event.key === 'Backspace')) props.remove()
    else return
    event.preventDefault()
  }
  const end = (): void => store.getState().endGesture()

  return (
    <g
      className={`handle ${props.className}`}
      role="slider"
      tabIndex={0}
      aria-label={props.label}
      aria-orientation="vertical"
      aria-valuenow={Math.round(z * 1000) / 1000}
      aria-valuemin={range[0]}
      aria-valuemax={range[1]}
      aria-valuetext={props.valueText}
      aria-describedby={props.describedBy}
      transform={`translate(${x} ${y})`}
      // Not by `touch-action` alone: on parts of a drawing browsers heed it late, or not at all.
      onTouchMove={(event) => touch.ready && event.preventDefault()}
      onPointerDown={down}
      onPointerMove={go}
      onPointerUp={up}
      onPointerCancel={up}
      onLostPointerCapture={up}
      // Brought by keyboard between what is pinned above and below: for parts of a drawing browsers heed no scroll margin.
      onFocus={({ currentTarget }) =>
        currentTarget.matches(':focus-visible') && currentTarget.scrollIntoView({ block: 'center' })
      }
      onKeyDown={key}
      onKeyUp={end}
      onBlur={() => touch.end(end)}
      onClick={touch.tap}
      data-ready={touch.ready || undefined}
    >
      <circle className="reach" r={REACH} />
      {props.children}
    </g>
  )
}
