/** Legs: where each stands, how high it is set, which stock length does. */
import type { Frame, LegStock, Pad } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import type { Corner } from '../dock.ts'
import { giveLegs } from '../existing/give-legs.ts'
import { ownedOf } from '../existing/owned.ts'
import type { Joints, Layout, PlacedSection } from '../layout/index.ts'
import { atLeast, atMost } from '../numbers.ts'
import { footingAt } from '../site/footing.ts'
import type { Bed } from '../site/index.ts'
import { cornerAxis } from './corner-piece.ts'

export interface PlacedLeg {
  readonly id: string
  readonly section: PlacedSection
  readonly corner: Corner
  /** Tube axis in plan, m. */
  readonly x: number
  readonly y: number
  /** What its pad stands on, m. */
  readonly bed: number
  readonly stock: LegStock | null
  /** How the stock was chosen. */
  readonly by: 'rule' | 'override' | 'existing'
  /** It is one of those owned already. */
  readonly owned: boolean
  readonly pad: Pad
}

/** What the heights and lengths of legs follow from: a kit has it. */
export interface LegSite {
  readonly design: Design
  readonly shop: Shop
  readonly bed: Bed
}

/** One-sided 95 % of a normal distribution (any table of it). */
const SIGMAS = 1.64

/** Leg axis in a section's own frame, along it from its start edge, m. Two numbers, asked for at every corner of a long dock. */
export const axisAlong = (frame: Frame, corner: Corner, { catalog }: Shop): number =>
  frame.turn
    ? cornerAxis(frame, corner, catalog.sleeve)[0]
    : corner.startsWith('end')
      ? frame.length - catalog.sleeve.along
      : catalog.sleeve.along

/** And across it from its center line, left positive, m. */
export const axisAcross = (frame: Frame, corner: Corner, { catalog }: Shop): number =>
  frame.turn
    ? cornerAxis(frame, corner, catalog.sleeve)[1]
    : (frame.width / 2 - catalog.sleeve.across) * (corner.endsWith('left') ? 1 : -1)

/** The foot pad that the Design asks for, or the catalog's first. */
const padOf = (design: Design, shop: Shop): Pad =>
  (design.dock.pad !== undefined ? shop.pads.get(design.dock.pad) : undefined) ?? shop.catalog.pads[0]!

const SUFFIX: Readonly<Record<Corner, string>> = {
  'start.left': '.start.left',
  'start.right': '.start.right',
  'end.left': '.end.left',
  'end.right': '.end.right',
}

/** A leg where every corner stands on one; the shortest stock that does, or the one asked for by hand. */
export function placeLegs(layout: Layout, joints: Joints, site: LegSite): PlacedLeg[] {
  const { design, shop, bed } = site
  const pad = padOf(design, shop)
  const { overrides } = design.dock
  const legs: PlacedLeg[] = []
  for (const section of layout.placed) {
    const corners = joints.legCorners[section.index]
    if (!corners) continue
    for (const corner of corners) {
      const ownX = axisAlong(section.frame, corner, shop)
      const ownY = axisAcross(section.frame, corner, shop)
      const x = section.x + section.c * ownX - section.s * ownY
      const y = section.y + section.s * ownX + section.c * ownY
      const id = section.id + SUFFIX[corner]
      const asked = overrides && Object.hasOwn(overrides, id) ? (overrides[id]!.stock ?? null) : null
      const chosen = asked === null ? null : stockOf(asked, shop)
      const at = bed.firmAt(x, y)
      const stock = chosen ?? shortest(requiredAt(x, y, at, pad, site), shop)
      const by = chosen ? 'override' : 'rule'
      legs.push({ id, section, corner, x, y, bed: at, stock, by, owned: false, pad })
    }
  }
  return withOwned(legs, site)
}

/** Owned legs where they fit: as they are chosen, or longer where neither that brings a brace nor they are remarked on for it. */
function withOwned(legs: PlacedLeg[], site: LegSite): PlacedLeg[] {
  const { design, shop } = site
  const { existing } = design.dock
  if (!existing) return legs
  const { known } = ownedOf(existing, shop)
  const lengths = shop.legs
  const stock = lengths.map(({ code }) => known.get(shop.type('leg', code)) ?? 0)
  if (!stock.some((n) => n > 0)) return legs
  const standing = legs.filter((leg) => leg.stock)
  const given = giveLegs(
    standing.map((leg) => {
      const least = lengths.indexOf(leg.stock!)
      let most = least
      while (leg.by === 'rule' && most + 1 < lengths.length && bears(leg, lengths[most + 1]!, site)) most++
      return { least, most }
    }),
    stock,
  )
  const owned = new Map(standing.map((leg, i) => [leg, lengths[given[i]!]]))
  return legs.map((leg) => {
    const piece = owned.get(leg)
    if (!piece) return leg
    return { ...leg, stock: piece, owned: true, by: piece === leg.stock ? leg.by : 'existing' }
  })
}

/** A longer leg in the place of the rule's. */
function bears(leg: PlacedLeg, stock: LegStock, site: LegSite): boolean {
  const { aboveDeckMax, braceFrom } = site.shop.rules
  return (
    atMost(aboveDeck({ ...leg, stock }, site)!, aboveDeckMax) &&
    (atLeast(leg.stock!.length, braceFrom) || !atLeast(stock.length, braceFrom))
  )
}

const stockOf = (length: number, { legs }: Shop): LegStock | null =>
  legs.find((leg) => Math.abs(leg.length - length) <= 0.001) ?? null

function shortest(required: number, { legs }: Shop): LegStock | null {
  for (const leg of legs) if (atLeast(leg.length, required)) return leg
  return null
}

/** What a leg's reserve is made of (common practice), m each. */
export interface ReserveParts {
  /** 1.64 sigma of the sounding. */
  readonly sounding: number
  /** What the water washes out at a leg, and what its pad sinks in, on that bottom. */
  readonly scour: number
  readonly sinkage: number
  /** How far the deck must go up for the lake's high level. */
  readonly rise: number
  /** The Design's own. */
  readonly added: number
}

function partsAt(x: number, y: number, pad: Pad, { design, shop, bed }: LegSite): ReserveParts {
  const bottom = footingAt(bed, x, y)
  return {
    sounding: SIGMAS * design.site.soundingError,
    scour: shop.catalog.rules.scour.value[bottom],
    sinkage: pad.sinkage[bottom],
    rise: riseOfDeck(design, shop),
    added: design.dock.reserve ?? 0,
  }
}

/**
 * How far a deck must go up from its planned height to keep the shop's margin over the high level, m; 0 where it stands high enough to be
 * left, and at most what the lake rises.
 */
function riseOfDeck({ dock, site }: Design, { rules }: Shop): number {
  const high = Math.max(0, site.levels.high)
  return Math.min(high, Math.max(0, high + rules.deckOverHigh - dock.deckHeight))
}

/** The shop's minimum, or the sum of its parts, whichever is more, m. */
function reserveAt(x: number, y: number, pad: Pad, site: LegSite): number {
  const { sounding, scour, sinkage, rise, added } = partsAt(x, y, pad, site)
  return Math.max(site.shop.rules.reserveMin, sounding + scour + sinkage + rise + added)
}

/**
 * What of a leg must stay over its deck once the bed under it is known, m: the shop's minimum and the part for the sounding are there to be
 * used up.
 */
export function mustStay({ x, y, pad }: Pick<PlacedLeg, 'x' | 'y' | 'pad'>, site: LegSite): number {
  const { scour, sinkage, rise, added } = partsAt(x, y, pad, site)
  return scour + sinkage + rise + added
}

/** The shortest length that does: length + sole >= set height + reserve, m. */
const requiredAt = (x: number, y: number, at: number, pad: Pad, site: LegSite): number =>
  site.design.dock.deckHeight - at + reserveAt(x, y, pad, site) - pad.sole

/** Sole of the foot pad to deck surface, m. */
export const setHeightOf = (leg: PlacedLeg, { design }: Pick<LegSite, 'design'>): number =>
  design.dock.deckHeight - leg.bed

export const reserveOf = (leg: PlacedLeg, site: LegSite): number => reserveAt(leg.x, leg.y, leg.pad, site)
export const reservePartsOf = (leg: PlacedLeg, site: LegSite): ReserveParts =>
  partsAt(leg.x, leg.y, leg.pad, site)

export const requiredOf = (leg: PlacedLeg, site: LegSite): number =>
  requiredAt(leg.x, leg.y, leg.bed, leg.pad, site)

/** What is left over the deck surface, m; null without a length. */
export const aboveDeck = (leg: PlacedLeg, site: Pick<LegSite, 'design'>): number | null =>
  leg.stock ? leg.stock.length + leg.pad.sole - setHeightOf(leg, site) : null
