/** The camera: views, hands, what is pointed at; and the drawing of frames. */

import { useFrame, useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react'
import { type PerspectiveCamera, Vector3 } from 'three'
import { useStore } from 'zustand'
import { type Reader, say, type Vec3 } from '../../../rules/index.ts'
import { footprintOf } from '../../../rules/layout/footprint.ts'
import type { LeadlineStore } from '../../state/store.ts'
import { SCENE } from '../../words/scene.ts'
import { listen } from '../camera/gestures.ts'
import { makeRig, type Rig } from '../camera/rig.ts'
import { poseOf } from '../camera/views.ts'
import type { Overlay } from '../measures/overlay.ts'
import type { Parts } from '../parts/parts.ts'
import { pick } from '../parts/pick.ts'
import type { Shell } from '../shell.ts'
import type { Facts } from './facts.ts'
import { useMedia } from './use-media.ts'

interface Props {
  readonly facts: Facts
  readonly store: LeadlineStore
  readonly shell: Shell
  readonly parts: Parts
  readonly overlay: Overlay
  /** The eye went over to the other side of the dock: true where it is on the left. */
  readonly onSide: (left: boolean) => void
  /** Height along the upper edge that labels keep clear of, px. */
  readonly head: () => number
  /** Draws the frame. */
  readonly draw: (rig: Rig) => void
}

export function Eye({ facts, store, shell, parts, overlay, onSide, head, draw }: Props) {
  const camera = useThree((s) => s.camera) as PerspectiveCamera
  const gl = useThree((s) => s.gl)
  const size = useThree((s) => s.size)
  const invalidate = useThree((s) => s.invalidate)
  const view = useStore(store, (s) => s.view)
  const dragging = useStore(store, (s) => s.dragging)
  const reduced = useMedia('(prefers-reduced-motion: reduce)')
  const now = useRef(facts)
  now.current = facts

  const rig = useMemo(
    () =>
      makeRig(
        camera,
        invalidate,
        (x, y) => now.current.land.at(x, y),
        () => {
          const { x0, x1, y0, y1 } = now.current.bounds
          return { reach: Math.max(6, x1 - x0, y1 - y0), center: [(x0 + x1) / 2, (y0 + y1) / 2] }
        },
      ),
    [camera, invalidate],
  )

  const aspect = size.width / Math.max(1, size.height)
  const { dock, bounds, range, deck, level, land } = facts
  const reset = (smooth: boolean): void => {
    const foot = Math.min(0.3, shell.foot() / Math.max(1, size.height))
    const pose = poseOf(view, { dock, bounds, range, deck, level, ground: land.at }, aspect, foot)
    rig.goTo(pose, smooth && !reduced)
  }
  // What the picture must hold; the depth of the bed under a dock that stays where it is does not move the eye.
  const frame = [bounds.x0, bounds.x1, bounds.y0, bounds.y1, range.x0, range.x1]
    .map((n) => n.toFixed(2))
    .join(' ')
  const shown = useRef<{ view: string; frame: string; aspect: number } | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `reset` is made anew each time from what is listed.
  useLayoutEffect(() => {
    const before = shown.current
    if (before?.view === view && (dragging || rig.byHand)) return
    if (before?.view === view && before.frame === frame && before.aspect === aspect) return
    shown.current = { view, frame, aspect }
    reset(before !== null && before.aspect === aspect)
  }, [view, frame, aspect, dragging, rig])

  const latest = useRef({ rig, reset })
  latest.current = { rig, reset }
  useEffect(
    () =>
      shell.onFoot(() => {
        if (shown.current && !latest.current.rig.byHand) latest.current.reset(true)
        else invalidate()
      }),
    [shell, invalidate],
  )

  useGestures(gl.domElement, { rig, store, shell, parts, camera, reset })

  const places = useMemo(() => placesOf(facts.dock, facts.deck), [facts.dock, facts.deck])
  const left = useRef<boolean | null>(null)
  useFrame(() => {
    rig.tick(performance.now())
    const { y0, y1 } = now.current.bounds
    const off = camera.position.y - (y0 + y1) / 2
    // Not while it is over the middle: the cut would jump to and fro.
    if (left.current === null || (Math.abs(off) > 0.6 && off > 0 !== left.current)) {
      left.current = off > 0
      onSide(left.current)
    }
    overlay.draw({
      camera,
      width: size.width,
      height: size.height,
      head: head(),
      foot: shell.foot(),
      hidden: (at) => behindDeck(camera.position, at, now.current),
      places,
    })
    draw(rig)
  }, 1)
  return null
}

/** Places all over the dock: what labels had better not cover. */
function placesOf({ sections, legs }: Facts['dock'], deck: number): Vec3[] {
  // A long dock is covered well enough by some of its sections.
  const step = Math.ceil(sections.length / 30)
  const some = <T,>(list: readonly T[]): T[] => list.filter((_, i) => i % step === 0)
  return [
    ...some(sections).flatMap((section): Vec3[] => {
      const { x0, x1, y0, y1 } = footprintOf(section)
      return [0.1, 0.5, 0.9].flatMap((t) =>
        [y0, (y0 + y1) / 2, y1].map((y): Vec3 => [x0 + (x1 - x0) * t, y, deck]),
      )
    }),
    ...some(legs).flatMap(({ x, y, bed }): Vec3[] => [
      [x, y, bed],
      [x, y, (bed + deck) / 2],
    ]),
  ]
}

/** Whether the way from the eye to a place goes through the deck. */
function behindDeck(eye: Vector3, [x, y, z]: Vec3, { slabs, deck }: Facts): boolean {
  if (eye.z > deck === z > deck) return false
  const t = (deck - eye.z) / (z - eye.z)
  const [px, py] = [eye.x + (x - eye.x) * t, eye.y + (y - eye.y) * t]
  return slabs.some(({ x0, x1, y0, y1 }) => px > x0 && px < x1 && py > y0 && py < y1)
}

interface Hands {
  readonly rig: Rig
  readonly store: LeadlineStore
  readonly shell: Shell
  readonly parts: Parts
  readonly camera: PerspectiveCamera
  readonly reset: (smooth: boolean) => void
}

function useGestures(canvas: HTMLCanvasElement, hands: Hands): void {
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
        // One look a frame, however fast the pointer moves.
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

/** The place itself, then a ring around it: thin legs are hard to hit. */
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

/** In quarters, not in degrees: what one wants to hear. */
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
