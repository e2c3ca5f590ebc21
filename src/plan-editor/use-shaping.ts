/** What a hand asks of a dock's plan, and what comes of it: taken, or shown with why it cannot be. One operation is one step of undo. */
import { useState } from 'react'
import { shopOf } from '../../rules/index.ts'
import { withPlan } from '../../rules/plan/as-plan.ts'
import { addAt } from '../../rules/plan/free-edges.ts'
import type { Hanging, Operation } from '../../rules/plan/operations.ts'
import { attempt, type Lying, type Tried } from '../../rules/plan/troubles.ts'
import { useLeadlineStore } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { PLAN_EDITOR } from '../words/plan-editor.ts'
import { nameOf } from './sentences.ts'

/** What has been asked for last, where it cannot be; and what it was asked of. */
interface Asked {
  readonly of: Lying
  readonly tried: Tried
}

/** The section that was taken away last, by its id and its name then, and how many went with it. */
interface Gone {
  readonly id: string
  readonly name: string
  readonly n: number
}

export function useShaping(lying: Lying) {
  const store = useLeadlineStore()
  const { t } = useWords(PLAN_EDITOR)
  const [asked, ask] = useState<Asked | null>(null)
  const [moving, move] = useState<string | null>(null)
  /** The section that the hand goes on at: what it was at may be gone. */
  const [at, goTo] = useState<{ readonly id: string } | null>(null)
  const [gone, tellGone] = useState<Gone | null>(null)
  const { edit, set } = store.getState()
  const tryOut = (operation: Operation): Tried => {
    const { design, catalog } = store.getState()
    return attempt(lying, operation, design.dock.frame, shopOf(catalog))
  }
  /** Takes it if nothing is wrong with it; else it is shown. */
  const perform = (operation: Operation): boolean => {
    const result = tryOut(operation)
    if (!result.ok || result.brought.length > 0) {
      ask({ of: lying, tried: result })
      return false
    }
    ask(null)
    move(null)
    tellGone(null)
    edit((d) => withPlan(d, result.after.plan))
    if (moving !== null) goTo({ id: moving })
    return true
  }
  return {
    tried: asked?.of === lying ? asked.tried : null,
    /** Told until it is back, or something else has been done. */
    gone: gone && !lying.layout.placed.some(({ id }) => id === gone.id) ? gone : null,
    moving,
    move,
    at,
    show: (tried: Tried | null): void => ask(tried && { of: lying, tried }),
    tryOut,
    perform,
    /** @param frame code of the new section's */
    add(hanging: Hanging, frame: string): void {
      const operation = addAt(lying, store.getState().design, hanging, frame)
      const { id } = operation.arm[0]!.item
      if (!perform(operation)) return
      set({ selection: id })
      goTo({ id })
    },
    remove(id: string): void {
      const result = tryOut({ kind: 'remove', id })
      if (!perform({ kind: 'remove', id }) || !result.ok) return
      set({ selection: null })
      goTo({ id: lying.plan.find((item) => item.id === id)!.on! })
      tellGone({ id, name: nameOf(t, lying, id), n: result.touched.length })
    },
  }
}
