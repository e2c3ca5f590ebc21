/** Legs: where each stands, how high it is set, which stock length does. */
import type { Frame, LegStock, Pad } from '../catalog/index.ts'
import type { Design } from '../design/index.ts'
import type { Corner } from '../dock.ts'
import type { Joints, Layout, Placed } from '../layout/index.ts'
import { atLeast } from '../numbers.ts'
import type { Shop } from '../shop.ts'
import type { Bed } from '../site/index.ts'

export interface PlacedLeg {
  readonly id: string
  readonly section: Placed
  readonly corner: Corner
  /** Tube axis in plan, m. */
  readonly x: number
  readonly y: number
  readonly bed: number
  readonly setHeight: number
  readonly reserve: number
  readonly required: number
  readonly stock: LegStock | null
  /** How the stock was chosen. */
  readonly by: 'rule' | 'override'
  readonly pad: Pad
}

/** One-sided 95 % of a normal distribution (any table of it). */
const SIGMAS = 1.64

/** Leg axis in a section's own frame, along it from its start edge, m. Two numbers, asked for at every corner of a long dock. */
export const axisAlong = (frame: Frame, corner: Corner, { catalog }: Shop): number =>
  corner.startsWith('end') ? frame.length - catalog.sleeve.along : catalog.sleeve.along

/** And across it from its center line, left positive, m. */
export const axisAcross = (frame: Frame, corner: Corner, { catalog }: Shop): number =>
  (frame.width / 2 - catalog.sleeve.across) * (corner.endsWith('left') ? 1 : -1)

/** The foot pad that the Design asks for, or the catalog's first. */
export const padOf = (design: Design, shop: Shop): Pad =>
  (design.dock.pad !== undefined ? shop.pads.get(design.dock.pad) : undefined) ?? shop.catalog.pads[0]!

/**
 * Set height = sole of the foot pad to deck surface = deck elevation - bed. Reserve = the shop's minimum, or 1.64 sigma of the
 * sounding + scour of that bottom + the Design's own, whichever is more. The shortest stock with length + sole >= set height +
 * reserve; null where none is long enough (common practice).
 */
export function placeLegs(layout: Layout, joints: Joints, design: Design, shop: Shop, bed: Bed): PlacedLeg[] {
  const deck = design.dock.deckHeight
  const pad = padOf(design, shop)
  const extra = SIGMAS * design.site.soundingError + (design.dock.reserve ?? 0)
  const scour = shop.catalog.rules.scour.value
  const overrides = design.dock.overrides ?? {}
  const legs: PlacedLeg[] = []
  for (const section of layout.placed) {
    for (const corner of joints.legCorners[section.index] ?? []) {
      const ownX = axisAlong(section.frame, corner, shop)
      const ownY = axisAcross(section.frame, corner, shop)
      const x = section.x + section.c * ownX - section.s * ownY
      const y = section.y + section.s * ownX + section.c * ownY
      const id = `${section.id}.${corner}`
      const at = bed.firmAt(x, y)
      const setHeight = deck - at
      const reserve = Math.max(shop.rules.reserveMin, extra + scour[bed.bottomAt(x, y)])
      const required = setHeight + reserve - pad.sole
      const asked = Object.hasOwn(overrides, id) ? overrides[id]!.stock : undefined
      const chosen =
        asked === undefined ? undefined : shop.legs.find((leg) => Math.abs(leg.length - asked) <= 0.001)
      legs.push({
        id,
        section,
        corner,
        x,
        y,
        bed: at,
        setHeight,
        reserve,
        required,
        stock: chosen ?? shop.legs.find((leg) => atLeast(leg.length, required)) ?? null,
        by: chosen ? 'override' : 'rule',
        pad,
      })
    }
  }
  return legs
}

export const aboveDeck = (leg: PlacedLeg): number | null =>
  leg.stock ? leg.stock.length + leg.pad.sole - leg.setHeight : null
