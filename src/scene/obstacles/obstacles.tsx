/** Boulders, stumps and the like on the bed, in the ground's own material: wet, in shadow and under water as that is. */
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { LeadlineStore } from '../../state/store.ts'
import { makeGridGeometry } from '../grid-geometry.ts'
import { makeGroundMaterial } from '../materials/ground.ts'
import type { World } from '../materials/world.ts'
import { obstacleMesh } from './mesh.ts'

interface Props {
  readonly world: World
  readonly store: LeadlineStore
}

export function Obstacles({ world, store }: Props) {
  const invalidate = useThree((s) => s.invalidate)
  const obstacles = useStore(store, (s) => s.design.site.obstacles)
  const bed = useStore(store, (s) => s.project.bed)
  const material = useMemo(() => makeGroundMaterial(world), [world])
  const grid = useMemo(makeGridGeometry, [])
  useEffect(
    () => () => {
      material.dispose()
      grid.geometry.dispose()
    },
    [material, grid],
  )
  useLayoutEffect(() => {
    const { positions, normals, tints, stones, indices } = obstacleMesh(obstacles ?? [], bed)
    grid.fill(
      { position: [positions, 3], normal: [normals, 3], aTint: [tints, 3], aStone: [stones, 2] },
      indices,
    )
    invalidate()
    return invalidate
  }, [grid, obstacles, bed, invalidate])
  return (
    <mesh geometry={grid.geometry} material={material} frustumCulled={false} receiveShadow renderOrder={3} />
  )
}
