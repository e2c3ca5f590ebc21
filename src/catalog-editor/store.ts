/**
 * A catalog in hand: the draft as it was typed, wrong or not, what is wrong with it, and the last one that was right, which is what a dock
 * is shown of. Each edit is a step of undo, and so is a file that was opened.
 */
import { createStore, type StoreApi } from 'zustand/vanilla'
import { type Catalog, type Issue, parseCatalog } from '../../rules/index.ts'
import { isUnder, type Json, type JsonObject, type Path, samePath, valueAt, withValue } from './draft.ts'
import { followed } from './form/catalog-form.ts'

/** Longer ones are no help to anybody, and each holds what it does not share with the next. */
const MOST_STEPS = 200

/** What goes with a draft through undo, and is kept on the device. */
export interface Kept {
  readonly draft: JsonObject
  /** As it was opened or saved last: what is new since then is told by it. */
  readonly saved: JsonObject
  /** Places that nobody has stated: taken from a part that is alike, to be looked at. */
  readonly guessed: readonly Path[]
}

export interface EditorState extends Kept {
  readonly issues: readonly Issue[]
  readonly good: Catalog
  readonly canUndo: boolean
  readonly canRedo: boolean
  /** Sets one value; undefined takes it out. A code that others name is followed by them. */
  set(path: Path, value: Json | undefined): void
  /** Any other change, as one step. */
  change(
    make: (draft: JsonObject) => JsonObject,
    guessed?: (before: readonly Path[]) => readonly Path[],
  ): void
  /** That what was taken for granted there is right. */
  confirm(under: Path): void
  /** Another catalog in the place of this one. */
  open(draft: JsonObject, saved?: JsonObject): void
  /** It was written to a file as it is now. */
  wrote(draft: JsonObject): void
  undo(): void
  redo(): void
}

export type EditorStore = StoreApi<EditorState>

/** @param first what a shop begins with; right in itself @param kept what was in hand before, wrong or not */
export function createEditor(first: Catalog, kept: Kept | null = null): EditorStore {
  const whole = first as unknown as JsonObject
  const begun: Kept = kept ?? { draft: whole, saved: whole, guessed: [] }
  const past: Kept[] = []
  const future: Kept[] = []
  return createStore<EditorState>()((put, get) => {
    const judged = (now: Kept, good: Catalog) => {
      const parsed = parseCatalog(now.draft)
      return {
        ...now,
        issues: parsed.ok ? [] : parsed.issues,
        good: parsed.ok ? parsed.value : good,
        canUndo: past.length > 0,
        canRedo: future.length > 0,
      }
    }
    const keep = ({ draft, saved, guessed }: Kept): Kept => ({ draft, saved, guessed })
    const step = (now: Kept): void => {
      const before = keep(get())
      if (before.draft === now.draft && before.guessed === now.guessed) return
      past.push(before)
      if (past.length > MOST_STEPS) past.shift()
      future.length = 0
      put(judged(now, get().good))
    }
    const go = (from: Kept[], to: Kept[]): void => {
      const next = from.pop()
      if (!next) return
      to.push(keep(get()))
      put(judged(next, get().good))
    }
    return {
      ...judged(begun, first),
      set(path, value) {
        const { draft, guessed } = get()
        const before = valueAt(draft, path)
        const set = withValue(draft, path, value) as JsonObject
        const made =
          path.at(-1) === 'code' && typeof before === 'string' && typeof value === 'string'
            ? (followed(set, path, before, value) as JsonObject)
            : set
        step({ ...get(), draft: made, guessed: guessed.filter((one) => !samePath(one, path)) })
      },
      change(make, guessed = (before) => before) {
        step({ ...get(), draft: make(get().draft), guessed: guessed(get().guessed) })
      },
      confirm(under) {
        step({ ...get(), guessed: get().guessed.filter((one) => !isUnder(one, under)) })
      },
      open(draft, saved = draft) {
        step({ draft, saved, guessed: [] })
      },
      wrote(draft) {
        step({ ...get(), draft })
        put({ saved: draft })
      },
      undo: () => go(past, future),
      redo: () => go(future, past),
    }
  })
}
