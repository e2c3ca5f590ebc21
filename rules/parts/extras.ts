/**
 * Extras: bumpers, anchor posts and whatever else the shop sells, each on a free stretch of edge.
 *
 * Those with a place (`dock.placed`) go where the Design says. Those by count go by rule (ours): posts before the rest, from the
 * outermost section inward, one on each side a round, at the lakeward end of what is free; the other edges when the sides are full.
 */
import type { Extra } from '../catalog/index.ts'
import type { Design } from '../design/index.ts'
import { pointer } from '../design/pointer.ts'
import type { Edge } from '../dock.ts'
import { edgeOf, type Joints, type Layout, type Placed, type PlacedJoint } from '../layout/index.ts'
import { atLeast, SLACK } from '../numbers.ts'
import type { Shop } from '../shop.ts'
import type { Bed } from '../site/index.ts'
import { frameTop, type Put, spread } from './put.ts'
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
  readonly noPlace: readonly {
    readonly index: number
    readonly code: string
    readonly why: 'section' | 'edge' | 'taken'
  }[]
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
  const byId = design.dock.placed?.length ? new Map(layout.placed.map((p) => [p.id, p])) : null

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
    const section = byId?.get(item.section)
    if (!section || section.role === 'ramp') noPlace.push({ index, code: item.code, why: 'section' })
    else if (item.along > edgeLength(section, item.edge) + SLACK)
      noPlace.push({ index, code: item.code, why: 'edge' })
    else if (take(free(section, item.edge), item.along, extra.space, edgeLength(section, item.edge)))
      add(extra, section, item.edge, item.along)
    else noPlace.push({ index, code: item.code, why: 'taken' })
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
              // Sides from their lakeward end; start and end edges, which run from the left corner, from the side that goes first.
              const far = edge === 'left' || edge === 'right' || first === 'right'
              const along = takeEnd(free(legged[i]!, edge), extra.space, far)
              if (along === null) continue
              add(extra, legged[i]!, edge, along)
              left--
              some = true
            }
        }
      }
      if (left > 0) noRoom.push({ code, missing: left })
    }
  for (const [code] of asked)
    if (!shop.extras.has(code)) unknown.push({ code, path: `/dock/extras/${pointer(code)}` })
  return { placed, unknown, noRoom, noPlace }
}

type FreeOf = (p: Placed, edge: Edge) => { list: Interval[] }

/** Free stretches by section and edge, worked out when first asked: most edges of a long dock never are. */
function freeEdges(layout: Layout, joints: Joints): FreeOf {
  const known = new Map<string, { list: Interval[] }>()
  let jointsOf: ((p: Placed) => Iterable<PlacedJoint>) | null = null
  return (p, edge) => {
    const key = `${p.id}.${edge}`
    let free = known.get(key)
    if (free) return free
    free = { list: [[0, edgeLength(p, edge)]] }
    known.set(key, free)
    jointsOf ??= jointsBySection(layout, joints)
    for (const joint of jointsOf(p)) {
      if (joint.host === p && joint.edge === edge) cut(free, joint.from, joint.to)
      if (joint.guest === p && joint.guestEdge === edge) {
        // The same stretch, seen from the guest's own start corner.
        const on = edgeOf(joint.host, joint.edge)
        const own = edgeOf(p, edge)
        const at = (t: number): number =>
          (on.x + on.dx * t - own.x) * own.dx + (on.y + on.dy * t - own.y) * own.dy
        const [a, b] = [at(joint.from), at(joint.to)]
        cut(free, Math.min(a, b), Math.max(a, b))
      }
    }
    return free
  }
}

const edgeLength = (p: Placed, edge: Edge): number =>
  edge === 'left' || edge === 'right' ? p.frame.length : p.frame.width

/** A section's joints, in the order of them all: kept as linked lists, for there is a joint a section. */
function jointsBySection({ placed }: Layout, { all }: Joints): (p: Placed) => Iterable<PlacedJoint> {
  const first = new Int32Array((placed.at(-1)?.index ?? -1) + 1).fill(-1)
  // The next joint of a joint's host, then of its guest.
  const next = new Int32Array(2 * all.length)
  for (let i = all.length - 1; i >= 0; i--) {
    const { host, guest } = all[i]!
    next[2 * i] = first[host.index]!
    next[2 * i + 1] = first[guest.index]!
    first[host.index] = i
    first[guest.index] = i
  }
  return function* (p) {
    for (let i = first[p.index]!; i >= 0; i = next[all[i]!.host === p ? 2 * i : 2 * i + 1]!) yield all[i]!
  }
}

function cut(free: { list: Interval[] }, from: number, to: number): void {
  const rest: Interval[] = []
  for (const [p, q] of free.list) {
    if (q <= from + SLACK || p >= to - SLACK) rest.push([p, q])
    else {
      if (from - p > SLACK) rest.push([p, from])
      if (q - to > SLACK) rest.push([to, q])
    }
  }
  free.list = rest
}

/** Takes a stretch about `along`, if that is free. What hangs over the end of the edge need not be. */
function take(free: { list: Interval[] }, along: number, space: number, length: number): boolean {
  const from = Math.max(0, along - space / 2)
  const to = Math.min(length, along + space / 2)
  if (!free.list.some((i) => i[0] <= from + SLACK && i[1] >= to - SLACK)) return false
  cut(free, from, to)
  return true
}

/** Takes `space` at one end of what is free; its middle, or null. */
function takeEnd({ list }: { list: Interval[] }, space: number, far: boolean): number | null {
  for (let k = 0; k < list.length; k++) {
    const i = far ? list.length - 1 - k : k
    const [from, to] = list[i]!
    if (!atLeast(to - from, space)) continue
    list[i] = far ? [from, to - space] : [from + space, to]
    return far ? to - space / 2 : from + space / 2
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
  const stock = [...extra.posts]
    .sort((a, b) => a.length - b.length)
    .find((post) => atLeast(post.length, required))
  return { bed, required, stock: stock ?? null }
}

export function putExtra(put: Put, item: PlacedExtra, deck: number, shop: Shop): void {
  const { extra, id, section, x, y, nx, ny, post } = item
  const outward = quarterTurn(headingOf(nx, ny))
  const top = deck + frameTop(shop)
  if (post?.stock) {
    const z = post.bed - shop.rules.postEmbed
    put(shop.type('anchor-post', post.stock.code), id, section, x, y, z, quarterTurn(section.heading))
  }
  const depth = shop.shape(section.frame).depth + frameTop(shop)
  for (const part of extra.parts) {
    const type = shop.type(part.kind, part.code)
    for (let i = 0; i < part.count; i++) {
      if (part.kind === 'auger') put(type, id, section, x, y, post?.bed ?? 0, outward)
      else if (part.kind === 'post-clamp') {
        const inward = quarterTurn(headingOf(-nx, -ny))
        put(type, id, section, x, y, top - (depth * (i + 0.5)) / part.count, inward)
      } else {
        const aside = spread(i, part.count, part.count * part.size[1])
        put(type, id, section, x - ny * aside, y + nx * aside, deck, outward)
      }
    }
  }
}
