/**
 * Crests under the deck lift it: how much each section, and as a load on its side rails.
 *
 * The wave of the wind or the wake, whichever lifts more. Its crest stands under the middle of the section that it meets first, and is long
 * enough to reach all sections in a row with that one at the same time (judgment, cautious). The ramp is left out.
 */
import { sectionProperties } from '../../catalog/section-properties.ts'
import { panelFor } from '../../catalog-index.ts'
import type { Waves } from '../../dock.ts'
import type { Kit } from '../../kit.ts'
import { areaOf, cosOf } from '../../layout/footprint.ts'
import { edgeOf, type PlacedSection } from '../../layout/index.ts'
import { outline } from '../../layout/place.ts'
import { type Decking, meanHead, mostHead, upliftPressure } from '../../site/waves/crest.ts'
import { type Height, inDepth, trainsOf } from '../../site/waves/trains.ts'
import { type CaseLoad, noLoad, type StateLayout } from '../second-order.ts'
import type { DockFrame } from './frame.ts'
import { onRails, railLever, spreadOver, stretch } from './on-rails.ts'
import { TOWARD, type Toward } from './ways.ts'

/** Part of a section's deck that is open between its planks. */
function openShare({ shop, design }: Kit, { frame }: PlacedSection): number {
  const panel = panelFor(shop, design.dock.finish, frame)
  const stock = shop.catalog.stock[panel.plank.stock]!
  const along = panel.turn ? panel.width * cosOf(panel.turn / 2) : panel.length
  const shut = (panel.plank.count * sectionProperties(stock).width) / along
  return Math.min(1, Math.max(0, 1 - shut))
}

const deckingOf = (kit: Kit, p: PlacedSection, level: number): Decking => {
  const { rise } = kit.shop.catalog.decking
  return { gap: kit.design.dock.deckHeight - rise - level, rise, open: openShare(kit, p) }
}

/** Extent of a section along a way, m. */
function extent(p: PlacedSection, [dx, dy]: readonly [number, number]): readonly [number, number] {
  const ends = outline(p).map(([x, y]) => x * dx + y * dy)
  return [Math.min(...ends), Math.max(...ends)]
}

/** Still water under a section's deepest corner, m, at most what it is under the dock's deepest legs. */
function depthUnder({ bed }: Kit, waves: Waves, level: number, p: PlacedSection): number {
  const beds = (['start', 'end'] as const).flatMap((edge) => {
    const { x, y, dx, dy, length } = edgeOf(p, edge)
    return [bed.bedAt(x, y), bed.bedAt(x + dx * length, y + dy * length)]
  })
  return level + Math.min(waves.depth, -Math.min(...beds))
}

/**
 * Upward on each section by its index, N: what the slowly varying part lifts. Null where no crest reaches the planks.
 *
 * @param level of the lake, m
 */
export function upliftOf(
  kit: Kit,
  waves: Waves,
  level: number,
  toward: Toward,
  height: Height,
): ReadonlyMap<number, number> | null {
  const sections = kit.layout.placed.filter((p) => p.role !== 'ramp')
  let most = 0
  let lifts: ReadonlyMap<number, number> | null = null
  for (const train of trainsOf(waves, height)) {
    const deepest = inDepth(train, waves.depth + level)
    if (!deepest || sections.every((p) => mostHead(deepest, deckingOf(kit, p, level)) === 0)) continue
    const spans = sections.map((p) => extent(p, TOWARD[toward]))
    const first = spans.reduce((least, span) => (span[0] < least[0] ? span : least))
    const crest = (first[0] + first[1]) / 2
    let total = 0
    const own = new Map<number, number>()
    sections.forEach((p, i) => {
      const wave = inDepth(train, depthUnder(kit, waves, level, p))
      if (!wave) return
      const deck = deckingOf(kit, p, level)
      const [from, to] = spans[i]!
      const head = meanHead(wave, deck, from - crest, to - crest)
      const lift = upliftPressure(wave, deck, head) * areaOf(p.frame)
      own.set(p.index, lift)
      total += lift
    })
    if (total <= most) continue
    most = total
    lifts = own
  }
  return lifts
}

/** The most that crests press up against a section's planks anywhere, Pa. */
export function mostPressure(kit: Kit, waves: Waves, level: number, p: PlacedSection): number {
  const depth = depthUnder(kit, waves, level, p)
  return trainsOf(waves, 'highest').reduce((most, train) => {
    const wave = inDepth(train, depth)
    if (!wave) return most
    const deck = deckingOf(kit, p, level)
    return Math.max(most, upliftPressure(wave, deck, mostHead(wave, deck)))
  }, 0)
}

/** `upliftOf` on the side rails, as the deck's own loads come to them; null where there is none. */
export function upliftLoad(
  states: StateLayout,
  frame: DockFrame,
  waves: Waves,
  level: number,
  toward: Toward,
  height: Height,
): CaseLoad | null {
  const lifts = upliftOf(frame.kit, waves, level, toward, height)
  if (!lifts) return null
  const load = noLoad(states.layout)
  onRails(
    states,
    frame,
    load,
    (rail) => {
      const lift = lifts.get(rail.section.index) ?? 0
      return (-lift / spreadOver(rail.section.frame, rail.edge)) * stretch(frame, rail)
    },
    (rail) => railLever(frame, rail),
  )
  return load
}
