/** What other choices would add to the price: each is placed as it would be, when the page is idle. */
import { useEffect, useState } from 'react'
import type { Catalog, Design } from '../../rules/index.ts'
import { placedHere } from '../assessment/assess.ts'
import { amountOf } from '../panel/price.ts'
import { whenIdle } from '../platform/idle.ts'
import { tooLarge } from '../state/placing-time.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'

type Change = (design: Design) => Design

/** Minor units, by the name of the choice; one that cannot be placed is left out. */
function addedBy(
  changes: ReadonlyMap<string, Change>,
  design: Design,
  catalog: Catalog,
): ReadonlyMap<string, number> {
  const amount = (of: Design): number => amountOf(placedHere(of, catalog).dock, catalog)
  const now = amount(design)
  return new Map(
    [...changes].flatMap(([name, change]) => {
      try {
        return [[name, amount(change(design)) - now] as const]
      } catch {
        return []
      }
    }),
  )
}

/**
 * Told as money with its sign; null while it is not known, where it changes nothing, and where the dock is too large to be placed so often.
 * @param changes of which each is a choice; must stay the same while the catalog does
 */
export function useAdded(changes: ReadonlyMap<string, Change>): (name: string) => string | null {
  const { money, lined } = useWords()
  // While the hand moves nobody reads it.
  const design = useLeadline((s) => (s.dragging || !lined ? null : s.design))
  const catalog = useLeadline((s) => s.catalog)
  const [added, setAdded] = useState<ReadonlyMap<string, number>>(new Map())
  useEffect(() => {
    if (!design) return
    if (tooLarge(design, [])) {
      setAdded(new Map())
      return
    }
    let over = false
    whenIdle(() => {
      if (!over) setAdded(addedBy(changes, design, catalog))
    })
    return () => {
      over = true
    }
  }, [changes, design, catalog])
  return (name) => {
    const by = lined ? (added.get(name) ?? 0) : 0
    return by === 0 ? null : `${by > 0 ? '+' : ''}${money(by)}`
  }
}
