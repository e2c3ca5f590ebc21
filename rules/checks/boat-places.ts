/** Where a boat could lie instead: for remedies of what is wrong with where it lies. */
import { lowLevel, underKeel } from '../clearance/keel.ts'
import type { PatchOperation, Remedy } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { type Berth, freeBerths, lying } from '../layout/berth.ts'
import type { PlacedSection } from '../layout/index.ts'
import { key, remedy, remove, replace, text } from './check.ts'

/** The free edge farthest out that a boat of `dock.boats` floats at, and that is `good` too; null where there is none. */
export function moved(
  kit: Kit,
  id: string,
  good: (berth: Berth<PlacedSection>) => boolean = () => true,
): Remedy | null {
  const { design, layout, bed } = kit
  const { boats = [] } = design.dock
  const index = boats.findIndex((one) => one.id === id)
  const boat = boats[index]
  if (!boat) return null
  const low = lowLevel(design.site.levels)
  const to = freeBerths(layout.placed, boat, lying(kit)).find(
    (berth) => underKeel(berth, bed, low) >= 0 && good(berth),
  )
  if (!to) return null
  const path = `/dock/boats/${index}`
  const patch: PatchOperation[] = [
    replace(`${path}/section`, to.section.id),
    replace(`${path}/edge`, to.edge),
    ...(boat.along === undefined ? [] : [remove(`${path}/along`)]),
  ]
  return remedy('move-boat', patch, { edge: key(to.edge), section: text(to.section.id) })
}
