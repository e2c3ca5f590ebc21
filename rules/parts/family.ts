/** A part family: what there is of it in a dock, who carries its parts, and how each of its pieces is emitted. */
import type { PlacedSection } from '../layout/index.ts'
import type { EmitPart } from './emit-part.ts'

export interface Family<T> {
  /** In the order in which a dock lists them. */
  readonly all: readonly T[]
  /** Two of which this holds have the same parts, shared alike between the sections that carry them. */
  alike(a: T, b: T): boolean
  /** The sections that carry its parts: one twice, or two. */
  readonly carriers: { first(item: T): PlacedSection; second(item: T): PlacedSection }
  emit(emit: EmitPart, item: T): void
}

/** Names each family of a dock, one after the other. */
export type EachFamily = (take: <T>(family: Family<T>) => void) => void
