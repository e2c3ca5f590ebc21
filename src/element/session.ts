/**
 * What goes on between one element's store and the world: where its design comes from, where it is kept, what is told to the page.
 * No React, no drawing. Begins when the element is connected and ends when it is gone for good.
 */
import { type Catalog, type Design, demoCatalog, demoDesign, ENGLISH } from '../../rules/index.ts'
import { judge } from '../assessment/start-assessment.ts'
import { Autosave } from '../autosave/autosave.ts'
import { saveDesign } from '../platform/download.ts'
import { whyMissing } from '../platform/why-missing.ts'
import { firstShore } from '../start/first-shore.ts'
import type { Earlier, Host } from '../state/host.ts'
import type { Offered } from '../state/request-body.ts'
import { sameDesign } from '../state/same-design.ts'
import {
  createLeadlineStore,
  isJudged,
  type LeadlineStore,
  type Notice,
  type StoreInit,
  toldOf,
} from '../state/store.ts'
import {
  type Fault,
  faultsOf,
  type Given,
  type GivenCatalog,
  lineOf,
  type Read,
  readCatalog,
  readDesignFile,
  readDesignFrom,
} from './sources.ts'
import type { Spoken } from './spoken.ts'

export interface SessionOptions {
  readonly design: Given<Design> | null
  /** Null: the page gives no catalog; the demo shop's is used, or the one that `store` has. */
  readonly catalog: GivenCatalog | null
  readonly storageKey: string | null
  readonly link: boolean
  /** What somebody sees who has no dock yet: questions about their shore, or the example. */
  readonly start: 'questions' | 'example'
  readonly requestUrl: string | null
  /** Address of docks to begin with; null: none. */
  readonly presets: string | null
  readonly view: StoreInit['view']
  readonly spoken: Spoken
  /** The store of an earlier session: an element that was removed and put back continues where it was. */
  readonly store: LeadlineStore | null
  /** Identifies the element among those of its page. */
  readonly place: string
  /** Sends an event from the element; false where the page prevented its default. */
  tell(type: string, detail: unknown, cancelable?: boolean): boolean
  /** Takes in what is still being typed in a field of the element. */
  settle(): void
}

/** An edit is saved to the database after this pause, ms; to the journal at once. */
const REST = 250
/** How the fragment of a link begins; `link.ts`, loaded later, reads the rest. */
const LINK = '#leadline='
/** What is built in; a page elsewhere has numbers and money of its own. */
const PLAIN_ENGLISH = /^en([-_]US)?$/i
/** Most lines of a notice. */
const MOST_LINES = 5

export class Session implements Host {
  readonly store: LeadlineStore
  readonly keeps: boolean
  readonly links: boolean
  readonly requestUrl: string | null
  readonly picture: Host['picture'] = { current: null }
  readonly presets: string | null
  /** Why `begin` gave up. */
  faults: readonly Fault[] = []
  readonly #options: SessionOptions
  readonly #over = new AbortController()
  readonly #keeping: Autosave
  /** What "start over" goes back to. */
  #first: Design
  /** That is a shore of which nothing is known: it is asked about. */
  readonly #asks: boolean
  #linkModule: typeof import('../autosave/link.ts') | null = null
  /** The fragment that this session last read or wrote. */
  #fragment: string
  /** The one before that. */
  #before: string | null = null
  #timer: ReturnType<typeof setTimeout> | undefined
  #silent = false
  /** The user left the page. It may come back from the back/forward cache. */
  #gone = false
  asked: Host['asked'] = null
  #spoken: Spoken | null = null
  /** A change not yet announced to the page, because its dock is still being assessed. */
  #owed = false
  /** Each problem with saving or links is reported once, not at every edit. */
  readonly #toldOnce = new Set<string>()

  constructor(options: SessionOptions) {
    const { design, storageKey, link, store, view, start } = options
    this.#options = options
    this.keeps = storageKey !== null
    this.links = link
    this.requestUrl = options.requestUrl
    this.presets = options.presets
    this.#fragment = link && location.hash.startsWith(LINK) ? location.hash : ''
    this.#keeping = new Autosave({
      key: storageKey,
      place: options.place,
      fragments: () => [this.#fragment, ...(this.#before === null ? [] : [this.#before])],
      failed: (message, lost) =>
        this.#tellOnce(
          [{ code: 'storage', path: storageKey ?? '', message }],
          lost ? 'file.no-storage' : undefined,
        ),
      heard: (what) => void this.#heard(what === 'saved'),
    })
    const shop = store?.getState().catalog ?? demoCatalog
    this.#asks = design === null && start === 'questions'
    this.#first = design && 'value' in design ? design.value : this.#opening(shop)
    this.store =
      store ??
      createLeadlineStore({
        design: this.#first,
        catalog: shop,
        ...(view ? { view } : {}),
      })
  }

  /**
   * Brings in catalog and design. False where the page's catalog cannot be had (`faults` say why): another's prices would be a lie.
   * @throws (rejects) where a dock cannot be derived at all.
   */
  async begin(): Promise<boolean> {
    const { design, store } = this.#options
    const { signal } = this.#over
    const [shop, base, linked, kept] = await Promise.all([
      this.#options.catalog && readCatalog(this.#options.catalog, signal),
      store === null && design && 'url' in design ? readDesignFrom(design.url, signal) : null,
      store === null ? this.#readLink(location.hash) : null,
      this.#keeping.begin(),
      this.speak(this.#options.spoken),
    ])
    if (signal.aborted) return false
    if (shop && !shop.ok) {
      this.faults = shop.faults
      this.fail(shop.faults)
      return false
    }
    // Another shop has other frames.
    if (shop) this.#first = store === null && this.#asks ? this.#opening(shop.value) : this.#first
    if (shop) this.store.getState().setCatalog(shop.value)
    if (kept && this.keeps) this.store.getState().set({ kept: 'saved' })
    if (store) {
      // Another design is stored there (another key, another tab): it is set aside before it is overwritten.
      if (kept && this.keeps && !sameDesign(kept.design, store.getState().design))
        this.#keeping.putAside(kept.design)
      this.#listen()
      return true
    }
    if (base?.ok) this.#first = base.value
    const faults = base && !base.ok ? base.faults : design && 'faults' in design ? design.faults : []
    if (faults.length > 0) this.fail(faults, 'file.bad')

    // The page's own word goes first, then a link that was followed, then what was kept here, then where the page would begin.
    const given = design && 'value' in design ? design.value : null
    const resumed = kept && (this.keeps || kept.here) ? kept.design : null
    // A page loaded again has the address of a moment ago: what was kept under that very address is newer.
    const followed = kept?.here ? null : (linked?.value ?? null)
    const chosen = given ?? followed ?? resumed ?? linked?.value ?? this.#first
    if (resumed && !sameDesign(resumed, chosen)) this.#keeping.putAside(resumed)
    const { begin, replace } = this.store.getState()
    // A link followed over what was kept here is a step that can be taken back.
    if (resumed && followed && !given) begin(resumed)
    else begin(chosen)
    if (resumed && followed && !given) replace(followed)
    if (this.#asks && chosen === this.#first) this.store.getState().set({ starting: true })
    const mended = [...(base?.ok ? base.notices : []), ...(linked?.notices ?? [])]
    if (mended.length > 0)
      this.store.getState().set({ notice: { key: 'file.mended', details: mended.slice(0, MOST_LINES) } })
    this.#listen()
    if (!this.keeps && !this.links) this.#keeping.forget()
    else if (this.#keeping.owes || followed || (resumed && resumed !== chosen)) this.#keepSoon()
    return true
  }

  /** In which language all is told. What cannot be had of it is said, and the language before stays: at first English. */
  async speak(spoken: Spoken): Promise<void> {
    this.#spoken = spoken
    const { signal } = this.#over
    const { set } = this.store.getState()
    if (spoken.words === null && PLAIN_ENGLISH.test(spoken.lang)) {
      set({ language: ENGLISH })
      return
    }
    try {
      const { languageFor } = await import('./spoken.ts')
      const { language, faults } = await languageFor(spoken, signal)
      // Meanwhile asked for another, or gone.
      if (signal.aborted || this.#spoken !== spoken) return
      set({ language })
      this.fail(faults)
    } catch (error) {
      await this.missing('words', spoken.lang, error)
    }
  }

  /** Takes a design from the page: one step of undo, and no event for what the page itself did. */
  take(design: Design): void {
    this.store.getState().set({ starting: false })
    this.#quietly(() => this.store.getState().replace(design))
    this.#keepSoon()
  }

  /** Takes a catalog from the page. False where it is none. */
  async takeCatalog(given: GivenCatalog): Promise<boolean> {
    const read = await readCatalog(given, this.#over.signal)
    if (read.ok && !this.#over.signal.aborted) this.store.getState().setCatalog(read.value)
    return read.ok
  }

  /** The same from an address. */
  async takeFrom(url: string): Promise<void> {
    const read = await readDesignFrom(url, this.#over.signal)
    if (this.#over.signal.aborted) return
    if (read.ok) this.take(read.value)
    else this.fail(read.faults, 'file.bad')
  }

  fail(faults: readonly Fault[], key?: Notice['key']): void {
    for (const fault of faults) this.#options.tell('leadline-error', fault)
    if (key)
      this.store.getState().set({
        notice: {
          key,
          bad: true,
          details: faults.slice(0, MOST_LINES).map(lineOf),
        },
      })
  }

  end(): void {
    if (this.#owed) this.#tellChange()
    if (this.#timer !== undefined) this.#keepNow()
    this.#over.abort()
    this.#keeping.close()
  }

  async openFile(file: File): Promise<void> {
    const read = await readDesignFile(file)
    if (read.ok) this.#replace(read.value, read.notices)
    else this.fail(read.faults, 'file.bad')
  }

  saveFile(): void {
    saveDesign(this.store.getState().design)
  }

  async copyLink(): Promise<void> {
    const { design, set } = this.store.getState()
    const fragment = await this.#linkOf(design)
    if (fragment === undefined) return
    if (fragment === null) {
      set({ notice: { key: 'file.too-large', bad: true } })
      return
    }
    this.#write(fragment)
    try {
      await navigator.clipboard.writeText(location.href)
      set({ notice: { key: 'file.linked' } })
    } catch {
      // No permission to use the clipboard; the address bar has the link too.
      set({ notice: { key: 'file.link-here' } })
    }
  }

  async linkTo(): Promise<string | null> {
    if (!this.links) return null
    const fragment = await this.#linkOf(this.store.getState().design)
    return fragment ? location.origin + location.pathname + location.search + fragment : null
  }

  earlier(): Promise<readonly Earlier[]> {
    return this.#keeping.earlier()
  }

  async showOther(): Promise<void> {
    const design = await this.#keeping.other()
    if (design && !this.#over.signal.aborted) this.#replace(design)
  }

  reload(): void {
    this.#options.settle()
    this.#keeping.note(this.store.getState().design)
    location.reload()
  }

  bringBack(design: Design): void {
    this.#replace(design)
  }

  startOver(): void {
    this.#replace(this.#first)
    if (this.#asks) this.store.getState().set({ starting: true, notice: null })
  }

  showExample(): void {
    this.#replace(demoDesign, [], 'start.example')
  }

  async openLink(address: string): Promise<boolean> {
    const { readLink } = await this.#link()
    const read = faultsOf(readLink(address.slice(Math.max(0, address.indexOf(LINK))).trim()), 'link')
    if (read.ok) this.#replace(read.value, read.notices)
    return read.ok
  }

  offer(request: Offered): boolean {
    return this.#options.tell('leadline-request', request, true)
  }

  requestFailed(message: string): void {
    this.fail([{ code: 'request', path: this.requestUrl ?? '', message }])
  }

  /** Another design in the place of the one in hand, which is put aside: undo brings it back, and so does the list of earlier ones. */
  #replace(design: Design, notices: readonly string[] = [], key: Notice['key'] = 'file.opened'): void {
    const { design: before, replace, set } = this.store.getState()
    set({ starting: false })
    if (sameDesign(before, design)) return
    // A shore of which nothing was said is nobody's.
    if (!this.#asks || !sameDesign(before, this.#first)) this.#keeping.putAside(before)
    replace(design)
    set({ notice: { key, details: notices.slice(0, MOST_LINES) } })
  }

  #opening(shop: Catalog): Design {
    return this.#asks ? firstShore(this.#options.view?.units ?? 'imperial', shop) : demoDesign
  }

  #quietly(act: () => void): void {
    this.#silent = true
    try {
      act()
    } finally {
      this.#silent = false
    }
  }

  #listen(): void {
    const { signal } = this.#over
    const stop = this.store.subscribe((now, before) => {
      if (now.design !== before.design || now.dragging !== before.dragging) {
        this.#owed = !now.dragging && !this.#silent
        if (now.dragging && !this.#silent)
          this.#options.tell('leadline-input', { design: now.design, dock: toldOf(now) })
        if (!now.dragging) this.#keepSoon()
      }
      if (this.#owed && (isJudged(now) || now.status === 'unavailable')) this.#tellChange()
    })
    signal.addEventListener('abort', stop)
    signal.addEventListener('abort', judge(this.store))
    // What was followed, whatever has been written into the address since.
    addEventListener('hashchange', ({ newURL }) => this.#followed(new URL(newURL).hash), { signal })
    const leave = (): void => {
      if (this.#owed) this.#tellChange()
      if (this.#timer !== undefined || this.store.getState().dragging) this.#keepNow()
    }
    addEventListener(
      'pagehide',
      () => {
        this.#gone = true
        this.#options.settle()
        leave()
      },
      { signal },
    )
    // A phone may kill a hidden page without any further event.
    document.addEventListener('visibilitychange', () => document.hidden && leave(), { signal })
    // Brought back from the browser's memory: another tab may have gone on meanwhile, and was not heard.
    addEventListener(
      'pageshow',
      ({ persisted }) => {
        if (!persisted) return
        this.#gone = false
        if (this.links) this.#keepSoon()
        void this.#heard(true)
      },
      { signal },
    )
  }

  /**
   * Of several changes that follow each other before the first is judged only the last is told: its Dock is whole, with all that is found.
   * Where the page goes meanwhile it is told all the same, and the Dock says that it is pending.
   */
  #tellChange(): void {
    this.#owed = false
    const now = this.store.getState()
    this.#options.tell('leadline-change', { design: now.design, dock: toldOf(now) })
  }

  /** Another element has this dock too, here or in another tab; `saved`: it has written, which is told if it is another design. */
  async #heard(saved: boolean): Promise<void> {
    if (saved && !(await this.#keeping.changedElsewhere())) return
    if (this.#over.signal.aborted) return
    const { notice, set } = this.store.getState()
    if (saved) set({ notice: { key: 'keep.elsewhere', offer: 'other' } })
    else if (notice?.key !== 'keep.elsewhere') set({ notice: { key: 'keep.also-open' } })
  }

  #tellOnce(faults: readonly Fault[], key?: Notice['key']): void {
    const what = `${faults[0]?.code} ${key}`
    if (this.#toldOnce.has(what)) return
    this.#toldOnce.add(what)
    this.fail(faults, key)
  }

  async #link(): Promise<typeof import('../autosave/link.ts')> {
    this.#linkModule ??= await import('../autosave/link.ts')
    return this.#linkModule
  }

  /** Null: the design is too large for a link; undefined: the code for links did not load, which is reported. */
  async #linkOf(design: Design): Promise<string | null | undefined> {
    try {
      const { linkOf } = await this.#link()
      return linkOf(design)
    } catch (error) {
      await this.missing('link', 'link', error)
      return undefined
    }
  }

  /** Reports that a chunk did not load: the site was deployed anew, or there is no connection. */
  async missing(code: Fault['code'], path: string, error: unknown): Promise<void> {
    const why = await whyMissing()
    if (this.#over.signal.aborted) return
    this.#tellOnce([{ code, path, message: String(error) }])
    this.store.getState().set({
      notice:
        why === 'gone'
          ? { key: 'part.gone', bad: true, offer: 'reload' }
          : { key: 'part.offline', bad: true },
    })
  }

  async #readLink(fragment: string): Promise<Extract<Read<Design>, { ok: true }> | null> {
    // Told apart without the code that reads it: most addresses have another fragment, or none.
    if (!this.links || !fragment.startsWith(LINK)) return null
    this.#fragment = fragment
    try {
      const { readLink } = await this.#link()
      const read = faultsOf(readLink(fragment), 'link')
      if (read.ok) return read
      this.fail(read.faults, 'file.bad-link')
    } catch (error) {
      await this.missing('link', fragment, error)
    }
    return null
  }

  /** Handles a link that is followed while the page is open. */
  async #followed(fragment: string): Promise<void> {
    if (!this.links || fragment === this.#fragment) return
    const read = await this.#readLink(fragment)
    if (read && !this.#over.signal.aborted) this.#replace(read.value, read.notices)
  }

  #keepSoon(): void {
    if (!this.keeps && !this.links) return
    const { design, set } = this.store.getState()
    const noted = this.#keeping.note(design)
    if (this.keeps) set({ kept: noted ? 'saved' : 'saving' })
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.#keepNow(), REST)
  }

  #keepNow(): void {
    clearTimeout(this.#timer)
    this.#timer = undefined
    const { design, set } = this.store.getState()
    if (this.keeps)
      this.#keeping.save(design).then(
        () => this.#timer === undefined && set({ kept: 'saved' }),
        (error) => {
          set({ kept: 'no' })
          this.#tellOnce(
            [{ code: 'storage', path: this.#options.storageKey ?? '', message: String(error) }],
            'file.no-storage',
          )
        },
      )
    else this.#keeping.note(design)
    if (this.links) void this.#keepInLink(design)
  }

  async #keepInLink(design: Design): Promise<void> {
    const fragment = await this.#linkOf(design)
    // A page that is gone is loaded again with the address that it had.
    if (fragment === undefined || this.#gone || this.#over.signal.aborted) return
    this.#writeLink(fragment)
    // Not forgotten with that: a reload that has begun already goes by the address of before.
    if (this.store.getState().design === design) this.#keeping.addressed(design)
  }

  /** A design too large for a link leaves none behind: an older one would come back in its place. Told once. */
  #writeLink(fragment: string | null): void {
    if (fragment === null && this.#fragment !== '')
      this.store.getState().set({ notice: { key: 'file.too-large', bad: true } })
    this.#write(fragment ?? '')
  }

  #write(fragment: string): void {
    if (fragment === this.#fragment) return
    this.#before = this.#fragment
    this.#fragment = fragment
    // Not the fragment alone: that would be read against the page's <base>. A browser may refuse one of many in a short time.
    try {
      history.replaceState(history.state, '', location.pathname + location.search + fragment)
    } catch {
      this.#fragment = location.hash
    }
  }
}
