/**
 * What wind and waves do to a dock from one side at one level of the lake.
 *
 * A gust presses on free edges of frames and on legs over the water; the wave that is taken for strength, the wind's or a boat's wake,
 * presses on legs (`leg-waves.ts`) and on edges that its crest reaches. What lifts from below is a load of its own (`uplift.ts`). Boats that
 * lie at the dock hand it their wind and, where it is the wind's waves, what these push. Friction, buoyancy of tubes (they fill) and
 * drag of braces are left out.
 */

import { sectionProperties } from '../../catalog/section-properties.ts'
import type { Waves } from '../../dock.ts'
import { lying } from '../../layout/berth.ts'
import { type EdgeLine, edgeLength, edgeOf } from '../../layout/index.ts'
import { crestOf, onEdge } from '../../site/waves/crest.ts'
import { coherentShare } from '../../site/waves/short-crested.ts'
import { type Height, inDepth, type Train, trainsOf } from '../../site/waves/trains.ts'
import { type CaseLoad, loadMember, loadNode, noLoad, type StateLayout } from '../second-order.ts'
import {
  boatWavesBeam,
  boatWavesBow,
  boatWindBeam,
  boatWindBow,
  GUST,
  WIND_DRAG,
  windPressure,
} from '../strength/index.ts'
import { tiedTo } from './boat.ts'
import type { DockFrame, RailInFrame } from './frame.ts'
import { type LegInWater, type LegWave, legWaves } from './leg-waves.ts'
import { type LevelName, levelOf, TOWARD, type Toward } from './ways.ts'

/** What wind and waves press on at one level, toward one side. */
export function weatherLoad(
  states: StateLayout,
  frame: DockFrame,
  waves: Waves | null,
  level: LevelName,
  toward: Toward,
  height: Height = 'highest',
  moored = true,
): CaseLoad {
  const load = noLoad(states.layout)
  const { site } = frame.kit.design
  const z = levelOf(site.levels, level)
  const way = TOWARD[toward]
  const gust = windPressure((site.wind?.speed ?? 0) * GUST)
  addLegs(states, frame, load, waves ? legWaves(waves, inWater(frame, z, way), height) : [], z, gust, way)
  addEdges(states, frame, load, waves ? trainsOf(waves, height) : [], waves?.depth ?? 0, z, gust, way)
  if (moored) addBoats(frame, load, waves, z, way)
  return load
}

/** An edge turned away by more than this (its cosine) is not pressed on: no piece of a run turns by less and more than 75 degrees. */
const FACES = 0.25

type Way = readonly [dx: number, dy: number]

function addLegs(
  { layout }: StateLayout,
  frame: DockFrame,
  load: CaseLoad,
  pushed: readonly (LegWave | null)[],
  z: number,
  gust: number,
  [dx, dy]: Way,
): void {
  const { shop, design } = frame.kit
  for (const [i, { leg, members }] of frame.legs.entries()) {
    const stock = shop.catalog.stock[leg.stock!.stock]!
    const { width } = sectionProperties(stock)
    const round = stock.shape === 'round-tube' || stock.shape === 'round-bar'
    const top = design.dock.deckHeight - shop.shape(leg.section.frame).depth
    const dry = Math.max(0, top - Math.max(z, leg.bed))
    // Wind and wave together: what a member with a sleeve makes of a load takes most of the time here.
    const even = members.map(() => 0)
    const spread = { frame, load, members, even, dx, dy }
    if (gust > 0 && dry > 0) {
      const force = gust * (round ? WIND_DRAG.round : WIND_DRAG.square) * width * dry
      spreadOnLeg(spread, force, top - dry / 2)
    }
    const wave = pushed[i]
    if (wave) spreadOnLeg(spread, wave.force, leg.bed + wave.arm)
    members.forEach((member, n) => {
      if (even[n] !== 0) loadMember(layout, load, member, [even[n]! * dx, even[n]! * dy, 0])
    })
  }
}

function addEdges(
  { layout }: StateLayout,
  frame: DockFrame,
  load: CaseLoad,
  trains: readonly Train[],
  deepest: number,
  z: number,
  gust: number,
  [dx, dy]: Way,
): void {
  const { shop, design } = frame.kit
  const { deckHeight } = design.dock
  // What no crest reaches in the deepest water it reaches nowhere.
  const highest = trains.reduce((most, train) => {
    const wave = inDepth(train, deepest + z)
    return Math.max(most, wave ? z + crestOf(wave) : z)
  }, z)
  const wide = extentAcross(frame, dx, dy)
  let free: ((rail: RailInFrame) => number) | null = null
  for (const rail of frame.rails) {
    const line = edgeOf(rail.section, rail.edge)
    // The edge that faces where it comes from, as far as no other section shields it.
    const faces = -(line.nx * dx + line.ny * dy)
    if (faces < FACES) continue
    const under = deckHeight - shop.shape(rail.section.frame).depth
    const dry = Math.max(0, deckHeight - Math.max(z, under))
    const depth = highest > under ? Math.min(deepest + z, z - bedUnder(frame, line)) : 0
    const wave = trains.reduce((most, train) => {
      const local = inDepth(train, depth)
      const share = local && train.shortCrested ? coherentShare(wide, local.k) : 1
      return local
        ? Math.max(most, share * onEdge(local, Math.min(z + crestOf(local), deckHeight) - under))
        : most
    }, 0)
    const perLength = gust * WIND_DRAG.edge * dry + wave
    if (perLength === 0) continue
    free ??= freeShares(frame)
    // Of one that lies askew as much as is seen from there.
    const total = perLength * line.length * faces * free(rail)
    if (total === 0) continue
    const span = rail.members.reduce((sum, m) => sum + layout.members.length[m]!, 0)
    for (const m of rail.members) loadMember(layout, load, m, [(total / span) * dx, (total / span) * dy, 0])
  }
}

/** Of all corners, along the crests of waves that go along (dx, dy), m. */
function extentAcross({ corners, nodes }: DockFrame, dx: number, dy: number): number {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (const four of corners)
    for (const node of four ?? []) {
      const at = dy * nodes[node]!.x + dx * nodes[node]!.y
      least = Math.min(least, at)
      most = Math.max(most, at)
    }
  return Math.max(0, most - least)
}

/** Bed under the deeper end of an edge, m. */
const bedUnder = ({ kit }: DockFrame, { x, y, dx, dy, length }: EdgeLine): number =>
  Math.min(kit.bed.bedAt(x, y), kit.bed.bedAt(x + dx * length, y + dy * length))

/**
 * In a stronger wind than this no boat is left at such a dock, m/s: the top of Beaufort 5, a fresh breeze (WMO's scale, memory; that boats are
 * taken away then is a caution on screen and papers).
 */
const MOORED_WIND = 10.7

function addBoats(frame: DockFrame, load: CaseLoad, waves: Waves | null, z: number, [dx, dy]: Way): void {
  const { site } = frame.kit.design
  const wind = site.wind?.speed ?? 0
  const moored = Math.min(wind, MOORED_WIND)
  const speed = moored * GUST
  // The waves of a wind so much weaker: about as the wind itself, at one fetch.
  const open =
    waves && waves.period > 0 ? { height: (waves.open * moored) / wind, period: waves.period } : null
  const wave = open && inDepth(open, waves!.depth + z)
  for (const berth of lying(frame.kit)) {
    const { boat, line } = berth
    // It lies along its edge.
    const across = Math.abs(dx * line.nx + dy * line.ny) > 0.5
    let force = 0
    if (speed > 0) force += across ? boatWindBeam(boat, speed) : boatWindBow(boat, speed)
    if (wave) force += across ? boatWavesBeam(boat, wave) : boatWavesBow(boat, wave)
    if (force === 0) continue
    for (const node of tiedTo(frame, berth)) loadNode(load, node, [(force / 2) * dx, (force / 2) * dy, 0])
  }
}

/** Legs as the waves meet them; head-on one after the other. */
function inWater(frame: DockFrame, level: number, [dx, dy]: Way): LegInWater[] {
  const { catalog } = frame.kit.shop
  return frame.legs.map(({ leg }) => {
    const stock = catalog.stock[leg.stock!.stock]!
    return {
      width: sectionProperties(stock).width,
      shape: stock.shape === 'round-tube' || stock.shape === 'round-bar' ? 'round' : 'square',
      depth: level - leg.bed,
      along: dx * leg.x + dy * leg.y,
      across: dy * leg.x + dx * leg.y,
    }
  })
}

/** Part of a rail's edge that no other section stands against, 0 to 1. What acts on it is spread along the whole rail. */
export function freeShares({ kit }: DockFrame): (rail: RailInFrame) => number {
  const taken = new Map<string, number>()
  const take = (key: string, length: number): void => void taken.set(key, (taken.get(key) ?? 0) + length)
  for (const { host, edge, guest, guestEdge, from, to } of kit.joints.all) {
    const length = Math.max(0, to - from)
    take(`${host.index} ${edge}`, length)
    take(`${guest.index} ${guestEdge}`, length)
  }
  return ({ section, edge }) => {
    const shut = (taken.get(`${section.index} ${edge}`) ?? 0) / edgeLength(section, edge)
    return Math.min(1, Math.max(0, 1 - shut))
  }
}

/**
 * A sideways force at a height of a leg: an even load along the piece that it stands at, and the rest at that piece's upper end, so that
 * both add up to the force where it is. A force lower than the middle is left there (the leg is bent by more than it is): what is put
 * on a foot itself would be lost to its friction.
 */
function spreadOnLeg({ frame, load, members, even, dx, dy }: Spread, force: number, height: number): void {
  for (const [n, member] of members.entries()) {
    const { from, to } = frame.members[member]!
    const low = frame.nodes[from]!.z
    const high = frame.nodes[to]!.z
    // All of it goes to the piece that it stands at, or to the nearest one.
    const first = n === 0
    const last = n === members.length - 1
    if ((height < low && !first) || (height >= high && !last)) continue
    const part = Math.min(1, Math.max(0, (height - low) / (high - low)))
    const along = force * (part > 0.5 ? 2 - 2 * part : first ? 1 : 2 * part)
    even[n]! += along / (high - low)
    const rest = force - along
    if (rest !== 0) loadNode(load, part > 0.5 ? to : from, [rest * dx, rest * dy, 0])
    return
  }
}

interface Spread {
  readonly frame: DockFrame
  readonly load: CaseLoad
  readonly members: readonly number[]
  /** Of each member, N for each meter: added to. */
  readonly even: number[]
  readonly dx: number
  readonly dy: number
}
