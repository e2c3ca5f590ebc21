/**
 * `<leadline-dock>`: attributes, properties and events as `public/guide/embed.md` lists them; the screen in a shadow root. Safe to import where
 * there is no document. React and all the rest live from `connectedCallback` on, and outlive a move within the page.
 */
import {
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  deriveKit,
  publishKit,
} from '../../rules/index.ts'
import { saveDesign } from '../platform/download.ts'
import { messageOf } from '../platform/error-message.ts'
import { firstShore } from '../start/first-shore.ts'
import { keptUnits } from '../state/kept-units.ts'
import { type LeadlineStore, toldOf, type ViewState } from '../state/store.ts'
import type { Mode } from './app.tsx'
import type { ExportWanted } from './page-types.ts'
import { type Screen, showScreen } from './screen.tsx'
import { Session } from './session.ts'
import { type Fault, type Given, type GivenCatalog, givenCatalog, givenDesign } from './sources.ts'
import type { Spoken } from './spoken.ts'
import { adoptStyles } from './styles.ts'

/** A move takes an element out and puts it in again within one task: what is still out after this is gone, ms. */
const PATIENCE = 60

/** How far from the window it begins: as far again as the window is high. */
const NEAR = '100%'

const ATTRIBUTES = [
  'catalog',
  'design',
  'units',
  'lang',
  'words',
  'theme',
  'mode',
  'storage-key',
  'link',
  'request-url',
  'audience',
  'start',
  'hide-price',
  'presets',
  'loading',
] as const
const PROPERTIES = ['design', 'catalog'] as const

// On a server there is no `HTMLElement`: the class can be imported, but nothing of it runs.
const Base = typeof HTMLElement === 'undefined' ? (class {} as unknown as typeof HTMLElement) : HTMLElement

type View = Pick<ViewState, 'units' | 'theme' | 'audience' | 'unpriced'>

/**
 * Lays out a dock in a lake, and tells whether it stands, what it takes and what it costs.
 *
 * @tagname leadline-dock
 * @attribute {string} catalog - Address of the shop's catalog
 * @attribute {string} design - Address of the design to begin with
 * @attribute {"imperial" | "metric"} units - Units of all figures
 * @attribute {string} lang - Language, as BCP 47 has it; else that of the page around
 * @attribute {string} words - Address of a language file, in place of what is shipped
 * @attribute {"auto" | "light" | "dark"} theme - Light or dark
 * @attribute {"full" | "compact" | "waterside"} mode - The whole page, a small one, or the day at the lake
 * @attribute {string} storage-key - The dock is kept on the device under this name
 * @attribute {boolean} link - It owns what stands after # in the page's address
 * @attribute {string} request-url - Where requests for a quote are sent
 * @attribute {"customer" | "shop" | "crew"} audience - Who looks on
 * @attribute {"questions" | "example"} start - Where nothing was kept, linked or given
 * @attribute {boolean} hide-price - No price is shown, and papers are those without
 * @attribute {string} presets - Address of a list of docks to begin with
 * @attribute {"lazy" | "eager"} loading - It begins when it comes near the window, or at once
 * @slot header - Over its head: a title, a logo
 * @slot tools - In its head, after what is done with files: buttons of the page's own
 * @slot actions - At its foot, after the way to ask for a quote: buttons of the page's own
 * @slot request - A form of the page's own, in the place of who asks for a quote
 * @slot poster - What stands there until its first picture
 * @fires {CustomEvent<null>} leadline-ready - The first picture is on the screen
 * @fires {LeadlineEvents["leadline-input"]} leadline-input - At each change while a hand moves
 * @fires {LeadlineEvents["leadline-change"]} leadline-change - The hand has let go and the dock is known whole
 * @fires {LeadlineEvents["leadline-request"]} leadline-request - Somebody asks for a quote; cancelable
 * @fires {LeadlineEvents["leadline-error"]} leadline-error - What was wrong, and where
 * @csspart toolbar - Head of the element
 * @csspart notice - What is told once
 * @csspart stage - The scene or its drawing
 * @csspart views - How the picture is looked at
 * @csspart strip - Section through the lake
 * @csspart start - The questions with which a dock begins
 * @csspart sum - Whether it can be built, what it costs, and the way to ask for it
 * @csspart panel - What is asked and told beside the picture
 * @csspart legs - Every leg by number
 * @csspart fold - Each part of the panel that can be folded away
 * @csspart fold-title - What it is folded by
 * @csspart dialog - A dialog
 * @csspart button - Each button
 * @csspart main-button - The one that is meant to be pressed
 * @csspart field - Each field, choice and switch
 * @cssproperty --leadline-font - Typeface
 * @cssproperty --leadline-accent - Color of what can be pressed
 * @cssproperty --leadline-on-accent - Color of words on it
 * @cssproperty --leadline-focus - Color of the ring around what has the keyboard
 * @cssproperty --leadline-ink - Color of words
 * @cssproperty --leadline-soft - Color of lesser words
 * @cssproperty --leadline-line - Color of lines
 * @cssproperty --leadline-paper - Background
 * @cssproperty --leadline-card - Background of what stands on it
 * @cssproperty --leadline-tint - Background of what is chosen
 * @cssproperty --leadline-buoy - Color of what warns
 * @cssproperty --leadline-radius - Radius of corners
 * @cssproperty --leadline-sticky-top - Height of a host's head that stays in sight
 */
export class LeadlineDock extends Base {
  static readonly observedAttributes = ATTRIBUTES

  #session: Session | null = null
  #screen: Screen | null = null
  #store: LeadlineStore | null = null
  /** As the page gave them last, by property; null: by attribute, if at all. */
  #design: Given<Design> | null = null
  #catalog: GivenCatalog | null = null
  /** What the store's catalog came from: put back into the page it is not fetched again. */
  #shownFrom: ReturnType<typeof sourceOf> = null
  /** Faults of properties set before anyone could listen for events. */
  #early: Fault[] = []
  #farewell: ReturnType<typeof setTimeout> | undefined
  #ready = false
  /** Waits for it to come near the window. */
  #sight: IntersectionObserver | null = null

  /**
   * The design in hand. Text set to it is an address, as the attribute's. Setting one that is not valid tells `leadline-error` and leaves
   * it as it is.
   */
  get design(): Design {
    const given = this.#design
    return this.#store?.getState().design ?? (given && 'value' in given ? given.value : this.#opening())
  }
  set design(value: unknown) {
    const given = givenDesign(value)
    if (this.#session && this.#ready) {
      if (given && 'value' in given) this.#session.take(given.value)
      else if (given && 'url' in given) this.#session.takeFrom(given.url)
      else if (given) this.#tellFaults(given.faults)
      return
    }
    this.#design = given
    if (given && 'faults' in given && !this.#session) this.#tellFaults(given.faults)
    if (given && 'value' in given && this.#store) {
      // Who is given a dock is not asked for one, between what was begun with and its first picture neither.
      const { begin, set } = this.#store.getState()
      set({ starting: false })
      begin(given.value)
    } else if (this.#session) this.#restart()
  }

  /** The catalog in use; null where the page asked for one that is not there (yet): no other's parts and prices stand for it. */
  get catalog(): Catalog | null {
    const given = this.#catalogAsked()
    if (this.#store && (given === null || this.#shownFrom === sourceOf(given)))
      return this.#store.getState().catalog
    return given === null ? demoCatalog : null
  }
  set catalog(value: unknown) {
    const given = givenCatalog(value)
    this.#catalog = given
    if (given && 'plain' in given && this.#session && this.#ready) void this.#take(given, this.#session)
    else if (this.#session) this.#restart()
  }

  /**
   * What is known of it now: `pending` while its structure is still to come, `structure.deep` false while some of that is. While one too large
   * to follow the hand is being placed, the last one placed, `pending`; its fingerprint is its own. Null without a catalog.
   */
  get dock(): Dock | null {
    const { design, catalog } = this
    if (!catalog) return null
    return this.#store ? toldOf(this.#store.getState()) : publishKit(deriveKit(design, catalog))
  }

  /** True from the first picture on; told by `leadline-ready`. */
  get ready(): boolean {
    return this.#ready
  }

  /**
   * A file of the dock in hand, once it is known whole, as the page's own buttons make it. Rejects where it is not one of what the audience is
   * offered, or cannot be made.
   */
  async exportFile(wanted: ExportWanted): Promise<File> {
    return (await this.#more()).exportFile(wanted, this.#begun())
  }

  /** A PNG of the dock as it is seen, of that size in px; the drawing, where there is no 3D scene. */
  async snapshot(width = 1600, height = 1000): Promise<Blob> {
    return (await this.#more()).snapshot(this.#begun(), this.shadowRoot!, width, height)
  }

  /** Goes back to what it began with, or to its questions. One step of undo; the dock in hand is among the earlier ones. */
  reset(): void {
    this.#begun().startOver()
  }

  connectedCallback(): void {
    clearTimeout(this.#farewell)
    if (this.#session || this.#sight) return
    // Properties that a page set before this class was there hide the ones of the class.
    for (const name of PROPERTIES)
      if (Object.hasOwn(this, name)) {
        const value = this[name]
        Reflect.deleteProperty(this, name)
        Reflect.set(this, name, value)
      }
    const early = this.#early
    this.#early = []
    // After whoever inserted the element has had time to add listeners.
    if (early.length > 0) setTimeout(() => this.#tellFaults(early))
    this.#wait()
  }

  disconnectedCallback(): void {
    clearTimeout(this.#farewell)
    this.#farewell = setTimeout(() => this.isConnected || this.#end(), PATIENCE)
  }

  attributeChangedCallback(
    name: (typeof ATTRIBUTES)[number],
    before: string | null,
    now: string | null,
  ): void {
    if (before === now || !this.#session) return
    if (name === 'lang' || name === 'words') void this.#session.speak(this.#spoken())
    else if (name === 'units' || name === 'theme' || name === 'audience' || name === 'hide-price')
      this.#session.store.getState().set(name === 'units' ? { units: this.#units() } : this.#looks())
    else if (name === 'start' || name === 'presets' || name === 'loading') return
    else if (name === 'mode') this.#screen?.setMode(this.#mode())
    else if (name === 'design') {
      if (now !== null) this.design = now
    } else {
      if (name === 'catalog') {
        if (now === null) return
        this.#catalog = null
      }
      // Another catalog, another place to keep it, another owner of the link: begin again, with the design in hand.
      this.#restart()
    }
  }

  async #take(given: GivenCatalog, session: Session): Promise<void> {
    const taken = await session.takeCatalog(given)
    if (this.#session !== session || this.#catalog !== given) return
    if (taken) this.#shownFrom = sourceOf(given)
    // Begins anew, and says what is wrong with it.
    else this.#restart()
  }

  #begun(): Session {
    if (!this.#session || !this.#ready) throw new Error('not ready: wait for leadline-ready')
    return this.#session
  }

  async #more(): Promise<typeof import('./methods.ts')> {
    const session = this.#begun()
    try {
      return await import('./methods.ts')
    } catch (error) {
      await session.missing('file', 'methods', error)
      throw error
    }
  }

  #catalogAsked(): GivenCatalog | null {
    const url = this.getAttribute('catalog')
    return this.#catalog ?? (url === null ? null : { url })
  }

  /** What is far from the window costs a page nothing; what is hidden is far from it until it is shown. */
  #wait(): void {
    const root = this.shadowRoot ?? this.attachShadow({ mode: 'open' })
    adoptStyles(root)
    const poster = document.createElement('slot')
    poster.name = 'poster'
    root.replaceChildren(poster)
    // One put back goes on.
    if (this.#store || this.getAttribute('loading') === 'eager') {
      void this.#begin()
      return
    }
    this.#sight = new IntersectionObserver(
      (entries) => entries.at(-1)!.isIntersecting && void this.#begin(),
      { rootMargin: NEAR },
    )
    this.#sight.observe(this)
  }

  async #begin(): Promise<void> {
    this.#sight?.disconnect()
    this.#sight = null
    const root = this.shadowRoot!
    const url = this.getAttribute('design')
    const catalog = this.#catalogAsked()
    const source = sourceOf(catalog)
    const again = (): void => this.#restart()
    let session: Session | null = null
    try {
      session = new Session({
        catalog: this.#store && source !== null && source === this.#shownFrom ? null : catalog,
        design: this.#design ?? (url === null ? null : { url }),
        storageKey: this.getAttribute('storage-key'),
        link: this.hasAttribute('link'),
        start: this.#start(),
        requestUrl: this.getAttribute('request-url'),
        presets: this.getAttribute('presets'),
        view: this.#view(),
        spoken: this.#spoken(),
        store: this.#store,
        place: `${location.pathname}#${[...document.querySelectorAll(this.localName)].indexOf(this)}`,
        tell: (type, detail, cancelable = false) =>
          this.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true, cancelable })),
        // A browser fires no blur when the user leaves the page.
        settle: () => (root.activeElement as HTMLElement | null)?.blur(),
      })
      this.#session = session
      this.#screen = showScreen(root, session, this.#view(), this.#mode(), again)
      const begun = await session.begin()
      if (this.#session !== session) return
      if (!begun) {
        this.#shownFrom = null
        this.#screen.fail(session.faults, again)
        return
      }
      this.#store = session.store
      this.#shownFrom = source
      root.querySelector('[name=poster]')?.remove()
      this.#screen.show(
        () => {
          if (this.#session !== session || this.#ready) return
          this.#ready = true
          import('./later-styles.ts').then(
            (later) => later.adoptLaterStyles(root),
            () => {},
          )
          this.dispatchEvent(new CustomEvent('leadline-ready', { bubbles: true, composed: true }))
        },
        (error) => this.#stop(session, error),
      )
    } catch (error) {
      this.#stop(session, error)
    }
  }

  /** A fatal error: shows a message and what to do, instead of a blank. */
  #stop(session: Session | null, error: unknown): void {
    if (this.#session !== session) return
    const root = this.shadowRoot!
    this.#screen ??= showScreen(root, session, this.#view(), this.#mode(), () => this.#restart())
    this.#screen.stop({
      again: () => this.#restart(),
      save: () => saveDesign(session?.store.getState().design ?? this.design),
      over: () => {
        this.#store = null
        this.#design = { value: this.#opening() }
        this.#restart()
      },
    })
    this.#tellFaults([{ code: 'start', path: '', message: messageOf(error) }])
  }

  #end(): void {
    this.#sight?.disconnect()
    this.#sight = null
    this.#screen?.close()
    this.#session?.end()
    this.#screen = null
    this.#session = null
    this.#ready = false
  }

  #restart(): void {
    this.#end()
    if (this.isConnected) void this.#begin()
  }

  /** As the page says, but for what somebody chose here before. */
  #view(): View {
    return { ...this.#looks(), units: (this.hasAttribute('storage-key') && keptUnits()) || this.#units() }
  }

  #units(): View['units'] {
    return this.getAttribute('units') === 'metric' ? 'metric' : 'imperial'
  }

  #looks(): Omit<View, 'units'> {
    const theme = this.getAttribute('theme')
    const audience = this.getAttribute('audience')
    return {
      theme: theme === 'light' || theme === 'dark' ? theme : 'auto',
      audience: audience === 'shop' || audience === 'crew' ? audience : 'customer',
      unpriced: audience === 'crew' || this.hasAttribute('hide-price'),
    }
  }

  /** Its own language, or that of the page around it. */
  #spoken(): Spoken {
    return {
      lang: this.closest('[lang]')?.getAttribute('lang') || 'en',
      words: this.getAttribute('words'),
    }
  }

  #start(): 'questions' | 'example' {
    return this.getAttribute('start') === 'example' ? 'example' : 'questions'
  }

  /** What stands there before anybody has a dock. */
  #opening(): Design {
    return this.#start() === 'example'
      ? demoDesign
      : firstShore(this.#view().units, this.catalog ?? demoCatalog)
  }

  #mode(): Mode {
    const mode = this.getAttribute('mode')
    return mode === 'compact' || mode === 'waterside' ? mode : 'full'
  }

  #tellFaults(faults: readonly Fault[]): void {
    if (!this.isConnected) this.#early.push(...faults)
    else
      for (const detail of faults)
        this.dispatchEvent(new CustomEvent('leadline-error', { detail, bubbles: true, composed: true }))
  }
}

/** What tells one catalog that was given from another. */
const sourceOf = (given: GivenCatalog | null) => given && ('url' in given ? given.url : given.plain)

/** A page may load this twice, or two versions of it: the first one stays. */
export function defineLeadlineDock(): void {
  if (typeof customElements !== 'undefined' && !customElements.get('leadline-dock'))
    customElements.define('leadline-dock', LeadlineDock)
}

declare global {
  interface HTMLElementTagNameMap {
    'leadline-dock': LeadlineDock
  }
}
