/** Placements of one kind and code: they have one shape. */
import type { PartKind, Placement } from '../../../rules/index.ts'
import type { Shape } from './shape.ts'

export interface PartGroup {
  readonly key: string
  readonly kind: PartKind
  readonly placements: readonly Placement[]
  readonly shape: Shape
}
