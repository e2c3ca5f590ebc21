/**
 * Hand and keyboard on the picture, without taking the page's scroll: the wheel zooms only with Ctrl or ⌘, or after a click gave
 * the picture the focus; one finger scrolls the page up and down and turns the view sideways; two fingers turn, tilt and zoom.
 * Keys only while the picture has the focus.
 */
import type { Rig } from './rig.ts'

export interface Gestures {
  /** Where the pointer is, in px of the canvas. */
  onHover(at: { readonly x: number; readonly y: number } | null): void
  onTap(at: { readonly x: number; readonly y: number; readonly touch: boolean }): void
  /** Something was tried that the page keeps for itself. */
  onBlocked(kind: 'wheel' | 'touch'): void
  /** The view was turned by keys: for those who hear it. */
  onTurned(): void
  onReset(): void
  onEscape(): void
}

/** Less than this is a click, px. */
const STILL = 5
const KEY_STEP = (10 * Math.PI) / 180

/** Returns what takes all listeners off again. */
export function listen(canvas: HTMLCanvasElement, rig: Rig, on: Gestures): () => void {
  const end = new AbortController()
  const { signal } = end
  /** Focus came by a click, so that the wheel is meant for the picture. */
  const focus = { clicked: false }
  listenToPointers(canvas, rig, on, focus, signal)
  listenToTouches(canvas, signal)
  listenToWheel(canvas, rig, on, focus, signal)
  listenToKeys(canvas, rig, on, focus, signal)
  canvas.addEventListener('blur', () => (focus.clicked = false), { signal })
  return () => end.abort()
}

interface Focus {
  clicked: boolean
}

interface Place {
  readonly x: number
  readonly y: number
}

function listenToPointers(
  canvas: HTMLCanvasElement,
  rig: Rig,
  on: Gestures,
  focus: Focus,
  signal: AbortSignal,
): void {
  const pointers = new Map<number, Place>()
  let start: Place | null = null
  let moved = false
  let panning = false

  const down = (event: PointerEvent): void => {
    const here = placeOn(canvas, event)
    pointers.set(event.pointerId, here)
    if (pointers.size === 1) {
      start = here
      moved = false
      panning = event.button === 2 || event.button === 1 || event.shiftKey
    } else moved = true
    if (event.pointerType === 'mouse') focus.clicked = true
    on.onHover(null)
  }
  const move = (event: PointerEvent): void => {
    const here = placeOn(canvas, event)
    const before = pointers.get(event.pointerId)
    if (!before || !start) {
      if (event.pointerType !== 'touch') on.onHover(here)
      return
    }
    if (!moved && Math.hypot(here.x - start.x, here.y - start.y) < STILL) return
    if (!moved) {
      moved = true
      canvas.setPointerCapture(event.pointerId)
      // The way up to here is not turned over, so that nothing jumps.
      pointers.set(event.pointerId, here)
      return
    }
    const old = pointers.size === 2 ? spread(pointers) : null
    pointers.set(event.pointerId, here)
    if (old) turnByTwo(canvas, rig, old, spread(pointers))
    else turnByOne(canvas, rig, before, here, panning, event.pointerType === 'touch')
  }
  const lift = (event: PointerEvent): void => {
    if (!pointers.delete(event.pointerId)) return
    const tap = event.type === 'pointerup' && !moved && event.button === 0
    if (event.type === 'pointercancel' && event.pointerType === 'touch' && !moved) on.onBlocked('touch')
    if (pointers.size === 0) start = null
    if (tap) on.onTap({ ...placeOn(canvas, event), touch: event.pointerType === 'touch' })
  }
  canvas.addEventListener('pointerdown', down, { signal })
  canvas.addEventListener('pointermove', move, { signal })
  canvas.addEventListener('pointerup', lift, { signal })
  canvas.addEventListener('pointercancel', lift, { signal })
  canvas.addEventListener('pointerleave', () => on.onHover(null), { signal })
  canvas.addEventListener('contextmenu', (event) => moved && event.preventDefault(), { signal })
}

/** An ancestor may be scaled: offsets are counted in the canvas's own px. */
function placeOn(canvas: HTMLCanvasElement, event: PointerEvent): Place {
  const box = canvas.getBoundingClientRect()
  return {
    x: ((event.clientX - box.left) * canvas.clientWidth) / (box.width || 1),
    y: ((event.clientY - box.top) * canvas.clientHeight) / (box.height || 1),
  }
}

interface Spread extends Place {
  /** From one finger to the other, px. */
  readonly distance: number
}

function spread(pointers: ReadonlyMap<number, Place>): Spread {
  const [a, b] = [...pointers.values()] as [Place, Place]
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, distance: Math.hypot(a.x - b.x, a.y - b.y) }
}

/** Radians that a px turns by. */
const perPixel = ({ clientWidth, clientHeight }: HTMLCanvasElement): number =>
  3.2 / Math.max(200, Math.min(clientWidth, clientHeight * 1.6))

function turnByTwo(canvas: HTMLCanvasElement, rig: Rig, old: Spread, now: Spread): void {
  const k = perPixel(canvas)
  rig.orbit((old.x - now.x) * k, (now.y - old.y) * k)
  if (old.distance > 20 && now.distance > 20) rig.zoom(old.distance / now.distance)
}

function turnByOne(
  canvas: HTMLCanvasElement,
  rig: Rig,
  before: Place,
  here: Place,
  panning: boolean,
  touch: boolean,
): void {
  const [dx, dy] = [here.x - before.x, here.y - before.y]
  const k = perPixel(canvas)
  if (panning) rig.pan(-dx / canvas.clientHeight, dy / canvas.clientHeight)
  else rig.orbit(-dx * k, touch ? 0 : dy * k)
}

/** Two fingers are ours; one is the browser's unless it goes sideways (`touch-action: pan-y`). */
function listenToTouches(canvas: HTMLCanvasElement, signal: AbortSignal): void {
  const claim = (event: TouchEvent): void => {
    if (event.touches.length > 1 && event.cancelable) event.preventDefault()
  }
  canvas.addEventListener('touchstart', claim, { signal, passive: false })
  canvas.addEventListener('touchmove', claim, { signal, passive: false })
}

function listenToWheel(
  canvas: HTMLCanvasElement,
  rig: Rig,
  on: Gestures,
  focus: Focus,
  signal: AbortSignal,
): void {
  const turn = (event: WheelEvent): void => {
    const meant = event.ctrlKey || event.metaKey || (focus.clicked && isFocused(canvas))
    if (!meant) {
      if (Math.abs(event.deltaY) > Math.abs(event.deltaX)) on.onBlocked('wheel')
      return
    }
    event.preventDefault()
    const lines = event.deltaMode === 1 ? 16 : 1
    // A pinch on a trackpad comes as small steps with Ctrl.
    const speed = event.ctrlKey && Math.abs(event.deltaY) < 40 ? 0.008 : 0.0014
    rig.zoom(Math.exp(Math.max(-120, Math.min(120, event.deltaY * lines)) * speed))
  }
  canvas.addEventListener('wheel', turn, { signal, passive: false })
}

const isFocused = (element: Element): boolean =>
  (element.getRootNode() as Document | ShadowRoot).activeElement === element

function listenToKeys(
  canvas: HTMLCanvasElement,
  rig: Rig,
  on: Gestures,
  focus: Focus,
  signal: AbortSignal,
): void {
  const press = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const turn = TURNS[event.key]
    if (turn) rig.orbit(turn[0] * KEY_STEP, turn[1] * KEY_STEP)
    else if (event.key === '+' || event.key === '=') rig.zoom(0.85)
    else if (event.key === '-') rig.zoom(1 / 0.85)
    else if (event.key === 'Home' || event.key === '0') on.onReset()
    else if (event.key === 'Escape') {
      focus.clicked = false
      on.onEscape()
      return
    } else return
    event.preventDefault()
    on.onTurned()
  }
  canvas.addEventListener('keydown', press, { signal })
}

const TURNS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 0.5],
  ArrowDown: [0, -0.5],
}
