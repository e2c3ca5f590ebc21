/** The whole editor: its head, its sections, one of them at a time, and beside it the place for a dock. */
import { type RefObject, useDeferredValue, useEffect, useId, useMemo, useRef, useState } from 'react'
import { type Catalog, type Reader, spokenIn } from '../../../rules/index.ts'
import { type JsonObject, keysOf, type Path, valueAt } from '../draft.ts'
import { CATALOG_FORM, pathsOf, SECTION_NAMES, type SectionName, sectionOf } from '../form/catalog-form.ts'
import { nodeAt } from '../form/node.ts'
import type { Keep } from '../keep.ts'
import { isWaiting } from '../price-list/waiting.ts'
import { changedIn, remarksOn } from '../remarks.ts'
import { searchIn } from '../search.ts'
import type { EditorStore } from '../store.ts'
import { ChangesPanel } from './changes.tsx'
import {
  type Editor,
  EditorContext,
  type Panel,
  type Told,
  useCatalog,
  useEditor,
  useWords,
} from './context.ts'
import { Faulty } from './faulty.tsx'
import { Form } from './form.tsx'
import { Head } from './head.tsx'
import { Looks } from './looks.tsx'
import { PriceListPanel } from './price-list.tsx'
import { SavePanel } from './save.tsx'
import { toHeading } from './to-heading.ts'

interface Props {
  readonly store: EditorStore
  readonly demo: Catalog
  readonly keep: Keep
  readonly reader: Reader
  readonly theme: string
  readonly begun: Told | null
  setUnits(units: Reader['units']): void
}

export function App({ store, demo, keep, reader, theme, begun, setUnits }: Props) {
  const [section, show] = useState<SectionName>('shop')
  const [panel, open] = useState<Panel>('form')
  const [aim, setAim] = useState<Editor['aim']>(null)
  const [told, tell] = useState<Told | null>(begun)
  const [side, setSide] = useState<'catalog' | 'dock'>('catalog')
  const [list, setList] = useState(() => keep.waiting.load())
  const box = useRef<HTMLDivElement>(null)
  const { middle, heading } = useMiddle(section, panel, aim)
  useEffect(() => {
    if (begun) tell(begun)
  }, [begun])
  const editor = useMemo<Editor>(
    () => ({
      ...{ store, demo: demo as unknown as JsonObject, reader, section, panel, aim, told, heading, tell },
      ...{ list, isKept: keep.name !== null },
      putList(to) {
        if (!keep.waiting.save(to)) tell({ key: 'file.not-kept', bad: true })
        setList(to)
      },
      aside: () => keep.aside(),
      show(to) {
        tell(null)
        show(to)
        open('form')
        setAim(null)
      },
      open,
      go(path) {
        const to = sectionOf(path)
        if (to) show(to)
        open('form')
        setSide('catalog')
        setAim({ path })
      },
      replace(draft, said) {
        keep.putAside(store.getState().draft)
        store.getState().open(draft)
        open('form')
        tell(said)
      },
    }),
    [store, demo, reader, section, panel, aim, told, keep, heading, list],
  )
  useUndoKeys(box, store)
  return (
    <EditorContext value={editor}>
      <div
        className="app editor"
        ref={box}
        lang={spokenIn(reader.language)}
        data-theme={theme}
        data-side={side}
        data-panel={panel}
      >
        <Head setUnits={setUnits} side={side} setSide={setSide} />
        <div className="columns">
          <div className="catalog">
            <Sections />
            <div className="middle" ref={middle}>
              {panel === 'form' ? (
                <Middle />
              ) : panel === 'price-list' ? (
                <PriceListPanel />
              ) : panel === 'changes' ? (
                <ChangesPanel />
              ) : (
                <SavePanel />
              )}
            </div>
          </div>
          <div className="beside">
            <slot name="dock" />
          </div>
        </div>
      </div>
    </EditorContext>
  )
}

/** What is shown begins at its beginning, for the eye and the keyboard. */
function useMiddle(section: SectionName, panel: Panel, aim: Editor['aim']) {
  const middle = useRef<HTMLDivElement>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  // Another section begins at its beginning.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever another is shown.
  useEffect(() => {
    const at = middle.current
    if (at && !aim && at.getBoundingClientRect().top < 0) at.scrollIntoView()
  }, [section, panel])
  // What had the keyboard may be gone with what was shown: it goes on at the heading.
  const first = useRef(true)
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever another is shown.
  useEffect(() => {
    if (!first.current && !aim) toHeading(heading.current)
    first.current = false
  }, [section, panel])
  return { middle, heading }
}

function Middle() {
  const [query, setQuery] = useState('')
  const id = useId()
  const { t } = useWords()
  const asked = useDeferredValue(query)
  return (
    <>
      <div className="cell search">
        <label htmlFor={id} className="unseen">
          {t('search')}
        </label>
        <input
          id={id}
          type="text"
          inputMode="search"
          placeholder={t('search')}
          value={query}
          onChange={(event) => setQuery(event.currentTarget.value)}
          onKeyDown={(event) => event.key === 'Escape' && setQuery('')}
        />
      </div>
      {asked.trim() === '' ? <Section /> : <Results query={asked} done={() => setQuery('')} />}
    </>
  )
}

/** More are counted. */
const SHOWN = 40

function Results({ query, done }: { readonly query: string; readonly done: () => void }) {
  const { go } = useEditor()
  const draft = useCatalog((s) => s.draft)
  const { t, label } = useWords()
  const found = useMemo(() => searchIn(draft, query, label), [draft, query, label])
  return (
    <section className="results" aria-live="polite">
      <p className="hint">
        {found.length === 0 ? t('search.none', { query }) : t('search.found', { count: found.length })}
      </p>
      {found.slice(0, SHOWN).map(({ path, section, of, label }) => (
        <button
          key={path.join('/')}
          type="button"
          onClick={() => {
            done()
            go(path)
          }}
        >
          {[t(`section.${section}`), of, label].filter((one) => one !== '').join(' › ')}
        </button>
      ))}
      {found.length > SHOWN && <p className="hint">{t('search.more', { count: found.length - SHOWN })}</p>}
    </section>
  )
}

function Sections() {
  const { section, panel, show, demo } = useEditor()
  const draft = useCatalog((s) => s.draft)
  const issues = useCatalog((s) => s.issues)
  const { t } = useWords()
  const id = useId()
  const changed = useMemo(() => changedIn(demo, draft), [demo, draft])
  const wrong = (of: SectionName): number =>
    issues.filter(({ path }) => sectionOf(keysOf(path)) === of).length
  const state = (of: SectionName): string =>
    wrong(of) > 0
      ? t('section.has', { count: wrong(of) })
      : changed.has(of)
        ? t('section.changed', { count: changed.get(of)! })
        : ''
  return (
    <nav aria-label={t('sections')}>
      <div className="narrow">
        <label htmlFor={id} className="unseen">
          {t('sections')}
        </label>
        <select
          id={id}
          value={section}
          onChange={(event) =>
            show(SECTION_NAMES.find((one) => one === event.currentTarget.value) ?? section)
          }
        >
          {SECTION_NAMES.map((one) => (
            <option key={one} value={one}>
              {[t(`section.${one}`), state(one)].filter((text) => text !== '').join(' · ')}
            </option>
          ))}
        </select>
      </div>
      <ul className="wide">
        {SECTION_NAMES.map((one) => (
          <li key={one}>
            <button
              type="button"
              aria-current={one === section && panel === 'form' ? 'true' : undefined}
              onClick={() => show(one)}
            >
              <span>{t(`section.${one}`)}</span>
              <small className={wrong(one) > 0 ? 'fault' : ''}>{state(one)}</small>
            </button>
          </li>
        ))}
      </ul>
    </nav>
  )
}

function Section() {
  const { section, open, heading, list } = useEditor()
  const draft = useCatalog((s) => s.draft)
  const good = useCatalog((s) => s.good)
  const right = useCatalog((s) => s.issues.length === 0)
  const { demo } = useEditor()
  const { t } = useWords()
  const remarks = useMemo(
    () => (right ? remarksOn(good, demo as unknown as Catalog) : []),
    [right, good, demo],
  )
  const paths: readonly Path[] = pathsOf(section)
  return (
    <section className="section-form" aria-labelledby="section-title">
      <h2 id="section-title" tabIndex={-1} ref={heading}>
        {t(`section.${section}`)}
      </h2>
      <Faulty />
      {isWaiting(list) ? (
        <p className="hint">
          {t('list.waits')}{' '}
          <button type="button" className="quiet" onClick={() => open('price-list')}>
            {t('list.go-on')}
          </button>
        </p>
      ) : section === 'shop' && draft.frames === demo.frames ? (
        <div className="begin">
          <p>{t('begin')}</p>
          <button type="button" className="main" onClick={() => open('price-list')}>
            {t('list.title')}
          </button>
        </div>
      ) : null}
      <Looks remarks={remarks.filter((one) => one.section === section)} all={remarks} />
      <div className="cells-of-section">
        {paths.map((path) => {
          const node = nodeAt(CATALOG_FORM, path, draft)
          if (!node) return null
          return (
            <Form
              key={path.join('/')}
              node={node}
              path={path}
              value={valueAt(draft, path)}
              open={paths.length === 1}
            />
          )
        })}
      </div>
    </section>
  )
}

/** Undo and redo by the keys that everybody knows, while nothing is being typed. */
function useUndoKeys(box: RefObject<HTMLElement | null>, store: EditorStore): void {
  useEffect(() => {
    const element = box.current
    const key = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const target = event.composedPath()[0]
      if (
        target instanceof HTMLTextAreaElement ||
        (target instanceof HTMLInputElement && target.type === 'text' && target.dataset.settled === undefined)
      )
        return
      const pressed = event.key.toLowerCase()
      if (pressed === 'z' && !event.shiftKey) store.getState().undo()
      else if (pressed === 'y' || (pressed === 'z' && event.shiftKey)) store.getState().redo()
      else return
      event.preventDefault()
    }
    element?.addEventListener('keydown', key)
    return () => element?.removeEventListener('keydown', key)
  }, [box, store])
}
