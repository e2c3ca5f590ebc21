/** Edits of what is owned already. A part of which there is none is left out, and so is the whole of nothing. */
import type { ExistingParts } from '../../../rules/existing/owned.ts'
import type { Design } from '../../../rules/index.ts'

export function setExisting(design: Design, existing: ExistingParts | null): Design {
  const { existing: _, ...dock } = design.dock
  const some = existing && Object.values(existing).some((part) => part !== undefined)
  return { ...design, dock: some ? { ...dock, existing } : dock }
}

export function setOwnedFrames(design: Design, code: string, count: number): Design {
  const { sections, ...rest } = design.dock.existing ?? {}
  const { [code]: _, ...others } = sections ?? {}
  const now = count > 0 ? { ...others, [code]: count } : others
  return setExisting(design, Object.keys(now).length > 0 ? { ...rest, sections: now } : rest)
}

/** `stock`: length, m. */
export function setOwnedLegs(design: Design, stock: number, count: number): Design {
  const { legs = [], ...rest } = design.dock.existing ?? {}
  const others = legs.filter((one) => !sameLength(one.stock, stock))
  const now = count > 0 ? [...others, { stock, count }].sort((a, b) => a.stock - b.stock) : others
  return setExisting(design, now.length > 0 ? { ...rest, legs: now } : rest)
}

export const ownedLegs = ({ dock }: Design, stock: number): number =>
  (dock.existing?.legs ?? []).reduce((sum, one) => sum + (sameLength(one.stock, stock) ? one.count : 0), 0)

const sameLength = (a: number, b: number): boolean => Math.abs(a - b) <= 0.001
