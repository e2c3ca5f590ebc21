/** The dock's parts, the person on it, and the sun with its shadow. */

import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Dock as DockData } from '../../../rules/index.ts'
import { stanceOf, toPlan } from '../../../rules/layout/footprint.ts'
import { PERSON_HEIGHT } from '../../../rules/person.ts'
import type { LeadlineStore } from '../../state/store.ts'
import { makePartMaterial } from '../materials/part.ts'
import type { World } from '../materials/world.ts'
import type { Parts } from '../parts/parts.ts'
import { personGeometry } from '../person.ts'
import { fitSun, makeSun } from '../sun.ts'
import { useMade } from './lake.tsx'
import type { SceneData } from './use-scene-data.ts'

interface Props {
  readonly world: World
  readonly data: SceneData
  readonly store: LeadlineStore
  readonly parts: Parts
}

export function DockParts({ world, data, store, parts }: Props) {
  const { dock, placed, catalog, bounds, deck, dark } = data
  const gl = useThree((s) => s.gl)
  const invalidate = useThree((s) => s.invalidate)
  const selection = useStore(store, (s) => s.selection)
  const hover = useStore(store, (s) => s.hover)
  // The person is hidden while the sway is shown exaggerated.
  const person = useStore(store, (s) => s.person && s.sway === 'none')
  const sun = useMemo(makeSun, [])
  useEffect(() => () => sun.dispose(), [sun])

  useLayoutEffect(() => parts.update(placed, catalog), [parts, placed, catalog])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another catalog brings other meshes, unmarked.
  useLayoutEffect(() => {
    parts.mark(dock, selection, hover)
    invalidate()
  }, [parts, dock, catalog, selection, hover, invalidate])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hour moves the sun, the person throws a shadow too.
  useLayoutEffect(() => {
    const low = placed.legs.reduce((z, leg) => Math.min(z, leg.bed), deck - 0.3)
    const high =
      deck + Math.max(person ? PERSON_HEIGHT : 0, ...placed.legs.map((leg) => leg.aboveDeck ?? 0), 0.2)
    fitSun(sun, { ...bounds, z0: low, z1: high }, world)
    gl.shadowMap.needsUpdate = true
    invalidate()
  }, [sun, placed, bounds, deck, dark, person, world, gl, invalidate])
  return (
    <>
      <primitive object={sun} />
      <primitive object={sun.target} />
      <primitive object={parts.group} />
      {person && <Person world={world} data={data} />}
    </>
  )
}

function Person({ world, data }: { readonly world: World; readonly data: SceneData }) {
  const geometry = useMade(personGeometry, [])
  const material = useMade(() => makePartMaterial(world, 'cloth', true), [world])
  const { x, y, z, turn } = standing(data.placed, data.deck)
  return (
    <mesh
      geometry={geometry}
      material={material}
      position={[x, y, z]}
      rotation={[0, 0, turn]}
      frustumCulled={false}
      castShadow
      receiveShadow
    />
  )
}

/** Out on the run, a little to the side, looking over the lake. */
function standing({ sections }: DockData, deck: number): { x: number; y: number; z: number; turn: number } {
  const run = sections.filter((s) => s.role !== 'ramp' && s.heading === 0)
  const section = run[Math.floor((run.length - 1) * 0.7)] ?? sections.find((s) => s.role !== 'ramp')
  if (!section) return { x: -1, y: 0, z: deck, turn: 0 }
  const heading = (section.heading * Math.PI) / 180
  const [x, y] = toPlan(stanceOf(section), section.length * 0.6, section.width * 0.2)
  return {
    x,
    y,
    z: deck,
    turn: heading + 0.35,
  }
}
