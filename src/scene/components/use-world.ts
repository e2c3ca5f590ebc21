/** The uniforms that all materials share, kept to what the scene is built from. */
import { useThree } from '@react-three/fiber'
import { useLayoutEffect, useMemo } from 'react'
import { footprintOf } from '../../../rules/layout/footprint.ts'
import type { Cut } from '../cut.ts'
import { makeWorld, setCut, setHour, setSlabs, type World } from '../materials/world.ts'
import type { SceneData } from './use-scene-data.ts'

/** Nothing is lakeward of this, m. */
const NOWHERE = -1e6
/** The bank gets green this far over high water, m. */
const GREEN = 0.1

/** `cut`: null where the lake is whole. */
export function useWorld(data: SceneData, cut: Cut | null): World {
  const invalidate = useThree((s) => s.invalidate)
  const world = useMemo(makeWorld, [])
  const { placed, slabs, deck, level, dark, contour } = data
  useLayoutEffect(() => setHour(world, dark ? 'dusk' : 'day'), [world, dark])
  useLayoutEffect(() => {
    setSlabs(world, slabs)
    const ramp = placed.sections.find((s) => s.role === 'ramp')
    world.uEvenFrom.value = ramp ? footprintOf(ramp).x1 : NOWHERE
  }, [world, slabs, placed])
  const { high } = data.design.site.levels
  useLayoutEffect(() => {
    world.uLevel.value = level
    world.uDeck.value = deck
    world.uContour.value = contour
    world.uGreen.value = Math.max(high, level) + GREEN
    setCut(world, cut)
    invalidate()
  }, [world, level, deck, contour, high, cut, invalidate])
  return world
}
