/** What is to be bought and packed: all parts, or those that are not owned already. */
import type { Dock, PartRow } from '../dock.ts'

export const newParts = ({ existing, parts }: Pick<Dock, 'existing' | 'parts'>): readonly PartRow[] =>
  existing ? existing.new : parts

/** Of what is new, minor units. */
export const newPrice = ({ existing, totals }: Pick<Dock, 'existing' | 'totals'>): number =>
  (existing ?? totals).price
