/**
 * `<leadline-catalog-editor>`: a shop's catalog made without its file being touched. The dock element that stands in its slot `dock` shows
 * what comes of it. Attributes, properties and events as `public/guide/catalog-editor.md` lists them. Safe to import where there is no document.
 */
import { createRoot, type Root } from 'react-dom/client'
import {
  type Catalog,
  type Design,
  demoCatalog,
  ENGLISH,
  type Issue,
  type Language,
  languageOf,
  type Reader,
} from '../../rules/index.ts'
import base from '../element/base.css?inline'
import notice from '../element/notice.css?inline'
import { messageOf } from '../platform/error-message.ts'
import css from './catalog-editor.css?inline'
import { type Keep, openKeep } from './keep.ts'
import { App } from './screen/app.tsx'
import type { Told } from './screen/context.ts'
import { openText } from './screen/head.tsx'
import { editorLanguage } from './spoken.ts'
import { createEditor, type EditorStore } from './store.ts'

const ATTRIBUTES = ['units', 'lang', 'words', 'theme'] as const
/** The dock follows after this pause, ms: one catalog is read for several edits in a row. */
const REST = 150
/** A move takes an element out and puts it in again within one task, ms. */
const PATIENCE = 60

export interface CatalogEvent {
  /** The last one that was right. */
  readonly catalog: Catalog
  /** What is wrong with what is in hand now; none: it is that catalog. */
  readonly issues: readonly Issue[]
}

/** What of the dock's element is used: its properties. */
type Shown = HTMLElement & { catalog?: unknown; design?: unknown }

const Base = typeof HTMLElement === 'undefined' ? (class {} as unknown as typeof HTMLElement) : HTMLElement

/**
 * Makes and changes a shop's catalog.
 *
 * @tagname leadline-catalog-editor
 * @attribute {string} catalog - Address of the catalog to begin with; else the demo shop's
 * @attribute {string} storage-key - What is in hand is kept on the device under this name
 * @attribute {"imperial" | "metric"} units - Units in which figures are typed and told
 * @attribute {string} lang - Language; where absent that of the page around it
 * @attribute {string} words - Address of a language file, in place of what is shipped
 * @attribute {"auto" | "light" | "dark"} theme - Light or dark
 * @slot dock - The `<leadline-dock>` that shows what comes of the catalog
 * @fires {CustomEvent<CatalogEvent>} leadline-catalog - The catalog in hand is another
 */
export class LeadlineCatalogEditor extends Base {
  static readonly observedAttributes = ATTRIBUTES

  #root: Root | null = null
  #box: HTMLElement | null = null
  #store: EditorStore | null = null
  #keep: Keep | null = null
  #over = new AbortController()
  #farewell: ReturnType<typeof setTimeout> | undefined
  #timer: ReturnType<typeof setTimeout> | undefined
  #begun: Told | null = null
  #language: Language = ENGLISH
  /** How often a language was asked for: the last one counts. */
  #asked = 0

  /** The last one that was right; null before there is any. */
  get catalog(): Catalog | null {
    return this.#store?.getState().good ?? null
  }

  /** What is wrong with what is in hand. */
  get issues(): readonly Issue[] {
    return this.#store?.getState().issues ?? []
  }

  connectedCallback(): void {
    clearTimeout(this.#farewell)
    if (this.#root) return
    void this.#begin()
  }

  disconnectedCallback(): void {
    clearTimeout(this.#farewell)
    this.#farewell = setTimeout(() => this.isConnected || this.#end(), PATIENCE)
  }

  attributeChangedCallback(name: string): void {
    if (name === 'lang' || name === 'words') {
      const lang = this.getAttribute('lang')
      // It looked for the language around it when it began.
      if (lang !== null && this.#root) this.#dock()?.setAttribute('lang', lang)
      void this.#speak()
    }
    this.#draw()
  }

  /** Words come a little later; what does not come is told in English, with the language's numbers. */
  async #speak(): Promise<void> {
    const lang = this.#lang()
    this.#language = languageOf(lang)
    const asked = ++this.#asked
    if (!this.#root) return
    try {
      const language = await editorLanguage(lang, this.getAttribute('words'), this.#over.signal)
      // Meanwhile asked for another, or gone.
      if (asked !== this.#asked || this.#over.signal.aborted) return
      this.#language = language
      this.#draw()
    } catch (error) {
      if (asked === this.#asked && !this.#over.signal.aborted)
        this.#say({ key: 'file.no-words', values: { lang, detail: messageOf(error) }, bad: true })
    }
  }

  #lang(): string {
    return this.getAttribute('lang') || this.closest('[lang]')?.getAttribute('lang') || 'en'
  }

  async #begin(): Promise<void> {
    this.#over = new AbortController()
    const { signal } = this.#over
    const root = this.shadowRoot ?? this.attachShadow({ mode: 'open' })
    const sheet = new CSSStyleSheet()
    sheet.replaceSync([base, notice, css].join('\n'))
    root.adoptedStyleSheets = [sheet]
    this.#box = document.createElement('div')
    this.#box.className = 'root'
    root.append(this.#box)
    this.#root = createRoot(this.#box)
    this.#keep = openKeep(this.getAttribute('storage-key'))
    const kept = this.#keep.load()
    const given = kept ? null : await this.#given(signal)
    if (signal.aborted) return
    this.#store = createEditor(demoCatalog, kept ?? given)
    this.#listen(this.#store, this.#keep, signal)
    void this.#speak()
    this.#draw()
    this.#show()
  }

  /** From the address that the page names. */
  async #given(signal: AbortSignal) {
    const address = this.getAttribute('catalog')
    if (address === null) return null
    try {
      const answer = await fetch(address, { signal })
      if (!answer.ok) throw new Error(`${answer.status} ${answer.statusText}`.trim())
      const { draft, told } = openText(await answer.text(), address)
      if (told.bad) this.#begun = told
      return draft && { draft, saved: draft, guessed: [] }
    } catch (error) {
      this.#begun = { key: 'file.not-had', values: { file: address, detail: messageOf(error) }, bad: true }
      return null
    }
  }

  #listen(store: EditorStore, keep: Keep, signal: AbortSignal): void {
    const stop = store.subscribe((now, before) => {
      if (now.draft === before.draft && now.saved === before.saved && now.guessed === before.guessed) return
      if (this.hasAttribute('storage-key') && !keep.save(now)) this.#say({ key: 'file.not-kept', bad: true })
      if (now.draft === before.draft) return
      clearTimeout(this.#timer)
      this.#timer = setTimeout(() => this.#show(), REST)
    })
    signal.addEventListener('abort', stop)
    addEventListener(
      'storage',
      ({ key }) => {
        if (key !== null && key === keep.name) this.#say({ key: 'file.elsewhere', bad: true })
      },
      { signal },
    )
    // What is being typed is taken in: a browser fires no blur when the user leaves the page.
    const settle = (): void => {
      const typing = this.shadowRoot?.activeElement
      if (typing instanceof HTMLElement) typing.blur()
    }
    addEventListener('pagehide', settle, { signal })
    document.addEventListener('visibilitychange', () => document.hidden && settle(), { signal })
  }

  /** Told once in a row. */
  #say(told: Told): void {
    if (this.#begun?.key === told.key) return
    this.#begun = told
    this.#draw()
  }

  /** What is in hand, on the dock beside it and to the page. */
  #show(): void {
    const state = this.#store?.getState()
    if (!state) return
    const { good, issues } = state
    const dock = this.#dock()
    if (dock && issues.length === 0) {
      dock.catalog = good
      const design = dock.design
      if (isDesign(design)) {
        const fitted = fitting(design, good)
        if (fitted !== design) dock.design = fitted
      }
    }
    this.dispatchEvent(
      new CustomEvent<CatalogEvent>('leadline-catalog', {
        detail: { catalog: good, issues },
        bubbles: true,
        composed: true,
      }),
    )
  }

  #dock(): Shown | null {
    return (
      [...this.children].find(
        (child): child is Shown => child instanceof HTMLElement && child.slot === 'dock',
      ) ?? null
    )
  }

  #reader(): Reader {
    return {
      units: this.getAttribute('units') === 'metric' ? 'metric' : 'imperial',
      language: this.#language,
    }
  }

  #draw(): void {
    if (!this.#root || !this.#store || !this.#keep) return
    const theme = this.getAttribute('theme')
    this.#root.render(
      <App
        store={this.#store}
        demo={demoCatalog}
        keep={this.#keep}
        reader={this.#reader()}
        theme={theme === 'light' || theme === 'dark' ? theme : 'auto'}
        begun={this.#begun}
        setUnits={(units) => {
          this.setAttribute('units', units)
          this.#dock()?.setAttribute('units', units)
        }}
      />,
    )
  }

  #end(): void {
    clearTimeout(this.#timer)
    this.#over.abort()
    this.#root?.unmount()
    this.#box?.remove()
    this.#root = null
    this.#box = null
    this.#store = null
    this.#keep = null
  }
}

const isDesign = (value: unknown): value is Design =>
  typeof value === 'object' && value !== null && 'dock' in value && typeof value.dock === 'object'

/** Another shop has other frames and extras: those that it has not would be all that the dock tells. */
function fitting(design: Design, { frames, extras, deckings = [] }: Catalog): Design {
  const { dock } = design
  const [first] = frames.filter(({ turn }) => turn === undefined)
  const known = new Set(extras.map(({ code }) => code))
  const others = Object.entries(dock.extras).filter(([code]) => known.has(code))
  const frame = frames.some(({ code }) => code === dock.frame) ? dock.frame : (first?.code ?? dock.frame)
  const isFinished = dock.finish === undefined || deckings.some(({ code }) => code === dock.finish)
  if (frame === dock.frame && isFinished && others.length === Object.keys(dock.extras).length) return design
  const { finish: _, ...rest } = dock
  return {
    ...design,
    dock: { ...(isFinished ? dock : rest), frame, extras: Object.fromEntries(others) },
  }
}

export function defineLeadlineCatalogEditor(): void {
  if (typeof customElements !== 'undefined' && !customElements.get('leadline-catalog-editor'))
    customElements.define('leadline-catalog-editor', LeadlineCatalogEditor)
}
