/** Pointer and keyboard on the picture: hover, selection, hints, and what screen readers are told. */
import { useEffect, useRef } from 'react'
import { type PerspectiveCamera, Vector3 } from 'three'
import type { Vec3 } from '../../../rules/index.ts'
import { type Reader, say } from '../../../rules/index.ts'
import { isNumbered, type LeadlineStore } from '../../state/store.ts'
import { SCENE } from '../../words/scene.ts'
import { listen } from '../camera/gestures.ts'
import type { Rig } from '../camera/rig.ts'
import { type Cut, isGone } from '../cut.ts'
import type { Overlay } from '../measures/label-overlay.ts'
import type { Item, Parts } from '../parts/parts.ts'
import { pick } from '../parts/pick.ts'
import type { Shell } from '../shell.ts'

/** How far around a point a part is looked for, px: a finger in a glove, the tip of a pointer. */
const FINGER = 24
const POINTER = 5

interface Hands {
  readonly rig: Rig
  readonly store: LeadlineStore
  readonly shell: Shell
  readonly parts: Parts
  readonly overlay: Overlay
  readonly cut: Cut | null
  readonly camera: PerspectiveCamera
  readonly reset: (smooth: boolean) => void
}

export function useGestures(canvas: HTMLCanvasElement, hands: Hands): void {
  const latest = useRef(hands)
  latest.current = hands
  const { rig } = hands
  useEffect(() => {
    let wanted: { readonly x: number; readonly y: number } | null = null
    let asked = 0
    /** What is not taken away with the lake before the cut. */
    const seen = (): readonly Item[] => {
      const { cut, parts } = latest.current
      return cut?.across ? parts.items().filter(({ placement }) => !isGone(cut, placement.at)) : parts.items()
    }
    const under = (x: number, y: number): string | null => {
      return pick(rayAt(latest.current.camera, x, y, canvas), seen())?.placement.of ?? null
    }
    const point = (id: string | null): void => {
      canvas.classList.toggle('pointing', id !== null)
      const { store } = latest.current
      if (store.getState().hover !== id) store.getState().set({ hover: id })
    }
    const stop = listen(canvas, rig, {
      onHover(at) {
        wanted = at
        if (!at) {
          if (canvas.classList.contains('pointing')) point(null)
          return
        }
        // Picking runs once a frame at most, however fast the pointer moves.
        asked ||= requestAnimationFrame(() => {
          asked = 0
          if (wanted) point(under(wanted.x, wanted.y))
        })
      },
      async onTap({ x, y, touch }) {
        const { store, camera, overlay } = latest.current
        const reach = touch ? FINGER : POINTER
        // Where legs go by number a leg is what is meant; else the deck under the finger, but for what is right beside it.
        const thin = isNumbered(store.getState()) ? reach : reach / 2
        const ray = (dx: number, dy: number) => rayAt(camera, x + dx, y + dy, canvas)
        const off = (place: Vec3) => seenOff(camera, place, x, y, canvas)
        const id =
          overlay.at(x, y, reach / 4) ??
          (await import('../parts/pick-near.ts').then(
            ({ pickNear }) => pickNear({ ray, off, reach, thin }, seen())?.of ?? null,
            () => under(x, y),
          ))
        const { selection, set } = store.getState()
        set({ selection: id === selection ? null : id })
      },
      onBlocked(kind) {
        const { store, shell } = latest.current
        const reader = store.getState()
        const apple = /Mac|iP(hone|ad)/.test(navigator.platform)
        shell.hint(say(SCENE, reader, kind === 'touch' ? 'touch' : apple ? 'wheel.meta' : 'wheel.ctrl'))
      },
      onTurned() {
        const { store, shell } = latest.current
        const reader = store.getState()
        shell.say(seenFrom(rig, reader))
      },
      onReset: () => latest.current.reset(true),
      onEscape: () => latest.current.store.getState().set({ selection: null }),
    })
    return () => {
      cancelAnimationFrame(asked)
      stop()
    }
  }, [canvas, rig])
}

const _far = /*@__PURE__*/ new Vector3()

function rayAt(
  camera: PerspectiveCamera,
  x: number,
  y: number,
  canvas: HTMLCanvasElement,
): { from: Vec3; along: Vec3 } {
  _far
    .set((x / canvas.clientWidth) * 2 - 1, 1 - (y / canvas.clientHeight) * 2, 0.5)
    .unproject(camera)
    .sub(camera.position)
    .normalize()
  return { from: camera.position.toArray(), along: _far.toArray() }
}

/** How far off a point of the canvas a place is seen, CSS px; null behind the eye. */
function seenOff(
  camera: PerspectiveCamera,
  place: Vec3,
  x: number,
  y: number,
  { clientWidth, clientHeight }: HTMLCanvasElement,
): { readonly dx: number; readonly dy: number } | null {
  _far.set(...place).applyMatrix4(camera.matrixWorldInverse)
  if (_far.z > -camera.near) return null
  _far.applyMatrix4(camera.projectionMatrix)
  return { dx: ((_far.x + 1) / 2) * clientWidth - x, dy: ((1 - _far.y) / 2) * clientHeight - y }
}

/** The direction of view in words, by quarters rather than degrees. */
function seenFrom({ pose }: Rig, reader: Reader): string {
  const turn = ((pose.azimuth % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  const side = (['side.lake', 'side.left', 'side.shore', 'side.right'] as const)[
    Math.round(turn / (Math.PI / 2)) % 4
  ]!
  const height =
    pose.elevation > 1
      ? 'height.above'
      : pose.elevation > 0.2
        ? 'height.over'
        : pose.elevation > 0
          ? 'height.level'
          : 'height.under'
  const text = (value: string) => ({ value, unit: 'text' })
  return say(SCENE, reader, 'seen.from', {
    side: text(say(SCENE, reader, side)),
    height: text(say(SCENE, reader, height)),
  })
}
