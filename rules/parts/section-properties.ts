/** Section properties of bar stock by their closed forms (square corners). */
import type { Stock } from '../catalog/index.ts'

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
