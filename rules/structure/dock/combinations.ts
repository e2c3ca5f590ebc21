/**
 * Which loads act together. ASCE 7-16 2.4.1 (memory): D; D + L; D + W; D + 0.75 L + 0.75 W; 0.6 D + W. The wind is the user's own, not a
 * mapped one, so it is not reduced; wind and the waves that it raises come together, with the lake low, as today, or high. A push
 * at a corner (D + P) and a boat's bump (D + B) stand for what people do.
 *
 * The parts must hold the highest wave (D + W); whether the dock as a whole stays is asked of 0.6 D + W, with the mean of the highest tenth
 * (`trains.ts`).
 *
 * Crests that lift the deck from below (`uplift`) come with the least weight, 0.6 D + W, where they are worst; where they would only
 * relieve feet and legs they are not counted on. A crowd at the end (D + C) and somebody at the edge (D + E) leave the rest of the deck empty.
 *
 * The frame leans with its load: gravity cases both ways and across, weather cases the way they push.
 */
import type { Height } from '../../site/waves/trains.ts'
import { caseId } from './load-cases.ts'
import type { LevelName, Toward } from './ways.ts'

/** How much of the deck's people is in the axial forces that the frame is softened by. */
export const GRAVITY = { full: 1, none: 0 } as const
export type Gravity = keyof typeof GRAVITY

export interface Combination {
  /** Id of its load case (`load-cases.ts`): what `case` says in the Dock. */
  readonly name: string
  readonly gravity: Gravity
  readonly dead: number
  readonly live: readonly [left: number, right: number]
  readonly weather: {
    readonly factor: number
    readonly level: LevelName
    readonly toward: Toward
    /** Which of the wind's waves. */
    readonly waves: Height
    /** Factor of what crests lift the deck by; absent as 0. */
    readonly uplift?: number
    /** Whether the boat that the dock is for lies at it. */
    readonly moored: boolean
  } | null
  /** Index of a side load, or null. */
  readonly side: number | null
  readonly lean: Toward
  /**
   * Whether it is asked if the dock as a whole stays where it is. Not by the shove of somebody who stands on the deck, whose own feet push
   * back; not by the one highest wave, over before anything has moved: that is for 0.6 D + W.
   */
  readonly outside: boolean
  /**
   * Over in a moment (a boat's bump): with `force`, N, goes no more than `energy`, J. How far a dock slides or rocks by it is for that
   * energy to tell, not for the force as if it stayed.
   */
  readonly transient?: true
  readonly energy?: number
  readonly force?: number
}

/** A load that is no pattern of people or weather: a push, a bump, a crowd, somebody at the edge. */
export interface SideLoad {
  readonly name: string
  readonly toward: Toward
  readonly outside: boolean
  /** Where it is over in a moment: J and N. */
  readonly bump?: { readonly energy: number; readonly force: number }
}

const SIDES: readonly Toward[] = ['left', 'right', 'shore', 'lake']
/** A wind off the land raises no waves to speak of, and presses no more than the one off the lake. */
const WEATHER: readonly Toward[] = ['left', 'right', 'shore']

/**
 * @param levels those that differ
 * @param weather false where the Design tells neither wind nor waves
 * @param sides the side loads
 * @param boat whether one lies at the dock: each weather comes with and without it then. A dock that a boat pushes over slides or tips before its
 * far legs have taken all of the waves, so with the boat alone they would be told of less than they carry on the day that it is out
 */
export function combinations(
  levels: readonly LevelName[],
  weather: boolean,
  sides: readonly SideLoad[],
  boat = false,
): Combination[] {
  const all: Combination[] = []
  const quiet = { weather: null, side: null, outside: true }
  for (const lean of SIDES) {
    all.push({ ...quiet, name: caseId('dead'), gravity: 'none', dead: 1, live: [0, 0], lean })
    all.push({ ...quiet, name: caseId('live'), gravity: 'full', dead: 1, live: [1, 1], lean })
  }
  // Half a deck full twists a section: it leans to the side that is full, or lengthwise.
  for (const side of ['left', 'right'] as const)
    for (const lean of [side, 'shore', 'lake'] as const)
      all.push({
        ...quiet,
        name: caseId('live', side),
        gravity: 'full',
        dead: 1,
        live: side === 'left' ? [1, 0] : [0, 1],
        lean,
      })
  sides.forEach(({ name, toward, outside, bump }, side) => {
    const one = {
      ...quiet,
      name,
      gravity: 'none' as const,
      dead: 1,
      live: [0, 0] as const,
      side,
      lean: toward,
      outside,
    }
    all.push(bump ? { ...one, transient: true, energy: bump.energy, force: bump.force } : one)
  })
  const berths = boat ? [false, true] : [true]
  for (const moored of weather ? berths : [])
    for (const level of levels)
      for (const toward of WEATHER) {
        const whole = { factor: 1, level, toward, waves: 'tenth', moored } as const
        const highest = { ...whole, waves: 'highest' } as const
        const most = { ...highest, factor: 0.75 }
        const base = { ...quiet, lean: toward, gravity: 'none' as const, live: [0, 0] as const }
        all.push({ ...base, name: caseId('storm', toward, level), dead: 1, weather: highest, outside: false })
        all.push({
          ...base,
          name: caseId('storm-light', toward, level),
          dead: 0.6,
          weather: { ...whole, uplift: 1 },
        })
        all.push({
          ...base,
          name: caseId('storm-live', toward, level),
          gravity: 'full',
          dead: 1,
          live: [0.75, 0.75],
          weather: most,
          outside: false,
        })
      }
  return all
}
