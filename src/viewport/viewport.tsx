/**
 * Where the dock is seen: the drawing at once, the 3D scene over it as soon as it is visible and has come. The scene is never in the
 * way of the drawing: while its context is lost, or where there is none, the drawing shows again.
 */
import { useEffect, useRef, useState } from 'react'
import { whyMissing } from '../platform/why-missing.ts'
import type { MountedScene } from '../scene/scene.tsx'
import { useLeadlineStore } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { Missing } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { Drawing } from './drawing.tsx'
import { ViewControls } from './view-controls.tsx'

/** Told by the scene on its host when its first picture is there. */
const SCENE_READY = 'leadline-scene-ready'

/** `coming`: the drawing stands in for it, and its room is kept. */
type Scene = 'coming' | 'none' | 'live'

export function Viewport() {
  const host = useRef<HTMLDivElement>(null)
  const { picture } = useHandles()
  const store = useLeadlineStore()
  const { t } = useWords()
  const [scene, setScene] = useState<Scene>('coming')
  const [missing, setMissing] = useState<'gone' | 'offline' | null>(null)
  const [tries, setTries] = useState(0)
  const [loose, setLoose] = useState(false)

  // biome-ignore lint/correctness/useExhaustiveDependencies: another try asks again.
  useEffect(() => {
    const element = host.current
    if (!element) return
    let gone = false
    let asked = false
    let mounted: MountedScene | null = null
    // These events do not bubble, but what is above the canvas can catch them on their way down.
    const lost = (): void => setScene('none')
    const live = (): void => setScene('live')
    element.addEventListener('webglcontextlost', lost, true)
    element.addEventListener('webglcontextrestored', live, true)
    element.addEventListener(SCENE_READY, live)
    const mount = async (): Promise<void> => {
      // The drawing stays, and all else goes on.
      const code = await import('../scene/scene.tsx').catch(whyMissing)
      if (gone) return
      if (typeof code === 'string') {
        setScene('none')
        setMissing(code)
        return
      }
      try {
        picture.current = mounted = code.default(element, store)
      } catch {
        // There is no WebGL.
        setScene('none')
      }
    }
    const sight = new IntersectionObserver((entries) => {
      if (asked || !entries.at(-1)!.isIntersecting) return
      asked = true
      sight.disconnect()
      // The drawing and the panel are painted first; nothing of the scene stands in their way.
      requestAnimationFrame(() => setTimeout(() => gone || mount(), 0))
    })
    sight.observe(element)
    return () => {
      gone = true
      sight.disconnect()
      element.removeEventListener('webglcontextlost', lost, true)
      element.removeEventListener('webglcontextrestored', live, true)
      element.removeEventListener(SCENE_READY, live)
      picture.current = null
      mounted?.dispose()
    }
  }, [store, picture, tries])

  const again = (): void => {
    setMissing(null)
    setTries(tries + 1)
  }
  return (
    <div className={loose ? 'picture loose' : 'picture'}>
      <section
        className="stage"
        part="stage"
        data-scene={scene === 'live' ? scene : 'none'}
        aria-label={t('stage.label')}
      >
        {scene !== 'live' && <Drawing />}
        <div className="scene-host" ref={host} />
      </section>
      {missing && <Missing why={missing} again={again} />}
      <ViewControls scene={scene} loose={loose} setLoose={setLoose} />
    </div>
  )
}
