/** One leg's place as it is told at its station. */
import type { LegStock } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import { normalBelow } from '../fit/normal.ts'
import type { LegPlace } from '../leg-places.ts'
import { atLeast, SLACK } from '../numbers.ts'
import { padHeight } from '../parts/bodies.ts'
import type { PlacedLeg } from '../parts/legs.ts'
import { enoughOf } from './assign-legs.ts'
import type { Asked } from './legs-at-hand.ts'
import type { AssignPlace, BraceAt, Heights, LegAt, LegSet, Limit, LimitReason, StockAt } from './types.ts'

export interface AtLeg extends Pick<LegAt, 'prior' | 'expected' | 'others' | 'measured' | 'depth'> {
  readonly leg: PlacedLeg
  readonly stock: LegStock | null
  readonly asked: Asked
  readonly place: AssignPlace
  readonly number: number
  readonly where: LegPlace
  readonly out: number
  readonly set: LegSet | null
  readonly brace: BraceAt | null
  readonly along: BraceAt | null
  readonly shop: Shop
  readonly deckHeight: number
}

export function legAt(at: AtLeg): LegAt {
  const { leg, asked, place, shop, stock, expected } = at
  const { prior, others, measured, depth, number, where, out, set, brace, along } = at
  const heights = heightsOf(asked, stock, shop)
  const room = heights.aboveDeck === null ? Number.NEGATIVE_INFINITY : heights.aboveDeck - asked.stays
  return {
    leg: leg.id,
    number,
    section: leg.section.id,
    place: where,
    ...{ out, prior, expected, others, measured, depth, set, heights },
    more: asked.setHeight - (at.deckHeight - leg.bed),
    stock: stockAt(stock),
    planned: stockAt(leg.stock),
    enough: enoughOf(place, stock?.length ?? null),
    chance: expected.sd > 0 ? normalBelow((room + SLACK) / expected.sd) : room >= -SLACK ? 1 : 0,
    needs: stockAt(shop.legs.find(({ length }) => atLeast(length, place.least)) ?? null),
    brace,
    along,
    limit: limitOf(at),
  }
}

const stockAt = (stock: LegStock | null): StockAt | null =>
  stock && { code: stock.code, length: stock.length }

function heightsOf({ setHeight, sole }: Asked, stock: LegStock | null, { catalog }: Shop): Heights {
  const { rise } = catalog.decking
  const frame = setHeight - rise
  const aboveDeck = stock ? stock.length + sole - setHeight : null
  return {
    deck: setHeight,
    frame,
    fromSole: frame,
    fromTop: aboveDeck === null ? null : aboveDeck + rise,
    aboveDeck,
    sole,
  }
}

/** Besides three standard deviations, m: less is not worth a second measurement. Judgment. */
const ROUGH = 0.05

function limitOf({ measured, others, place, stock, brace, leg, asked, shop }: AtLeg): Limit {
  const again = measured?.again === true
  const enough = enoughOf(place, stock?.length ?? null)
  const sounded = measured !== null && measured.how !== 'as-planned'
  const differs = sounded && Math.abs(measured.depth - others.depth) > 3 * others.sd + ROUGH
  const hard: LimitReason[] = [
    // What was measured twice is believed.
    ...(differs && !again ? (['differs'] as const) : []),
    ...(enough === 'no' ? (['no-leg'] as const) : enough === 'reserve' ? (['on-reserve'] as const) : []),
    ...(brace ? braceReasons(brace) : []),
    ...(asked.setHeight < shop.shape(leg.section.frame).lowest + padHeight(leg.pad) - SLACK
      ? (['frame-in-bed'] as const)
      : []),
  ]
  const changed = stock !== null && stock.code !== place.ready
  const other: LimitReason[] = changed ? ['other-leg'] : []
  const tall: LimitReason[] =
    stock !== null && stock.length > place.reaches + shop.rules.aboveDeckMax + SLACK ? ['tall'] : []
  if (hard.length > 0)
    return { say: again ? 'stop-and-call' : 'measure-again', reasons: [...hard, ...other, ...tall] }
  const soft: LimitReason[] = [...(differs ? (['differs'] as const) : []), ...other, ...tall]
  return { say: changed ? 'other-leg' : 'go', reasons: soft }
}

function braceReasons({ fits, planned }: BraceAt): LimitReason[] {
  if (fits === 'none') return ['brace-none']
  if (fits === 'other') return [planned === null ? 'brace-missing' : 'brace-other']
  return []
}
