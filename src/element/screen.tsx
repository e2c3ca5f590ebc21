/** The React side of one element: its root in the shadow tree, from the first word to the last. */
import { options } from 'preact'
import { Component, type ReactNode, useEffect, useState } from 'react'
import { createRoot } from 'react-dom/client'
import { say, spokenIn } from '../../rules/index.ts'
import { HostContext } from '../state/host.ts'
import { StoreContext } from '../state/store.ts'
import { SCREEN, type Word } from '../words/index.ts'
import { App, type Mode } from './app.tsx'
import type { Session } from './session.ts'
import type { Fault } from './sources.ts'

export interface Screen {
  /** Draws the app; `painted` is called when its first picture is on the screen, `broken` where it cannot be drawn any more. */
  show(painted: () => void, broken: (error: unknown) => void): void
  /** Says what could not be had and why, and offers to try again. */
  fail(faults: readonly Fault[], again: () => void): void
  /** Says that it had to stop, and offers to save the design that it stopped with, to try again and to start over. */
  stop(ways: { readonly again: () => void; readonly save: () => void; readonly over: () => void }): void
  setMode(mode: Mode): void
  close(): void
}

interface Way {
  readonly key: Word
  readonly act: () => void
}

/** What is still waited for after this long is told of; what is after that is told to be slow, with a way out. ms. */
const SILENT = 400
const SLOW = 8000
/** Lines of faults that are shown. */
const SHOWN = 3

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

/** `session` null where none could be made; `again` begins anew. */
export function showScreen(
  shadow: ShadowRoot,
  session: Session | null,
  view: Pick<ReturnType<Session['store']['getState']>, 'language' | 'units' | 'theme'>,
  mode: Mode,
  again: () => void,
): Screen {
  const box = document.createElement('div')
  box.className = 'root'
  box.addEventListener('focusout', (event) => changing && event.stopImmediatePropagation(), true)
  shadow.append(box)
  const root = createRoot(box)
  let now = mode
  let told: { painted: () => void; broken: (error: unknown) => void } | null = null
  const render = (what: ReactNode): void => change(() => root.render(what))
  const card = (key: Word, ways: readonly Way[], more: { role: string; lines?: readonly string[] }) => {
    const { theme, ...reader } = session?.store.getState() ?? view
    return (
      <div className="app failed" role={more.role} lang={spokenIn(reader.language)} data-theme={theme}>
        <p>{say(SCREEN, reader, key)}</p>
        {more.lines?.map((line) => (
          <p key={line} className="hint">
            {line}
          </p>
        ))}
        <div className="actions">
          {ways.map(({ key: word, act }) => (
            <button key={word} type="button" onClick={act}>
              {say(SCREEN, reader, word)}
            </button>
          ))}
        </div>
      </div>
    )
  }
  const waiting = setTimeout(
    () =>
      render(
        <Waiting
          draw={(slow) =>
            card(slow ? 'start.slow' : 'start.loading', slow ? [{ key: 'again', act: again }] : [], {
              role: 'status',
            })
          }
        />,
      ),
    SILENT,
  )
  const draw = (): void => {
    if (!session) return
    render(
      <Guard broken={(error) => told?.broken(error)}>
        <StoreContext value={session.store}>
          <HostContext value={session}>
            <App mode={now} />
            <Painted tell={() => told?.painted()} />
          </HostContext>
        </StoreContext>
      </Guard>,
    )
  }
  return {
    show(painted, broken) {
      clearTimeout(waiting)
      told = { painted, broken }
      draw()
    },
    fail(faults, retry) {
      clearTimeout(waiting)
      render(
        card('catalog.failed', [{ key: 'again', act: retry }], {
          role: 'alert',
          lines: faults.slice(0, SHOWN).map(({ path, message }) => (path ? `${path}: ${message}` : message)),
        }),
      )
    },
    stop({ again: retry, save, over }) {
      clearTimeout(waiting)
      const ways: readonly Way[] = [
        { key: 'again', act: retry },
        { key: 'file.save', act: save },
        { key: 'file.new', act: over },
      ]
      render(card('start.broken', ways, { role: 'alert' }))
    },
    setMode(mode) {
      now = mode
      if (told) draw()
    },
    close() {
      clearTimeout(waiting)
      change(() => root.unmount())
      box.remove()
    },
  }
}

function Waiting({ draw }: { readonly draw: (slow: boolean) => ReactNode }) {
  const [slow, setSlow] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setSlow(true), SLOW - SILENT)
    return () => clearTimeout(timer)
  }, [])
  return draw(slow)
}

/** What is thrown while the screen is drawn leaves no blank behind. */
class Guard extends Component<
  { readonly broken: (error: unknown) => void; readonly children: ReactNode },
  { readonly failed: boolean }
> {
  override state = { failed: false }
  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true }
  }
  override componentDidCatch(error: unknown): void {
    this.props.broken(error)
  }
  override render(): ReactNode {
    return this.state.failed ? null : this.props.children
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
