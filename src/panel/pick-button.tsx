/** Picks what a row of a table is about, and lets go of it again. */
import type { ReactNode } from 'react'
import { useLeadline } from '../state/store.ts'

export function PickButton({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  const picked = useLeadline((s) => s.selection === id)
  const set = useLeadline((s) => s.set)
  return (
    <button
      type="button"
      className="row"
      aria-pressed={picked}
      onClick={() => set({ selection: picked ? null : id })}
    >
      {children}
    </button>
  )
}
