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
  const pointers = new Map<number, { x: number; y: number }>()
  let start: { x: number; y: number } | null = null
  let moved = false
  let panning = false
  /** Focus came by a click, so that the wheel is meant for the picture. */
  let clicked = false

  const at = (event: { clientX: number; clientY: number }) => {
    const box = canvas.getBoundingClientRect()
    // An ancestor may be scaled: offsets are counted in the canvas's own px.
    return {
      x: ((event.clientX - box.left) * canvas.clientWidth) / (box.width || 1),
      y: ((event.clientY - box.top) * canvas.clientHeight) / (box.height || 1),
    }
  }
  const perPixel = (): number => 3.2 / Math.max(200, Math.min(canvas.clientWidth, canvas.clientHeight * 1.6))
  const spread = (): { x: number; y: number; d: number } => {
    const [a, b] = [...pointers.values()] as [{ x: number; y: number }, { x: number; y: number }]
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, d: Math.hypot(a.x - b.x, a.y - b.y) }
  }

  canvas.addEventListener(
    'pointerdown',
    (event) => {
      const here = at(event)
      pointers.set(event.pointerId, here)
      if (pointers.size === 1) {
        start = here
        moved = false
        panning = event.button === 2 || event.button === 1 || event.shiftKey
      } else moved = true
      if (event.pointerType === 'mouse') clicked = true
      on.onHover(null)
    },
    { signal },
  )
  canvas.addEventListener(
    'pointermove',
    (event) => {
      const here = at(event)
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
      if (pointers.size === 2) {
        const old = spread()
        pointers.set(event.pointerId, here)
        const now = spread()
        rig.orbit((old.x - now.x) * perPixel(), (now.y - old.y) * perPixel())
        if (old.d > 20 && now.d > 20) rig.zoom(old.d / now.d)
        return
      }
      pointers.set(event.pointerId, here)
      const [dx, dy] = [here.x - before.x, here.y - before.y]
      if (panning) rig.pan(-dx / canvas.clientHeight, dy / canvas.clientHeight)
      else rig.orbit(-dx * perPixel(), event.pointerType === 'touch' ? 0 : dy * perPixel())
    },
    { signal },
  )
  const lift = (event: PointerEvent): void => {
    if (!pointers.delete(event.pointerId)) return
    const tap = event.type === 'pointerup' && !moved && event.button === 0
    if (event.type === 'pointercancel' && event.pointerType === 'touch' && !moved) on.onBlocked('touch')
    if (pointers.size === 0) start = null
    if (tap) on.onTap({ ...at(event), touch: event.pointerType === 'touch' })
  }
  canvas.addEventListener('pointerup', lift, { signal })
  canvas.addEventListener('pointercancel', lift, { signal })
  canvas.addEventListener('pointerleave', () => on.onHover(null), { signal })
  canvas.addEventListener('contextmenu', (event) => moved && event.preventDefault(), { signal })
  // Two fingers are ours; one is the browser's unless it goes sideways (`touch-action: pan-y`).
  const claim = (event: TouchEvent): void => {
    if (event.touches.length > 1 && event.cancelable) event.preventDefault()
  }
  canvas.addEventListener('touchstart', claim, { signal, passive: false })
  canvas.addEventListener('touchmove', claim, { signal, passive: false })

  canvas.addEventListener(
    'wheel',
    (event) => {
      const meant = event.ctrlKey || event.metaKey || (clicked && isFocused(canvas))
      if (!meant) {
        if (Math.abs(event.deltaY) > Math.abs(event.deltaX)) on.onBlocked('wheel')
        return
      }
      event.preventDefault()
      const lines = event.deltaMode === 1 ? 16 : 1
      // A pinch on a trackpad comes as small steps with Ctrl.
      const speed = event.ctrlKey && Math.abs(event.deltaY) < 40 ? 0.008 : 0.0014
      rig.zoom(Math.exp(Math.max(-120, Math.min(120, event.deltaY * lines)) * speed))
    },
    { signal, passive: false },
  )
  canvas.addEventListener('blur', () => (clicked = false), { signal })
  canvas.addEventListener(
    'keydown',
    (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return
      const turn = TURNS[event.key]
      if (turn) rig.orbit(turn[0] * KEY_STEP, turn[1] * KEY_STEP)
      else if (event.key === '+' || event.key === '=') rig.zoom(0.85)
      else if (event.key === '-') rig.zoom(1 / 0.85)
      else if (event.key === 'Home' || event.key === '0') on.onReset()
      else if (event.key === 'Escape') {
        clicked = false
        on.onEscape()
        return
      } else return
      event.preventDefault()
      on.onTurned()
    },
    { signal },
  )
  return () => end.abort()
}

const TURNS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 0.5],
  ArrowDown: [0, -0.5],
}

const isFocused = (element: Element): boolean =>
  (element.getRootNode() as Document | ShadowRoot).activeElement === element
