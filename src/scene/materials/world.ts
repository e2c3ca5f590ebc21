/**
 * What all shaders of one scene share: the hour, the level of the water, the plane that cuts it, time. One set of uniform
 * objects a scene, handed by reference to each of its materials, so that a change is made once.
 */
import { Color, Vector2, Vector3, Vector4 } from 'three'
import type { Cut } from '../cut.ts'
import { around, type TurnedSlab } from '../deck-rectangles.ts'
import { TRAINS } from '../water/wave-trains.ts'
import { type Hour, PALETTES } from './palette.ts'

/** Rectangles of deck that light knows of. */
export const MOST_SLABS = 8

/** Where the plane is that cuts nothing, m. */
const WHOLE = -1e6

interface Value<T> {
  value: T
}

/** Absorption of clear lake water per m: red goes first. Chosen by eye, not measured. */
const CLEAR = new Vector3(0.42, 0.105, 0.085)

export interface World {
  readonly uSun: Value<Vector3>
  readonly uSunLight: Value<Color>
  readonly uZenith: Value<Color>
  readonly uHorizon: Value<Color>
  readonly uGlow: Value<Color>
  readonly uHillsFar: Value<Color>
  readonly uHillsNear: Value<Color>
  readonly uBounce: Value<Color>
  readonly uDeep: Value<Color>
  readonly uAbsorb: Value<Vector3>
  /** By the name that three's curve knows it. */
  readonly toneMappingExposure: Value<number>
  /** Elevation of the water shown, m. */
  readonly uLevel: Value<number>
  /** x, y: direction into what is kept; z: of the plane along it, m, far out where nothing is cut. */
  readonly uCut: Value<Vector3>
  /** Elevation above which the bank is green, m. */
  readonly uGreen: Value<number>
  /** Interval of the contour lines, m; 0 = none. */
  readonly uContour: Value<number>
  /** Seconds of played waves; 0 in a still picture. */
  readonly uTime: Value<number>
  /** Wave trains of the moving surface: wave numbers along x and y, phase now, amplitude (`wave-trains.ts`). */
  readonly uSea: Value<Vector4[]>
  /** Share of their height that is shown, 0 in still water; sharpness, 1/m; variance, m². */
  readonly uSeaLook: Value<Vector3>
  /** Distance at which the water along the dock ends, m, and share of the full height that each m beyond gives. */
  readonly uShoal: Value<Vector2>
  /** Shadow map: share of its width and height that 1 m takes. */
  readonly uShadowPerMeter: Value<Vector2>
  /** The deck as rectangles: x0, x1, y0, y1, m; how many of them count. */
  readonly uSlabs: Value<Vector4[]>
  readonly uSlabTurns: Value<Vector2[]>
  readonly uSlabCount: Value<number>
  /** The rectangle around them. */
  readonly uDock: Value<Vector4>
  /** Of the frame being drawn: width and height in pixels, pixels to one of CSS. */
  readonly uScreen: Value<Vector3>
  /** Color of the decking that was chosen. */
  readonly uDecking: Value<Color>
  /** Elevation of the deck surface, m. */
  readonly uDeck: Value<number>
  /** The deck is level from here on lakeward, m: a ramp before it is not. */
  readonly uEvenFrom: Value<number>
}

export function makeWorld(): World {
  const world: World = {
    uSun: { value: new Vector3() },
    uSunLight: { value: new Color() },
    uZenith: { value: new Color() },
    uHorizon: { value: new Color() },
    uGlow: { value: new Color() },
    uHillsFar: { value: new Color() },
    uHillsNear: { value: new Color() },
    uBounce: { value: new Color() },
    uDeep: { value: new Color() },
    uAbsorb: { value: CLEAR.clone() },
    toneMappingExposure: { value: 1 },
    uLevel: { value: 0 },
    uCut: { value: new Vector3(0, 1, WHOLE) },
    uGreen: { value: 0.3 },
    uContour: { value: 0 },
    uTime: { value: 0 },
    uSea: { value: Array.from({ length: TRAINS }, () => new Vector4()) },
    uSeaLook: { value: new Vector3() },
    uShoal: { value: new Vector2(0, 1) },
    uShadowPerMeter: { value: new Vector2(0.1, 0.1) },
    uSlabs: { value: Array.from({ length: MOST_SLABS }, () => new Vector4()) },
    uSlabTurns: { value: Array.from({ length: MOST_SLABS }, () => new Vector2(1, 0)) },
    uSlabCount: { value: 0 },
    uDock: { value: new Vector4() },
    uScreen: { value: new Vector3(1, 1, 1) },
    uDecking: { value: new Color() },
    uDeck: { value: 0.5 },
    uEvenFrom: { value: -1e6 },
  }
  setHour(world, 'day')
  return world
}

export function setHour(world: World, hour: Hour): void {
  const palette = PALETTES[hour]
  world.uSun.value.copy(palette.sun)
  world.uSunLight.value.copy(palette.sunLight)
  world.uZenith.value.copy(palette.zenith)
  world.uHorizon.value.copy(palette.horizon)
  world.uGlow.value.copy(palette.glow)
  world.uHillsFar.value.copy(palette.hillsFar)
  world.uHillsNear.value.copy(palette.hillsNear)
  world.uBounce.value.copy(palette.bounce)
  world.uDeep.value.copy(palette.deep)
  world.toneMappingExposure.value = palette.exposure
}

export const setCut = (world: World, cut: Cut | null): void => {
  if (cut === null) world.uCut.value.set(0, 1, WHOLE)
  else if (cut.across) world.uCut.value.set(cut.keep, 0, cut.keep * cut.at)
  else world.uCut.value.set(0, cut.keep, cut.keep * cut.at)
}

export function setSlabs(world: World, slabs: readonly TurnedSlab[]): void {
  world.uSlabCount.value = Math.min(MOST_SLABS, slabs.length)
  slabs.slice(0, MOST_SLABS).forEach(({ x0, x1, y0, y1, c, s }, i) => {
    world.uSlabs.value[i]!.set(x0, x1, y0, y1)
    world.uSlabTurns.value[i]!.set(c, s)
  })
  const all = slabs.map(around).reduce(
    (a, b) => ({
      x0: Math.min(a.x0, b.x0),
      x1: Math.max(a.x1, b.x1),
      y0: Math.min(a.y0, b.y0),
      y1: Math.max(a.y1, b.y1),
    }),
    { x0: 1e9, x1: -1e9, y0: 1e9, y1: -1e9 },
  )
  world.uDock.value.set(all.x0, all.x1, all.y0, all.y1)
}
