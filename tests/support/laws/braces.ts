/**
 * Laws of the braces.
 *
 * A pad stands on firm bottom where that was sounded; a brace must clear the bed itself, soft or not. So the bed that a brace is
 * held against is the surface of the bottom, its pad's top is counted from the leg's own bed, and the deeper leg is the one whose
 * own bed is deeper.
 */
import type { Leg, Pair } from '../../../rules/dock.ts'
import { type Ground, groundOf } from './ground.ts'
import {
  elevations,
  expectNear,
  findingsOn,
  frameOf,
  isEdgePair,
  type Law,
  legsById,
  near,
  sectionById,
} from './law.ts'

type Catalog = Parameters<Law>[2]
type Stock = Catalog['braces'][number]

/** Figures and limits of one brace between two legs, low end on the first. */
interface Fit {
  readonly rise: number
  readonly lowZ: number
  readonly highZ: number
  readonly lowClearance: number
  readonly highClearance: number
  /** How far inside its limits it is at the worst; negative: it does not fit. */
  readonly spare: number
}

/** A leg with the elevation of the bottom's surface at it. */
interface Foot extends Leg {
  readonly surface: number
}

/** The underside over a pair: the lower one where its legs are in frames of different depth. */
function undersideOver(...[dock, design, catalog, legs]: [...Parameters<Law>, readonly Leg[]]): number {
  const by = sectionById(dock)
  return Math.min(
    ...legs.map((leg) => {
      const frame = frameOf(catalog, by.get(leg.section)?.frame ?? '')
      return frame === undefined
        ? Infinity
        : elevations(design.dock.deckHeight, frame.rail, catalog).underside
    }),
  )
}

/** Half the height of a brace's end: of the clamp, or of the tube where that is thicker. */
function endHalf(catalog: Catalog, stock: Stock | undefined): number {
  const tube = catalog.stock[stock?.stock ?? '']
  const round = tube?.shape === 'round-tube' || tube?.shape === 'round-bar' ? tube.diameter / 2 : 0
  return Math.max(catalog.clamp.height / 2, round)
}

/** Rise from the holes, middle at half height over the higher bed, and what is left at both ends. Null where it is too short. */
function fitOf(
  catalog: Catalog,
  stock: Stock,
  low: Foot,
  high: Foot,
  spacing: number,
  underside: number,
): Fit | null {
  const { clamp, rules } = catalog
  const between = spacing - 2 * clamp.reach
  const square = stock.holes ** 2 - between ** 2
  if (square <= 0 || between <= 0) return null
  const rise = Math.sqrt(square)
  const middle = (underside + Math.max(low.surface, high.surface)) / 2
  const [lowZ, highZ] = [middle - rise / 2, middle + rise / 2]
  const half = endHalf(catalog, stock)
  const pad = catalog.pads.find((p) => p.code === low.pad)
  const overBed = lowZ - half - low.surface
  const overPad = lowZ - half - low.bed - (pad === undefined ? 0 : pad.sole + pad.socket.height)
  const highClearance = underside - (highZ + half)
  return {
    rise,
    lowZ,
    highZ,
    lowClearance: Math.min(overBed, overPad),
    highClearance,
    spare: Math.min(
      overBed - rules.braceToBed.value,
      overPad - rules.braceToPad.value,
      highClearance - rules.braceToFrame.value,
    ),
  }
}

/** What the brace has to spare over the bed between its legs, where that is known; else it is taken to have none. */
function spareBetween(ground: Ground, fit: Fit, low: Foot, high: Foot, catalog: Catalog): number {
  let spare = Number.POSITIVE_INFINITY
  for (let i = 0; i <= 10; i++) {
    const t = i / 10
    const beds = ground.at(low.x + t * (high.x - low.x), low.y + t * (high.y - low.y), false)
    if (beds.length === 0) return Number.NEGATIVE_INFINITY
    const under = fit.lowZ + t * fit.rise - catalog.clamp.height / 2
    spare = Math.min(spare, under - Math.max(...beds) - catalog.rules.braceToBed.value)
  }
  return spare
}

interface Known {
  readonly pair: Pair
  readonly a: Foot
  readonly b: Foot
  readonly tried: (stock: Stock, low: Foot, high: Foot) => Fit | null
  readonly ground: Ground
}

/** Pairs with both legs and the bottom under them known, and what the laws ask of them. */
function* known(...[dock, design, catalog]: Parameters<Law>): Generator<Known> {
  const by = legsById(dock)
  const ground = groundOf(design.site)
  const soft = design.site.soundings.some((s) => s.firm !== undefined) ? ground : null
  for (const pair of dock.pairs) {
    const [a, b] = pair.legs.map((id) => footOf(by.get(id), soft))
    if (a == null || b == null) continue
    const underside = undersideOver(dock, design, catalog, [a, b])
    const tried = (stock: Stock, low: Foot, high: Foot) => {
      const fit = fitOf(catalog, stock, low, high, pair.spacing, underside)
      return fit && { ...fit, spare: Math.min(fit.spare, spareBetween(ground, fit, low, high, catalog)) }
    }
    yield { pair, a, b, tried, ground }
  }
}

/** Null where the surface is not known for sure. Without firm bottoms it is the leg's own bed. */
function footOf(leg: Leg | undefined, soft: Ground | null): Foot | null {
  if (leg === undefined) return null
  if (soft === null) return { ...leg, surface: leg.bed }
  const at = soft.at(leg.x, leg.y, false)
  return at.length > 0 && at.every((z) => near(z, at[0]!)) ? { ...leg, surface: at[0]! } : null
}

const inRange = (range: { from: number; to: number }, value: number, slack: number) =>
  value >= range.from - slack && value <= range.to + slack

const longer = (a: Leg, b: Leg): number | null =>
  a.stock === null || b.stock === null ? null : Math.max(a.stock, b.stock)

/** The longer leg decides whether the trade asks for a brace; only then is there one. */
export const braceNeeded: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const { pair, a, b } of known(dock, design, catalog)) {
    if (pair.along) continue
    const length = longer(a, b)
    if (length !== null && pair.needsBrace !== length >= catalog.rules.braceFrom.value - 1e-6)
      out.push(`${pair.id} needsBrace ${pair.needsBrace} with a leg of ${length}`)
    if (pair.brace !== null && !pair.needsBrace) out.push(`${pair.id} is braced without need`)
  }
  return out
}

/** A brace is of the catalog, meant for that spacing, and joins the pair's own legs. */
export const braceOfItsPair: Law = (dock, _design, catalog) => {
  const out: string[] = []
  for (const { id, legs, spacing, brace, along } of dock.pairs) {
    if (brace === null) continue
    const stock = catalog.braces.find((s) => s.code === brace.code)
    if (stock === undefined || !near(stock.holes, brace.stock))
      out.push(`${id}: ${brace.code} of ${brace.stock} is not in the catalog`)
    else if (Boolean(stock.along) !== Boolean(along)) out.push(`${id}: ${brace.code} runs the other way`)
    else if (!inRange(stock.spacing, spacing, 1e-5))
      out.push(`${id}: ${brace.code} is not meant for ${spacing}`)
    if (!legs.includes(brace.low)) out.push(`${id}: its brace stands on ${brace.low}`)
  }
  return out
}

/** Rise, holes and clearances of a drawn brace are those of the triangle. */
export const braceFigures: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const { pair, a, b, tried } of known(dock, design, catalog)) {
    const stock = catalog.braces.find((s) => s.code === pair.brace?.code)
    if (pair.brace === null || stock === undefined || pair.along) continue
    const [low, high] = pair.brace.low === a.id ? [a, b] : [b, a]
    const right = tried(stock, low, high)
    const names = ['rise', 'lowZ', 'highZ', 'lowClearance', 'highClearance'] as const
    if (right === null) out.push(`${pair.id}: ${stock.code} is too short for ${pair.spacing}`)
    else for (const name of names) expectNear(out, `${pair.id} ${name}`, pair.brace[name], right[name], 1e-5)
  }
  return out
}

/** A brace that is drawn keeps its clearances to bed, pad and frame. */
export const braceFits: Law = (dock, design, catalog) => {
  const out: string[] = []
  const { braceToBed, braceToPad, braceToFrame } = catalog.rules
  for (const { pair, a, b } of known(dock, design, catalog)) {
    if (pair.brace === null) continue
    const low = pair.brace.low === a.id ? a : b
    const stock = catalog.braces.find((s) => s.code === pair.brace?.code)
    const half = endHalf(catalog, stock)
    const pad = catalog.pads.find((p) => p.code === low.pad)
    const overBed = pair.brace.lowZ - half - low.surface
    const overPad = pair.brace.lowZ - half - low.bed - (pad === undefined ? 0 : pad.sole + pad.socket.height)
    if (pair.brace.bedClearance < braceToBed.value - 1e-5 || pair.brace.bedClearance > overBed + 1e-5)
      out.push(`${pair.id}: bed clearance ${pair.brace.bedClearance}, at the low end ${overBed}`)
    if (overBed < braceToBed.value - 1e-5) out.push(`${pair.id}: ${overBed} over the bed`)
    if (overPad < braceToPad.value - 1e-5) out.push(`${pair.id}: ${overPad} over the pad`)
    const under = undersideOver(dock, design, catalog, [a, b]) - pair.brace.highZ - half
    if (under < braceToFrame.value - 1e-5) out.push(`${pair.id}: ${under} under the frame`)
  }
  return out
}

/** Which leg the low end may be on: the deeper; either on level beds (and where rounding leaves it open which they are). */
function ways(a: Foot, b: Foot, catalog: Parameters<Law>[2]): [Foot, Foot][] {
  const deeper = a.bed - b.bed
  const level = catalog.rules.braceLevel.value
  if (Math.abs(deeper) <= level - 1e-5)
    return [
      [a, b],
      [b, a],
    ]
  if (Math.abs(deeper) <= level + 1e-5) return []
  return deeper < 0 ? [[a, b]] : [[b, a]]
}

/** The preferred brace where it fits, else another that does. */
export const bracePreferred: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const { pair, a, b, tried } of known(dock, design, catalog)) {
    const length = longer(a, b)
    if (pair.brace === null || length === null || pair.along) continue
    const fitting = catalog.braces.filter(
      (s) =>
        !s.along &&
        inRange(s.legs, length, 1e-6) &&
        inRange(s.spacing, pair.spacing, -1e-5) &&
        ways(a, b, catalog).some(([low, high]) => (tried(s, low, high)?.spare ?? -1) > 1e-5),
    )
    if (fitting.length > 0 && !fitting.some((s) => s.code === pair.brace?.code))
      out.push(
        `${pair.id} has ${pair.brace.code}, though ${fitting.map((s) => s.code)} is meant for it and fits`,
      )
  }
  return out
}

/** A pair that needs a brace and has none: the design said so, or a finding names both legs, and none would have fitted. */
export const noBraceForAReason: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const { pair, a, b, tried } of known(dock, design, catalog)) {
    if (!pair.needsBrace || pair.brace !== null || design.dock.bracing?.none?.includes(pair.id)) continue
    if (pair.along) continue
    if (!findingsOn(dock, a.id).some((f) => f.parts.includes(b.id) && f.severity !== 'note'))
      out.push(`${pair.id} needs a brace, has none, and no finding names both legs`)
    if (longer(a, b) === null) continue
    const fitting = catalog.braces.filter(
      (s) =>
        !s.along &&
        inRange(s.spacing, pair.spacing, -1e-5) &&
        ways(a, b, catalog).some(([low, high]) => (tried(s, low, high)?.spare ?? -1) > 1e-5),
    )
    if (fitting.length > 0)
      out.push(`${pair.id} has no brace, though ${fitting.map((s) => s.code)} would fit`)
  }
  return out
}

/** The low end is on the deeper leg; on level beds it starts left (or as asked) and alternates, unless only the other way fits. */
export const braceLowEnd: Law = (dock, design, catalog) => {
  const out: string[] = []
  const level = catalog.rules.braceLevel.value
  const first = design.dock.bracing?.first ?? 'left'
  const by = legsById(dock)
  const certain = new Map([...known(dock, design, catalog)].map((k) => [k.pair.id, k]))
  let turn = 0
  let previous: string | null = null
  for (const pair of dock.pairs) {
    const [a, b] = pair.legs.map((id) => by.get(id))
    if (pair.along || pair.brace === null || a === undefined || b === undefined) continue
    const difference = a.bed - b.bed
    const deeper = difference < 0 ? a : b
    if (Math.abs(difference) > level + 3e-6 && pair.brace.low !== deeper.id)
      out.push(`${pair.id}: low end on the shallower leg`)
    if (Math.abs(difference) > level - 3e-6) continue
    // Legs of two sections take a turn too, but have no left of their own: from there on nothing is asserted.
    if (!isEdgePair(pair)) break
    const side = pair.brace.low.endsWith('.left') ? 'left' : 'right'
    const byTurn = turn % 2 === 0 ? first : first === 'left' ? 'right' : 'left'
    const against = side !== byTurn && (previous === null || side === previous)
    if (against && fitsFrom(certain.get(pair.id), byTurn, catalog))
      out.push(`${pair.id}: low end ${side} after ${previous ?? 'none'}, expected ${byTurn}`)
    previous = side
    turn++
  }
  return out
}

/** Whether a pair's own brace would surely fit with its low end on that side. */
function fitsFrom(pair: Known | undefined, side: string, catalog: Catalog): boolean {
  if (pair === undefined) return false
  const { a, b, tried } = pair
  const [low, high] = a.id.endsWith(`.${side}`) ? [a, b] : [b, a]
  const stock = catalog.braces.find((s) => s.code === pair.pair.brace?.code)
  const found = stock === undefined ? null : tried(stock, low, high)
  return found !== null && found.spare > 1e-5
}

/** A leg is braced if and only if its pair has a brace. */
export const bracedFlags: Law = (dock) => {
  const braced = new Set(dock.pairs.filter((p) => p.brace !== null).flatMap((p) => p.legs))
  return dock.legs.filter((l) => l.braced !== braced.has(l.id)).map((l) => `${l.id} braced ${l.braced}`)
}

/** The brace is placed at its low hole, a clamp's reach from the low leg toward the high one, and turned toward the high hole. */
export const bracePlaced: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const { pair, a, b } of known(dock, design, catalog)) {
    const drawn = dock.placements.filter((p) => p.kind === 'brace' && p.of === pair.id)
    if (drawn.length !== (pair.brace === null ? 0 : 1)) out.push(`${pair.id}: ${drawn.length} braces placed`)
    const brace = drawn[0]
    if (brace === undefined || pair.brace === null) continue
    const [low, high] = pair.brace.low === a.id ? [a, b] : [b, a]
    const along = [(high.x - low.x) / pair.spacing, (high.y - low.y) / pair.spacing] as const
    const between = pair.spacing - 2 * catalog.clamp.reach
    const [qx, qy, qz, qw] = brace.turn
    const own = [1 - 2 * (qy ** 2 + qz ** 2), 2 * (qx * qy + qz * qw), 2 * (qx * qz - qy * qw)] as const
    const holes = pair.brace.stock
    const expected = [
      low.x + along[0] * catalog.clamp.reach,
      low.y + along[1] * catalog.clamp.reach,
      pair.brace.lowZ,
    ] as const
    const toward = [
      (along[0] * between) / holes,
      (along[1] * between) / holes,
      pair.brace.rise / holes,
    ] as const
    for (const i of [0, 1, 2] as const) {
      expectNear(out, `${pair.id} low hole`, brace.at[i], expected[i], 1e-5)
      expectNear(out, `${pair.id} direction`, own[i], toward[i], 1e-5)
    }
  }
  return out
}

/** A lengthwise brace is asked for, at a side of its section between its own legs or one in line of the section that it hangs on; no leg has two. */
export const alongPairs: Law = (dock, design, catalog) => {
  const out: string[] = []
  const by = legsById(dock)
  const sections = sectionById(dock)
  const used = new Set<string>()
  const farthest = new Map<number, string>()
  const wish = design.dock.bracing?.along
  for (const pair of dock.pairs) {
    if (!pair.along) continue
    if (wish === undefined) out.push(`${pair.id}: nobody asked for it`)
    const [name, side] = [
      pair.id.slice(0, pair.id.lastIndexOf('.')),
      pair.id.slice(pair.id.lastIndexOf('.') + 1),
    ]
    const section = sections.get(name)
    const [a, b] = pair.legs.map((id) => by.get(id))
    if (section === undefined || a === undefined || b === undefined) {
      out.push(`${pair.id}: no such section or leg`)
      continue
    }
    for (const [leg, end] of [
      [a, 'start'],
      [b, 'end'],
    ] as const)
      if (
        leg.id !== `${name}.${end}.${side}` &&
        (by.has(`${name}.${end}.${side}`) || leg.section !== section.on)
      )
        out.push(`${pair.id}: ${leg.id} is neither its own nor of what carries it`)
    if (section.turn === undefined) {
      const turn = (section.heading * Math.PI) / 180
      const off = Math.abs(Math.cos(turn) * (b.y - a.y) - Math.sin(turn) * (b.x - a.x))
      if (off > catalog.rules.pairAlign.value + 1e-5) out.push(`${pair.id}: its legs are ${off} out of line`)
    }
    if (wish === 'last') {
      const way = Math.round(section.heading) % 180
      if ((farthest.get(way) ?? name) !== name)
        out.push(`${pair.id}: ${farthest.get(way)} has braces that way`)
      farthest.set(way, name)
    }
    if (pair.brace === null) continue
    for (const leg of pair.legs) {
      if (used.has(leg)) out.push(`${leg} has two lengthwise braces`)
      used.add(leg)
    }
  }
  return out
}

/** Of every lift from the middle that is asked, by how much the worst of its limits is kept, clamps on the same legs among them. */
function spareLifted(
  ...[dock, design, catalog, { pair, a, b, ground }, stock, low, up]: [
    ...Parameters<Law>,
    Known,
    Stock,
    Foot,
    number,
  ]
): number {
  const high = low === a ? b : a
  const fit = fitOf(catalog, stock, low, high, pair.spacing, undersideOver(dock, design, catalog, [a, b]))
  if (fit === null) return Number.NEGATIVE_INFINITY
  const lifted = { ...fit, lowZ: fit.lowZ + up, highZ: fit.highZ + up }
  const others = dock.pairs.flatMap(({ id, along, brace, legs }) =>
    along || brace === null || id === pair.id
      ? []
      : legs.map((leg) => ({ leg, z: leg === brace.low ? brace.lowZ : brace.highZ, code: brace.code })),
  )
  const apart = others.flatMap(({ leg, z, code }) => {
    const own = leg === low.id ? lifted.lowZ : leg === high.id ? lifted.highZ : null
    const other = catalog.braces.find((s) => s.code === code)
    const least = endHalf(catalog, stock) + endHalf(catalog, other) + catalog.rules.braceToPad.value
    return own === null ? [] : [Math.abs(own - z) - least]
  })
  const under = spareBetween(ground, lifted, low, high, catalog)
  return Math.min(
    ...apart,
    fit.highClearance - up - catalog.rules.braceToFrame.value,
    fit.lowClearance + up - Math.max(catalog.rules.braceToPad.value, catalog.rules.braceToBed.value),
    under,
  )
}

/** A lengthwise brace rises by Pythagoras, low end on the deeper leg, and keeps off the clamps of braces across; where there is none, that is told. */
export const alongFigures: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const one of known(dock, design, catalog)) {
    const { pair, a, b } = one
    if (!pair.along) continue
    if (pair.brace === null) {
      if (design.dock.bracing?.none?.includes(pair.id)) continue
      if (
        !findingsOn(dock, a.id).some((f) => f.parts.includes(b.id) && f.code === 'brace-along-does-not-fit')
      )
        out.push(`${pair.id} is asked for, has no brace, and nothing says so`)
      // No stock brace hangs there at any height: each is tried every 5 mm.
      for (const stock of catalog.braces)
        if (stock.along && inRange(stock.spacing, pair.spacing, -1e-5))
          for (const [low] of ways(a, b, catalog))
            for (let mm = -600; mm <= 600; mm += 5)
              if (spareLifted(dock, design, catalog, one, stock, low, mm / 1000) > 1e-4) {
                out.push(`${pair.id} has no brace, though ${stock.code} would hang ${mm} mm off the middle`)
                break
              }
      continue
    }
    const stock = catalog.braces.find((s) => s.code === pair.brace?.code)!
    const { brace } = pair
    const low = brace.low === a.id ? a : b
    const high = low === a ? b : a
    if (low.bed > high.bed + catalog.rules.braceLevel.value + 3e-6)
      out.push(`${pair.id}: low end on the shallower leg`)
    expectNear(
      out,
      `${pair.id} holes`,
      Math.hypot(brace.highZ - brace.lowZ, pair.spacing - 2 * catalog.clamp.reach),
      stock.holes,
      1e-5,
    )
    const half = endHalf(catalog, stock)
    for (const other of dock.pairs) {
      if (other.brace === null || other.id === pair.id) continue
      const theirs = endHalf(
        catalog,
        catalog.braces.find((s) => s.code === other.brace?.code),
      )
      for (const leg of other.legs) {
        if (!pair.legs.includes(leg)) continue
        const [own, its] = [
          leg === brace.low ? brace.lowZ : brace.highZ,
          leg === other.brace.low ? other.brace.lowZ : other.brace.highZ,
        ]
        if (Math.abs(own - its) < half + theirs + catalog.rules.braceToPad.value - 1e-5)
          out.push(`${pair.id} and ${other.id} meet on ${leg}`)
      }
    }
    // Nothing nearer to the middle would do.
    const fit = fitOf(catalog, stock, low, high, pair.spacing, undersideOver(dock, design, catalog, [a, b]))!
    const lift = Math.abs(brace.lowZ - fit.lowZ)
    for (let mm = 0; mm / 1000 < lift - 1e-3; mm += 5)
      for (const sign of [1, -1])
        if (spareLifted(dock, design, catalog, one, stock, low, (sign * mm) / 1000) > 1e-4)
          out.push(`${pair.id} hangs ${lift} off the middle, though ${mm} mm would do`)
  }
  return out
}
