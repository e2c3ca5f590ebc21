/** What the model files of a dock have in common: which pieces, where, of what looks. Pure data; m. */
import type { Catalog, Dock, Quat, Vec3 } from '../../rules/index.ts'
import { groupPlacements } from '../placements.ts'
import { solidOf } from '../solids/index.ts'
import type { Look, Solid } from '../types.ts'
import { rotate } from '../vec.ts'

/** One piece, in the dock's frame moved to the model's origin (z up). */
export interface ModelPiece {
  /** `leg s3.end.left`; numbered where a place has several: `set-bolt s3.end.left 2`. Unique in the model. */
  readonly name: string
  readonly at: Vec3
  readonly turn: Quat
}

export interface ModelPart {
  /** Kind and code, for people. */
  readonly name: string
  readonly solid: Solid
  readonly pieces: readonly ModelPiece[]
}

export interface Model {
  readonly name: string
  /**
   * In the dock's frame: in plan the middle of the dock, in height the water of the survey day. A phone sets this point down on a floor;
   * there the dock stands with its deck as high over the floor as over the water.
   */
  readonly origin: Vec3
  readonly parts: readonly ModelPart[]
}

interface ModelLook {
  /** Linear RGB, 0 to 1. */
  readonly color: Vec3
  readonly metallic: number
  readonly roughness: number
}

/** Metallic-roughness looks. */
const MODEL_LOOKS: Readonly<Record<Exclude<Look, 'decking'>, ModelLook>> = {
  aluminum: { color: [0.58, 0.59, 0.6], metallic: 0.9, roughness: 0.42 },
  steel: { color: [0.36, 0.37, 0.38], metallic: 0.95, roughness: 0.35 },
  wood: { color: [0.42, 0.22, 0.1], metallic: 0, roughness: 0.75 },
  plastic: { color: [0.05, 0.055, 0.06], metallic: 0, roughness: 0.6 },
  rubber: { color: [0.018, 0.018, 0.02], metallic: 0, roughness: 0.85 },
}

/** From a share of a screen's brightness to one of light (sRGB, IEC 61966-2-1), to four digits. */
const linear = (share: number): number =>
  Math.round((share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4) * 1e4) / 1e4

const lightOf = (hex: string): Vec3 => {
  const [r, g, b] = [1, 3, 5].map((i) => linear(Number.parseInt(hex.slice(i, i + 2), 16) / 255))
  return [r!, g!, b!]
}

/** The look of some of a solid, with a name that is a name in every format; the same look has the same name. */
export function modelLook({ color = '#808080' }: Solid, look: Look): ModelLook & { readonly name: string } {
  return look === 'decking'
    ? { name: `decking_${color.slice(1).toLowerCase()}`, color: lightOf(color), metallic: 0, roughness: 0.7 }
    : { name: look, ...MODEL_LOOKS[look] }
}

/** Both model formats have y up: x stays, z becomes y, y becomes −z. A turn about x by −90°. */
export const UPRIGHT: Quat = [-Math.SQRT1_2, 0, 0, Math.SQRT1_2]

/** What each placement of a dock comes to in a model file. Never throws on a derived dock. */
export function modelOf(dock: Dock, catalog: Catalog): Model {
  const groups = [...groupPlacements(dock).values()].filter((group) => group.length > 0)
  const counted = new Map<string, number>()
  const nameOf = (kind: string, of: string): string => {
    const base = `${kind} ${of}`
    const n = (counted.get(base) ?? 0) + 1
    counted.set(base, n)
    return n === 1 ? base : `${base} ${n}`
  }
  const parts = groups.map((group): ModelPart => {
    const { kind, code } = group[0]!
    return {
      name: `${kind} ${code}`,
      solid: solidOf(kind, code, catalog),
      pieces: group.map((placement) => ({
        name: nameOf(placement.kind, placement.of),
        at: placement.at,
        turn: placement.turn,
      })),
    }
  })
  const { min, max } = partsBounds(parts)
  const origin: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, 0]
  return {
    name: dock.name,
    origin,
    parts: parts.map((part) => ({
      ...part,
      pieces: part.pieces.map((piece) => ({
        ...piece,
        at: [piece.at[0] - origin[0], piece.at[1] - origin[1], piece.at[2] - origin[2]],
      })),
    })),
  }
}

/** The box that holds every vertex of every piece, in the frame of the pieces; all zero for an empty dock. */
function partsBounds(parts: readonly ModelPart[]): { readonly min: Vec3; readonly max: Vec3 } {
  const min: [number, number, number] = [Infinity, Infinity, Infinity]
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const { solid, pieces } of parts) {
    // Far corners of the solid: enough to hold it where it is not turned, and each vertex where it is.
    for (const { at, turn } of pieces)
      for (let i = 0; i < solid.positions.length; i += 3) {
        const turned = rotate(turn, [solid.positions[i]!, solid.positions[i + 1]!, solid.positions[i + 2]!])
        for (let k = 0; k < 3; k++) {
          const value = turned[k]! + at[k]!
          if (value < min[k]!) min[k] = value
          if (value > max[k]!) max[k] = value
        }
      }
  }
  return Number.isFinite(min[0]) ? { min, max } : { min: [0, 0, 0], max: [0, 0, 0] }
}
