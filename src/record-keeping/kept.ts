/** What is told of season records and of where they are kept. */
import type { Parsed } from '../../rules/index.ts'
import type { Entry, Photo, Said, SeasonRecord } from '../../rules/record/index.ts'

/** `full`: no room; `denied`: the browser gives no storage here; `failed`: anything else. */
export type WhyNot = 'full' | 'denied' | 'failed'

/** Where what was made stands. */
export interface Kept {
  /** `this-tab-only`: gone when the tab is closed; to be told at once, with the file offered. */
  readonly state: 'kept' | 'this-tab-only'
  readonly why: WhyNot | null
  /** What this tab alone has. */
  readonly entries: number
  readonly photos: number
}

/** Dates as ISO 8601: the newest in the record, and what this device's clock says, which is earlier. Order does not hang on it. */
export interface ClockDoubt {
  readonly newest: string
  readonly now: string
}

export interface Merged {
  /** Entries that were not here. */
  readonly added: number
  /** Entries that the other does not have: it is to be given them in turn. */
  readonly lacking: number
}

export interface Listed {
  readonly id: string
  readonly name: string
  /** Check code of the dock that it was begun with. */
  readonly dock: string | null
  readonly entries: number
  readonly photos: number
  /** Of the newest entry, by the clock of its device; of the record where it has none. */
  readonly at: string
}

export interface RecordKeeper {
  /** Under which it is kept here; `record.id` may change when records that were begun apart are merged. */
  readonly id: string
  /** With all that this tab has; another object after each change. */
  readonly record: SeasonRecord
  readonly kept: Kept
  readonly clockDoubt: ClockDoubt | null
  /** Entries in the storage that this version cannot read: they stay there. */
  readonly unreadable: number
  /** Told after the record, or where it is kept, changed: by this tab, another one, or a merge. @returns ends it */
  subscribe(listener: () => void): () => void
  /** Writes an entry down: it stands when this returns, with its issues where it is none. `season`: as the user says, else `seasonFor`. */
  add(said: Said, season?: string): Parsed<Entry>
  /** Takes in what another record has. Nothing is lost, twice is as once; issues where together they would be too large, and then nothing is changed. */
  merge(from: SeasonRecord): Parsed<Merged>
  /** What was half entered at a place of the screen when the page went away; as stored, to be checked by who reads it. */
  draft(place: string): unknown
  /** JSON; stands when this returns. null: entered or given up. */
  keepDraft(place: string, draft: unknown): void
  /** Shrinks a picture and keeps it; what comes back goes into the entry. null: the browser cannot read the picture. */
  addPhoto(picture: Blob): Promise<Photo | null>
  /** Keeps a picture that came with a file, as it is. */
  takePhoto(bytes: Uint8Array<ArrayBuffer>): Promise<void>
  photo(hash: string): Promise<Blob | null>
  /** Tries again to store what this tab alone has; resolves when all has been tried. */
  save(): Promise<void>
}

export interface Records {
  /** Of this browser: stays the same over visits where anything can be kept. */
  readonly device: string
  /** The newest first. */
  list(): Promise<readonly Listed[]>
  /**
   * Keeps a record from now on: one that was just begun, or came by file, link or codes. Merged into the one of the same dock where there
   * is one, unless it is to stay `apart`. Issues where together they would be too large.
   */
  take(record: SeasonRecord, how?: 'merge' | 'apart'): Promise<Parsed<RecordKeeper>>
  /** null: there is none with that id that can be read. */
  open(id: string): Promise<RecordKeeper | null>
  /** What is stored of a record, as it is, as JSON text: for a file where it cannot be read here. */
  raw(id: string): Promise<string>
  /** Takes it and its photos out of this browser, for good: to be asked twice, with the file offered. */
  remove(id: string): Promise<void>
  close(): Promise<void>
}
