/** What is told of records and where they are kept. */
import type { Entry, NewEntry, SeasonRecord } from './season-record.ts'

/** Where what was made stands. */
export interface Kept {
  /** `this-tab-only`: gone when the tab is closed; to be told at once, with the file offered. */
  readonly state: 'kept' | 'this-tab-only'
  /** `full`: no room; `denied`: the browser gives no storage here; `failed`: anything else. */
  readonly why?: 'full' | 'denied' | 'failed'
  /** What this tab alone has. */
  readonly entries: number
  readonly photos: number
}

/** A picture beside an entry: its data is kept apart, under the SHA-256 of its bytes. */
export interface PhotoMark {
  readonly hash: string
  /** px */
  readonly width: number
  readonly height: number
  readonly bytes: number
}

/** Dates as ISO 8601: the newest in the record, and what this device's clock says, which is earlier. Order does not hang on it. */
export interface ClockDoubt {
  readonly newest: string
  readonly now: string
}

export interface Merged {
  /** Entries that were not here. */
  readonly added: number
  /** What the other lacks: entries that it does not have. */
  readonly lacking: number
}

export interface Listed {
  readonly id: string
  readonly name: string
  readonly entries: number
  readonly photos: number
  /** Of the newest entry, by the clock of its device; of the record where it has none. */
  readonly at: string
}

export interface RecordKeeper {
  /** With all that this tab has; another object after each change. */
  readonly record: SeasonRecord
  readonly kept: Kept
  readonly clockDoubt: ClockDoubt | null
  /** Told after the record, or where it is kept, changed: by this tab, another one, or a merge. @returns ends it */
  subscribe(listener: () => void): () => void
  /** Writes an entry down: it stands when this returns. `season`: as the user says; else as the record proposes. */
  add(entry: NewEntry, season?: string): Entry
  /** Takes in what another phone's record has. Nothing is lost; twice is as once. */
  merge(from: SeasonRecord): Merged
  /** What was half entered at a place of the screen when the page went away; as stored, to be checked by who reads it. */
  draft(place: string): unknown
  /** Stands when this returns. null: entered or given up. */
  keepDraft(place: string, draft: unknown): void
  /** Shrinks a picture and keeps it; the mark goes into the entry. null: the browser cannot read the picture. */
  addPhoto(picture: Blob): Promise<PhotoMark | null>
  photo(hash: string): Promise<Blob | null>
  /** Tries again to store what this tab alone has; resolves when all has been tried. */
  save(): Promise<void>
  close(): Promise<void>
}

export interface Records {
  /** Of this browser: stays the same over visits where anything can be kept. */
  readonly device: string
  /** The newest first. */
  list(): Promise<readonly Listed[]>
  /** Keeps a record from now on: one that was just begun, or came by file, link or codes; merged into what is kept of it. */
  take(record: SeasonRecord): Promise<RecordKeeper>
  /** null: there is none with that id. */
  open(id: string): Promise<RecordKeeper | null>
  close(): Promise<void>
}
