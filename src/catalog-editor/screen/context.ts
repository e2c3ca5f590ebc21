/** What every part of the editor's screen has: the catalog in hand, its reader, and the way to a place in it. */
import { createContext, type RefObject, useContext, useMemo, useSyncExternalStore } from 'react'
import { moneyIn, type Reader, type Say, wordsOf } from '../../../rules/index.ts'
import { CATALOG_EDITOR, type EditorWord } from '../../words/catalog-editor.ts'
import type { JsonObject, Path } from '../draft.ts'
import type { SectionName } from '../form/catalog-form.ts'
import { hintIn } from '../form/hint.ts'
import { labelOf } from '../form/label.ts'
import { coinsOf } from '../form/measure.ts'
import type { Aside } from '../keep.ts'
import type { WaitingList } from '../price-list/waiting.ts'
import type { EditorState, EditorStore } from '../store.ts'

export type Panel = 'form' | 'price-list' | 'changes' | 'save'

export interface Told {
  readonly key: EditorWord
  readonly values?: Readonly<Record<string, string | number>>
  readonly bad?: boolean
}

export interface Editor {
  readonly store: EditorStore
  readonly demo: JsonObject
  readonly reader: Reader
  readonly section: SectionName
  readonly panel: Panel
  /** The place that was gone to last: shown open, with the keyboard in it. */
  readonly aim: { readonly path: Path } | null
  readonly told: Told | null
  /** Of what is shown now. */
  readonly heading: RefObject<HTMLHeadingElement | null>
  readonly aside: () => readonly Aside[]
  /** A price list that is not taken in yet. */
  readonly list: WaitingList
  /** What is in hand is kept on the device. */
  readonly isKept: boolean
  putList(list: WaitingList): void
  show(section: SectionName): void
  open(panel: Panel): void
  go(path: Path): void
  tell(told: Told | null): void
  /** The draft in hand is put aside, and another takes its place. */
  replace(draft: JsonObject, told: Told): void
}

export const EditorContext = createContext<Editor | null>(null)

export function useEditor(): Editor {
  const editor = useContext(EditorContext)
  if (!editor) throw new Error('useEditor: no EditorContext above this component')
  return editor
}

export function useCatalog<T>(pick: (state: EditorState) => T): T {
  const { store } = useEditor()
  return useSyncExternalStore(store.subscribe, () => pick(store.getState()))
}

export interface Words {
  readonly t: Say<EditorWord>
  readonly reader: Reader
  readonly currency: string
  money(minor: number): string
  /** What a field is called; its key where there are no words for it. */
  label(path: Path): string
  /** What the schema says of a field, in the reader's language. */
  hint(says: string): string
}

export function useWords(): Words {
  const { reader } = useEditor()
  const said = useCatalog(({ draft }) => draft.currency)
  const currency = typeof said === 'string' && /^[A-Z]{3}$/.test(said) ? said : 'USD'
  return useMemo(
    () => ({
      t: wordsOf(CATALOG_EDITOR, reader),
      reader,
      currency,
      money: moneyOf(currency, reader),
      hint: (says) => hintIn(says, reader),
      label: (path) => labelOf(path, reader) ?? String(path.at(-1) ?? ''),
    }),
    [reader, currency],
  )
}

/** Three letters are no currency while they are being typed. */
function moneyOf(currency: string, { language }: Reader): (minor: number) => string {
  try {
    return moneyIn(currency, language)
  } catch {
    return (minor) => `${minor / coinsOf(currency)} ${currency}`
  }
}
