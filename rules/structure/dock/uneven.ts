/**
 * The dock with one foot lower than it should be: settled, scoured, or set by a hand that was 20 mm off. What hangs then under the dock's
 * own weight, and what the worst leg carries with a full deck.
 *
 * Tried are the feet that carry most: what the neighbors must take over is what such a foot gives up.
 */
import type { UnevenFoot } from '../../dock.ts'
import { round6 } from '../../numbers.ts'
import type { DockFrame } from './frame.ts'
import { letGo } from './lift-off.ts'
import { legJudges } from './part-judges.ts'
import type { Loaded } from './soften.ts'

/** How much lower, m (judgment: what is found on docks a few weeks old). */
const LOW = 0.02
/** Feet tried, of those that carry most. */
const TRIED = 8

/** Null where the dock has no answer under a full deck. */
export function unevenFoot(
  frame: DockFrame,
  { touching, dead, people, gaps, leaning }: Loaded,
): UnevenFoot | null {
  const sum = (live: number): Float64Array =>
    dead.map((value, i) => value + gaps[i]! + live * people[i]! + live * leaning[i]!)
  const still = sum(0)
  const full = sum(1)
  const feet = frame.legs
    .map((_, i) => i)
    .sort((a, b) => full[touching.at[b * 3]!]! - full[touching.at[a * 3]!]!)
    .slice(0, TRIED)
  const judges = legJudges(frame)
  const hangs: string[] = []
  const by = new Float64Array(frame.contacts.length * 3)
  for (const foot of feet) {
    const lower = (forces: Float64Array) => {
      by.fill(0)
      by[foot * 3] = -LOW
      touching.move(by, forces)
      return letGo(touching, forces, [foot])
    }
    const own = frame.legs[foot]!.leg.id
    if (lower(still.slice()).lifted.includes(foot)) hangs.push(own)
    const forces = full.slice()
    if (!lower(forces).stands) continue
    for (const judge of judges) judge.visit(forces, own)
  }
  const worst = judges
    .map((judge, i) => ({ ...judge.worst(), leg: frame.legs[i]!.leg.id }))
    .reduce((most, one) => (one.use > most.use ? one : most))
  if (worst.case === '') return null
  const { leg, use, axial, case: low } = worst
  return { by: LOW, low, leg, use: round6(use), axial: round6(axial), hangs }
}
