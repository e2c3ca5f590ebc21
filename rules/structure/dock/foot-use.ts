/**
 * The worst of each foot over all cases: how hard it presses, whether it lifts, and whether friction holds it.
 *
 * Resistance to sliding is asked of the two feet of a pair together, for a brace presses them apart with nothing behind it (with lengthwise
 * braces of all feet that braces join), and of the whole dock with its posts.
 */
import type { FootUse, Structure } from '../../dock.ts'
import { round6 } from '../../numbers.ts'
import { footingAt } from '../../site/footing.ts'
import { allowableBearing } from '../strength/index.ts'
import type { DockFrame } from './frame.ts'
import { type Hold, sliding } from './sliding.ts'
import type { Solved } from './soften.ts'

export interface FeetJudge {
  visit(solved: Solved): void
  uses(): FootUse[]
  total(): Structure['slides']
}

/** A push under this is none, N. */
const NOTHING = 1

interface Group {
  readonly feet: readonly number[]
  /** Sideways over what resists. */
  push: number
  name: string | null
}

export function feetJudge(frame: DockFrame): FeetJudge {
  const { kit, legs, slot } = frame
  const bottoms = legs.map(({ leg }) => footingAt(kit.bed, leg.x, leg.y))
  const areas = legs.map(({ leg }) => leg.pad.plate.length * leg.pad.plate.width)
  const at = legs.map(({ members }) => slot[members[0]!]! * 12)
  const index = new Map(legs.map(({ leg }, i) => [leg.id, i]))
  const load = new Float64Array(legs.length)
  const loadCase: string[] = legs.map(() => '')
  const liftCase: (string | null)[] = legs.map(() => null)
  const groups = new Set<Group>()
  const groupOf = new Map<number, Group>()
  const addGroup = (feet: readonly number[]): void => {
    const group: Group = { feet, push: 0, name: null }
    groups.add(group)
    for (const foot of feet) {
      groups.delete(groupOf.get(foot)!)
      groupOf.set(foot, group)
    }
  }
  for (const { pair, fit } of kit.pairs) {
    const feet = pair.legs.map((leg) => index.get(leg.id)!)
    if (!pair.along) addGroup(feet)
    else if (fit) addGroup([...new Set(feet.flatMap((foot) => groupOf.get(foot)?.feet ?? [foot]))])
  }
  legs.forEach((_, i) => {
    if (!groupOf.has(i)) addGroup([i])
  })
  const whole: Group = { feet: legs.map((_, i) => i), push: 0, name: null }
  const rubbing = sliding(frame)
  const rub = (group: Group, { push, holds }: Hold, name: string): void => {
    const over = push <= NOTHING ? 0 : holds * MOST > push ? push / holds : MOST
    if (over <= group.push) return
    group.push = over
    group.name = name
  }
  return {
    visit({ forces, carried, lifted, combination, lean }) {
      const { name } = combination
      for (let i = 0; i < legs.length; i++) {
        const down = carried[at[i]!]!
        if (down > load[i]!) {
          load[i] = down
          loadCase[i] = name
        }
      }
      for (const i of lifted) if (i < legs.length) liftCase[i] ??= name
      // What is over in a moment moves a foot by no more than it moves the dock.
      if (!combination.transient)
        for (const group of groups) rub(group, rubbing.of(group.feet, forces, lean, 'low'), name)
      if (!combination.outside) return
      const hold = rubbing.whole(forces, lean, 'low')
      if (!combination.transient || slideOf(hold, combination.energy!) > NUDGE) rub(whole, hold, name)
    },
    uses: () =>
      legs.map(({ leg }, i): FootUse => {
        const pressure = load[i]! / areas[i]!
        const trusted = allowableBearing(bottoms[i]!)
        const group = groupOf.get(i)!
        return {
          leg: leg.id,
          load: round6(load[i]!),
          pressure: round6(pressure),
          use: trusted === null ? null : round6(pressure / trusted),
          case: loadCase[i]!,
          lifts: liftCase[i] !== null,
          liftCase: liftCase[i]!,
          slides: group.push > 1,
          push: round6(group.push),
          pushCase: group.name,
        }
      }),
    total: () => ({
      push: round6(whole.push),
      case: whole.name,
      slides: whole.push > 1,
    }),
  }
}

/** A slide under this is a nudge, not worth setting the dock straight for, m (judgment: an inch). */
const NUDGE = 0.025

/**
 * How far the dock slides by a load with so much energy (J), m: what is left of it when the dock as a spring has come to where its feet
 * let go is rubbed away.
 */
export const slideOf = ({ push, holds }: Hold, energy: number): number =>
  push <= holds ? 0 : holds <= 0 ? Number.POSITIVE_INFINITY : (energy * (1 - (holds / push) ** 2)) / holds

/** A push is told as at most this many times what resists: next to nothing may. */
const MOST = 99
