/** What the model files of a dock have in common: which pieces, where, of what looks. Pure data; m. */
import type { Bed, Catalog, Design, Dock, Quat, Vec3 } from '../../rules/index.ts'
import { bedMesh } from '../bed.ts'
import { extentOf } from '../extent.ts'
import { groupPlacements } from '../placements.ts'
import { solidOf } from '../solids/index.ts'
import type { Look, Solid } from '../types.ts'
import { rotate } from '../vec.ts'
import { waterSurface } from '../water.ts'

export const MODEL_BASES = ['water', 'feet'] as const
export const MODEL_LAKES = ['none', 'water', 'bed', 'both'] as const
export interface ModelOptions {
  /** What is at height 0: the water of the survey day (where absent), or the lowest foot, for a dock that is to stand on a lawn. */
  readonly base?: (typeof MODEL_BASES)[number]
  /** What of the lake is in the model beside the dock; nothing where absent. */
  readonly lake?: {
    readonly parts: (typeof MODEL_LAKES)[number]
    readonly bed: Bed
    readonly design: Design
  }
}

/** Side of the ground's squares where it is not straight from side to side, m. */
const STEP = 0.5

/** Of a part in a model: as it is drawn, or of the lake. */
export type ModelMaterial = Look | 'water' | 'lake-bed'
export interface ModelSolid extends Pick<Solid, 'positions' | 'normals' | 'indices' | 'color'> {
  readonly groups: readonly {
    readonly start: number
    readonly count: number
    readonly material: ModelMaterial
  }[]
}

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
  readonly solid: ModelSolid
  readonly pieces: readonly ModelPiece[]
}

export interface Model {
  readonly name: string
  /**
   * In the dock's frame: in plan the middle of the dock, in height the water of the survey day or the lowest foot. A phone sets this point
   * down on a floor; there the dock stands with its deck as high over the floor as over the water, or on its feet.
   */
  readonly origin: Vec3
  readonly parts: readonly ModelPart[]
}

interface ModelLook {
  /** Linear RGB, 0 to 1. */
  readonly color: Vec3
  readonly metallic: number
  readonly roughness: number
  /** 1: nothing is seen through it. */
  readonly opacity: number
}

/** Metallic-roughness looks. */
const MODEL_LOOKS: Readonly<Record<Exclude<ModelMaterial, 'decking'>, Omit<ModelLook, 'opacity'>>> = {
  aluminum: { color: [0.58, 0.59, 0.6], metallic: 0.9, roughness: 0.42 },
  steel: { color: [0.36, 0.37, 0.38], metallic: 0.95, roughness: 0.35 },
  wood: { color: [0.42, 0.22, 0.1], metallic: 0, roughness: 0.75 },
  plastic: { color: [0.05, 0.055, 0.06], metallic: 0, roughness: 0.6 },
  rubber: { color: [0.018, 0.018, 0.02], metallic: 0, roughness: 0.85 },
  water: { color: [0.05, 0.21, 0.37], metallic: 0, roughness: 0.1 },
  'lake-bed': { color: [0.3, 0.24, 0.16], metallic: 0, roughness: 0.95 },
}
const OPACITY: Partial<Record<ModelMaterial, number>> = { water: 0.45 }

/** From a share of a screen's brightness to one of light (sRGB, IEC 61966-2-1), to four digits. */
const linear = (share: number): number =>
  Math.round((share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4) * 1e4) / 1e4

const lightOf = (hex: string): Vec3 => {
  const [r, g, b] = [1, 3, 5].map((i) => linear(Number.parseInt(hex.slice(i, i + 2), 16) / 255))
  return [r!, g!, b!]
}

/** The look of some of a solid, with a name that is a name in every format; the same look has the same name. */
export function modelLook(
  { color = '#808080' }: Pick<ModelSolid, 'color'>,
  look: ModelMaterial,
): ModelLook & { readonly name: string } {
  return look === 'decking'
    ? {
        name: `decking_${color.slice(1).toLowerCase()}`,
        color: lightOf(color),
        metallic: 0,
        roughness: 0.7,
        opacity: 1,
      }
    : { name: look.replace('-', '_'), ...MODEL_LOOKS[look], opacity: OPACITY[look] ?? 1 }
}

/** Both model formats have y up: x stays, z becomes y, y becomes −z. A turn about x by −90°. */
export const UPRIGHT: Quat = [-Math.SQRT1_2, 0, 0, Math.SQRT1_2]

/** What each placement of a dock comes to in a model file. Never throws on a derived dock. */
export function modelOf(dock: Dock, catalog: Catalog, { base, lake }: ModelOptions = {}): Model {
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
  const origin: Vec3 = [
    (min[0] + max[0]) / 2,
    (min[1] + max[1]) / 2,
    base === 'feet' ? lowestFoot(dock, min[2]) : 0,
  ]
  return {
    name: dock.name,
    origin,
    parts: [...parts, ...(lake ? lakeParts(dock, lake) : [])].map((part) => ({
      ...part,
      pieces: part.pieces.map((piece) => ({
        ...piece,
        at: [piece.at[0] - origin[0], piece.at[1] - origin[1], piece.at[2] - origin[2]],
      })),
    })),
  }
}

/** Where the lowest leg stands. Posts that are driven in reach deeper, on a lawn too. */
const lowestFoot = ({ legs }: Dock, none: number): number =>
  legs.length === 0 ? none : Math.min(...legs.map(({ bed }) => bed))

/** The lake round the dock as far as it is drawn, its water as of the survey day. */
function lakeParts(dock: Dock, { parts, bed, design }: NonNullable<ModelOptions['lake']>): ModelPart[] {
  if (parts === 'none') return []
  const mesh = bedMesh(bed, extentOf(dock, design), STEP)
  const part = (material: 'water' | 'lake-bed', solid: Omit<ModelSolid, 'groups'>): ModelPart[] =>
    solid.indices.length === 0
      ? []
      : [
          {
            name: material,
            solid: { ...solid, groups: [{ start: 0, count: solid.indices.length, material }] },
            pieces: [{ name: material, at: [0, 0, 0], turn: [0, 0, 0, 1] }],
          },
        ]
  const { positions, indices } = waterSurface(mesh, 0)
  const up = Float32Array.from(positions, (_, i) => (i % 3 === 2 ? 1 : 0))
  return [
    ...(parts === 'bed' ? [] : part('water', { positions, indices, normals: up })),
    ...(parts === 'water' ? [] : part('lake-bed', mesh)),
  ]
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
