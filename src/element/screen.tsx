/** The React side of one element: its root in the shadow tree, from the first word to the last. */
import { useEffect } from 'react'
import { createRoot } from 'react-dom/client'
import { HostContext } from '../state/host.ts'
import { StoreContext } from '../state/store.ts'
import { say } from '../words/index.ts'
import { App, type Mode } from './app.tsx'
import type { Session } from './session.ts'

export interface Screen {
  /** Draws the app; `painted` is called when its first picture is on the screen. */
  show(painted: () => void): void
  /** Says that the catalog could not be had, and offers to try again. */
  fail(again: () => void): void
  setMode(mode: Mode): void
  close(): void
}

export function showScreen(shadow: ShadowRoot, session: Session, mode: Mode): Screen {
  const box = document.createElement('div')
  box.className = 'root'
  shadow.append(box)
  const root = createRoot(box)
  let now = mode
  let told: (() => void) | null = null
  const draw = (): void =>
    root.render(
      <StoreContext value={session.store}>
        <HostContext value={session}>
          <App mode={now} />
          <Painted tell={() => told?.()} />
        </HostContext>
      </StoreContext>,
    )
  return {
    show(painted) {
      told = painted
      draw()
    },
    fail(again) {
      const { lang, units } = session.store.getState()
      root.render(
        <div className="app failed" role="alert">
          <p>{say(lang, units, 'catalog.failed')}</p>
          <button type="button" onClick={again}>
            {say(lang, units, 'again')}
          </button>
        </div>,
      )
    },
    setMode(mode) {
      now = mode
      if (told) draw()
    },
    close() {
      root.unmount()
      box.remove()
    },
  }
}

/** Two frames after the first commit the picture is on the screen. */
function Painted({ tell }: { readonly tell: () => void }) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: told once.
  useEffect(() => {
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(tell)
    })
    return () => cancelAnimationFrame(frame)
  }, [])
  return null
}
