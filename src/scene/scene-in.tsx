/** The scene as a part of the screen: in a host that stands there already, for as long as the part does. */
import { type RefObject, useEffect } from 'react'
import { useLeadlineStore } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import mountScene, { type MountedScene } from './scene.tsx'

export interface SceneInProps {
  readonly host: RefObject<HTMLDivElement | null>
  /** There is no WebGL: told once. */
  readonly none: () => void
}

export function SceneIn({ host, none }: SceneInProps) {
  const { picture } = useHandles()
  const store = useLeadlineStore()
  // biome-ignore lint/correctness/useExhaustiveDependencies: mounted once.
  useEffect(() => {
    let mounted: MountedScene | undefined
    try {
      picture.current = mounted = mountScene(host.current!, store)
    } catch {
      none()
    }
    return () => {
      picture.current = null
      mounted?.dispose()
    }
  }, [])
  return null
}
