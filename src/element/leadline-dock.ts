/**
 * `<leadline-dock>`: attributes, properties and events as the README lists them; the screen in a shadow root. Safe to import where
 * there is no document. React and all the rest live from `connectedCallback` on, and outlive a move within the page.
 */
import {
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  parseCatalog,
  parseDesign,
} from '../../rules/index.ts'
import { dockOf, type LeadlineStore, type ViewState } from '../state/store.ts'
import { type Screen, showScreen } from './screen.tsx'
import { Session } from './session.ts'
import { type Fault, faultsOf } from './sources.ts'
import { adoptStyles } from './styles.ts'

/** A move takes an element out and puts it in again within one task: what is still out after this is gone, ms. */
const PATIENCE = 60

const ATTRIBUTES = [
  'catalog',
  'design',
  'units',
  'lang',
  'theme',
  'mode',
  'storage-key',
  'link',
  'request-url',
  'audience',
] as const
const PROPERTIES = ['design', 'catalog'] as const

// On a server there are no elements: the class is there, and nothing of it runs.
const Base = typeof HTMLElement === 'undefined' ? (class {} as unknown as typeof HTMLElement) : HTMLElement

export class LeadlineDock extends Base {
  static readonly observedAttributes = ATTRIBUTES

  #session: Session | null = null
  #screen: Screen | null = null
  #store: LeadlineStore | null = null
  #design: Design | null = null
  #catalog: Catalog | null = null
  #farewell: ReturnType<typeof setTimeout> | undefined
  #ready = false

  /** The design in hand. Setting one that is not valid tells `leadline-error` and leaves it as it is. */
  get design(): Design {
    return this.#store?.getState().design ?? this.#design ?? demoDesign
  }
  set design(value: unknown) {
    const read = faultsOf(parseDesign(value), 'design')
    if (!read.ok) this.#tellFaults(read.faults)
    else if (this.#session && this.#ready) this.#session.take(read.value)
    else {
      this.#design = read.value
      if (this.#store) this.#store.getState().begin(read.value)
      else if (this.#session) this.#restart()
    }
  }

  get catalog(): Catalog {
    return this.#store?.getState().catalog ?? this.#catalog ?? demoCatalog
  }
  set catalog(value: unknown) {
    const read = faultsOf(parseCatalog(value), 'catalog')
    if (!read.ok) {
      this.#tellFaults(read.faults)
      return
    }
    this.#catalog = read.value
    this.#store?.getState().setCatalog(read.value)
    // Where the page's catalog could not be had, this is the one that was waited for.
    if (this.#session && !this.#ready) this.#restart()
  }

  /** What is known of it now: `pending` while its structure is still to come, `structure.deep` false while some of that is. */
  get dock(): Dock {
    const { design, catalog } = this
    return dockOf({ design, catalog })
  }

  /** True from the first picture on; told by `leadline-ready`. */
  get ready(): boolean {
    return this.#ready
  }

  connectedCallback(): void {
    clearTimeout(this.#farewell)
    if (this.#session) return
    // Properties that a page set before this class was there hide the ones of the class.
    for (const name of PROPERTIES)
      if (Object.hasOwn(this, name)) {
        const value = this[name]
        delete (this as { design?: unknown; catalog?: unknown })[name]
        ;(this as { design: unknown; catalog: unknown })[name] = value
      }
    this.#begin()
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
    if (name === 'units' || name === 'lang' || name === 'theme' || name === 'audience')
      this.#session.store.getState().set(this.#view())
    else if (name === 'mode') this.#screen?.setMode(this.#mode())
    else if ((name === 'design' || name === 'catalog') && now === null) return
    else {
      // Another source, another place to keep it, another owner of the link: begin again, with the design in hand where it is not named.
      if (name === 'design') this.#design = null
      if (name === 'catalog') this.#catalog = null
      this.#restart(name === 'design' || name === 'catalog')
    }
  }

  async #begin(): Promise<void> {
    const root = this.shadowRoot ?? this.attachShadow({ mode: 'open' })
    adoptStyles(root)
    const session = new Session({
      catalogUrl: this.getAttribute('catalog'),
      designUrl: this.getAttribute('design'),
      storageKey: this.getAttribute('storage-key'),
      link: this.hasAttribute('link'),
      requestUrl: this.getAttribute('request-url'),
      design: this.#design,
      catalog: this.#catalog,
      view: this.#view(),
      store: this.#store,
      tell: (type, detail, cancelable = false) =>
        this.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true, cancelable })),
    })
    this.#session = session
    this.#screen = showScreen(root, session, this.#mode())
    const begun = await session.begin()
    if (this.#session !== session) return
    if (!begun) {
      this.#screen.fail(() => this.#restart())
      return
    }
    this.#store = session.store
    this.#screen.show(() => {
      if (this.#session !== session || this.#ready) return
      this.#ready = true
      this.dispatchEvent(new CustomEvent('leadline-ready', { bubbles: true, composed: true }))
    })
  }

  #end(): void {
    this.#screen?.close()
    this.#session?.end()
    this.#screen = null
    this.#session = null
    this.#ready = false
  }

  /** `afresh`: from its sources again, not from the design in hand. */
  #restart(afresh = false): void {
    if (afresh) this.#store = null
    this.#end()
    if (this.isConnected) this.#begin()
  }

  #view(): Partial<ViewState> {
    const units = this.getAttribute('units')
    const theme = this.getAttribute('theme')
    const audience = this.getAttribute('audience')
    return {
      units: units === 'metric' ? 'metric' : 'imperial',
      theme: theme === 'light' || theme === 'dark' ? theme : 'auto',
      audience: audience === 'shop' || audience === 'crew' ? audience : 'customer',
      lang: this.getAttribute('lang') ?? this.closest('[lang]')?.getAttribute('lang') ?? 'en',
    }
  }

  #mode(): 'full' | 'compact' {
    return this.getAttribute('mode') === 'compact' ? 'compact' : 'full'
  }

  #tellFaults(faults: readonly Fault[]): void {
    if (this.#session) this.#session.fail(faults)
    else
      for (const detail of faults)
        this.dispatchEvent(new CustomEvent('leadline-error', { detail, bubbles: true, composed: true }))
  }
}

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
