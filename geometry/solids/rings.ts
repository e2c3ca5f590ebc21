/** Outlines in a plane: lists of points counter-clockwise, x across and y up as one looks against the direction of extrusion. m. */

export type Point = readonly [x: number, y: number]
export type Ring = readonly Point[]

/** Sides of a round outline: enough to look round at its size, few enough for hundreds of them. */
export const sidesOf = (diameter: number): number => (diameter < 0.02 ? 12 : diameter < 0.04 ? 16 : 24)

/**
 * A circle as a regular polygon of the *same area*, so that volume times density is the true mass. Its corners stand
 * out by 0.3 % of the radius at 24 sides.
 */
export function circle(diameter: number, sides = sidesOf(diameter), x = 0, y = 0): Point[] {
  const step = (2 * Math.PI) / sides
  const radius = (diameter / 2) * Math.sqrt(step / Math.sin(step))
  return Array.from({ length: sides }, (_, i) => [
    x + radius * Math.cos(i * step),
    y + radius * Math.sin(i * step),
  ])
}

export function rectangle(width: number, height: number, x = 0, y = 0): Point[] {
  const [a, b] = [width / 2, height / 2]
  return [
    [x - a, y - b],
    [x + a, y - b],
    [x + a, y + b],
    [x - a, y + b],
  ]
}

/** A regular hexagon by its size across flats, a flat at the top. */
export function hexagon(acrossFlats: number): Point[] {
  const radius = acrossFlats / Math.sqrt(3)
  return Array.from({ length: 6 }, (_, i) => [
    radius * Math.cos((i * Math.PI) / 3),
    radius * Math.sin((i * Math.PI) / 3),
  ])
}

/** A half round with its flat side on the y axis, bulging to +x. */
export function halfRound(depth: number, height: number, sides = 10): Point[] {
  return Array.from({ length: sides + 1 }, (_, i) => {
    const t = -Math.PI / 2 + (Math.PI * i) / sides
    // The ends exactly on the flat side.
    return [i === 0 || i === sides ? 0 : depth * Math.cos(t), (height / 2) * Math.sin(t)]
  })
}
