/** The root of the scene: its parts, and the uniforms that they share. */
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { footprintOf } from '../../../rules/layout/footprint.ts'
import { type LeadlineStore, placedOf } from '../../state/store.ts'
import type { Rig } from '../camera/rig.ts'
import { makeWorld, setHour, setSlabs, type World } from '../materials/world.ts'
import { makeOverlay } from '../measures/label-overlay.ts'
import { joined } from '../measures/label-sources.ts'
import { makeParts, type Parts } from '../parts/parts.ts'
import type { Shell } from '../shell.ts'
import { asideOf, both } from '../sway/side-by-side.ts'
import { useReader } from '../use-reader.ts'
import { useCaption } from '../water/use-caption.ts'
import { useSea } from '../water/use-waves.ts'
import { CameraControls } from './camera-controls.tsx'
import { Dimensions } from './dimensions.tsx'
import { DockParts } from './dock.tsx'
import { Lake } from './lake.tsx'
import { Lazy } from './lazy.tsx'
import { useSceneData } from './use-scene-data.ts'

/** Distance from the dock to the cutting plane on the camera's side, m: the whole dock stands behind it. */
const OFF = 0.45
/** Thickness of water kept behind the dock in the side view, m; and the value that keeps all of it. */
const BEHIND = 2.2
const WHOLE = 1e6
/** The bank gets green this far over high water, m. */
const GREEN = 0.1

const loadForces = () => import('../forces/forces.tsx').then((m) => m.Forces)
const loadSway = () => import('../sway/sway.tsx').then((m) => m.Sway)

interface Props {
  readonly store: LeadlineStore
  readonly shell: Shell
  /** `playing`: something moves by itself, and the next frame is to follow at once. */
  readonly draw: (rig: Rig, parts: Parts, world: World, playing: boolean) => void
}

export function SceneRoot({ store, shell, draw }: Props) {
  const data = useSceneData(store)
  const gl = useThree((s) => s.gl)
  const invalidate = useThree((s) => s.invalidate)
  const world = useMemo(makeWorld, [])
  const parts = useMemo(() => makeParts(world), [world])
  const overlay = useMemo(() => joined(makeOverlay(shell.box)), [shell])
  useEffect(() => () => parts.dispose(), [parts])
  useEffect(() => () => overlay.dispose(), [overlay])
  const [left, setLeft] = useState(false)
  const { bounds, slabs, cut, deck, level, design, dark, contour } = data
  const plane = cut ? (left ? bounds.y1 + OFF : bounds.y0 - OFF) : null

  useLayoutEffect(() => setHour(world, dark ? 'dusk' : 'day'), [world, dark])
  useLayoutEffect(() => {
    setSlabs(world, slabs)
    const ramp = data.placed.sections.find((s) => s.role === 'ramp')
    world.uEvenFrom.value = ramp ? footprintOf(ramp).x1 : -WHOLE
  }, [world, slabs, data.placed])
  // In the side view only a slab of lake is kept, so that nothing behind the dock is mistaken for part of it.
  const slab = useStore(store, (s) => s.view === 'side')
  const high = design.site.levels.high
  useLayoutEffect(() => {
    world.uLevel.value = level
    world.uDeck.value = deck
    world.uContour.value = contour
    world.uGreen.value = Math.max(high, level) + GREEN
    const thick = slab ? bounds.y1 - bounds.y0 + 2 * OFF + BEHIND : WHOLE
    world.uCut.value.set(left ? -1 : 1, plane ?? 0, plane === null ? 0 : 1, thick)
    invalidate()
  }, [world, level, deck, contour, high, left, plane, slab, bounds, invalidate])

  const { play, surface, edge } = useSea(store, world, data, plane)
  const reader = useReader(store)
  useEffect(() => shell.describe(gl.domElement, design.name, reader), [shell, gl, design.name, reader])
  const forces = useStore(store, (s) => s.forces)
  const swaying = useStore(store, (s) => s.sway !== 'none')
  const twice = useStore(store, (s) => s.sway === 'across' && placedOf(s).legs.some(({ braced }) => braced))
  const aside = asideOf(bounds, left)
  const seen = useMemo(
    () => (twice ? { ...data, bounds: both(bounds, aside) } : data),
    [data, twice, bounds, aside],
  )
  const moving = useRef(false)
  const head = useCaption(shell, surface && data.dock.waves, reader)
  return (
    <>
      <Lake world={world} data={data} plane={plane} sea={surface} edge={edge} />
      <DockParts world={world} data={data} store={store} parts={parts} />
      <Dimensions
        world={world}
        data={data}
        store={store}
        overlay={overlay}
        plane={plane}
        left={left}
        flat={surface === null}
      />
      <Lazy on={forces} load={loadForces} props={{ world, store, overlay }} />
      <Lazy on={swaying} load={loadSway} props={{ world, store, overlay, parts, aside, moving }} />
      <CameraControls
        data={seen}
        store={store}
        shell={shell}
        parts={parts}
        overlay={overlay}
        onSide={setLeft}
        head={head}
        draw={(rig) => {
          play.tick(performance.now())
          draw(rig, parts, world, play.moving || moving.current)
        }}
      />
    </>
  )
}
