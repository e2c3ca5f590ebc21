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
    sun: toward(112, 28),
    sunLight: light('#ffdcae', 2.5),
    zenith: light('#3f86dc', 1.05),
    horizon: light('#f6e4c6', 1.05),
    glow: light('#ffc583', 0.9),
    hillsFar: light('#7f9bb4', 0.6),
    hillsNear: light('#4f6a55', 0.5),
    bounce: light('#b79f75', 0.34),
    deep: light('#146066', 0.6),
    exposure: 0.84,
  },
  dusk: {
    sun: toward(104, 15),
    sunLight: light('#ffbd92', 0.85),
    zenith: light('#42609c', 0.85),
    horizon: light('#cb9c8e', 0.6),
    glow: light('#ff9a62', 0.5),
    hillsFar: light('#4c5470', 0.42),
    hillsNear: light('#27343c', 0.42),
    bounce: light('#747684', 0.5),
    deep: light('#0d3a48', 0.42),
    exposure: 0.86,
  },
}
