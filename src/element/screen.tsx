/** The React side of one element: its root in the shadow tree, from the first word to the last. */
import { options } from 'preact'
import { type ReactNode, useEffect } from 'react'
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

/**
 * True while the tree is being changed. A browser says that a field was left when it is taken out while it has the focus; nobody left it,
 * and what was typed in it is not to be taken in once more. React holds such words back by itself, its stand-in does not.
 */
let changing = false
const change = (act: () => void): void => {
  changing = true
  try {
    act()
  } finally {
    changing = false
  }
}
options.debounceRendering = (draw) => queueMicrotask(() => change(draw))

export function showScreen(shadow: ShadowRoot, session: Session, mode: Mode): Screen {
  const box = document.createElement('div')
  box.className = 'root'
  box.addEventListener('focusout', (event) => changing && event.stopImmediatePropagation(), true)
  shadow.append(box)
  const root = createRoot(box)
  let now = mode
  let told: (() => void) | null = null
  const render = (what: ReactNode): void => change(() => root.render(what))
  const draw = (): void =>
    render(
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
      render(
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
      change(() => root.unmount())
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
