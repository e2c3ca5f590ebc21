/** Dimension lines in the scene and labels over it. */
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Vec3 } from '../../../rules/index.ts'
import type { LeadlineStore } from '../../state/store.ts'
import { type Cut, onCut } from '../cut.ts'
import type { World } from '../materials/world.ts'
import { measureGaps } from '../measures/clearances.ts'
import { type Line, measure } from '../measures/dimensions.ts'
import type { Overlay } from '../measures/label-overlay.ts'
import { makeLines } from '../measures/line-mesh.ts'
import type { Land } from '../terrain.ts'
import { useReader } from '../use-reader.ts'
import { useGaps } from './use-gaps.ts'
import type { SceneData } from './use-scene-data.ts'

interface Props {
  readonly world: World
  readonly data: SceneData
  readonly store: LeadlineStore
  readonly overlay: Overlay
  readonly cut: Cut | null
  /** The camera is on the left of the dock. */
  readonly left: boolean
  /** The water lies flat: else its line is drawn with it. */
  readonly flat: boolean
}

export function Dimensions({ world, data, store, overlay, cut, left, flat }: Props) {
  const { dock, design, land, level, contour, range, dark, bounds } = data
  const invalidate = useThree((s) => s.invalidate)
  const selection = useStore(store, (s) => s.selection)
  const reader = useReader(store)
  const foundLater = useStore(store, (s) => s.foundLater)
  const labels = useStore(store, (s) => s.labels)
  const gaps = useGaps(store)
  const lines = useMemo(() => makeLines(world), [world])
  useEffect(() => () => lines.dispose(), [lines])
  useLayoutEffect(() => {
    const measured = measure({
      dock,
      design,
      selection,
      // Of what is taken away nothing is measured.
      labels: labels && !(cut?.across && cut.at < bounds.x1),
      level,
      reader,
      foundLater,
      ground: land.at,
      mesh: land.mesh,
      contour,
      range,
      plane: cut && !cut.across ? cut.at : null,
      left,
    })
    const near = measureGaps(gaps, reader)
    const waterline = cut === null || !flat ? [] : waterlineOf(land, cut, level)
    lines.show([...measured.lines, ...near.lines, ...waterline], dark)
    overlay.show([...near.notes, ...measured.notes])
    invalidate()
  }, [
    lines,
    overlay,
    dock,
    design,
    selection,
    gaps,
    labels,
    level,
    reader,
    foundLater,
    land,
    contour,
    range,
    bounds,
    cut,
    left,
    flat,
    dark,
    invalidate,
  ])
  return <primitive object={lines.mesh} />
}

/** The level drawn along the cut, wherever there is water. */
function waterlineOf({ mesh: { xs, ys }, at }: Land, cut: Cut, level: number): Line[] {
  const list = cut.across ? ys : xs
  const depth = (along: number): number => level - at(...onCut(cut, along))
  const lines: Line[] = []
  for (let i = 0; i + 1 < list.length; i++) {
    const [a, b] = [list[i]!, list[i + 1]!]
    const [da, db] = [depth(a), depth(b)]
    if (da <= 0 && db <= 0) continue
    const shore = a + ((b - a) * da) / (da - db)
    const from = da > 0 ? a : shore
    const to = db > 0 ? b : shore
    const last = lines.at(-1)
    const end: Vec3 = [...onCut(cut, to), level]
    if (last && da > 0) lines[lines.length - 1] = { ...last, to: end }
    else lines.push({ from: [...onCut(cut, from), level], to: end, tone: 'water', stroke: null })
  }
  return lines
}
