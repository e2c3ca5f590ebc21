/** What a check of the structure sees: the kit, its waves, and what the loads do to it. */
import type { Catalog } from '../../catalog/index.ts'
import { deckUp } from '../../deck-step.ts'
import type { Figure, PatchOperation, Remedy, Severity, Structure, Waves } from '../../dock.ts'
import type { Kit } from '../../kit.ts'
import { lying } from '../../layout/berth.ts'
import { quantize } from '../../numbers.ts'
import { braceAlong } from '../../parts/along.ts'
import { setHeightOf } from '../../parts/legs.ts'
import { crestOf } from '../../site/waves/crest.ts'
import { inDepth, trainsOf } from '../../site/waves/trains.ts'
import { bumperAt } from '../../structure/dock/boat.ts'
import { loadCaseOf } from '../../structure/dock/load-cases.ts'
import { SOFTENED } from '../../structure/dock/soften.ts'
import { type Found, key, meters, number, remedy, replace, text } from '../check.ts'

export interface Stood {
  readonly kit: Kit
  readonly waves: Waves | null
  readonly structure: Structure
}

export interface StructureCheck {
  readonly code: string
  readonly severity: Severity
  readonly basis: string
  find(stood: Stood): readonly Found[]
}

/** Judgment, said where a limit is ours. */
export const OURS = 'Judgment, no published source'

const add = (path: string, value: unknown): PatchOperation => ({ op: 'add', path, value })

/** Two more anchor posts, where the bottom takes them and the shop sells any. How many are enough is found by trying (`remedies/`). */
export const morePosts = (kit: Kit): Remedy | null => {
  const post = postOf(kit)
  return post && withPosts(kit, (kit.design.dock.extras[post.code] ?? 0) + 2)
}

/** What there is to be said of posts here: that they hold, or that the bottom takes none, or holds next to none. */
export function holdIn({ design, bed, legs }: Kit): Figure {
  const bottoms = legs.map((leg) => bed.bottomAt(leg.x, leg.y))
  if (bottoms.includes('rock')) return key('rock')
  const isSoft = bottoms.every((bottom) => bottom === 'muck') && !design.site.postPull
  return key(isSoft ? 'muck' : 'posts')
}

/** So many of them, by rule. */
export function withPosts(kit: Kit, posts: number): Remedy | null {
  const post = postOf(kit)
  return (
    post &&
    remedy(
      'more-posts',
      [add(`/dock/extras/${post.code.replaceAll('~', '~0').replaceAll('/', '~1')}`, posts)],
      { posts: number(posts) },
    )
  )
}

function postOf({ shop, bed, legs }: Kit): Catalog['extras'][number] | null {
  const post = shop.catalog.extras.find((extra) => extra.place === 'post')
  return post && !legs.some((leg) => bed.bottomAt(leg.x, leg.y) === 'rock') ? post : null
}

/** Two bumpers along the edge that a boat lies at, where none takes up its bump yet: dock and bumper give as springs in a row. */
function bumpers(kit: Kit): Remedy | null {
  const { design, shop } = kit
  const { placed } = design.dock
  const soft = shop.catalog.extras.find(
    ({ place, parts }) =>
      place === 'edge' && parts.some(({ kind, stiffness }) => kind === 'bumper' && stiffness),
  )
  const bare = lying(kit).filter((berth) => bumperAt({ kit }, berth) === null)
  if (!soft || bare.length === 0) return null
  const items = bare.flatMap(({ section, edge, line }) =>
    [0.25, 0.75].map((part) => ({
      code: soft.code,
      section: section.id,
      edge,
      along: quantize(part * line.length),
    })),
  )
  return remedy('bumpers', [add('/dock/placed', [...(placed ?? []), ...items])])
}

/** What a boat that comes in does is taken up where it does; all else is held by posts. */
export const againstPush = (kit: Kit, name: string): Remedy | null =>
  (loadCaseOf(name)?.act === 'boat' ? bumpers(kit) : null) ?? morePosts(kit)

/** The shop's pad with the largest plate, where it is larger than the one that is used. */
export function largerPad({ design, shop }: Kit): Remedy | null {
  const area = (pad: Catalog['pads'][number]): number => pad.plate.length * pad.plate.width
  const pads = shop.catalog.pads
  const now = pads.find((pad) => pad.code === design.dock.pad) ?? pads[0]!
  const best = pads.reduce((most, pad) => (area(pad) > area(most) ? pad : most))
  if (area(best) <= area(now)) return null
  return remedy('mud-pads', [add('/dock/pad', best.code)], { pad: text(best.name) })
}

/** A brace that the Design leaves out, put back. */
export function braceAgain({ design }: Kit, pair: string): Remedy | null {
  const none = design.dock.bracing?.none ?? []
  if (!none.includes(pair)) return null
  return remedy('put-brace', [
    replace(
      '/dock/bracing/none',
      none.filter((id) => id !== pair),
    ),
  ])
}

/** Braces lengthwise, or more of them, where the shop has such and one more of them fits. Whether that is enough is found by trying. */
export function braceAlongToo({ design, shop, bed, layout, legs, pairs }: Kit): Remedy | null {
  const { bracing } = design.dock
  const now = pairs.filter(({ pair, fit }) => pair.along && fit).length
  const across = pairs.filter(({ pair }) => !pair.along)
  const wishes = (['last', 'all'] as const).slice(bracing?.along === 'last' ? 1 : 0)
  for (const along of bracing?.along === 'all' ? [] : wishes) {
    const asked = { ...design, dock: { ...design.dock, bracing: { ...bracing, along } } }
    const fits = braceAlong(layout.placed, legs, across, { design: asked, shop, bed }).filter(
      ({ fit }) => fit,
    )
    if (fits.length > now) return remedy('brace-along', [add('/dock/bracing', { ...bracing, along })])
  }
  return null
}

/** The run ends before a section that is too much for the shop's parts. */
export function endBefore({ design, layout }: Kit, section: string): Remedy | null {
  const { sections, plan } = design.dock
  const n = Number(/^s(\d+)$/.exec(section)?.[1])
  if (plan || sections === undefined || !(n > 1) || n > sections) return null
  // A run without a section on legs is no dock.
  const least = layout.ramp ? 2 : 1
  return n - 1 < least
    ? null
    : remedy('fewer-sections', [replace('/dock/sections', n - 1)], { sections: number(n - 1) })
}

/** Factors of linear buckling: under the first the frame has no second-order answer and is not to be built, under the second told. */
export const BUCKLING = { stop: SOFTENED, note: 3 } as const

export const SWAY =
  'A shove of 890 N at the softest corner; what is felt after Sétra, Technical guide on footbridges (2006), from memory. Judgment'
export const COMBINED = 'Load combinations of ASCE 7-16 2.4.1 (from memory), feet that bear and do not pull'
export const FRICTION =
  'Sliding resistance of International Building Code 2018 table 1806.2, as guidance; posts by Broms 1964, in the soil where they stand'

/** The legs with the longest way between bed and deck. */
export function longestLegs(kit: Kit): string[] {
  const most = kit.legs.reduce((high, leg) => Math.max(high, setHeightOf(leg, kit)), 0)
  return kit.legs.filter((leg) => setHeightOf(leg, kit) > most - 0.05).map((leg) => leg.id)
}

/** The deck so high that the underside of its planks clears an elevation, to the next height that is read. */
function raiseToClear({ shop }: Kit, elevation: number): Remedy {
  const height = deckUp(elevation + shop.catalog.decking.rise)
  return remedy('raise-deck', [replace('/dock/deckHeight', height)], { height: meters(height) })
}

/** The deck so high that no crest of the highest waves, or of a wake, reaches its planks at the high level. */
export function raiseOverCrests(kit: Kit, waves: Waves): Remedy {
  const high = Math.max(0, kit.design.site.levels.high)
  const crest = trainsOf(waves, 'highest').reduce((most, train) => {
    const wave = inDepth(train, waves.depth + high)
    return wave ? Math.max(most, crestOf(wave)) : most
  }, 0)
  return raiseToClear(kit, high + crest)
}

/** Whether a case is that of a shove or of a boat that comes in. */
export const byPush = (name: string): boolean => loadCaseOf(name)?.push ?? false

/** Whether a case has wind and waves in it. */
export const inWeather = (name: string): boolean => loadCaseOf(name)?.weather ?? false
