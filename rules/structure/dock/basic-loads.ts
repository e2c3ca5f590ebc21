/**
 * The loads by themselves, before they are combined: dead, people, wind and waves, a push, a boat.
 *
 * Dead load is the parts list's own mass. People stand on the deck evenly, or on its left or right half. Wind and waves come
 * across the dock from either side or along it from either end, at the low level, today's and the high one. A gust presses on
 * free edges of frames and on legs over the water; the wave that is taken for strength presses on what is under its crest
 * (`leg-waves.ts`). Friction, buoyancy of tubes (they fill) and drag of braces are left out.
 */
import type { Waves } from '../../dock.ts'
import { edgeOf } from '../../layout/index.ts'
import { sectionProperties } from '../../parts/section-properties.ts'
import { WATER } from '../../site/waves/morison.ts'
import { BREAKING, CREST, HIGHEST } from '../../site/waves/waves.ts'
import { type CaseLoad, loadMember, loadNode, noLoad, type StateLayout } from '../second-order.ts'
import {
  boatWindBeam,
  boatWindBow,
  DECK_LOADS,
  GUARD_PUSH,
  GUST,
  WIND_DRAG,
  windPressure,
} from '../strength/index.ts'
import { berth } from './boat.ts'
import type { DockFrame, RailInFrame } from './frame.ts'
import { type LegInWater, legWaves } from './leg-waves.ts'

/** m/s² */
export const G = 9.80665

/** People on the deck where the Design says nothing, Pa: decks of dwellings. */
export const DECK_LIVE = DECK_LOADS[0]!.pressure

/** A person's shove at the deck's edge, N. */
export const PUSH = GUARD_PUSH

/** Where wind and waves push to. */
export type Toward = 'left' | 'right' | 'shore' | 'lake'
export type LevelName = 'low' | 'today' | 'high'

export const TOWARD: Readonly<Record<Toward, readonly [number, number]>> = {
  left: [0, 1],
  right: [0, -1],
  shore: [-1, 0],
  lake: [1, 0],
}

export interface Weather {
  readonly level: LevelName
  readonly toward: Toward
  readonly load: CaseLoad
}

const railsOf = (frame: DockFrame): readonly RailInFrame[] =>
  frame.rails.filter((rail) => rail.edge === 'left' || rail.edge === 'right')

/** Downward on the side rails, N for each meter of each rail by section; the deck's own half lies outside of the leg axes. */
function onRails(
  { layout }: StateLayout,
  frame: DockFrame,
  load: CaseLoad,
  perRail: (rail: RailInFrame) => number,
  lever: (rail: RailInFrame) => number,
): void {
  for (const rail of railsOf(frame)) {
    const q = perRail(rail)
    if (q === 0) continue
    const outward = rail.edge === 'left' ? 1 : -1
    const { c, s } = rail.section
    const arm = lever(rail) * outward
    let span = 0
    for (const member of rail.members) {
      loadMember(layout, load, member, [0, 0, -q])
      span += layout.members.length[member]!
    }
    // Twist of the rail, brought to its ends: about the section's own x axis, down on the left turns to the left.
    const half = (q * span * arm) / 2
    for (const node of [rail.nodes[0]!, rail.nodes.at(-1)!])
      loadNode(load, node, [0, 0, 0], [-half * c, -half * s, 0])
  }
}

/** The length between the leg axes carries what lies on the whole frame. */
const stretch = (frame: DockFrame, rail: RailInFrame): number => {
  const { along } = frame.kit.shop.catalog.sleeve
  return rail.section.frame.length / (rail.section.frame.length - 2 * along)
}

/** Where the middle of a half deck's load lies outside of the leg axis, m: the rail that takes it stands there. */
const railLever = (frame: DockFrame, rail: RailInFrame): number =>
  frame.kit.shop.catalog.sleeve.across - sectionProperties(rail.stock).width / 2

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
      return ((kg * G) / (2 * size.length)) * stretch(frame, rail)
    },
    () => 0,
  )
  return load
}

/** @param on 1 or a part of it for each half of the deck, left and right of each section's own middle */
export function liveLoad(
  states: StateLayout,
  frame: DockFrame,
  on: { readonly left: number; readonly right: number },
): CaseLoad {
  const load = noLoad(states.layout)
  const pressure = frame.kit.design.dock.load ?? DECK_LIVE
  onRails(
    states,
    frame,
    load,
    (rail) =>
      ((pressure * rail.section.frame.width) / 2) *
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

/** What wind and waves press on at one level, toward one side. */
export function weatherLoad(
  states: StateLayout,
  frame: DockFrame,
  waves: Waves | null,
  level: LevelName,
  toward: Toward,
): CaseLoad {
  const { layout } = states
  const { kit } = frame
  const { site, dock } = kit.design
  const load = noLoad(layout)
  const z = levelOf(site.levels, level)
  const [dx, dy] = TOWARD[toward]
  const speed = (site.wind?.speed ?? 0) * GUST
  const gust = windPressure(speed)
  const { shop } = kit

  const pushed = waves ? legWaves(waves, inWater(frame, z, dx)) : []
  for (const [i, { leg, members }] of frame.legs.entries()) {
    const stock = shop.catalog.stock[leg.stock!.stock]!
    const { width } = sectionProperties(stock)
    const round = stock.shape === 'round-tube' || stock.shape === 'round-bar'
    const top = dock.deckHeight - shop.shape(leg.section.frame).depth
    const dry = Math.max(0, top - Math.max(z, leg.bed))
    if (gust > 0 && dry > 0)
      spreadOnLeg(
        states,
        frame,
        load,
        members,
        gust * (round ? WIND_DRAG.round : WIND_DRAG.square) * width * dry,
        top - dry / 2,
        dx,
        dy,
      )
    const wave = pushed[i]
    if (wave) spreadOnLeg(states, frame, load, members, wave.force, leg.bed + wave.arm, dx, dy)
  }
  for (const rail of frame.rails) {
    const line = edgeOf(rail.section, rail.edge)
    // The edge that faces where it comes from, and that no other section shields.
    if (line.nx * dx + line.ny * dy > -0.5 || !isFree(frame, rail)) continue
    const { depth } = shop.shape(rail.section.frame)
    const over = dock.deckHeight - Math.max(z, dock.deckHeight - depth)
    const crest = waves ? z + CREST * highestAt(waves, z) : z
    const under = dock.deckHeight - depth
    const wet = Math.max(0, Math.min(crest, dock.deckHeight) - under)
    let total = gust * WIND_DRAG.edge * Math.max(0, over) * line.length
    if (waves && wet > 0) total += edgeWave(waves, highestAt(waves, z), wet) * line.length
    if (total === 0) continue
    const span = rail.members.reduce((sum, m) => sum + layout.members.length[m]!, 0)
    for (const m of rail.members) loadMember(layout, load, m, [(total / span) * dx, (total / span) * dy, 0])
  }
  if (dock.boat && speed > 0) {
    const across = dy !== 0
    const force = across ? boatWindBeam(dock.boat, speed) : boatWindBow(dock.boat, speed)
    for (const node of berth(frame)) loadNode(load, node, [(force / 2) * dx, (force / 2) * dy, 0])
  }
  return load
}

/** Legs as the waves meet them; head-on one after the other. */
function inWater(frame: DockFrame, level: number, dx: number): LegInWater[] {
  const { catalog } = frame.kit.shop
  return frame.legs.map(({ leg }) => {
    const stock = catalog.stock[leg.stock!.stock]!
    return {
      width: sectionProperties(stock).width,
      shape: stock.shape === 'round-tube' || stock.shape === 'round-bar' ? 'round' : 'square',
      depth: level - leg.bed,
      along: dx * leg.x,
    }
  })
}

/** Height taken for strength with the lake at a level, m. */
const highestAt = (waves: Waves, level: number): number =>
  Math.min(HIGHEST * waves.open, BREAKING * Math.max(0, waves.depth + level))

/** Drag of the crest on an edge that it reaches, N/m: the water there moves as fast as the crest's orbit on deep water. CD 2, a flat edge. */
function edgeWave(waves: Waves, height: number, wet: number): number {
  const speed = waves.period > 0 ? (Math.PI * height) / waves.period : 0
  return 0.5 * WATER * 2 * speed ** 2 * wet
}

export const levelOf = (levels: { low: number; high: number }, name: LevelName): number =>
  name === 'today' ? 0 : levels[name]

function isFree(frame: DockFrame, rail: RailInFrame): boolean {
  return !frame.kit.joints.all.some(
    (j) =>
      (j.host === rail.section && j.edge === rail.edge) ||
      (j.guest === rail.section && j.guestEdge === rail.edge),
  )
}

/**
 * A sideways force at a height of a leg: an even load along the piece that it stands at, and the rest at that piece's upper end, so that
 * both add up to the force where it is. A force lower than the middle is left there (the leg is bent by more than it is): what is put
 * on a foot itself would be lost to its friction.
 */
function spreadOnLeg(
  { layout }: StateLayout,
  frame: DockFrame,
  load: CaseLoad,
  members: readonly number[],
  force: number,
  height: number,
  dx: number,
  dy: number,
): void {
  for (const member of members) {
    const from = layout.members.from[member]!
    const to = layout.members.to[member]!
    const low = frame.nodes[from]!.z
    const high = frame.nodes[to]!.z
    // All of it goes to the piece that it stands at, or to the nearest one.
    const first = member === members[0]
    const last = member === members.at(-1)
    if ((height < low && !first) || (height >= high && !last)) continue
    const part = Math.min(1, Math.max(0, (height - low) / (high - low)))
    const even = force * (part > 0.5 ? 2 - 2 * part : first ? 1 : 2 * part)
    loadMember(layout, load, member, [(even * dx) / (high - low), (even * dy) / (high - low), 0])
    const rest = force - even
    if (rest !== 0) loadNode(load, part > 0.5 ? to : from, [rest * dx, rest * dy, 0])
    return
  }
}
