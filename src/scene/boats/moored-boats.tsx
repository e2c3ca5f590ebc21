/** The boats at the dock, at true size, afloat at the level that is shown. Loaded where there is one. */
import { useThree } from '@react-three/fiber'
import { useLayoutEffect, useMemo } from 'react'
import { BufferAttribute, BufferGeometry } from 'three'
import { useStore } from 'zustand'
import { boatsIn } from '../../../geometry/boats.ts'
import type { Berth } from '../../../rules/layout/berth.ts'
import type { LeadlineStore } from '../../state/store.ts'
import { useMade } from '../components/lake.tsx'
import type { SceneData } from '../components/use-scene-data.ts'
import type { World } from '../materials/world.ts'
import { makeBoatMaterial } from './boat-material.ts'
import { addBoat, emptyMesh } from './boat-mesh.ts'

interface Props {
  readonly world: World
  readonly data: SceneData
  readonly store: LeadlineStore
}

export function Boats({ world, data, store }: Props) {
  const { design, placed, level } = data
  const gl = useThree((s) => s.gl)
  const invalidate = useThree((s) => s.invalidate)
  // Hidden, like the person, while the sway is shown exaggerated.
  const shown = useStore(store, (s) => s.sway === 'none')
  const { boat, boats } = design.dock
  const berths = useMemo(
    () => boatsIn({ design: { dock: { boat, boats } }, dock: placed }),
    [boat, boats, placed],
  )
  const geometry = useMade(() => geometryOf(berths), [berths])
  const material = useMade(() => makeBoatMaterial(world), [world])
  // biome-ignore lint/correctness/useExhaustiveDependencies: whatever moves them moves their shadows.
  useLayoutEffect(() => {
    gl.shadowMap.needsUpdate = true
    invalidate()
    return () => {
      gl.shadowMap.needsUpdate = true
      invalidate()
    }
  }, [gl, invalidate, geometry, level, shown])
  return (
    <mesh
      name="boats"
      geometry={geometry}
      material={material}
      position={[0, 0, level]}
      visible={shown}
      frustumCulled={false}
      castShadow
      receiveShadow
    />
  )
}

function geometryOf(berths: readonly Berth[]): BufferGeometry {
  const mesh = emptyMesh()
  for (const berth of berths) addBoat(mesh, berth)
  const geometry = new BufferGeometry()
  const put = (name: string, values: readonly number[], size: number): void => {
    geometry.setAttribute(name, new BufferAttribute(Float32Array.from(values), size))
  }
  put('position', mesh.positions, 3)
  put('normal', mesh.normals, 3)
  put('aPaint', mesh.paints, 4)
  put('aBerth', mesh.berths, 4)
  geometry.setIndex(mesh.indices)
  return geometry
}
