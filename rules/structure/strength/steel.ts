/**
 * Allowable strengths of steel tubes and bars by AISC 360-16 (Specification for Structural Steel Buildings), ASD, from memory: for
 * anchor posts and the like.
 *
 * D2 (tension), E3 with E7 (compression; thin walls by effective width or, round, by E7-6), F7, F8, F11 (bending), G4, G5 (shear),
 * H3.1 (torsion). Safety factor 1.67, rupture 2.00. E as the catalog states it. Shear buckling of round tubes is not checked: it
 * asks for walls under 1/50 of the diameter on long lengths. Lateral-torsional buckling is left out as F7 and F8 leave it out for
 * short closed shapes; of a flat bar F11.2 is checked.
 */
import type { SteelStrength, Stock } from '../../catalog/index.ts'
import { bendingProperties } from '../../catalog/section-properties.ts'
import { type Limit, type LimitState, least, type MemberOptions, type Strengths } from './strengths.ts'

const SAFETY = 1.67
const RUPTURE = 2

const limit = (nominal: number, by: LimitState, safety = SAFETY): Limit => ({ value: nominal / safety, by })

/** E3: stress at which a member of slenderness Lc/r buckles, Pa; nominal. */
export function steelColumnStress({ E, yield: Fy }: SteelStrength, slenderness: number): number {
  const Fe = (Math.PI ** 2 * E) / slenderness ** 2
  return Fy / Fe <= 2.25 ? 0.658 ** (Fy / Fe) * Fy : 0.877 * Fe
}

export function steelStrengths(material: SteelStrength, stock: Stock, options: MemberOptions): Strengths {
  const { yield: Fy, ultimate: Fu } = material
  const { length, k = 1, holes = 0 } = options
  const section = bendingProperties(stock)
  const { area } = section
  const slenderness = (k * length) / Math.min(section.ry, section.rz)
  const Fcr = steelColumnStress(material, slenderness)
  const effective = effectiveArea(material, stock, area, Fcr)
  return {
    interaction: 'aisc',
    round: stock.shape === 'round-tube' || stock.shape === 'round-bar',
    compression: limit(
      Fcr * effective,
      effective < area ? 'joint-buckling' : Fcr > 0.99 * Fy ? 'yield' : 'member-buckling',
    ),
    tension: least(limit(Fy * area, 'yield'), limit(Fu * Math.max(area - holes, 0), 'rupture', RUPTURE)),
    momentY: moment(material, stock, 'y', options),
    momentZ: moment(material, stock, 'z', options),
    shearY: limit(0.6 * Fy * shearArea(stock, 'y', area), 'yield'),
    shearZ: limit(0.6 * Fy * shearArea(stock, 'z', area), 'yield'),
    torsion: limit(0.6 * Fy * section.C, 'yield'),
  }
}

/** E7: what of the area counts where walls are thin, at the stress Fcr. */
function effectiveArea({ E, yield: Fy }: SteelStrength, stock: Stock, area: number, Fcr: number): number {
  if (stock.shape === 'round-tube') {
    const ratio = stock.diameter / stock.wall
    const share = Math.min(1, (0.038 * E) / (Fy * ratio) + 2 / 3)
    // E7.2 ends at 0.45 E/Fy; over it the wall's own elastic buckling rules (F8-4's stress).
    return area * (ratio <= (0.45 * E) / Fy ? share : Math.min(share, (0.33 * E) / (ratio * Fy)))
  }
  if (stock.shape !== 'rect-tube') return area
  const t = stock.wall
  const most = 1.4 * Math.sqrt(E / Fy)
  let lost = 0
  for (const b of [stock.width - 2 * t, stock.height - 2 * t]) {
    if (b / t <= most * Math.sqrt(Fy / Fcr)) continue
    const Fel = ((1.38 * most * t) / b) ** 2 * Fy
    const root = Math.sqrt(Fel / Fcr)
    lost += 2 * t * b * (1 - Math.min(1, root * (1 - 0.2 * root)))
  }
  return area - lost
}

function moment(material: SteelStrength, stock: Stock, about: 'y' | 'z', options: MemberOptions): Limit {
  const { E, yield: Fy } = material
  const section = bendingProperties(stock)
  const [S, Z] = about === 'y' ? [section.Sy, section.Zy] : [section.Sz, section.Zz]
  const plastic = limit(Fy * Math.min(Z, 1.6 * S), 'yield')
  const root = Math.sqrt(E / Fy)
  switch (stock.shape) {
    case 'round-tube': {
      const ratio = stock.diameter / stock.wall
      if (ratio <= (0.07 * E) / Fy) return plastic
      const F = ratio <= (0.31 * E) / Fy ? (0.021 * E) / ratio + Fy : (0.33 * E) / ratio
      return least(plastic, limit(F * S, 'local-buckling'))
    }
    case 'rect-tube': {
      const t = stock.wall
      const clear = [(stock.width - 2 * t) / t, (stock.height - 2 * t) / t] as const
      const [flange, web] = about === 'y' ? clear : [clear[1], clear[0]]
      const Mp = Fy * Z
      const limits = [plastic]
      if (flange > 1.4 * root) {
        // F7-4 gives the width that counts; the whole modulus is lowered by it, which is less than F7-3 has (on the safe side).
        const share = Math.min(1, (1.92 * root * (1 - (0.38 * root) / flange)) / flange)
        limits.push(limit(Fy * S * share, 'local-buckling'))
      } else if (flange > 1.12 * root)
        limits.push(limit(Mp - (Mp - Fy * S) * ((3.57 * flange) / root - 4), 'local-buckling'))
      if (web > 2.42 * root)
        limits.push(limit(Mp - (Mp - Fy * S) * Math.min(1, (0.305 * web) / root - 0.738), 'local-buckling'))
      return least(...limits)
    }
    case 'flat': {
      const [t, d] = about === 'y' ? [stock.width, stock.height] : [stock.height, stock.width]
      const ratio = (options.length * d) / t ** 2
      if (d <= t || ratio <= (0.08 * E) / Fy) return plastic
      const { Cb = 1 } = options
      const My = Fy * S
      const M =
        ratio <= (1.9 * E) / Fy ? Cb * (1.52 - (0.274 * ratio * Fy) / E) * My : ((1.9 * E * Cb) / ratio) * S
      return least(plastic, limit(M, 'lateral-torsional-buckling'))
    }
    default:
      return plastic
  }
}

/** G4: both webs, clear height; G5: half of a round tube. */
function shearArea(stock: Stock, along: 'y' | 'z', area: number): number {
  switch (stock.shape) {
    case 'round-tube':
      return area / 2
    case 'rect-tube':
      return 2 * stock.wall * ((along === 'z' ? stock.height : stock.width) - 2 * stock.wall)
    default:
      return area
  }
}
