/** Extras with a place of their own, as pure functions of the Design. */
import type { Design } from '../../../rules/index.ts'

export type Placed = NonNullable<Design['dock']['placed']>[number]

const withPlaced = (design: Design, placed: readonly Placed[]): Design => {
  const { placed: _, ...dock } = design.dock
  return { ...design, dock: placed.length === 0 ? dock : { ...dock, placed: [...placed] } }
}

export const addPlaced = (design: Design, one: Placed): Design =>
  withPlaced(design, [...(design.dock.placed ?? []), one])

export const movePlaced = (design: Design, index: number, along: number): Design =>
  withPlaced(
    design,
    (design.dock.placed ?? []).map((one, i) => (i === index ? { ...one, along } : one)),
  )

export const removePlaced = (design: Design, index: number): Design =>
  withPlaced(
    design,
    (design.dock.placed ?? []).filter((_, i) => i !== index),
  )
