/** The whole screen of one element: head, picture and section, panel, foot. */
import { type RefObject, useEffect, useMemo, useRef } from 'react'
import { spokenIn } from '../../rules/index.ts'
import { storageOf } from '../platform/storage-of.ts'
import { SectionStrip } from '../section-strip/section-strip.tsx'
import { useHost } from '../state/host.ts'
import { isNumbered, useLeadline, useLeadlineStore } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { type Handles, HandlesContext } from '../ui/handles.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { Viewport } from '../viewport/viewport.tsx'
import { Notices } from './notices.tsx'
import { Panel, ToLake } from './panel.tsx'
import { SumBar } from './sum-bar.tsx'
import { Toolbar } from './toolbar.tsx'
import { useSeenWindow } from './use-seen-window.ts'

export type Mode = 'full' | 'compact' | 'waterside'

const depths = chunk(() => import('../section-strip/depths.tsx').then((m) => m.Depths))
const guide = chunk(() => import('../section-strip/guide.tsx').then((m) => m.Guide))
const start = chunk(() => import('../start/start.tsx').then((m) => m.Start))
const legs = chunk(() => import('../panel/legs.tsx').then((m) => m.Legs))
const atLake = chunk(() => import('../at-lake/at-lake.tsx').then((m) => m.AtLake))
// Where it cannot be had nothing is sent, and what waits goes on waiting.
const waits = chunk(() =>
  import('../quote-request/waiting/waiting.tsx').then(
    (m) => m.Waits,
    () => () => null,
  ),
)
const goOn = chunk(() =>
  import('../at-lake/go-on.tsx').then(
    (m) => m.GoOn,
    () => () => null,
  ),
)
const legend = chunk(() => import('../viewport/legend.tsx').then((m) => m.Legend))

export function App({ mode }: { readonly mode: Mode }) {
  const theme = useLeadline((s) => s.theme)
  const language = useLeadline((s) => s.language)
  const stale = useLeadline((s) => s.stale)
  const asking = useLeadline((s) => s.starting !== false)
  const wet = useLeadline((s) => s.atLake) || mode === 'waterside'
  const app = useRef<HTMLDivElement>(null)
  const set = useLeadline((s) => s.set)
  useSeenWindow(app)
  // A season's record in the address is read at the lake; who was there is there again.
  useEffect(() => {
    const trail = history.state?.leadlineLake
    if (location.hash.startsWith('#leadline-record=') || (trail && !trail.stays)) set({ atLake: true })
  }, [set])
  return (
    <div
      className="app"
      ref={app}
      lang={spokenIn(language)}
      dir={language.dir}
      data-theme={theme}
      data-mode={mode}
      data-stale={stale || undefined}
      data-starting={asking || undefined}
    >
      {wet ? <Lazy chunk={atLake} props={{ stays: mode === 'waterside' }} /> : <Page app={app} />}
    </div>
  )
}

function Page({ app }: { readonly app: RefObject<HTMLDivElement | null> }) {
  const set = useLeadline((s) => s.set)
  const asked = useLeadline((s) => s.forces || s.sway !== 'none')
  const numbered = useLeadline(isNumbered)
  const crew = useLeadline((s) => s.audience === 'crew')
  const starting = useLeadline((s) => s.starting)
  const side = useRef<HTMLDivElement>(null)
  /** The dock is seen from its top; whoever goes by keyboard goes on in the panel. */
  const begun = (): void => {
    set({ starting: false })
    side.current?.focus({ preventScroll: true })
    app.current?.scrollIntoView()
  }
  const { picture } = useHost()
  const handles = useMemo<Handles>(
    () => ({ findings: { current: null }, papers: { current: null }, picture }),
    [picture],
  )
  const { t } = useWords()

  const { requestUrl } = useHost()

  useUndoKeys(app)

  return (
    <HandlesContext value={handles}>
      <slot name="header" />
      <Toolbar />
      <Notices />
      {storageOf()((kept) => 'leadline-lake-on' in kept, false) && <Lazy chunk={goOn} quiet props={{}} />}
      {requestUrl && <Lazy chunk={waits} quiet props={{ address: requestUrl }} />}
      <div className="page">
        <div className="left">
          <Viewport />
          {asked && <Lazy chunk={legend} props={{}} />}
          <div className="section">
            <SectionStrip />
            <p className="hint under-strip">{t('strip.drag')}</p>
          </div>
          <div className="measured">
            <Fold className="answer fold" title={t('depths.title')}>
              <Lazy chunk={depths} props={{}} />
            </Fold>
            <Fold className="answer fold" title={t('guide.title')}>
              <Lazy chunk={guide} props={{}} />
            </Fold>
          </div>
        </div>
        <div className="side" ref={side} tabIndex={-1}>
          {starting !== false ? (
            <Lazy chunk={start} props={{ done: begun, at: starting === true ? null : starting }} />
          ) : (
            <>
              <SumBar />
              {crew && <ToLake />}
              {numbered && <Lazy chunk={legs} props={{}} />}
              <Panel />
            </>
          )}
        </div>
      </div>
    </HandlesContext>
  )
}

/** Undo and redo by the keys that everybody knows, while the hand is in this element and not in a text. */
function useUndoKeys(app: RefObject<HTMLElement | null>): void {
  const store = useLeadlineStore()
  useEffect(() => {
    const element = app.current
    const key = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const target = event.composedPath()[0]
      if (target instanceof HTMLInputElement && target.type === 'text') return
      if (target instanceof HTMLTextAreaElement) return
      const { undo, redo } = store.getState()
      const pressed = event.key.toLowerCase()
      if (pressed === 'z' && !event.shiftKey) undo()
      else if (pressed === 'y' || (pressed === 'z' && event.shiftKey)) redo()
      else return
      event.preventDefault()
    }
    element?.addEventListener('keydown', key)
    return () => element?.removeEventListener('keydown', key)
  }, [store, app])
}
