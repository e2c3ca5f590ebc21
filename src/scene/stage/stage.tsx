/** The scene put together. */
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { type LeadlineStore, placedOf } from '../../state/store.ts'
import type { Rig } from '../camera/rig.ts'
import { makeWorld, setHour, setSlabs, type World } from '../look/world.ts'
import { joined } from '../measures/joined.ts'
import { makeOverlay } from '../measures/overlay.ts'
import { makeParts, type Parts } from '../parts/parts.ts'
import type { Shell } from '../shell.ts'
import { asideOf, both } from '../sway/aside.ts'
import { useReader } from '../use-reader.ts'
import { useCaption } from '../water/use-caption.ts'
import { useSea } from '../water/use-sea.ts'
import { DockParts } from './dock.tsx'
import { Eye } from './eye.tsx'
import { useFacts } from './facts.ts'
import { Lake } from './lake.tsx'
import { Later } from './later.tsx'
import { Measured } from './measured.tsx'

/** The cut runs this far off the dock, on the side of the eye, so that the whole dock stands behind it, m. */
const OFF = 0.45
/** Water kept behind the dock in a view along the side, m; and where all is kept. */
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

export function Stage({ store, shell, draw }: Props) {
  const facts = useFacts(store)
  const gl = useThree((s) => s.gl)
  const invalidate = useThree((s) => s.invalidate)
  const world = useMemo(makeWorld, [])
  const parts = useMemo(() => makeParts(world), [world])
  const overlay = useMemo(() => joined(makeOverlay(shell.box)), [shell])
  useEffect(() => () => parts.dispose(), [parts])
  useEffect(() => () => overlay.dispose(), [overlay])
  const [left, setLeft] = useState(false)
  const { bounds, slabs, cut, deck, level, design, dark, contour } = facts
  const plane = cut ? (left ? bounds.y1 + OFF : bounds.y0 - OFF) : null

  useLayoutEffect(() => setHour(world, dark ? 'dusk' : 'day'), [world, dark])
  useLayoutEffect(() => setSlabs(world, slabs), [world, slabs])
  // Along the side only a slab is left, so that nothing behind the dock is taken for it.
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

  const { play, surface, edge } = useSea(store, world, facts, plane)
  const reader = useReader(store)
  useEffect(() => shell.describe(gl.domElement, design.name, reader), [shell, gl, design.name, reader])
  const forces = useStore(store, (s) => s.forces)
  const swaying = useStore(store, (s) => s.sway !== 'none')
  const twice = useStore(store, (s) => s.sway === 'across' && placedOf(s).legs.some(({ braced }) => braced))
  const aside = asideOf(bounds, left)
  const seen = useMemo(
    () => (twice ? { ...facts, bounds: both(bounds, aside) } : facts),
    [facts, twice, bounds, aside],
  )
  const moving = useRef(false)
  const head = useCaption(shell, surface && facts.dock.waves, reader)
  return (
    <>
      <Lake world={world} facts={facts} plane={plane} sea={surface} edge={edge} />
      <DockParts world={world} facts={facts} store={store} parts={parts} />
      <Measured
        world={world}
        facts={facts}
        store={store}
        overlay={overlay}
        plane={plane}
        left={left}
        flat={surface === null}
      />
      <Later on={forces} load={loadForces} props={{ world, store, overlay }} />
      <Later on={swaying} load={loadSway} props={{ world, store, overlay, parts, aside, moving }} />
      <Eye
        facts={seen}
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
