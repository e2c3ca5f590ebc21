/** What the camera looks at while the dock sways: it, and where there are braces the one without them beside it. */
import { useMemo } from 'react'
import { useStore } from 'zustand'
import { type LeadlineStore, placedOf } from '../../state/store.ts'
import { asideOf, both } from '../sway/side-by-side.ts'
import type { SceneData } from './use-scene-data.ts'

interface SideBySide {
  /** How far aside the other one stands, m; left is positive. */
  readonly aside: number
  readonly seen: SceneData
}

/** `left`: the eye is on the dock's left. */
export function useSideBySide(store: LeadlineStore, data: SceneData, left: boolean): SideBySide {
  const { bounds } = data
  const twice = useStore(store, (s) => s.sway === 'across' && placedOf(s).legs.some(({ braced }) => braced))
  const aside = asideOf(bounds, left)
  const seen = useMemo(
    () => (twice ? { ...data, bounds: both(bounds, aside) } : data),
    [data, twice, bounds, aside],
  )
  return { aside, seen }
}
