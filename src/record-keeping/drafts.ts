/** What is half entered: there again after a reload or a crash, each tab's own first. */
import type { Journal } from './journal.ts'

export interface Drafts {
  read(place: string): unknown
  /** null: entered or given up. */
  keep(place: string, draft: unknown): void
}

interface Draft {
  readonly at: number
  readonly draft: unknown
}

const isDraft = (value: unknown): value is Draft =>
  typeof value === 'object' && value !== null && 'at' in value && 'draft' in value

/** `tab`: the same after a reload of the tab. */
export function openDrafts(journal: Journal, record: string, tab: string): Drafts {
  /** For where nothing can be stored. */
  const held = new Map<string, unknown>()
  /** Whose draft was shown where. */
  const shown = new Map<string, string>()
  const stored = (place: string) =>
    journal
      .read(['draft', record, place])
      .flatMap(({ name, value }) => (isDraft(value) ? [{ by: name.join('/'), ...value }] : []))
  return {
    read(place) {
      if (held.has(place)) return held.get(place)
      const drafts = stored(place).sort((a, b) => Number(b.by === tab) - Number(a.by === tab) || b.at - a.at)
      if (drafts[0]) shown.set(place, drafts[0].by)
      return drafts[0]?.draft ?? null
    },
    keep(place, draft) {
      held.set(place, draft)
      if (draft !== null) journal.write(['draft', record, place, tab], { at: Date.now(), draft })
      // The one that was shown is done with; what another tab has in hand is not.
      else
        for (const by of new Set([tab, shown.get(place) ?? tab])) journal.forget(['draft', record, place, by])
    },
  }
}
