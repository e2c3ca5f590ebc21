/** Bumpers lie where a boat does: those along the edge that it leaves go with it, as far along the other one. */
import type { Catalog, Design } from '../../../rules/index.ts'
import { berthsOf, type Moored } from '../../../rules/layout/berth.ts'
import { ownEdge } from '../../../rules/layout/place.ts'
import { quantize } from '../../../rules/numbers.ts'

type Placed = NonNullable<Design['dock']['placed']>[number]

/** @param after the same design with a boat at another edge; where another boat is left at the old one its bumpers stay */
export function bumpersAlong(
  before: Design,
  after: Design,
  placed: readonly Moored[],
  catalog: Catalog,
): Design {
  const items = after.dock.placed
  if (!items?.length) return after
  const codes = new Set(
    catalog.extras.filter(({ parts }) => parts.some(({ kind }) => kind === 'bumper')).map(({ code }) => code),
  )
  const [were, are] = [before, after].map(({ dock }) => berthsOf(dock, placed))
  const at = (berths: typeof were, item: Placed) =>
    berths!.find(({ section, edge }) => section.id === item.section && edge === item.edge)
  // The boat at the end may get a name of its own as it leaves; the list keeps its order.
  const movedTo = (item: Placed) => {
    const from = at(were, item)
    if (!codes.has(item.code) || !from || at(are, item)) return null
    return are!.find((one) => one.id === from.id) ?? are![were!.indexOf(from)] ?? null
  }
  return {
    ...after,
    dock: {
      ...after.dock,
      placed: items.map((item) => {
        const to = movedTo(item)
        if (!to) return item
        const from = at(were, item)!
        const share = item.along / ownEdge(from.section.frame, from.edge).length
        const along = quantize(share * ownEdge(to.section.frame, to.edge).length)
        return { ...item, section: to.section.id, edge: to.edge, along }
      }),
    },
  }
}
