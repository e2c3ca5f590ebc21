/** Section properties of bar stock by their closed forms (square corners). */
import type { Stock } from './index.ts'

export interface SectionProperties {
  /** m2 */
  readonly area: number
  /** Second moments, m4: `Iy` about the axis along the width (bending up and down), `Iz` about the one along the height. */
  readonly Iy: number
  readonly Iz: number
  /** Extreme fibers from the center, m. */
  readonly cy: number
  readonly cz: number
  /** Outside size, m. */
  readonly width: number
  readonly height: number
}

/** Area, second moments and moduli of a piece's section, in powers of m. */
export function sectionProperties(stock: Stock): SectionProperties {
  switch (stock.shape) {
    case 'round-tube':
      return round(stock.diameter, stock.diameter - 2 * stock.wall)
    case 'round-bar':
      return round(stock.diameter, 0)
    case 'rect-tube':
      return rectangle(stock.width, stock.height, stock.width - 2 * stock.wall, stock.height - 2 * stock.wall)
    case 'flat':
      return rectangle(stock.width, stock.height, 0, 0)
  }
}

/** How much a bolt goes through, m: both walls of a tube, the whole thickness of a solid bar. */
export function boredThrough(stock: Stock): number {
  switch (stock.shape) {
    case 'round-tube':
    case 'rect-tube':
      return 2 * stock.wall
    case 'round-bar':
      return stock.diameter
    case 'flat':
      return Math.min(stock.width, stock.height)
  }
}

function round(outer: number, inner: number): SectionProperties {
  const I = (Math.PI / 64) * (outer ** 4 - inner ** 4)
  return {
    area: (Math.PI / 4) * (outer ** 2 - inner ** 2),
    Iy: I,
    Iz: I,
    cy: outer / 2,
    cz: outer / 2,
    width: outer,
    height: outer,
  }
}

function rectangle(width: number, height: number, w: number, h: number): SectionProperties {
  return {
    area: width * height - w * h,
    Iy: (width * height ** 3 - w * h ** 3) / 12,
    Iz: (height * width ** 3 - h * w ** 3) / 12,
    cy: width / 2,
    cz: height / 2,
    width,
    height,
  }
}

/** What bending and torsion need beyond `SectionProperties`. */
export interface BendingProperties extends SectionProperties {
  /** Elastic and plastic section moduli, m3: `Sy`, `Zy` for bending up and down, `Sz`, `Zz` for bending sideways. */
  readonly Sy: number
  readonly Sz: number
  readonly Zy: number
  readonly Zz: number
  /** Radii of gyration, m. */
  readonly ry: number
  readonly rz: number
  /** Torsion constant, m4. */
  readonly J: number
  /** Torsional shear constant: twisting moment over the greatest shear stress, m3. */
  readonly C: number
}

export function bendingProperties(stock: Stock): BendingProperties {
  const section = sectionProperties(stock)
  const { area, Iy, Iz, cy, cz, width, height } = section
  const [Zy, Zz] = plasticModuli(stock)
  return {
    ...section,
    // `cy` reaches across the width, `cz` up the height.
    Sy: Iy / cz,
    Sz: Iz / cy,
    Zy,
    Zz,
    ry: Math.sqrt(Iy / area),
    rz: Math.sqrt(Iz / area),
    J: torsionConstant(stock),
    C: torsionalShear(stock, width, height),
  }
}

function plasticModuli(stock: Stock): [number, number] {
  switch (stock.shape) {
    case 'round-tube':
    case 'round-bar': {
      const inner = stock.shape === 'round-bar' ? 0 : stock.diameter - 2 * stock.wall
      const Z = (stock.diameter ** 3 - inner ** 3) / 6
      return [Z, Z]
    }
    case 'rect-tube': {
      const { width: b, height: h, wall } = stock
      const [bi, hi] = [b - 2 * wall, h - 2 * wall]
      return [(b * h ** 2 - bi * hi ** 2) / 4, (h * b ** 2 - hi * bi ** 2) / 4]
    }
    case 'flat':
      return [(stock.width * stock.height ** 2) / 4, (stock.height * stock.width ** 2) / 4]
  }
}

/**
 * Torsion constant, m4. Round: the polar moment. Thin-walled rectangle: Bredt, 4·A²·t / perimeter on the wall's middle line.
 * Flat bar: b·t³/3 · (1 − 0.63 t/b). Source: Roark's Formulas for Stress and Strain, 7th ed., table 10.1 (memory).
 */
export function torsionConstant(stock: Stock): number {
  switch (stock.shape) {
    case 'round-tube':
    case 'round-bar':
      return 2 * sectionProperties(stock).Iy
    case 'rect-tube': {
      const w = stock.width - stock.wall
      const h = stock.height - stock.wall
      return (2 * stock.wall * (w * h) ** 2) / (w + h)
    }
    case 'flat': {
      const b = Math.max(stock.width, stock.height)
      const t = Math.min(stock.width, stock.height)
      return ((b * t ** 3) / 3) * (1 - (0.63 * t) / b)
    }
  }
}

function torsionalShear(stock: Stock, width: number, height: number): number {
  switch (stock.shape) {
    case 'round-tube':
    case 'round-bar':
      return torsionConstant(stock) / (width / 2)
    case 'rect-tube':
      // Bredt: 2·A·t.
      return 2 * (width - stock.wall) * (height - stock.wall) * stock.wall
    case 'flat':
      return torsionConstant(stock) / Math.min(width, height)
  }
}
