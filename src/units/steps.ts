/** How far lengths move at a touch: the fractions that are read in the water, m. */
import type { Units } from '../../rules/index.ts'

/** A dragged length comes to rest on half inches or centimeters. */
const SNAP = { imperial: 0.0127, metric: 0.01 } as const
/** An arrow key; with Shift the larger. */
const KEY = { imperial: [0.0254, 0.1524], metric: [0.01, 0.1] } as const

export const keyStep = (units: Units, large: boolean): number => KEY[units][large ? 1 : 0]

/** The next length up that is read in these units: nothing that must be cleared is reached into. */
export const snapUp = (meters: number, units: Units): number =>
  Math.round(Math.ceil(meters / SNAP[units] - 1e-6) * SNAP[units] * 1e7) / 1e7

/** The nearest length that is read in these units. */
export const snap = (meters: number, units: Units): number =>
  Math.round(Math.round(meters / SNAP[units]) * SNAP[units] * 1e7) / 1e7 + 0

/** The next whole step up or down, from between two of them too, m. */
export const nextStep = (meters: number, step: number, way: 1 | -1): number =>
  (way > 0 ? Math.floor(meters / step + 1e-4) + 1 : Math.ceil(meters / step - 1e-4) - 1) * step
