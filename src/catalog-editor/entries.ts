/** Entries of a list put in, taken out and moved, with what is known of their places. */
import { isList, isUnder, type Json, type JsonObject, moved, type Path, valueAt, withValue } from './draft.ts'
import type { EditorStore } from './store.ts'

/** Where entries go: by their old place the new one; null: it is gone. */
type Shift = (i: number) => number | null

function shifted(guessed: readonly Path[], list: Path, shift: Shift): readonly Path[] {
  return guessed.flatMap((path): Path[] => {
    const i = path[list.length]
    if (!isUnder(path, list) || typeof i !== 'number') return [path]
    const to = shift(i)
    return to === null ? [] : [[...list, to, ...path.slice(list.length + 1)]]
  })
}

function changeList(
  store: EditorStore,
  path: Path,
  make: (list: readonly Json[]) => readonly Json[],
  shift: Shift,
): void {
  store.getState().change(
    (draft) => {
      const list = valueAt(draft, path)
      return withValue(draft, path, make(isList(list) ? list : [])) as JsonObject
    },
    (guessed) => shifted(guessed, path, shift),
  )
}

export const insertEntry = (store: EditorStore, path: Path, at: number, entry: Json): void =>
  changeList(
    store,
    path,
    (list) => list.toSpliced(at, 0, entry),
    (i) => (i >= at ? i + 1 : i),
  )

export const removeEntry = (store: EditorStore, path: Path, at: number): void =>
  changeList(
    store,
    path,
    (list) => list.toSpliced(at, 1),
    (i) => (i === at ? null : i > at ? i - 1 : i),
  )

export const moveEntry = (store: EditorStore, path: Path, from: number, to: number): void =>
  changeList(
    store,
    path,
    (list) => moved(list, from, to),
    (i) => (i === from ? to : i === to ? from : i),
  )
