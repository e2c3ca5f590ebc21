/**
 * Extras: bumpers, anchor posts and whatever else the shop sells, each on a free stretch of edge.
 *
 * Those with a place (`dock.placed`) go where the Design says. Those by count go by rule (ours): posts before the rest, from the
 * outermost section inward, one on each side a round, at the lakeward end of what is free; the other edges when the sides are full.
 * A post is put so that its tube is clear of the foot pads and of other frames.
 */
import type { Extra } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import { pointer } from '../design/pointer.ts'
import type { Edge } from '../dock.ts'
import { edgeLength, edgeOf, type Joints, type Layout, type PlacedSection } from '../layout/index.ts'
import { atLeast, SLACK } from '../numbers.ts'
import { PART_KINDS } from '../part-kinds.ts'
import { type EmitPart, frameTop, spread } from './emit-part.ts'
import { freeEdges, type Interval } from './free-edges.ts'
import type { LegSite, PlacedLeg } from './legs.ts'
import { blockedFor } from './post-room.ts'
import { headingOf, headingTurn } from './turn.ts'

export interface PlacedExtra {
  /** `bumper.1` */
  readonly id: string
  readonly extra: Extra
  readonly section: PlacedSection
  readonly edge: Edge
  readonly along: number
  /** On the edge; of a post its axis. */
  readonly x: number
  readonly y: number
  readonly nx: number
  readonly ny: number
  /** Of a post: bed there, the length that it needs, and the stock that has it. */
  readonly post: {
    readonly bed: number
    readonly required: number
    readonly stock: Extract<Extra, { place: 'post' }>['posts'][number] | null
  } | null
}

export interface Extras {
  readonly placed: readonly PlacedExtra[]
  readonly unknown: readonly { readonly code: string; readonly path: string }[]
  /** Asked for by count, without room. */
  readonly noRoom: readonly { readonly code: string; readonly missing: number }[]
  /** `dock.placed` entries whose section or stretch of edge is not there or not free. */
  readonly noPlace: readonly {
    readonly index: number
    readonly code: string
    readonly why: 'section' | 'edge' | 'taken'
  }[]
}

const NOTHING: readonly Interval[] = []

/** What goes where it may: each takes its stretch of free edge as it comes. */
interface Placing {
  readonly site: LegSite
  readonly layout: Layout
  readonly legs: readonly PlacedLeg[]
  readonly free: ReturnType<typeof freeEdges>
  /** Sections from the outermost inward. */
  readonly inward: readonly PlacedSection[]
  readonly placed: PlacedExtra[]
  /** Of each code so far. */
  readonly counts: Map<string, number>
}

export function placeExtras(
  layout: Layout,
  joints: Joints,
  legs: readonly PlacedLeg[],
  site: LegSite,
): Extras {
  const free = freeEdges(layout, joints)
  const inward = layout.placed.filter((p) => p.role !== 'ramp').reverse()
  const placing: Placing = { site, layout, legs, free, inward, placed: [], counts: new Map() }
  const { noPlace, unknown } = placeGiven(placing)
  const noRoom = placeCounted(placing)
  const { extras } = site.design.dock
  const unknownCounted = asked(extras)
    .filter(([code]) => !site.shop.extras.has(code))
    .map(([code]) => ({ code, path: `/dock/extras/${pointer(code)}` }))
  return { placed: placing.placed, unknown: [...unknown, ...unknownCounted], noRoom, noPlace }
}

const asked = (extras: Design['dock']['extras']): [code: string, count: number][] =>
  Object.entries(extras).filter(([, n]) => n > 0)

function add(
  { site: { design, shop, bed }, placed, counts }: Placing,
  extra: Extra,
  section: PlacedSection,
  edge: Edge,
  along: number,
): void {
  const n = (counts.get(extra.code) ?? 0) + 1
  counts.set(extra.code, n)
  const line = edgeOf(section, edge)
  const off = extra.place === 'post' ? extra.standoff : 0
  const x = line.x + line.dx * along + line.nx * off
  const y = line.y + line.dy * along + line.ny * off
  placed.push({
    id: `${extra.code}.${n}`,
    extra,
    section,
    edge,
    along,
    x,
    y,
    nx: line.nx,
    ny: line.ny,
    post: extra.place === 'post' ? fitPost(extra, design, shop, bed.bedAt(x, y)) : null,
  })
}

/** Those with a place. */
function placeGiven(placing: Placing): Pick<Extras, 'unknown' | 'noPlace'> {
  const { site, layout, free } = placing
  const { placed: given } = site.design.dock
  const unknown: Extras['unknown'][number][] = []
  const noPlace: Extras['noPlace'][number][] = []
  const byId = given?.length ? new Map(layout.placed.map((p) => [p.id, p])) : null
  for (const [index, item] of (given ?? []).entries()) {
    const extra = site.shop.extras.get(item.code)
    if (!extra) {
      unknown.push({ code: item.code, path: `/dock/placed/${index}` })
      continue
    }
    const section = byId?.get(item.section)
    if (!section || section.role === 'ramp') noPlace.push({ index, code: item.code, why: 'section' })
    else if (item.along > edgeLength(section, item.edge) + SLACK)
      noPlace.push({ index, code: item.code, why: 'edge' })
    else if (free.take(section, item.edge, item.along, extra.space))
      add(placing, extra, section, item.edge, item.along)
    else noPlace.push({ index, code: item.code, why: 'taken' })
  }
  return { unknown, noPlace }
}

/** Those by count, posts before the rest. */
function placeCounted(placing: Placing): Extras['noRoom'] {
  const { dock } = placing.site.design
  const noRoom: Extras['noRoom'][number][] = []
  for (const place of ['post', 'edge'] as const)
    for (const [code, wanted] of asked(dock.extras)) {
      const extra = placing.site.shop.extras.get(code)
      if (extra?.place !== place) continue
      const missing = placeAlike(placing, extra, wanted)
      if (missing > 0) noRoom.push({ code, missing })
    }
  return noRoom
}

/** So many of one extra, in rounds; gives how many found no room. */
function placeAlike(placing: Placing, extra: Extra, wanted: number): number {
  const { site, layout, legs, free, inward } = placing
  const first = site.design.dock.bracing?.first ?? 'left'
  const sides: Edge[] = first === 'left' ? ['left', 'right'] : ['right', 'left']
  const blocked = extra.place === 'post' ? blockedFor(extra, layout, legs, site.shop) : () => NOTHING
  let left = wanted
  for (const edges of [sides, ['end', 'start'] as Edge[]]) {
    // An edge without room has none later either: each is asked once more than it takes.
    let open = left > 0 ? inward.flatMap((section) => edges.map((edge) => ({ section, edge }))) : []
    while (left > 0 && open.length > 0) {
      const still: typeof open = []
      for (const at of open) {
        if (left === 0) break
        const { section, edge } = at
        // Sides from their lakeward end; start and end edges, which run from the left corner, from the side that goes first.
        const far = edge === 'left' || edge === 'right' || first === 'right'
        const along = free.takeEnd(section, edge, extra.space, far, () => blocked(section, edge))
        if (along === null) continue
        add(placing, extra, section, edge, along)
        left--
        still.push(at)
      }
      open = still
    }
  }
  return left
}

/** How deep a post goes into the bottom, m. */
export const embedOf = (extra: Extract<Extra, { place: 'post' }>, { rules }: Pick<Shop, 'rules'>): number =>
  extra.embed ?? rules.postEmbed

function fitPost(
  extra: Extract<Extra, { place: 'post' }>,
  design: Design,
  shop: Shop,
  bed: number,
): NonNullable<PlacedExtra['post']> {
  const required = design.dock.deckHeight + extra.above - bed + embedOf(extra, shop)
  const stock = [...extra.posts]
    .sort((a, b) => a.length - b.length)
    .find((post) => atLeast(post.length, required))
  return { bed, required, stock: stock ?? null }
}

export function emitExtra(emit: EmitPart, item: PlacedExtra, deck: number, shop: Shop): void {
  const { extra, id, section, x, y, nx, ny, post } = item
  const outward = headingTurn(headingOf(nx, ny))
  const top = deck + frameTop(shop)
  if (post?.stock && extra.place === 'post') {
    const z = post.bed - embedOf(extra, shop)
    emit(shop.type('anchor-post', post.stock.code), id, section, x, y, z, headingTurn(section.heading))
  }
  const depth = shop.shape(section.frame).depth + frameTop(shop)
  for (const part of extra.parts) {
    const type = shop.type(part.kind, part.code)
    const { frame } = PART_KINDS[part.kind]
    for (let i = 0; i < part.count; i++)
      switch (frame) {
        case 'post-at-bed':
          emit(type, id, section, x, y, post?.bed ?? 0, outward)
          break
        case 'post-at-rail': {
          const inward = headingTurn(headingOf(-nx, -ny))
          emit(type, id, section, x, y, top - (depth * (i + 0.5)) / part.count, inward)
          break
        }
        case 'edge-at-rail': {
          // They take turns in the boards of their extra, from the top down.
          const boards = extra.parts.find(({ kind }) => PART_KINDS[kind].frame === 'edge')
          const n = boards?.count || 1
          const aside = spread(i % n, n, n * (boards?.size[1] ?? 0))
          const row = Math.floor(i / n)
          const z = top - (depth * (row + 0.5)) / Math.ceil(part.count / n)
          emit(type, id, section, x - ny * aside, y + nx * aside, z, outward)
          break
        }
        case 'edge': {
          const aside = spread(i, part.count, part.count * part.size[1])
          emit(type, id, section, x - ny * aside, y + nx * aside, deck, outward)
          break
        }
        default:
          // Another frame of reference: how a piece lies in it must be said here.
          frame satisfies never
      }
  }
}
