/** The hour of the day that the picture is taken at: late light for the light theme, dusk for the dark one. */
import { Color, Vector3 } from 'three'

export type Hour = 'day' | 'dusk'

export interface Palette {
  /** Unit vector toward the sun, in the dock's frame (x lakeward, z up). */
  readonly sun: Vector3
  readonly sunLight: Color
  readonly zenith: Color
  readonly horizon: Color
  /** Around the sun. */
  readonly glow: Color
  readonly hillsFar: Color
  readonly hillsNear: Color
  /** What light comes from below: sand and water. */
  readonly bounce: Color
  /** Water without end. */
  readonly deep: Color
  readonly exposure: number
}

/** Colors are given as on a screen (sRGB) and stored linear; `by` is how bright. */
const light = (hex: string, by = 1): Color => new Color(hex).multiplyScalar(by)

const toward = (azimuth: number, elevation: number): Vector3 => {
  const a = (azimuth * Math.PI) / 180
  const e = (elevation * Math.PI) / 180
  return new Vector3(Math.cos(a) * Math.cos(e), Math.sin(a) * Math.cos(e), Math.sin(e))
}

export const PALETTES: Readonly<Record<Hour, Palette>> = {
  day: {
    sun: toward(68, 24),
    sunLight: light('#ffd49a', 2.7),
    zenith: light('#3d83dd', 1.05),
    horizon: light('#fbe3bd', 1.08),
    glow: light('#ffbf73', 1.05),
    hillsFar: light('#7d9cba', 0.62),
    hillsNear: light('#47684f', 0.5),
    bounce: light('#b79f75', 0.34),
    deep: light('#146066', 0.6),
    exposure: 0.84,
  },
  dusk: {
    sun: toward(60, 13),
    sunLight: light('#ffbe96', 0.6),
    zenith: light('#2f66c4', 0.8),
    horizon: light('#d8b6a8', 0.52),
    glow: light('#ff9456', 0.75),
    hillsFar: light('#4a5c86', 0.5),
    hillsNear: light('#263a4a', 0.5),
    bounce: light('#5f74a0', 0.55),
    deep: light('#0f4560', 0.48),
    exposure: 0.98,
  },
}
