/** The moving water of one scene: its shape from the Dock's waves, its mesh, its clock. */
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo } from 'react'
import type { BufferGeometry } from 'three'
import { useStore } from 'zustand'
import type { LeadlineStore } from '../../state/store.ts'
import { useMedia } from '../components/use-media.ts'
import type { SceneData } from '../components/use-scene-data.ts'
import type { Cut } from '../cut.ts'
import type { World } from '../materials/world.ts'
import { makePlay, type Play } from './animation.ts'
import { edgeGeometry, seaGeometry } from './surface-mesh.ts'
import { seaOf } from './wave-trains.ts'

export interface MovingWater {
  readonly play: Play
  /** Null while the water lies flat. */
  readonly surface: BufferGeometry | null
  /** Where the lake is cut open; null where it is whole, or the water lies flat. */
  readonly edge: BufferGeometry | null
}

/** `cut`: null where the lake is whole. */
export function useSea(store: LeadlineStore, world: World, data: SceneData, cut: Cut | null): MovingWater {
  const { dock, design, land, bounds, level } = data
  const invalidate = useThree((s) => s.invalidate)
  const wanted = useStore(store, (s) => s.waves)
  const reduced = useMedia('(prefers-reduced-motion: reduce)')
  const play = useMemo(() => makePlay(world), [world])
  const from = design.site.wind?.from ?? 0
  const { waves } = dock
  // What is found about a dock later gives it another object with the same waves in it.
  const told = waves && [waves.height, waves.period, waves.length, waves.depth, waves.tenth].join(' ')
  // biome-ignore lint/correctness/useExhaustiveDependencies: `told` is all of the waves that the sea is made of.
  const sea = useMemo(() => (wanted ? seaOf(waves, from) : null), [wanted, told, from])
  const surface = useMemo(
    () => (sea ? seaGeometry(sea, land, bounds, level) : null),
    [sea, land, bounds, level],
  )
  useEffect(() => () => surface?.dispose(), [surface])
  const edge = useMemo(
    () => (sea && cut ? edgeGeometry(sea, land, bounds, level, cut) : null),
    [sea, land, bounds, level, cut],
  )
  useEffect(() => () => edge?.dispose(), [edge])
  useLayoutEffect(() => {
    if (sea) {
      const y = (bounds.y0 + bounds.y1) / 2
      const depth = (x: number): number => level - land.at(x, y)
      const [x0, x1] = [reached(depth, 0, land.mesh.xs), reached(depth, sea.full, land.mesh.xs)]
      world.uShoal.value.set(x0, 1 / Math.max(0.05, x1 - x0))
    }
    play.show(sea, !reduced)
    invalidate()
  }, [play, sea, reduced, world, land, bounds, level, invalidate])
  return { play, surface, edge }
}

/** Where it first gets this deep, from the shore. */
function reached(depth: (x: number) => number, wanted: number, xs: readonly number[]): number {
  for (let i = 0; i + 1 < xs.length; i++) {
    const [a, b] = [depth(xs[i]!), depth(xs[i + 1]!)]
    if (b > wanted)
      return a > wanted || a === b ? xs[i]! : xs[i]! + ((xs[i + 1]! - xs[i]!) * (wanted - a)) / (b - a)
  }
  return xs.at(-1)!
}
