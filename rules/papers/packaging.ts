/** How a shop packs: what its catalog states, and what is taken where it states nothing. */
import type { Catalog } from '../catalog/index.ts'
import { grams } from '../numbers.ts'
import { kindsWith, type PartKind } from '../part-kinds.ts'

export interface Packaging {
  /** Most that one person carries, g. */
  readonly person: number
  /** Most in a bag, a carton, a bundle, g; a bag goes into a carton, so it is never more than that. */
  readonly bag: number
  readonly carton: number
  readonly bundle: number
  /** Most pieces in a bundle. */
  readonly pieces: number
  /** From this length on a piece is bundled, m. */
  readonly long: number
  readonly bundled: ReadonlySet<PartKind>
  readonly loose: ReadonlySet<PartKind>
}

/**
 * Common practice, no published source: two grown people carry 57 kg of dock between them. The load constant of the revised NIOSH lifting
 * equation (DHHS (NIOSH) 94-110) is 23 kg, under the best of conditions and for nearly everyone: what it makes of a lift is told beside.
 */
const WHERE_ABSENT = { person: 29, bag: 5, carton: 20, bundle: 23, pieces: 10, long: 1.2 } as const

export function packagingOf({ packing = {} }: Catalog): Packaging {
  const of = (name: keyof typeof WHERE_ABSENT): number => packing[name] ?? WHERE_ABSENT[name]
  const carton = grams(of('carton'))
  return {
    person: grams(of('person')),
    bag: Math.min(grams(of('bag')), carton),
    carton,
    bundle: grams(of('bundle')),
    pieces: of('pieces'),
    long: of('long'),
    bundled: new Set(packing.bundled ?? kindsWith('packing', 'bundle')),
    loose: new Set(packing.loose ?? kindsWith('packing', 'loose')),
  }
}
