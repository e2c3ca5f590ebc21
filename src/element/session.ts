/**
 * What goes on between one element's store and the world: where its design comes from, where it is kept, what is told to the page.
 * No React, no drawing. Begins when the element is connected and ends when it is gone for good.
 */
import { type Catalog, type Design, demoDesign, parseDesignText } from '../../rules/index.ts'
import { plainName } from '../state/file-name.ts'
import { download } from '../state/hand-over.ts'
import type { Contact, Host } from '../state/host.ts'
import { judge } from '../state/judging.ts'
import type { Earlier, Keeper } from '../state/keep.ts'
import {
  createLeadlineStore,
  isJudged,
  type LeadlineStore,
  type Notice,
  placedNow,
  type StoreInit,
  sameDesign,
  toldOf,
} from '../state/store.ts'
import { type Fault, faultsOf, readCatalogFrom, readDesignFrom } from './sources.ts'

export interface SessionOptions {
  readonly catalogUrl: string | null
  readonly designUrl: string | null
  readonly storageKey: string | null
  readonly link: boolean
  readonly requestUrl: string | null
  readonly design: Design | null
  readonly catalog: Catalog | null
  readonly view: StoreInit['view']
  /** Of a session that ended when the element was taken out: put back, it goes on where it was. */
  readonly store: LeadlineStore | null
  /** Sends an event from the element; false where the page prevented its default. */
  tell(type: string, detail: unknown, cancelable?: boolean): boolean
}

/** A change is kept when the hand has rested this long, ms. */
const REST = 250

export class Session implements Host {
  readonly store: LeadlineStore
  readonly keeps: boolean
  readonly links: boolean
  readonly #options: SessionOptions
  readonly #over = new AbortController()
  /** What "start over" goes back to. */
  #first: Design
  #keeper: Keeper | null = null
  #linkModule: typeof import('../state/link.ts') | null = null
  /** The fragment that this session last read or wrote. */
  #fragment = ''
  #timer: ReturnType<typeof setTimeout> | undefined
  #putAside: Design | undefined
  #silent = false
  /** A change that the page was not yet told of: its dock is still being judged. */
  #owed = false

  constructor(options: SessionOptions) {
    this.#options = options
    this.keeps = options.storageKey !== null
    this.links = options.link
    this.#first = options.design ?? demoDesign
    this.store =
      options.store ??
      createLeadlineStore({
        design: this.#first,
        ...(options.catalog ? { catalog: options.catalog } : {}),
        ...(options.view ? { view: options.view } : {}),
      })
  }

  /** Brings in catalog and design. False where the page's catalog cannot be had: another's prices would be a lie. */
  async begin(): Promise<boolean> {
    const { catalogUrl, designUrl, catalog, design, store } = this.#options
    const { signal } = this.#over
    if (store) {
      const stored = await this.#openKeeper()
      if (signal.aborted) return false
      // Something else is kept there (another key, another tab): it is put aside before it is written over.
      if (stored && !sameDesign(stored, store.getState().design)) this.#putAside = stored
      this.#listen()
      return true
    }
    const [shop, base, linked, stored] = await Promise.all([
      catalog === null && catalogUrl !== null ? readCatalogFrom(catalogUrl, signal) : null,
      design === null && designUrl !== null ? readDesignFrom(designUrl, signal) : null,
      this.#readLink(location.hash),
      this.#openKeeper(),
    ])
    if (signal.aborted) return false
    if (shop && !shop.ok) {
      this.fail(shop.faults)
      return false
    }
    if (shop?.ok) this.store.getState().setCatalog(shop.value)
    if (base?.ok) this.#first = base.value
    else if (base) this.fail(base.faults, 'file.bad')

    // The page's own word goes first, then a link that was followed, then what was kept here, then where the page would begin.
    const chosen = design ?? linked ?? stored ?? this.#first
    if (stored && !sameDesign(stored, chosen)) this.#putAside = stored
    const { begin, replace } = this.store.getState()
    // A link followed over what was kept here is a step that can be taken back.
    if (stored && linked && !design) begin(stored)
    else begin(chosen)
    if (stored && linked && !design) replace(linked)
    this.#listen()
    if (this.#putAside || linked) this.#keepSoon()
    return true
  }

  /** Takes a design from the page: one step of undo, and no event for what the page itself did. */
  take(design: Design): void {
    this.#quietly(() => this.store.getState().replace(design))
    this.#keepSoon()
  }

  fail(faults: readonly Fault[], key?: Notice['key']): void {
    for (const fault of faults) this.#options.tell('leadline-error', fault)
    if (key)
      this.store.getState().set({
        notice: {
          key,
          bad: true,
          details: faults.slice(0, 5).map(({ path, message }) => (path ? `${path}: ${message}` : message)),
        },
      })
  }

  end(): void {
    if (this.#owed) this.#tellChange()
    if (this.#timer !== undefined) this.#keepNow()
    this.#over.abort()
    // The last write is let through before the base is closed.
    const keeper = this.#keeper
    this.#keeper = null
    keeper?.close()
  }

  async openFile(file: File): Promise<void> {
    const read = faultsOf(parseDesignText(await file.text()), 'file')
    if (read.ok) this.#replace(read.value)
    else this.fail(read.faults, 'file.bad')
  }

  saveFile(): void {
    const { design } = this.store.getState()
    const text = `${JSON.stringify(design, null, 2)}\n`
    download(text, 'application/json', `${plainName(design.name)}.leadline.json`)
  }

  async copyLink(): Promise<void> {
    const { linkOf } = await this.#link()
    const { design, set } = this.store.getState()
    const fragment = linkOf(design)
    if (fragment === null) {
      set({ notice: { key: 'file.too-large', bad: true } })
      return
    }
    this.#write(fragment)
    try {
      await navigator.clipboard.writeText(location.href)
      set({ notice: { key: 'file.linked' } })
    } catch {
      // No leave to use the clipboard: the address bar has it too.
      set({ notice: { key: 'file.link-here' } })
    }
  }

  earlier(): Promise<readonly Earlier[]> {
    return this.#keeper?.earlier() ?? Promise.resolve([])
  }

  bringBack(design: Design): void {
    this.#replace(design)
  }

  startOver(): void {
    this.#replace(this.#first)
  }

  async request(contact: Contact): Promise<'sent' | 'handed'> {
    const { design } = this.store.getState()
    const { fingerprint, totals } = placedNow(this.store.getState())
    const detail = { design, fingerprint, totals, contact }
    const { requestUrl } = this.#options
    if (!this.#options.tell('leadline-request', detail, true) || requestUrl === null) return 'handed'
    try {
      const response = await fetch(requestUrl, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(detail),
      })
      if (!response.ok) throw new Error(`${response.status} ${response.statusText}`.trim())
      return 'sent'
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error)
      this.#options.tell('leadline-error', { code: 'request', path: requestUrl, message })
      throw error
    }
  }

  /** Another design in the place of the one in hand, which is put aside: undo brings it back, and so does the list of earlier ones. */
  #replace(design: Design): void {
    const { design: before, replace, set } = this.store.getState()
    if (sameDesign(before, design)) return
    this.#putAside = before
    replace(design)
    set({ notice: { key: 'file.opened' } })
  }

  #quietly(act: () => void): void {
    this.#silent = true
    act()
    this.#silent = false
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
    addEventListener(
      'pagehide',
      () => {
        if (this.#owed) this.#tellChange()
        if (this.#timer !== undefined) this.#keepNow()
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

  async #openKeeper(): Promise<Design | null> {
    const { storageKey } = this.#options
    if (storageKey === null) return null
    try {
      const { openKeeper } = await import('../state/keep.ts')
      const keeper = await openKeeper(storageKey)
      if (this.#over.signal.aborted) {
        keeper.close()
        return null
      }
      this.#keeper = keeper
      const kept = await keeper.load()
      if (kept) this.store.getState().set({ kept: 'saved' })
      return kept?.design ?? null
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error)
      this.fail([{ code: 'storage', path: storageKey, message }], 'file.no-storage')
      return null
    }
  }

  async #link(): Promise<typeof import('../state/link.ts')> {
    this.#linkModule ??= await import('../state/link.ts')
    return this.#linkModule
  }

  async #readLink(fragment: string): Promise<Design | null> {
    if (!this.links || fragment.length < 2) return null
    const { isLink, readLink } = await this.#link()
    if (!isLink(fragment)) return null
    this.#fragment = fragment
    const read = faultsOf(readLink(fragment), 'link')
    if (read.ok) return read.value
    this.fail(read.faults, 'file.bad-link')
    return null
  }

  /** A link followed while the page is open. */
  async #followed(fragment: string): Promise<void> {
    if (!this.links || fragment === this.#fragment) return
    const design = await this.#readLink(fragment)
    if (design && !this.#over.signal.aborted) this.#replace(design)
  }

  #keepSoon(): void {
    if (!this.keeps && !this.links) return
    if (this.#keeper) this.store.getState().set({ kept: 'saving' })
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.#keepNow(), REST)
  }

  #keepNow(): void {
    clearTimeout(this.#timer)
    this.#timer = undefined
    const { design, set } = this.store.getState()
    const aside = this.#putAside
    this.#putAside = undefined
    this.#keeper?.save(design, aside).then(
      () => this.#timer === undefined && set({ kept: 'saved' }),
      (error) => {
        set({ kept: 'no' })
        this.fail(
          [{ code: 'storage', path: this.#options.storageKey ?? '', message: String(error) }],
          'file.no-storage',
        )
      },
    )
    if (this.links)
      this.#link().then(({ linkOf }) => this.#over.signal.aborted || this.#writeLink(linkOf(design)))
  }

  /** A design too large for a link leaves none behind: an older one would come back in its place. Told once. */
  #writeLink(fragment: string | null): void {
    if (fragment === null && this.#fragment !== '')
      this.store.getState().set({ notice: { key: 'file.too-large', bad: true } })
    this.#write(fragment ?? '')
  }

  #write(fragment: string): void {
    if (fragment === this.#fragment) return
    this.#fragment = fragment
    // Not the fragment alone: that would be read against the page's <base>.
    history.replaceState(history.state, '', location.pathname + location.search + fragment)
  }
}
