/** Laws of the legs: bed, heights, reserve, lengths, and where their pieces stand. */
import type { Leg } from '../../../rules/dock.ts'
import { groundOf } from './ground.ts'
import { elevations, expectNear, frameOf, type Law, near, sectionById, stopOn } from './law.ts'
import { cornerAt } from './plan.ts'

const padOf = (catalog: Parameters<Law>[2], code: string) => catalog.pads.find((p) => p.code === code)

/** A leg's axis is the middle of the sleeve in its corner. */
export const legsInTheirSleeves: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const by = sectionById(dock)
  for (const leg of dock.legs) {
    const section = by.get(leg.section)
    if (section === undefined) {
      out.push(`${leg.id} is on ${leg.section}, which is not there`)
      continue
    }
    const [x, y] = cornerAt(section, leg.corner, catalog.sleeve.along, catalog.sleeve.across)
    expectNear(out, `${leg.id} x`, leg.x, x)
    expectNear(out, `${leg.id} y`, leg.y, y)
  }
  return out
}

/** The bed at each leg is the soundings' (firm where sounded). Off the soundings of a surface nothing is asserted. */
export const bedsFromSoundings: Law = (dock, design) => {
  const out: string[] = []
  const ground = groundOf(design.site)
  for (const leg of dock.legs) {
    const right = ground.at(leg.x, leg.y, true)
    if (right.length > 0 && !right.some((z) => near(z, leg.bed, bedTolerance(ground, leg))))
      out.push(`${leg.id} bed ${leg.bed}, expected ${right.join(' or ')}`)
  }
  return out
}

/** A rounded place on a steep bed, or at the foot of a wall, has a bed that is a little off. */
function bedTolerance(ground: ReturnType<typeof groundOf>, leg: Leg): number {
  const around = [-1e-6, 1e-6].flatMap((d) => [
    ...ground.at(leg.x + d, leg.y, true),
    ...ground.at(leg.x, leg.y + d, true),
  ])
  const spread = around.length > 0 ? Math.max(...around) - Math.min(...around) : 0
  return 3e-6 + spread
}

/** Set height = deck elevation − bed; to the frame top it is less by the decking. */
export const setHeights: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const leg of dock.legs) {
    expectNear(out, `${leg.id} setHeight`, leg.setHeight, design.dock.deckHeight - leg.bed)
    expectNear(out, `${leg.id} setHeightFrame`, leg.setHeightFrame, leg.setHeight - catalog.decking.rise)
  }
  return out
}

/**
 * Reserve = the shop's least, or 1.64 σ + scour and sinkage on the bottom there + what the deck must go up for the high level + what was
 * asked for, the greater.
 */
export const reserves: Law = (dock, design, catalog) => {
  const out: string[] = []
  const { site } = design
  const ground = groundOf(site)
  const { reserveMin, scour, deckOverHigh } = catalog.rules
  const high = Math.max(0, site.levels.high)
  const over = high + deckOverHigh.value - design.dock.deckHeight
  const rise = over <= 0 ? 0 : Math.min(over, high)
  for (const leg of dock.legs) {
    const right = ground
      .bottomsAt(leg.x, leg.y)
      // Where firm ground was sounded under muck or clay the pad stands on that: as sand.
      .flatMap((bottom) => {
        const soft = bottom === 'muck' || bottom === 'clay'
        const over = ground.at(leg.x, leg.y, false).map((z) => z - leg.bed)
        if (!soft || over.length === 0) return soft ? [bottom, 'sand' as const] : [bottom]
        return over.map((by) => (by >= 0.01 - 1e-6 ? ('sand' as const) : bottom))
      })
      .map((bottom) =>
        Math.max(
          reserveMin.value,
          1.64 * (site.soundingError ?? 0) +
            scour.value[bottom] +
            catalog.pads.find(({ code }) => code === leg.pad)!.sinkage[bottom] +
            rise +
            (design.dock.reserve ?? 0),
        ),
      )
    if (!right.some((r) => near(r, leg.reserve)))
      out.push(`${leg.id} reserve ${leg.reserve}, expected ${right.join(' or ')}`)
  }
  return out
}

/** Required = set height + reserve − sole of its pad. */
export const requiredLengths: Law = (dock, _design, catalog) => {
  const out: string[] = []
  for (const leg of dock.legs) {
    const pad = padOf(catalog, leg.pad)
    if (pad === undefined) out.push(`${leg.id} stands on ${leg.pad}, which the catalog has not`)
    else expectNear(out, `${leg.id} required`, leg.required, leg.setHeight + leg.reserve - pad.sole)
  }
  return out
}

/** The stock is the shortest that will do (unless another was asked for), of the catalog's lengths, its code beside it. */
export const shortestStock: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const leg of dock.legs) {
    if (leg.stock === null) {
      if (leg.code !== null) out.push(`${leg.id} has code ${leg.code} but no length`)
      continue
    }
    const own = catalog.legs.find((l) => l.code === leg.code)
    if (own === undefined || !near(own.length, leg.stock)) {
      out.push(`${leg.id}: ${leg.code} of ${leg.stock} is not in the catalog`)
      continue
    }
    const asked = design.dock.overrides?.[leg.id]?.stock
    if (asked !== undefined && near(asked, leg.stock)) continue
    const shorter = catalog.legs.find((l) => l.length < own.length - 1e-9 && l.length >= leg.required + 3e-6)
    if (shorter !== undefined)
      out.push(`${leg.id} got ${leg.stock}, ${shorter.length} would do for ${leg.required}`)
  }
  return out
}

/** Each leg is as long as it must be, or a stop names it. */
export const longEnoughOrStop: Law = (dock) =>
  dock.legs
    .filter((leg) => (leg.stock === null || leg.stock < leg.required - 3e-6) && !stopOn(dock, leg.id))
    .map((leg) => `${leg.id} of ${leg.stock} is shorter than ${leg.required}, and no stop names it`)

/** A leg is without a length only where none is long enough or the bed reaches into its frame. */
export const noLengthForAReason: Law = (dock, design, catalog) => {
  const longest = Math.max(...catalog.legs.map((l) => l.length))
  const by = sectionById(dock)
  return dock.legs
    .filter((leg) => {
      const frame = frameOf(catalog, by.get(leg.section)?.frame ?? '')
      if (leg.stock !== null || leg.required > longest - 3e-6 || frame === undefined) return false
      return leg.bed < elevations(design.dock.deckHeight, frame.rail, catalog).underside - 3e-6
    })
    .map((leg) => `${leg.id} has no length, though ${leg.required} could be had`)
}

/** Over the deck stands length + sole − set height; nothing where there is no length. */
export const aboveDeck: Law = (dock, _design, catalog) => {
  const out: string[] = []
  for (const leg of dock.legs) {
    if (leg.stock === null) {
      if (leg.aboveDeck !== null)
        out.push(`${leg.id} has no length but stands ${leg.aboveDeck} over the deck`)
      continue
    }
    const sole = padOf(catalog, leg.pad)?.sole ?? 0
    if (leg.aboveDeck === null) out.push(`${leg.id} says nothing of what stands over the deck`)
    else expectNear(out, `${leg.id} aboveDeck`, leg.aboveDeck, leg.stock + sole - leg.setHeight)
  }
  return out
}

/** All legs stand on the pad that was asked for, else on the catalog's first. */
export const padsAsAsked: Law = (dock, design, catalog) => {
  const asked = catalog.pads.find((p) => p.code === design.dock.pad) ?? catalog.pads[0]
  return dock.legs
    .filter((l) => l.pad !== asked?.code)
    .map((l) => `${l.id} stands on ${l.pad}, expected ${asked?.code}`)
}

/** Pad on the bed, tube on its sole, cap on the tube's top: one each to a leg (a leg without a length has no tube). */
export const legPiecesStand: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const of = new Map<string, { kind: string; at: readonly number[] }[]>()
  for (const p of dock.placements)
    if (p.kind === 'leg' || p.kind === 'foot-pad' || p.kind === 'leg-cap')
      of.set(p.of, [...(of.get(p.of) ?? []), p])
  for (const leg of dock.legs) {
    const sole = padOf(catalog, leg.pad)?.sole ?? 0
    const heights: Record<string, number | null> = {
      'foot-pad': leg.bed,
      leg: leg.stock === null ? null : leg.bed + sole,
      'leg-cap': leg.stock === null ? null : leg.bed + sole + leg.stock,
    }
    for (const [kind, z] of Object.entries(heights)) {
      const pieces = (of.get(leg.id) ?? []).filter((p) => p.kind === kind)
      const expected = kind === 'leg' && leg.stock === null ? 0 : 1
      if (pieces.length !== expected)
        out.push(`${leg.id} has ${pieces.length} of ${kind}, expected ${expected}`)
      for (const { at } of pieces) {
        expectNear(out, `${leg.id} ${kind} x`, at[0]!, leg.x)
        expectNear(out, `${leg.id} ${kind} y`, at[1]!, leg.y)
        if (z !== null) expectNear(out, `${leg.id} ${kind} z`, at[2]!, z)
      }
    }
  }
  return out
}
