/**
 * Extras: bumpers, anchor posts and whatever else the shop sells, each on a free stretch of edge.
 *
 * Those with a place (`dock.placed`) go where the Design says. Those by count go by rule (ours): posts before the rest, from the
 * outermost section inward, one on each side a round, at the lakeward end of what is free; the other edges when the sides are full.
 */
import type { Extra } from '../catalog/index.ts'
import type { Design } from '../design/index.ts'
import type { Edge, Placement } from '../dock.ts'
import { edgeOf, type Joints, type Layout, type Placed } from '../layout/index.ts'
import { atLeast, SLACK } from '../numbers.ts'
import type { Shop } from '../shop.ts'
import type { Bed } from '../site/index.ts'
import { frameTop, put, spread } from './put.ts'
import { headingOf, quarterTurn } from './turn.ts'

export interface PlacedExtra {
  /** `bumper.1` */
  readonly id: string
  readonly extra: Extra
  readonly section: Placed
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
  readonly noPlace: readonly { readonly index: number; readonly code: string; readonly why: 'section' | 'edge' | 'taken' }[]
}

type Interval = [from: number, to: number]

export function placeExtras(layout: Layout, joints: Joints, design: Design, shop: Shop, bed: Bed): Extras {
  const placed: PlacedExtra[] = []
  const unknown: { code: string; path: string }[] = []
  const noRoom: { code: string; missing: number }[] = []
  const noPlace: { index: number; code: string; why: 'section' | 'edge' | 'taken' }[] = []
  const counts = new Map<string, number>()
  const legged = layout.placed.filter((p) => p.role !== 'ramp')
  const free = freeEdges(layout, joints)

  const add = (extra: Extra, section: Placed, edge: Edge, along: number): void => {
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

  for (const [index, item] of (design.dock.placed ?? []).entries()) {
    const extra = shop.extras.get(item.code)
    if (!extra) {
      unknown.push({ code: item.code, path: `/dock/placed/${index}` })
      continue
    }
    const section = layout.byId.get(item.section)
    if (!section || section.role === 'ramp') noPlace.push({ index, code: item.code, why: 'section' })
    else if (item.along > edgeOf(section, item.edge).length + SLACK) noPlace.push({ index, code: item.code, why: 'edge' })
    else {
      const stretch: Interval = [item.along - extra.space / 2, item.along + extra.space / 2]
      if (take(free, section.id, item.edge, stretch)) add(extra, section, item.edge, item.along)
      else noPlace.push({ index, code: item.code, why: 'taken' })
    }
  }

  const first = design.dock.bracing?.first ?? 'left'
  const sides: Edge[] = first === 'left' ? ['left', 'right'] : ['right', 'left']
  const asked = Object.entries(design.dock.extras).filter(([, n]) => n > 0)
  for (const place of ['post', 'edge'] as const)
    for (const [code, wanted] of asked) {
      const extra = shop.extras.get(code)
      if (extra?.place !== place) continue
      let left = wanted
      for (const edges of [sides, ['end', 'start'] as Edge[]]) {
        let some = true
        while (left > 0 && some) {
          some = false
          for (let i = legged.length - 1; i >= 0 && left > 0; i--)
            for (const edge of edges) {
              if (left === 0) break
              const along = takeLast(free, legged[i]!.id, edge, extra.space)
              if (along === null) continue
              add(extra, legged[i]!, edge, along)
              left--
              some = true
            }
        }
      }
      if (left > 0) noRoom.push({ code, missing: left })
    }
  for (const [code] of asked) if (!shop.extras.has(code)) unknown.push({ code, path: `/dock/extras/${pointer(code)}` })
  return { placed, unknown, noRoom, noPlace }
}

/** A key within a JSON Pointer (RFC 6901). */
export const pointer = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1')

const stretchKey = (id: string, edge: Edge): string => `${id}.${edge}`

function freeEdges(layout: Layout, joints: Joints): Map<string, Interval[]> {
  const free = new Map<string, Interval[]>()
  for (const p of layout.placed)
    for (const edge of ['start', 'end', 'left', 'right'] as const)
      free.set(stretchKey(p.id, edge), [[0, edge === 'left' || edge === 'right' ? p.frame.length : p.frame.width]])
  for (const joint of joints.all) {
    take(free, joint.host.id, joint.edge, [joint.from, joint.to], true)
    // The same stretch, seen from the guest's own start corner.
    const on = edgeOf(joint.host, joint.edge)
    const own = edgeOf(joint.guest, joint.guestEdge)
    const at = (t: number): number =>
      (on.x + on.dx * t - own.x) * own.dx + (on.y + on.dy * t - own.y) * own.dy
    const [a, b] = [at(joint.from), at(joint.to)]
    take(free, joint.guest.id, joint.guestEdge, [Math.min(a, b), Math.max(a, b)], true)
  }
  return free
}

/** Takes a stretch out of what is free. False, and nothing taken, where it is not free (unless forced). */
function take(free: Map<string, Interval[]>, id: string, edge: Edge, [from, to]: Interval, force = false): boolean {
  const list = free.get(stretchKey(id, edge))!
  // An extra may hang over the end of an edge by up to half: only what lies on the edge must be free.
  const most = Math.max(...list.map((i) => i[1]), 0)
  const least = Math.min(...list.map((i) => i[0]), 0)
  const [a, b] = [Math.max(from, least), Math.min(to, most)]
  if (!force && !list.some((i) => i[0] <= a + SLACK && i[1] >= b - SLACK)) return false
  const rest: Interval[] = []
  for (const [p, q] of list) {
    if (q <= from + SLACK || p >= to - SLACK) rest.push([p, q])
    else {
      if (from - p > SLACK) rest.push([p, from])
      if (q - to > SLACK) rest.push([to, q])
    }
  }
  free.set(stretchKey(id, edge), rest)
  return true
}

/** Takes `space` at the far end of the last free stretch that has it; its middle, or null. */
function takeLast(free: Map<string, Interval[]>, id: string, edge: Edge, space: number): number | null {
  const list = free.get(stretchKey(id, edge))!
  for (let i = list.length - 1; i >= 0; i--) {
    const [from, to] = list[i]!
    if (!atLeast(to - from, space)) continue
    list[i] = [from, to - space]
    return to - space / 2
  }
  return null
}

function fitPost(
  extra: Extract<Extra, { place: 'post' }>,
  design: Design,
  shop: Shop,
  bed: number,
): NonNullable<PlacedExtra['post']> {
  const required = design.dock.deckHeight + extra.above - bed + shop.rules.postEmbed
  const stock = [...extra.posts].sort((a, b) => a.length - b.length).find((post) => atLeast(post.length, required))
  return { bed, required, stock: stock ?? null }
}

export function putExtra(out: Placement[], item: PlacedExtra, deck: number, shop: Shop): void {
  const { extra, id, section, x, y, nx, ny, post } = item
  const outward = quarterTurn(headingOf(nx, ny))
  const inward = quarterTurn(headingOf(-nx, -ny))
  if (post?.stock)
    put(out, 'anchor-post', post.stock.code, id, section.id, {
      x,
      y,
      z: post.bed - shop.rules.postEmbed,
      turn: quarterTurn(section.heading),
    })
  const depth = shop.shape(section.frame).depth + frameTop(shop)
  for (const part of extra.parts) {
    const offsets = spread(part.count, part.count * part.size[1])
    for (let i = 0; i < part.count; i++) {
      if (part.kind === 'auger') put(out, 'auger', part.code, id, section.id, { x, y, z: post?.bed ?? 0, turn: outward })
      else if (part.kind === 'post-clamp') {
        const z = deck + frameTop(shop) - (depth * (i + 0.5)) / part.count
        put(out, 'post-clamp', part.code, id, section.id, { x, y, z, turn: inward })
      } else {
        const aside = offsets[i]!
        put(out, part.kind, part.code, id, section.id, { x: x - ny * aside, y: y + nx * aside, z: deck, turn: outward })
      }
    }
  }
}
