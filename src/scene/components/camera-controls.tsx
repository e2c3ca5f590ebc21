/** The camera and what moves it: views, gestures, keys. Also places the labels and draws each frame. */
import { useFrame, useThree } from '@react-three/fiber'
import { useMemo, useRef } from 'react'
import type { PerspectiveCamera, Vector3 } from 'three'
import type { Vec3 } from '../../../rules/index.ts'
import { footprintOf } from '../../../rules/layout/footprint.ts'
import type { LeadlineStore } from '../../state/store.ts'
import { makeRig, type Rig } from '../camera/rig.ts'
import { type Cut, isGone } from '../cut.ts'
import type { Slab } from '../deck-rectangles.ts'
import type { Overlay } from '../measures/label-overlay.ts'
import type { Parts } from '../parts/parts.ts'
import type { Shell } from '../shell.ts'
import { useGestures } from './use-gestures.ts'
import type { SceneData } from './use-scene-data.ts'
import { useViewPose } from './use-view-pose.ts'

interface Props {
  readonly data: SceneData
  readonly store: LeadlineStore
  readonly shell: Shell
  readonly parts: Parts
  readonly overlay: Overlay
  readonly cut: Cut | null
  /** Called when the camera crosses to the other side of the dock: true if it is now on the left. */
  readonly onSide: (left: boolean) => void
  /** Height along the upper edge where no labels are placed, px. */
  readonly head: () => number
  /** Draws the frame. */
  readonly draw: (rig: Rig) => void
}

export function CameraControls({ data, store, shell, parts, overlay, cut, onSide, head, draw }: Props) {
  const camera = useThree((s) => s.camera) as PerspectiveCamera
  const gl = useThree((s) => s.gl)
  const size = useThree((s) => s.size)
  const invalidate = useThree((s) => s.invalidate)
  const now = useRef(data)
  now.current = data
  const planes = useRef(cut)
  planes.current = cut

  const rig = useMemo(
    () =>
      makeRig(
        camera,
        invalidate,
        (x, y) => now.current.land.at(x, y),
        () => now.current.level,
        () => limitsOf(now.current.bounds),
      ),
    [camera, invalidate],
  )
  const reset = useViewPose(rig, data, store)
  useGestures(gl.domElement, { rig, store, shell, parts, overlay, cut, camera, reset })

  const places = useMemo(() => placesOf(data.dock, data.deck), [data.dock, data.deck])
  const left = useRef<boolean | null>(null)
  useFrame(() => {
    rig.tick(performance.now())
    const { y0, y1 } = now.current.bounds
    const off = camera.position.y - (y0 + y1) / 2
    // Not near the middle line, where the cut would flip back and forth.
    if (left.current === null || (Math.abs(off) > 0.6 && off > 0 !== left.current)) {
      left.current = off > 0
      onSide(left.current)
    }
    overlay.draw({
      camera,
      width: size.width,
      height: size.height,
      head: head(),
      hidden: (at) => behindDeck(camera.position, at, now.current),
      gone: (at) => isGone(planes.current, at),
      places,
    })
    draw(rig)
  }, 1)
  return null
}

/** How far the view may be moved and taken away from the dock. */
const limitsOf = ({ x0, x1, y0, y1 }: Slab): { reach: number; center: [number, number] } => ({
  reach: Math.max(6, x1 - x0, y1 - y0),
  center: [(x0 + x1) / 2, (y0 + y1) / 2],
})

/** Points spread over the dock that labels should not cover. */
function placesOf({ sections, legs }: SceneData['dock'], deck: number): Vec3[] {
  // Of a long dock, some of the sections are enough.
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

/** Whether the deck hides a point from the camera. */
function behindDeck(eye: Vector3, [x, y, z]: Vec3, { slabs, deck }: SceneData): boolean {
  if (eye.z > deck === z > deck) return false
  const t = (deck - eye.z) / (z - eye.z)
  const [px, py] = [eye.x + (x - eye.x) * t, eye.y + (y - eye.y) * t]
  return slabs.some(({ x0, x1, y0, y1 }) => px > x0 && px < x1 && py > y0 && py < y1)
}
