/** Linear (Airy) waves over an even bottom: how long, how fast, and how the water moves in them. SI. */
import { G as g } from './water.ts'

export interface Length {
  /** Wave number, rad/m. */
  readonly k: number
  /** m */
  readonly length: number
  /** m/s */
  readonly speed: number
}

/** Of ω²d/g: from here on tanh(kd) is 1 to the last bit, and the water deep. */
const DEEP = 40

/**
 * ω² = g·k·tanh(k·d), by Newton's rule from Eckart's start (within 5 %): to machine precision in a few steps for any depth.
 *
 * @param period s, over 0
 * @param depth m, over 0
 */
export function dispersion(period: number, depth: number): Length {
  const omega = (2 * Math.PI) / period
  const k0d = (omega ** 2 * depth) / g
  if (!(k0d < DEEP)) {
    const k = omega ** 2 / g
    return { k, length: (2 * Math.PI) / k, speed: g / omega }
  }
  let kd = k0d / Math.sqrt(Math.tanh(k0d))
  for (let i = 0; i < 20; i++) {
    const t = Math.tanh(kd)
    const step = (kd * t - k0d) / (t + kd * (1 - t * t))
    kd -= step
    if (Math.abs(step) <= 1e-15 * kd) break
  }
  const k = kd / depth
  return { k, length: (2 * Math.PI) / k, speed: omega / k }
}

export interface Wave {
  /** Trough to crest, m. */
  readonly height: number
  readonly period: number
  /** Still water, m. */
  readonly depth: number
  readonly k: number
}

/**
 * Largest speed (under the crest) and acceleration (a quarter wave off it) at a height over the bed, m/s and m/s². Over still water by
 * Wheeler's stretching: the profile is drawn out from the bed to the surface (Wheeler 1970, J. Petroleum Technology 22; memory).
 *
 * @param surface of the water there, over still water, m
 * @param over the bed, m
 */
export function orbit(
  { height, period, depth, k }: Wave,
  surface: number,
  over: number,
): { u: number; a: number } {
  // Rounding must not lift it over the surface: a ripple's k would make much of that.
  const z = Math.min(depth, (over * depth) / (depth + surface))
  // cosh / sinh without overflow in deep water.
  const ratio = Math.exp(k * (z - depth)) * ((1 + Math.exp(-2 * k * z)) / (1 - Math.exp(-2 * k * depth)))
  return { u: ((Math.PI * height) / period) * ratio, a: ((2 * Math.PI ** 2 * height) / period ** 2) * ratio }
}
