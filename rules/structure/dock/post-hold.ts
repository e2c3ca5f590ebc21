/**
 * What one anchor post of a dock holds: by the soil where it stands, or by a pull that was measured.
 *
 * Where a firm bottom was sounded under clay or muck, and the post reaches into it, the better of the two counts: the soft ground over
 * the whole embedment, or the firm ground by itself (sand, since a rod tells no more), the load then as much higher over it.
 *
 * A measured pull counts as measured, nothing taken off: it is what the post was seen to hold. At another height it is taken to hold
 * the same moment about its tip; less deep in the ground, less by the cube of the depth; never more than the tube bends with.
 */
import type { BottomKind } from '../../catalog/index.ts'
import { sectionProperties } from '../../catalog/section-properties.ts'
import type { Kit } from '../../kit.ts'
import { embedOf, type PlacedExtra } from '../../parts/extras.ts'
import { pullOut, pushIn } from '../strength/helix.ts'
import { strengthsOfStock } from '../strength/member.ts'
import {
  type GroundSprings,
  groundGivesWay,
  groundSprings,
  lateralHold,
  type Post,
  SOIL_SAFETY,
} from '../strength/post.ts'
import { SOILS, type Soil, soilOf } from '../strength/soil.ts'

export interface PostHold {
  /** Allowable, sideways in any direction, at the clamp's height, N. */
  readonly lateral: number
  /** The clamp over the bed at the post (the rails' mid height, as the frame has it), m. */
  readonly height: number
  /**
   * Where both springs stand: m under the bed at the post (`extra.post.bed - depth`), or under the clamp where that is in the ground, on
   * the post's axis. The tube goes on from the clamp to there; its tip is held by nothing but them: kLateral in x and in y, kTurn about
   * x and about y; up and down the clamp slides, and nothing turns the post about its own axis (hold both at the node). Both 0: the post
   * holds nothing, leave it out.
   */
  readonly depth: number
  /** N/m. */
  readonly kLateral: number
  /** N·m/rad. */
  readonly kTurn: number
  /** Allowable pull out of the ground and push into it, N. The clamps of a post slide: neither carries the deck. */
  readonly up: number
  readonly down: number
  readonly basis: 'soil' | 'measured' | 'none'
  /** The bottom whose soil it goes by; null for none. */
  readonly soil: BottomKind | null
}

type Where = Pick<Kit, 'bed' | 'shop' | 'design'>
interface Pull {
  readonly force: number
  readonly height: number
  readonly embedment?: number | undefined
  readonly movement?: number | undefined
}

/** `extra` as placed; nothing is held by one that is no post or has no stock length. Pure; no error. */
export function postHold(kit: Where, extra: PlacedExtra): PostHold {
  const height = clampOver(kit, extra)
  const nothing = { lateral: 0, height, depth: 0, kLateral: 0, kTurn: 0, up: 0, down: 0 }
  const post = tubeOf(kit, extra, height)
  if (!post) return { ...nothing, basis: 'none', soil: null }
  const { catalog } = kit.shop
  const bottom = kit.bed.bottomAt(extra.x, extra.y)
  const soft = soilOf(catalog, bottom)
  const held = soft && inGround(kit, extra, soft, post, height)
  const axial = soft ? alongPost(kit, extra, soft, post) : { up: 0, down: 0 }
  const pull = pullAt(kit, extra, bottom)
  if (!pull && !(held && held.lateral > 0)) return { ...nothing, basis: 'none', soil: soft ? bottom : null }
  const springs = held?.springs ?? groundSprings(SOILS.sand, post)
  const { lateral, scale } = pull
    ? { lateral: byPull(pull, post, height), scale: scaleOf(pull, post, springs) }
    : { lateral: held!.lateral, scale: 1 }
  return {
    lateral,
    height,
    depth: springs.depth,
    kLateral: springs.lateral * scale,
    kTurn: springs.turn * scale,
    ...axial,
    basis: pull ? 'measured' : 'soil',
    soil: soft ? (held!.firm ? 'sand' : bottom) : null,
  }
}

/** The clamp over the bed, m: the rails' mid height. */
function clampOver({ shop, design }: Where, { section, post }: PlacedExtra): number {
  const { catalog } = shop
  const rail = sectionProperties(catalog.stock[section.frame.rail]!).height
  return Math.max(0, design.dock.deckHeight - catalog.decking.rise - rail / 2 - (post?.bed ?? 0))
}

function tubeOf({ shop }: Where, { extra, post }: PlacedExtra, height: number): Post | null {
  if (!post?.stock || extra.place !== 'post') return null
  const { catalog } = shop
  const stock = catalog.stock[post.stock.stock]!
  const embed = embedOf(extra, shop)
  const strengths = strengthsOfStock(catalog, post.stock.stock, { length: height + embed })
  const strength = catalog.materials[stock.material]!.strength
  if (!strengths || !strength) return null
  const { Iy, Iz, width, height: high } = sectionProperties(stock)
  return {
    diameter: Math.min(width, high),
    embed,
    moment: Math.min(strengths.momentY.value, strengths.momentZ.value),
    EI: strength.E * Math.min(Iy, Iz),
  }
}

/** Soft ground over firm, m: Infinity where the post never comes to firm ground, or stands in ground that is as good all down. */
function softOver({ bed }: Where, { x, y, post }: PlacedExtra, soil: Soil): number {
  if (soil.kind === 'granular') return Number.POSITIVE_INFINITY
  const over = post!.bed - bed.firmAt(x, y)
  return over > 0 ? over : Number.POSITIVE_INFINITY
}

function inGround(
  kit: Where,
  extra: PlacedExtra,
  soil: Soil,
  post: Post,
  height: number,
): { lateral: number; springs: GroundSprings; firm: boolean } {
  const lateral = lateralHold(soil, post, height)
  const soft = softOver(kit, extra, soil)
  if (soft < post.embed) {
    const sand = soilOf(kit.shop.catalog, 'sand')!
    const below = { ...post, embed: post.embed - soft }
    const firm = lateralHold(sand, below, height + soft)
    if (firm > lateral) {
      const springs = groundSprings(sand, below)
      return { lateral: firm, springs: { ...springs, depth: springs.depth + soft }, firm: true }
    }
  }
  return { lateral, springs: groundSprings(soil, post), firm: false }
}

function alongPost(
  kit: Where,
  placed: PlacedExtra,
  soil: Soil,
  { diameter, embed }: Post,
): { up: number; down: number } {
  const helix = placed.extra.place === 'post' ? placed.extra.helix : undefined
  const deep = embed - (helix?.above ?? 0)
  const soft = softOver(kit, placed, soil)
  const best = (hold: (soil: Soil, deep: number) => number): number => {
    const here = hold(soil, deep)
    const firm = soft < deep ? hold(soilOf(kit.shop.catalog, 'sand')!, deep - soft) : 0
    return Math.max(here, firm) / SOIL_SAFETY
  }
  return {
    up: helix ? best((s, d) => pullOut(s, helix.diameter, d)) : 0,
    down: best((s, d) => pushIn(s, helix?.diameter ?? diameter, d)),
  }
}

/** The pull that stands for this post: measured at the dock on such a bottom, else by the shop. */
function pullAt({ design, bed }: Where, { extra, x, y }: PlacedExtra, bottom: BottomKind): Pull | null {
  const here = design.site.postPull
  if (here && (here.bottom ?? design.site.bottom) === bed.bottomAt(x, y)) return here
  return (extra.place === 'post' && extra.pull?.[bottom]) || null
}

function byPull({ force, height: at, embedment }: Pull, post: Post, height: number): number {
  const shallower = embedment ? Math.min(1, post.embed / embedment) ** 3 : 1
  const moved = (force * shallower * (at + post.embed)) / (height + post.embed)
  // The tube bends most somewhere in the ground: no deeper than half way, or it could not be held from below.
  return Math.min(moved, post.moment / (height + post.embed / 2))
}

/** Springs as many times as stiff as told by how far the head moved, less what the tube itself bent; 1 where that was not measured. */
function scaleOf({ force, height, movement }: Pull, { EI }: Post, springs: GroundSprings): number {
  if (movement === undefined || force <= 0 || springs.lateral <= 0) return 1
  const bent = (force * (height + springs.depth) ** 3) / (3 * EI)
  const ground = movement - bent
  return ground > 0 ? (force * groundGivesWay(springs, height)) / ground : 1
}
