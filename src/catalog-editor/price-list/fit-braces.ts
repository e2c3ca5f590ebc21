/**
 * Which frames and legs the braces of a price list are for. No list says it, and the shapes do: hole to hole B over the span s between two
 * clamps rises r = sqrt(B^2 - s^2) (Pythagoras), which must be steep enough to hold and find its room under the frame.
 */

import { sectionProperties } from '../../../rules/catalog/section-properties.ts'
import type { Catalog } from '../../../rules/index.ts'

type Brace = Catalog['braces'][number]

/** Least rise over span of a brace that is meant for a frame: flatter ones hold little (common practice, from memory: 17 degrees). */
const LEAST_SLOPE = 0.3
/** m to either side of the spacings that it is for: frames of the same size differ by less. */
const EITHER_SIDE = 0.05

/** The catalog with these braces' ranges as its frames and legs have them; one that fits no frame keeps what it has. */
export function fitBraces(catalog: Catalog, codes: ReadonlySet<string>): Catalog {
  if (codes.size === 0) return catalog
  return {
    ...catalog,
    braces: catalog.braces.map((brace) =>
      codes.has(brace.code) && !brace.along ? fitted(brace, catalog) : brace,
    ),
  }
}

function fitted(brace: Brace, catalog: Catalog): Brace {
  const { frames, sleeve, legs, rules } = catalog
  const spacings = [
    ...new Set(frames.filter(({ turn }) => turn === undefined).map(({ width }) => width - 2 * sleeve.across)),
  ].filter((spacing) => isSteep(brace, spacing, catalog))
  if (spacings.length === 0) return brace
  const rise = Math.min(...spacings.map((spacing) => riseOver(brace, spacing, catalog)))
  const lengths = legs.map(({ length }) => length).sort((a, b) => a - b)
  const braced = lengths.filter((length) => length >= rules.braceFrom.value - 1e-6)
  const fits = braced.filter((length) => roomUnder(length, lengths, catalog) >= roomFor(brace, rise, catalog))
  // Too long for all: those of the longest leg find most room.
  const [from = brace.legs.from] = fits.length > 0 ? fits : braced.slice(-1)
  return {
    ...brace,
    spacing: {
      from: rounded(Math.min(...spacings) - EITHER_SIDE),
      to: rounded(Math.max(...spacings) + EITHER_SIDE),
    },
    legs: { from, to: Math.max(from, braced.at(-1) ?? brace.legs.to) },
  }
}

const rounded = (value: number): number => Number(value.toFixed(4))

/** m; NaN where it does not span the holes. */
const riseOver = ({ holes }: Brace, spacing: number, { clamp }: Catalog): number =>
  Math.sqrt(holes ** 2 - (spacing - 2 * clamp.reach) ** 2)

function isSteep(brace: Brace, spacing: number, catalog: Catalog): boolean {
  const span = spacing - 2 * catalog.clamp.reach
  return span > 0 && riseOver(brace, spacing, catalog) >= LEAST_SLOPE * span
}

/** Frame to bed on even ground where a leg of this length has just been chosen: the next shorter one was too short there, m. */
function roomUnder(length: number, lengths: readonly number[], catalog: Catalog): number {
  const { decking, frames, pads, rules, sleeve, stock } = catalog
  const shorter = lengths.findLast((one) => one < length - 1e-6) ?? length
  const rails = frames.map(({ rail }) => (stock[rail] ? sectionProperties(stock[rail]).height : 0))
  const depth = decking.rise + Math.max(sleeve.length, ...rails)
  return shorter + (pads[0]?.sole ?? 0) - rules.reserveMin.value - depth
}

function roomFor(brace: Brace, rise: number, { clamp, rules, stock }: Catalog): number {
  const tube = stock[brace.stock]
  const half = Math.max(clamp.height / 2, tube ? sectionProperties(tube).height / 2 : 0)
  return rise + 2 * half + rules.braceToFrame.value + rules.braceToBed.value
}
