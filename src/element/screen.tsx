/** The React root of one element, in its shadow tree: loading message, app, error messages. */
import { options } from 'preact'
import { Component, type ReactNode, useEffect, useState } from 'react'
import { createRoot } from 'react-dom/client'
import { ENGLISH, type Reader, say, spokenIn } from '../../rules/index.ts'
import { HostContext } from '../state/host.ts'
import { StoreContext } from '../state/store.ts'
import { SCREEN, type Word } from '../words/index.ts'
import { App, type Mode } from './app.tsx'
import type { Session } from './session.ts'
import type { Fault } from './sources.ts'

export interface Screen {
  /** Draws the app; `painted` is called when its first picture is on the screen, `broken` where it cannot be drawn any more. */
  show(painted: () => void, broken: (error: unknown) => void): void
  /** Shows what could not be loaded and why, and offers to try again. */
  fail(faults: readonly Fault[], again: () => void): void
  /** Shows that the app crashed, and offers to try again, to save the design and to start over. */
  stop(ways: { readonly again: () => void; readonly save: () => void; readonly over: () => void }): void
  setMode(mode: Mode): void
  close(): void
}

type View = Pick<ReturnType<Session['store']['getState']>, 'units' | 'theme'>
type Told = View & Pick<Reader, 'language'>

interface Way {
  readonly key: Word
  readonly act: () => void
}

/** A loading message appears after the first; after the second it says that loading is slow and offers to try again. ms. */
const SILENT = 400
const SLOW = 8000
/** Most faults that are shown. */
const SHOWN = 3

/**
 * True while the tree is being rendered. A browser fires `focusout` when a focused field is removed; no user left it, and what was typed must not
 * be committed again. React suppresses such events by itself; Preact does not.
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
/** Each control has a part by which a page may style it. */
const PARTS: Readonly<Record<string, string>> = {
  button: 'button',
  input: 'field',
  select: 'field',
  textarea: 'field',
  dialog: 'dialog',
}
const made = options.vnode
options.vnode = (node) => {
  // To look up a component would write out its source.
  const part = typeof node.type === 'string' && PARTS[node.type]
  if (part) {
    const props = node.props as { part?: string; className?: string }
    props.part ??= props.className?.startsWith('main') ? `${part} main-button` : part
  }
  made?.(node)
}
options.debounceRendering = (draw) => queueMicrotask(() => change(draw))

/** `session` null where none could be made; `again` begins anew. */
export function showScreen(
  shadow: ShadowRoot,
  session: Session | null,
  view: View,
  mode: Mode,
  again: () => void,
): Screen {
  const box = document.createElement('div')
  box.className = 'root'
  box.addEventListener('focusout', (event) => changing && event.stopImmediatePropagation(), true)
  shadow.append(box)
  const root = createRoot(box)
  const render = (what: ReactNode): void => change(() => root.render(what))
  const told = (): Told => session?.store.getState() ?? { ...view, language: ENGLISH }
  const waiting = setTimeout(() => render(<Waiting told={told} again={again} />), SILENT)
  let now = mode
  let calls: { readonly painted: () => void; readonly broken: (error: unknown) => void } | null = null
  const draw = (): void => {
    if (!session) return
    render(
      <Guard broken={(error) => calls?.broken(error)}>
        <StoreContext value={session.store}>
          <HostContext value={session}>
            <App mode={now} />
            <Painted tell={() => calls?.painted()} />
          </HostContext>
        </StoreContext>
      </Guard>,
    )
  }
  return {
    show(painted, broken) {
      clearTimeout(waiting)
      calls = { painted, broken }
      draw()
    },
    fail(faults, retry) {
      clearTimeout(waiting)
      const lines = faults
        .slice(0, SHOWN)
        .map(({ path, message }) => (path ? `${path}: ${message}` : message))
      const ways: readonly Way[] = [{ key: 'again', act: retry }]
      render(<Card told={told()} role="alert" what="catalog.failed" ways={ways} lines={lines} />)
    },
    stop({ again: retry, save, over }) {
      clearTimeout(waiting)
      const ways: readonly Way[] = [
        { key: 'again', act: retry },
        { key: 'file.save', act: save },
        { key: 'file.new', act: over },
      ]
      render(<Card told={told()} role="alert" what="start.broken" ways={ways} />)
    },
    setMode(mode) {
      now = mode
      if (calls) draw()
    },
    close() {
      clearTimeout(waiting)
      change(() => root.unmount())
      box.remove()
    },
  }
}

interface CardProps {
  readonly told: Told
  readonly role: 'alert' | 'status'
  readonly what: Word
  readonly ways: readonly Way[]
  readonly lines?: readonly string[]
}

/** Shown in place of the app: what happened, and what the user can do about it. */
function Card({ told: { theme, ...reader }, role, what, ways, lines = [] }: CardProps) {
  return (
    <div
      className="app failed"
      role={role}
      lang={spokenIn(reader.language)}
      dir={reader.language.dir}
      data-theme={theme}
    >
      <p>{say(SCREEN, reader, what)}</p>
      {lines.map((line) => (
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

function Waiting({ told, again }: { readonly told: () => Told; readonly again: () => void }) {
  const [slow, setSlow] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setSlow(true), SLOW - SILENT)
    return () => clearTimeout(timer)
  }, [])
  return (
    <Card
      told={told()}
      role="status"
      what={slow ? 'start.slow' : 'start.loading'}
      ways={slow ? [{ key: 'again', act: again }] : []}
    />
  )
}

/** An error boundary. */
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

/** Two frames after the first commit, the app has been painted. */
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
