/**
 * Allowable strengths of aluminum tubes and bars by the Aluminum Design Manual 2020, Part I, ASD.
 *
 * Chapters D (tension), E (compression: member buckling E.2, local E.3.1, both E.4), F (bending: F.2, F.3.1 weighted average, round
 * tubes F.3.3, lateral-torsional F.4 with F.4.2.3 and F.4.2.4), G (shear), H.2 (torsion). Safety factors 1.65, rupture 1.95.
 * Formulas read in a public reprint of the manual (its E.4-1 misprints the elastic local stress; the manual's own example 12
 * shows which it is); buckling constants and H.1 from memory; tests hold all against the manual's worked examples 4, 5, 12, 14, 18, 20.
 *
 * Valid for doubly symmetric sections with square corners, not fatigued, under 90 °C. Not checked: torsional buckling (never of closed
 * shapes before bending sideways), web crippling under a point load (J.9), holes in bending.
 */
import type { AluminumStrength, Stock } from '../../catalog/index.ts'
import { type BendingProperties, bendingProperties } from '../../catalog/section-properties.ts'
import { type BucklingConstants, bucklingConstants, type Metal, roundElastic } from './buckling-constants.ts'
import {
  flatBending,
  flatCompression,
  flatElastic,
  flatShear,
  roundBending,
  roundCompression,
  roundShear,
  roundShearSlenderness,
  roundTorsion,
} from './element-stress.ts'
import {
  type Interaction,
  type Limit,
  type LimitState,
  least,
  type MemberOptions,
  type Strengths,
} from './strengths.ts'

const SAFETY = 1.65
const RUPTURE = 1.95
/** Beside a weld where the shop states nothing: half (judgment; EN 1999-1-1:2007 table 3.2b gives about that for 6xxx in T6). */
const WELDED = 0.5

/** A material as the chapters ask for it, sound or beside a weld. */
export function metalOf(material: AluminumStrength, welded = false): Metal {
  const { E, notch = 1 } = material
  const sound = { yield: material.yield, ultimate: material.ultimate }
  const soft = material.welded ?? { yield: WELDED * sound.yield, ultimate: WELDED * sound.ultimate }
  const { yield: Fty, ultimate } = welded ? soft : sound
  // Weld-affected metal has no notch coefficient (D.2-4, F.2).
  const Ftu = welded ? ultimate : ultimate / notch
  return {
    E,
    Fty,
    Ftu,
    Fcy: welded ? Fty : (material.compressive ?? Fty),
    Fsy: 0.6 * Fty,
    Fsu: 0.6 * Ftu,
    aged: !welded && material.temper === 'T5-T9',
  }
}

interface Law {
  readonly metal: Metal
  readonly constants: BucklingConstants
}

/** Both states of a material with their constants. */
function lawsOf(material: AluminumStrength): { sound: Law; welded: Law } {
  const law = (metal: Metal): Law => ({ metal, constants: bucklingConstants(metal) })
  return { sound: law(metalOf(material)), welded: law(metalOf(material, true)) }
}

/** E.2: stress at which a member of slenderness kL/r buckles, Pa; nominal. It jumps down by about half a percent at Cc. */
export function columnStress({ E, Fcy }: Metal, { column }: BucklingConstants, slenderness: number): number {
  const { B, D, C } = column
  const short = (B - Fcy) / D
  if (slenderness <= short) return Fcy
  if (slenderness >= C) return (0.85 * Math.PI ** 2 * E) / slenderness ** 2
  return (B - D * slenderness) * (0.85 + (0.15 * (C - slenderness)) / (C - short))
}

/** Walls of a rectangular tube. */
interface Walls {
  readonly thickness: number
  /** Clear, m. */
  readonly width: number
  readonly height: number
}

interface Section extends BendingProperties {
  readonly stock: Stock
  readonly walls: Walls | null
  /** Middle radius over wall; 0 where not a round tube. */
  readonly ratio: number
}

function sectionOf(stock: Stock): Section {
  const properties = bendingProperties(stock)
  const walls =
    stock.shape === 'rect-tube'
      ? {
          thickness: stock.wall,
          width: stock.width - 2 * stock.wall,
          height: stock.height - 2 * stock.wall,
        }
      : null
  const ratio = stock.shape === 'round-tube' ? (stock.diameter - stock.wall) / 2 / stock.wall : 0
  return { ...properties, stock, walls, ratio }
}

const limit = (nominal: number, by: LimitState, safety = SAFETY): Limit => ({ value: nominal / safety, by })

const NAMES = ['compression', 'tension', 'momentY', 'momentZ', 'shearY', 'shearZ', 'torsion'] as const

export function aluminumStrengths(
  material: AluminumStrength,
  stock: Stock,
  options: MemberOptions,
): Strengths {
  const { weld = 'none' } = options
  const sound = strengthsAt(material, stock, { ...options, weld: 'none' })
  if (weld === 'none') return sound
  // Softened metal follows the other table of constants, which asks a little less of some thin walls. No weld strengthens.
  const ends = lower(sound, strengthsAt(material, stock, { ...options, weld: 'ends' }))
  return weld === 'ends' ? ends : lower(ends, strengthsAt(material, stock, options))
}

function lower(a: Strengths, b: Strengths): Strengths {
  const limits = Object.fromEntries(NAMES.map((name) => [name, least(a[name], b[name])]))
  return { ...a, ...(limits as Pick<Strengths, (typeof NAMES)[number]>) }
}

function strengthsAt(material: AluminumStrength, stock: Stock, options: MemberOptions): Strengths {
  const { weld = 'none' } = options
  const section = sectionOf(stock)
  const { sound, welded } = lawsOf(material)
  // At its weakest place, and where it buckles.
  const { metal: local, constants: wall } = weld === 'none' ? sound : welded
  const { metal: whole, constants: member } = weld === 'all' ? welded : sound
  const interaction: Interaction =
    stock.shape === 'rect-tube' || stock.shape === 'flat' ? 'adm-flat' : 'adm-curved'
  return {
    interaction,
    round: stock.shape === 'round-tube' || stock.shape === 'round-bar',
    compression: compression(section, local, wall, whole, member, options),
    tension: least(
      // Welds across do not lower the yield of the whole (D.2-1).
      limit(whole.Fty * section.area, 'yield'),
      limit(local.Ftu * Math.max(section.area - (options.holes ?? 0), 0), 'rupture', RUPTURE),
    ),
    momentY: moment(section, 'y', local, wall, whole, member, options),
    momentZ: moment(section, 'z', local, wall, whole, member, options),
    shearY: shear(section, 'y', local, wall, options),
    shearZ: shear(section, 'z', local, wall, options),
    torsion: torsion(section, local, wall, options),
  }
}

function compression(
  section: Section,
  local: Metal,
  wall: BucklingConstants,
  whole: Metal,
  member: BucklingConstants,
  { length, k = 1 }: MemberOptions,
): Limit {
  const { area, walls, ratio } = section
  const slenderness = (k * length) / Math.min(section.ry, section.rz)
  const Fc = columnStress(whole, member, slenderness)
  const limits = [limit(Fc * area, Fc === whole.Fcy ? 'yield' : 'member-buckling')]
  let Fe = Number.POSITIVE_INFINITY
  if (walls) {
    const { thickness: t, width, height } = walls
    const sides = [width, height].map((b) => ({ area: 2 * b * t, ratio: b / t }))
    const corners = area - sides.reduce((sum, side) => sum + side.area, 0)
    const nominal = sides.reduce(
      (sum, side) => sum + flatCompression(local, wall, side.ratio) * side.area,
      local.Fcy * corners,
    )
    limits.push(limit(nominal, 'local-buckling'))
    Fe = Math.min(...sides.map((side) => flatElastic(local, side.ratio)))
  } else if (ratio > 0) {
    limits.push(limit(roundCompression(local, wall, ratio) * area, 'local-buckling'))
    Fe = roundElastic(local.E, Math.sqrt(ratio))
  } else limits.push(limit(local.Fcy * area, 'yield'))
  if (Fe < Fc)
    limits.push(
      limit(
        Math.cbrt((0.85 * Math.PI ** 2 * whole.E) / slenderness ** 2) * Math.cbrt(Fe) ** 2 * area,
        'joint-buckling',
      ),
    )
  return least(...limits)
}

function moment(
  section: Section,
  about: 'y' | 'z',
  local: Metal,
  wall: BucklingConstants,
  whole: Metal,
  member: BucklingConstants,
  { length, Cb = 1 }: MemberOptions,
): Limit {
  const { walls, ratio, stock } = section
  const up = about === 'y'
  const [S, Z] = up ? [section.Sy, section.Zy] : [section.Sz, section.Zz]
  const other = up ? section.Iz : section.Iy
  const yielding = ({ Fty, Fcy }: Metal) => Math.min(Z * Math.min(Fty, Fcy), 1.5 * S * Fty, 1.5 * S * Fcy)
  const limits = [limit(yielding(local), 'yield'), limit(Z * local.Ftu, 'rupture', RUPTURE)]

  let slenderness = 0
  if (walls) {
    const { thickness: t } = walls
    const [flange, web] = up ? [walls.width, walls.height] : [walls.height, walls.width]
    const I = up ? section.Iy : section.Iz
    const Iw = (2 * t * web ** 3) / 12
    // F.3-1: flanges to their middle line, webs to their compressed edge.
    const nominal =
      (flatCompression(local, wall, flange / t) * (I - Iw)) / ((web + t) / 2) +
      (flatBending(local, wall, web / t) * Iw) / (web / 2)
    limits.push(limit(nominal, 'local-buckling'))
    slenderness = 2.3 * Math.sqrt((length * S) / (Cb * Math.sqrt(other * section.J)))
  } else if (ratio > 0) {
    limits.push(limit(roundBending(local, wall, ratio) * S, 'local-buckling'))
    slenderness = 2.3 * Math.sqrt((length * S) / (Cb * Math.sqrt(other * section.J)))
  } else if (stock.shape === 'flat') {
    const [t, d] = up ? [stock.width, stock.height] : [stock.height, stock.width]
    if (d > t) slenderness = (2.3 / t) * Math.sqrt((d * length) / Cb)
  }
  if (slenderness > 0) {
    const { C } = member.column
    const nominal =
      slenderness < C
        ? yielding(whole) * (1 - slenderness / C) + (Math.PI ** 2 * whole.E * slenderness * S) / C ** 3
        : (Math.PI ** 2 * whole.E * S) / slenderness ** 2
    limits.push(limit(nominal, 'lateral-torsional-buckling'))
  }
  return least(...limits)
}

function shear(
  section: Section,
  along: 'y' | 'z',
  metal: Metal,
  constants: BucklingConstants,
  { length }: MemberOptions,
): Limit {
  const { stock, walls, ratio, area } = section
  if (walls) {
    const { thickness: t } = walls
    const [clear, depth] = along === 'z' ? [walls.height, section.height] : [walls.width, section.width]
    const Fs = flatShear(metal, constants, clear / t)
    return least(
      limit(Fs * 2 * depth * t, Fs < metal.Fsy ? 'local-buckling' : 'yield'),
      limit(metal.Fsu * 2 * clear * t, 'rupture', RUPTURE),
    )
  }
  if (stock.shape === 'round-tube') {
    const radius = (stock.diameter - stock.wall) / 2
    const Fs = roundShear(metal, constants, roundShearSlenderness(ratio, length / radius))
    return least(
      limit((Fs * area) / 2, Fs < metal.Fsy ? 'local-buckling' : 'yield'),
      limit((metal.Fsu * area) / 2, 'rupture', RUPTURE),
    )
  }
  // G.5 for rods; a flat bar is taken alike.
  return least(limit(metal.Fsy * area, 'yield'), limit(metal.Fsu * area, 'rupture', RUPTURE))
}

function torsion(
  section: Section,
  metal: Metal,
  constants: BucklingConstants,
  { length }: MemberOptions,
): Limit {
  const { stock, walls, ratio, C } = section
  let Fs = metal.Fsy
  if (walls) Fs = flatShear(metal, constants, Math.max(walls.width, walls.height) / walls.thickness)
  else if (stock.shape === 'round-tube') {
    const radius = (stock.diameter - stock.wall) / 2
    Fs = roundTorsion(metal, constants, roundShearSlenderness(ratio, length / radius))
  }
  return least(
    limit(Fs * C, Fs < metal.Fsy ? 'local-buckling' : 'yield'),
    limit(metal.Fsu * C, 'rupture', RUPTURE),
  )
}
