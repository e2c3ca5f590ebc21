/** Moves the camera to the chosen view, and again when what must be in view changes. */
import { useThree } from '@react-three/fiber'
import { useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { LeadlineStore } from '../../state/store.ts'
import type { Rig } from '../camera/rig.ts'
import { poseOf } from '../camera/views.ts'
import { useMedia } from './use-media.ts'
import type { SceneData } from './use-scene-data.ts'

/** Returns a function that restores the view after it was turned by hand. */
export function useViewPose(rig: Rig, data: SceneData, store: LeadlineStore): (smooth: boolean) => void {
  const size = useThree((s) => s.size)
  const view = useStore(store, (s) => s.view)
  const framed = useStore(store, (s) => s.framed)
  const dragging = useStore(store, (s) => s.dragging)
  const reduced = useMedia('(prefers-reduced-motion: reduce)')
  const aspect = size.width / Math.max(1, size.height)
  const { dock, bounds, range, deck, level, land } = data
  const reset = (smooth: boolean): void => {
    const pose = poseOf(view, { dock, bounds, range, deck, level, ground: land.at }, aspect)
    rig.goTo(pose, smooth && !reduced)
  }
  // What must be in view. The depth of the bed is left out: the camera does not move while a depth is edited.
  const frame = [bounds.x0, bounds.x1, bounds.y0, bounds.y1, range.x0, range.x1]
    .map((n) => n.toFixed(2))
    .join(' ')
  const shown = useRef<{ view: string; framed: number; frame: string; aspect: number } | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `reset` is made anew each time from what is listed.
  useLayoutEffect(() => {
    const before = shown.current
    const asked = before?.view !== view || before.framed !== framed
    if (!asked && (dragging || rig.byHand)) return
    if (!asked && before.frame === frame && before.aspect === aspect) return
    shown.current = { view, framed, frame, aspect }
    reset(before !== null && before.aspect === aspect)
  }, [view, framed, frame, aspect, dragging, rig])
  return reset
}
