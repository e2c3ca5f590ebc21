/**
 * Where the dock is seen: the drawing at once, the 3D scene over it as soon as it is visible and has come. The scene is never in the
 * way of the drawing: while its context is lost, or where there is none, the drawing shows again.
 */
import { useEffect, useRef, useState } from 'react'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { Drawing } from './drawing.tsx'
import { ViewControls } from './view-controls.tsx'

/** Told by the scene on its host when its first picture is there. */
const SCENE_READY = 'leadline-scene-ready'

/** `coming`: the drawing stands in for it, and its room is kept. */
type Scene = 'coming' | 'none' | 'live'

const sceneIn = chunk(() => import('../scene/scene-in.tsx').then((m) => m.SceneIn))

export function Viewport() {
  const host = useRef<HTMLDivElement>(null)
  const { t } = useWords()
  const [scene, setScene] = useState<Scene>('coming')
  const [seen, setSeen] = useState(false)
  const [loose, setLoose] = useState(false)

  useEffect(() => {
    const element = host.current
    if (!element) return
    // These events do not bubble, but what is above the canvas can catch them on their way down.
    const lost = (): void => setScene('none')
    const live = (): void => setScene('live')
    element.addEventListener('webglcontextlost', lost, true)
    element.addEventListener('webglcontextrestored', live, true)
    element.addEventListener(SCENE_READY, live)
    let gone = false
    const sight = new IntersectionObserver((entries) => {
      if (!entries.at(-1)!.isIntersecting) return
      sight.disconnect()
      // The drawing and the panel are painted first; nothing of the scene stands in their way.
      requestAnimationFrame(() => setTimeout(() => gone || setSeen(true), 0))
    })
    sight.observe(element)
    return () => {
      gone = true
      sight.disconnect()
      element.removeEventListener('webglcontextlost', lost, true)
      element.removeEventListener('webglcontextrestored', live, true)
      element.removeEventListener(SCENE_READY, live)
    }
  }, [])

  const none = (): void => setScene('none')
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
      {seen && <Lazy quiet chunk={sceneIn} props={{ host, none }} failed={none} />}
      <ViewControls scene={scene} loose={loose} setLoose={setLoose} />
    </div>
  )
}
