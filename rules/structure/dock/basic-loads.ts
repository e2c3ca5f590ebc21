/**
 * The loads by themselves, before they are combined: dead, people, a push. Wind, waves and the boat that lies there: `weather-load.ts`;
 * crests under the deck: `uplift.ts`; crowds and somebody at the edge: `people.ts`; a boat that comes in: `boat.ts`.
 *
 * Dead load is the parts list's own mass. People stand on the deck evenly, or on its left or right half.
 */
import { G } from '../../site/waves/water.ts'
import { type CaseLoad, loadMember, loadNode, noLoad, type StateLayout } from '../second-order.ts'
import { DECK_LOADS, GUARD_PUSH } from '../strength/index.ts'
import type { DockFrame, RailInFrame } from './frame.ts'
import { deckBeside, onRails, railLever, spreadOver, stretch } from './on-rails.ts'

export { G } from '../../site/waves/water.ts'

/** People on the deck where the Design says nothing, Pa: decks of dwellings. */
export const DECK_LIVE = DECK_LOADS[0]!.pressure

/** A person's shove at the deck's edge, N. */
export const PUSH = GUARD_PUSH

export { type LevelName, levelOf, TOWARD, type Toward } from './ways.ts'
export { weatherLoad } from './weather-load.ts'

export function deadLoad(states: StateLayout, frame: DockFrame): CaseLoad {
  const { kit } = frame
  const load = noLoad(states.layout)
  const tubes = new Map<number, number>()
  for (const { leg, members } of frame.legs) {
    const own = kit.shop.type('leg', leg.stock!.code).grams / 1000
    tubes.set(leg.section.index, (tubes.get(leg.section.index) ?? 0) + own)
    // The whole tube, also what stands over the deck, comes down on the foot.
    const long = members.reduce((sum, m) => sum + states.layout.members.length[m]!, 0)
    for (const m of members) loadMember(states.layout, load, m, [0, 0, (-own * G) / long])
  }
  onRails(
    states,
    frame,
    load,
    (rail) => {
      const { index, frame: size } = rail.section
      const kg = kit.count.sectionGrams[index]! / 1000 - (tubes.get(index) ?? 0)
      return ((kg * G) / spreadOver(size, rail.edge)) * stretch(frame, rail)
    },
    // Of a corner piece the sides carry unlike parts, and so it counts where they stand.
    (rail) => (rail.section.frame.turn ? kit.shop.catalog.sleeve.across : 0),
  )
  return load
}

/** People on the deck, Pa. */
export const livePressure = ({ kit }: DockFrame): number => kit.design.dock.load ?? DECK_LIVE

/**
 * @param on 1 or a part of it for each half of the deck, left and right of each section's own middle
 * @param only the sections that people stand on; all where absent
 */
export function liveLoad(
  states: StateLayout,
  frame: DockFrame,
  on: { readonly left: number; readonly right: number },
  only: (rail: RailInFrame) => boolean = () => true,
): CaseLoad {
  const load = noLoad(states.layout)
  const pressure = livePressure(frame)
  onRails(
    states,
    frame,
    load,
    (rail) =>
      ((only(rail) ? pressure * deckBeside(rail.section.frame, rail.edge) : 0) / 2) *
      stretch(frame, rail) *
      // Planks lie from rail to rail: three quarters of what stands on one half comes to its own rail.
      (rail.edge === 'left' ? 0.75 * on.left + 0.25 * on.right : 0.25 * on.left + 0.75 * on.right),
    (rail) => railLever(frame, rail),
  )
  return load
}

/** A shove at a corner of the deck. */
export function pushLoad(states: StateLayout, node: number, x: number, y: number): CaseLoad {
  const load = noLoad(states.layout)
  loadNode(load, node, [x, y, 0])
  return load
}

/**
 * Out of plumb: each leg's own load times its lean, sideways at its top.
 *
 * @param axial of each leg, pressing positive, N, in the order of `frame.legs`
 */
export function leanLoad(
  states: StateLayout,
  frame: DockFrame,
  axial: Float64Array,
  lean: number,
  [x, y]: readonly [number, number],
): CaseLoad {
  const load = noLoad(states.layout)
  frame.legs.forEach(({ top }, i) => {
    const force = Math.max(axial[i]!, 0) * lean
    loadNode(load, top, [force * x, force * y, 0])
  })
  return load
}
