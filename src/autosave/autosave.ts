/**
 * What an element keeps, and where: at once in the journal, which outlives the page whatever happens to it; soon in the database, with
 * the designs put aside. Without a `storage-key` only the tab's own journal is used, for what the address has not got yet and for a reload
 * that the element itself asks for. Where the database cannot be had the journal stands for it.
 */
import { type Design, parseDesign } from '../../rules/index.ts'
import { messageOf } from '../platform/error-message.ts'
import { newId } from '../platform/new-id.ts'
import { within } from '../platform/time-limit.ts'
import type { Earlier } from '../state/host.ts'
import { sameDesign } from '../state/same-design.ts'
import type { Heard, Keeper } from './database.ts'
import { type Entry, type Journal, openJournal, type Written } from './journal.ts'

export interface Resumed {
  readonly design: Design
  /** It was made under the address that the page has now: no link was followed since. */
  readonly here: boolean
}

interface Options {
  readonly key: string | null
  /** Identifies the element among those of its page, for the tab's own journal. */
  readonly place: string
  /** What stands behind the page's address, as far as it is this element's; and what did a moment ago. */
  fragments(): readonly string[]
  /** The database is not available; `lost`: neither is the journal. */
  failed(message: string, lost: boolean): void
  heard(what: Heard): void
}

/** Some browsers never answer an open request: the page starts without the database after this long, ms. */
const OPENING = 3000
/** A page that is loaded again may have the address that it had when that began, and not the one written since, ms. */
const LEAVING = 15_000
/** Replaced designs held here until they are in the database; without a database these are the only copies. */
const MOST_ASIDE = 8

export class Autosave {
  readonly #options: Options
  readonly #me = newId()
  readonly #journal: Journal
  #keeper: Keeper | null = null
  #over = false
  /** How many lines of edits this element has begun: each design that replaces another begins one. */
  #lines = 0
  #aside: Entry['aside'] = []
  /** What the journal's entry is of. */
  #noted: Design | null = null
  /** Of the journal, not in the database yet. */
  #left: readonly Written[] = []

  constructor(options: Options) {
    this.#options = options
    const { key, place } = options
    this.#journal = key === null ? openJournal('session', place, 'tab') : openJournal('local', key, this.#me)
  }

  get #line(): string {
    return `${this.#me}/${this.#lines}`
  }

  /** What to go on with; null where nothing is kept that can be read. */
  async begin(): Promise<Resumed | null> {
    const [now] = this.#options.fragments()
    const justNow = ({ fragments = [], at }: Pick<Entry, 'fragments' | 'at'>): boolean =>
      Date.now() - at < LEAVING && fragments.includes(now!)
    this.#left = this.#journal.read()
    const keeper = this.#options.key === null ? null : await this.#open(this.#options.key)
    const stored = (await keeper?.load().catch(() => null)) ?? null
    // The address is written after the design is stored, so the stored fragment may be of an older link: it counts only if it is recent.
    let resumed: Resumed | null = stored && { design: stored.design, here: justNow(stored) }
    let from: Written | null = null
    const newest = this.#left[0]
    if (newest && newest.entry.at >= (stored?.at ?? 0)) {
      const parsed = parseDesign(newest.entry.design)
      if (parsed.ok) {
        from = newest
        resumed = { design: parsed.value, here: newest.entry.fragments?.[0] === now || justNow(newest.entry) }
        keeper?.know(newest.entry.design)
      }
    }
    this.#aside = [
      ...(from && stored && stored.line !== from.entry.line
        ? [{ design: stored.design, line: stored.line ?? 'first', at: stored.at }]
        : []),
      ...this.#left.flatMap((each) => [...(each === from ? [] : [each.entry]), ...each.entry.aside]),
    ].map(({ design, line, at }) => ({ design, line, at }))
    return resumed
  }

  /** True where what the last page left has still to go into the database. */
  get owes(): boolean {
    return this.#left.length > 0
  }

  /** `design` gives way to another, which begins a line of its own. */
  putAside(design: Design): void {
    this.#aside = [
      { design, line: this.#line, at: Date.now() },
      ...this.#aside.filter(({ design: old }) => !sameDesign(old, design)),
    ].slice(0, MOST_ASIDE)
    this.#lines++
  }

  /** Into the journal: done when this returns. False where nothing can be kept. */
  note(design: Design): boolean {
    this.#noted = design
    return this.#journal.write(this.#entry(design))
  }

  /** The address is of this design now: what is still to go into the database goes by it, and not by the one of a step before. */
  addressed(design: Design): void {
    if (this.#journal.mine() !== null) this.note(design)
  }

  /** Into the database. @throws (rejects) where it is kept neither there nor in the journal. */
  async save(design: Design): Promise<void> {
    const entry = this.#entry(design)
    const noted = this.#journal.write(entry)
    this.#noted = design
    const mine = this.#journal.mine()
    const left = this.#left
    if (!this.#keeper) {
      if (!noted) throw new Error('no storage')
      this.#left = []
      this.#journal.forget(left.filter(({ name }) => name !== mine?.name))
      return
    }
    try {
      await this.#keeper.save(entry)
    } catch (error) {
      if (!noted) throw error
      return
    }
    // Written anew since for its address alone, it is in the database all the same.
    const stands = this.#noted === design ? this.#journal.mine() : mine
    this.#journal.forget(stands ? [...left, stands] : left)
    if (this.#left === left) this.#left = []
    this.#aside = this.#aside.filter((each) => !entry.aside.includes(each))
  }

  /** Call when the design has been written into the page's address. */
  forget(): void {
    const mine = this.#journal.mine()
    this.#journal.forget([...this.#left, ...(mine ? [mine] : [])])
    this.#left = []
  }

  /** Whether another tab has written since; its design. */
  async other(): Promise<Design | null> {
    const changed = await this.#keeper?.changed().catch(() => false)
    return changed ? ((await this.#keeper?.load().catch(() => null))?.design ?? null) : null
  }

  changedElsewhere(): Promise<boolean> {
    return this.#keeper?.changed().catch(() => false) ?? Promise.resolve(false)
  }

  async earlier(): Promise<readonly Earlier[]> {
    const stored = (await this.#keeper?.earlier().catch(() => [])) ?? []
    const noted = this.#aside.flatMap(({ design, at }) => {
      const parsed = parseDesign(design)
      return parsed.ok && !stored.some((each) => sameDesign(each.design, parsed.value))
        ? [{ design: parsed.value, at }]
        : []
    })
    return [...noted, ...stored]
  }

  /** Closes the database after the last write. */
  close(): void {
    this.#over = true
    this.#keeper?.close()
    this.#keeper = null
  }

  #entry(design: Design): Entry {
    return {
      design,
      line: this.#line,
      at: Date.now(),
      fragments: this.#options.fragments(),
      aside: this.#aside,
    }
  }

  async #open(key: string): Promise<Keeper | null> {
    const opening = import('./database.ts').then(({ openKeeper }) =>
      openKeeper(key, this.#me, (what) => this.#options.heard(what)),
    )
    try {
      const keeper = await within(OPENING, opening)
      if (this.#over) keeper.close()
      else this.#keeper = keeper
      return this.#keeper
    } catch (error) {
      // Should it come after all, nobody waits for it any more.
      opening.then(
        (late) => late.close(),
        () => {},
      )
      if (!this.#over) this.#options.failed(messageOf(error), !this.#journal.works())
      return null
    }
  }
}
