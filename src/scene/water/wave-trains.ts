/**
 * The lake's surface as the scene moves it: a handful of wave trains that together have the significant height that was worked out, the
 * middle one of them its period, length, speed and direction. Plain numbers, true to scale; the shader sums the same trains
 * (`materials/wave-chunk.ts`).
 */
import type { Waves } from '../../../rules/index.ts'
import { dispersion } from '../../../rules/site/waves/dispersion.ts'

export interface Train {
  /** Wave numbers along x and y, rad/m. */
  readonly kx: number
  readonly ky: number
  /** rad/s */
  readonly omega: number
  /** m */
  readonly amplitude: number
  /** At the start, rad. */
  readonly phase: number
}

export interface Sea {
  readonly trains: readonly Train[]
  /** Of the surface, m². The significant height is four times its root. */
  readonly variance: number
  /** How much crests are sharpened and troughs flattened, 1/m. */
  readonly sharpness: number
  /** From crest to crest in the main direction, m. */
  readonly length: number
  /** Depth from which on the water lets waves of this height stand, m. */
  readonly full: number
}

/** Trains, no more and no less: the shader's loop. */
export const TRAINS = 5

/**
 * Frequency over the peak's, share of the energy, degrees off the wind. Our own choice, after the spectrum of a young sea: most of it
 * near the peak, shorter waves more astray.
 */
const SPECTRUM: readonly (readonly [number, number, number])[] = [
  [1, 0.32, 0],
  [0.9, 0.17, 9],
  [1.13, 0.27, -13],
  [1.38, 0.16, 24],
  [1.8, 0.08, -33],
]

/** So far a trough may be flattened before the surface folds. */
const MOST_SHARPENED = 0.4

/**
 * Null where there are no waves with a period: still water, or wakes alone.
 *
 * @param from where the wind comes from, degrees off the dock's axis, counter-clockwise from above; 0 = straight off the lake
 */
export function seaOf(waves: Waves | null, from: number): Sea | null {
  if (!waves || waves.height <= 0 || waves.length <= 0) return null
  const sigma = waves.height / 4
  const peak = (2 * Math.PI) / waves.period
  const trains = SPECTRUM.map(([of, share, astray], i): Train => {
    const omega = peak * of
    const { k } = dispersion((2 * Math.PI) / omega, waves.depth)
    const toward = ((from + astray + 180) * Math.PI) / 180
    return {
      kx: k * Math.cos(toward),
      ky: k * Math.sin(toward),
      omega,
      amplitude: Math.sqrt(2 * share) * sigma,
      phase: i * 1.9,
    }
  })
  const most = trains.reduce((sum, train) => sum + train.amplitude, 0)
  return {
    trains,
    variance: sigma ** 2,
    // Second order of Stokes, for a narrow band in deep water: k (η² − σ²).
    sharpness: Math.min((2 * Math.PI) / waves.length, MOST_SHARPENED / most),
    length: waves.length,
    // As high as one in ten, and no wave higher than 0.78 of its depth.
    full: waves.tenth / 0.78,
  }
}

/** Phase of a train at a time, rad, within one turn: large angles are no good to a graphics card. */
export const phaseAt = ({ phase, omega }: Train, time: number): number =>
  (phase - omega * time) % (2 * Math.PI)

/**
 * Surface over still water, m.
 *
 * @param share of the full height that stands there, 0 to 1
 */
export function surfaceAt(sea: Sea, x: number, y: number, time: number, share = 1): number {
  const linear = sea.trains.reduce(
    (sum, train) =>
      sum + share * train.amplitude * Math.cos(train.kx * x + train.ky * y + phaseAt(train, time)),
    0,
  )
  return linear + sea.sharpness * (linear ** 2 - share ** 2 * sea.variance)
}

/** Share of the full height that this depth lets stand. */
export const shareAt = ({ full }: Pick<Sea, 'full'>, depth: number): number =>
  Math.min(1, Math.max(0, depth / full))
