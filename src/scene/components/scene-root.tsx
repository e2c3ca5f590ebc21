/** The root of the scene: its parts, and what they share. */
import { useThree } from '@react-three/fiber'
import { useEffect, useMemo, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { isNumbered, type LeadlineStore } from '../../state/store.ts'
import type { Rig } from '../camera/rig.ts'
import { cutOf } from '../cut.ts'
import type { World } from '../materials/world.ts'
import { makeOverlay } from '../measures/label-overlay.ts'
import { joined } from '../measures/label-sources.ts'
import { makeParts, type Parts } from '../parts/parts.ts'
import type { Shell } from '../shell.ts'
import { useReader } from '../use-reader.ts'
import { useCaption } from '../water/use-caption.ts'
import { useSea } from '../water/use-waves.ts'
import { CameraControls } from './camera-controls.tsx'
import { Dimensions } from './dimensions.tsx'
import { DockParts } from './dock.tsx'
import { Lake } from './lake.tsx'
import { Lazy } from './lazy.tsx'
import { useSceneData } from './use-scene-data.ts'
import { useSideBySide } from './use-side-by-side.ts'
import { useWorld } from './use-world.ts'

const loadBoats = () => import('../boats/moored-boats.tsx').then((m) => m.Boats)
const loadForces = () => import('../forces/forces.tsx').then((m) => m.Forces)
const loadFreeEdges = () => import('../free-edges/free-edges.tsx').then((m) => m.FreeEdges)
const loadNumbers = () => import('../measures/numbers.tsx').then((m) => m.Numbers)
const loadObstacles = () => import('../obstacles/obstacles.tsx').then((m) => m.Obstacles)
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
  const [left, setLeft] = useState(false)
  const { bounds } = data
  const fromEnd = useStore(store, (s) => s.view === 'end')
  const moved = useStore(store, (s) => s.cutAt)
  const cut = useMemo(
    () => (data.cut ? cutOf(bounds, fromEnd, left, moved) : null),
    [data.cut, bounds, fromEnd, left, moved],
  )
  const world = useWorld(data, cut)
  const parts = useMemo(() => makeParts(world), [world])
  const overlay = useMemo(() => joined(makeOverlay(shell.box)), [shell])
  useEffect(() => () => parts.dispose(), [parts])
  useEffect(() => () => overlay.dispose(), [overlay])
  const { play, surface, edge } = useSea(store, world, data, cut)
  const reader = useReader(store)
  const { design } = data
  useEffect(() => shell.describe(gl.domElement, design.name, reader), [shell, gl, design.name, reader])
  const forces = useStore(store, (s) => s.forces)
  const numbered = useStore(store, isNumbered)
  const shaping = useStore(store, (s) => s.shaping !== null)
  const swaying = useStore(store, (s) => s.sway !== 'none')
  const { aside, seen } = useSideBySide(store, data, left)
  const moving = useRef(false)
  const head = useCaption(shell, surface && data.dock.waves, reader)
  return (
    <>
      <Lake world={world} data={data} cut={cut} sea={surface} edge={edge} />
      <Lazy on={Boolean(design.site.obstacles?.length)} load={loadObstacles} props={{ world, store }} />
      <DockParts world={world} data={data} store={store} parts={parts} />
      <Dimensions
        world={world}
        data={data}
        store={store}
        overlay={overlay}
        cut={cut}
        left={left}
        flat={surface === null}
      />
      <Lazy on={data.moored.length > 0} load={loadBoats} props={{ world, data, store }} />
      <Lazy on={numbered} load={loadNumbers} props={{ store, overlay }} />
      <Lazy on={forces} load={loadForces} props={{ world, store, overlay }} />
      <Lazy on={shaping} load={loadFreeEdges} props={{ store, shell, overlay }} />
      <Lazy on={swaying} load={loadSway} props={{ world, store, overlay, parts, aside, moving }} />
      <CameraControls
        data={seen}
        store={store}
        shell={shell}
        parts={parts}
        overlay={overlay}
        cut={cut}
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
