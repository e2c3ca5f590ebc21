/** Pointer and keyboard on the picture: hover, selection, hints, and what screen readers are told. */
import { useEffect, useRef } from 'react'
import { type PerspectiveCamera, Vector3 } from 'three'
import type { Vec3 } from '../../../rules/index.ts'
import { type Reader, say } from '../../../rules/index.ts'
import type { LeadlineStore } from '../../state/store.ts'
import { SCENE } from '../../words/scene.ts'
import { listen } from '../camera/gestures.ts'
import type { Rig } from '../camera/rig.ts'
import type { Parts } from '../parts/parts.ts'
import { pick } from '../parts/pick.ts'
import type { Shell } from '../shell.ts'

interface Hands {
  readonly rig: Rig
  readonly store: LeadlineStore
  readonly shell: Shell
  readonly parts: Parts
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
    const under = (x: number, y: number): string | null => {
      const { camera, parts } = latest.current
      return pick(rayAt(camera, x, y, canvas), parts.items())?.placement.of ?? null
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
      onTap({ x, y, touch }) {
        const { store } = latest.current
        const { selection, set } = store.getState()
        const id = nearby(touch ? 14 : 5)
          .map(([dx, dy]) => under(x + dx, y + dy))
          .find((found) => found !== null)
        set({ selection: id === undefined || id === selection ? null : id })
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

/** The point itself, then a ring around it, because thin legs are hard to hit. */
const nearby = (radius: number): readonly (readonly [number, number])[] => [
  [0, 0],
  ...Array.from({ length: 8 }, (_, i): [number, number] => [
    radius * Math.cos((i * Math.PI) / 4),
    radius * Math.sin((i * Math.PI) / 4),
  ]),
]

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
