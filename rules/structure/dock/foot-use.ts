/**
 * The worst of each foot over all cases: how hard it presses, whether it lifts, and whether friction holds it.
 *
 * Resistance to sliding is asked of the two feet of a pair together, for a brace presses them apart with nothing behind it, and of the whole dock with its posts.
 */
import type { FootUse, Structure } from '../../dock.ts'
import { round6 } from '../../numbers.ts'
import { allowableBearing, slidingResistance, strengthsOfStock } from '../strength/index.ts'
import type { Solved } from './analysis.ts'
import type { DockFrame } from './frame.ts'

export interface FeetJudge {
  visit(solved: Solved): void
  /** Whether the dock slides under less than what it takes to tip it. */
  slidesFirst(solved: Solved): boolean
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

/**
 * What the posts hold sideways, N: their tubes in bending, from the clamp down to where the bed holds them. They give more than feet
 * do, so they come to bear once feet begin to slide: both count together.
 */
function postsHold({ kit, posts, members, nodes }: DockFrame): number {
  return kit.extras.placed.reduce((sum, extra) => {
    const post = posts.find(({ id }) => id === extra.id)
    if (!post || !extra.post?.stock) return sum
    const { from, to } = members[post.member]!
    const length = nodes[to]!.z - nodes[from]!.z
    const { momentY } = strengthsOfStock(kit.shop.catalog, extra.post.stock.stock, { length })!
    return sum + momentY.value / length
  }, 0)
}

export function feetJudge(frame: DockFrame): FeetJudge {
  const { kit, legs, slot, posts } = frame
  const bottoms = legs.map(({ leg }) => kit.bed.bottomAt(leg.x, leg.y))
  const areas = legs.map(({ leg }) => leg.pad.plate.length * leg.pad.plate.width)
  const at = legs.map(({ members }) => slot[members[0]!]! * 12)
  const index = new Map(legs.map(({ leg }, i) => [leg.id, i]))
  const load = new Float64Array(legs.length)
  const loadCase: string[] = legs.map(() => '')
  const liftCase: (string | null)[] = legs.map(() => null)
  const groups: Group[] = []
  const groupOf = new Map<number, Group>()
  const addGroup = (feet: readonly number[]): void => {
    const group: Group = { feet, push: 0, name: null }
    groups.push(group)
    for (const foot of feet) groupOf.set(foot, group)
  }
  for (const { pair } of kit.pairs) addGroup(pair.legs.map((leg) => index.get(leg.id)!))
  legs.forEach((_, i) => {
    if (!groupOf.has(i)) addGroup([i])
  })
  const posted = postsHold(frame)
  const postAt = posts.map(({ member }) => slot[member]! * 12)
  const whole: Group = { feet: legs.map((_, i) => i), push: 0, name: null }
  /** What pushes a group sideways over what resists. Feet that pull, of a dock that tips, take of what the others hold. */
  const pushOn = (group: Group, forces: Float64Array): number => {
    let holds = 0
    let up = 0
    let down = 0
    let x = 0
    let y = 0
    for (const foot of group.feet) {
      const press = forces[at[foot]!]!
      if (press > 0) down += press
      else up -= press
      holds += slidingResistance(bottoms[foot]!, press, areas[foot]!)
      x += forces[at[foot]! + 1]!
      y += forces[at[foot]! + 2]!
    }
    if (down > 0) holds *= Math.max(0, 1 - up / down)
    if (group === whole) {
      holds += posted
      // A post stands as a leg does: its own second and third axes are the dock's x and y.
      for (const post of postAt) {
        x += forces[post + 1]!
        y += forces[post + 2]!
      }
    }
    const across = Math.sqrt(x * x + y * y)
    return across <= NOTHING ? 0 : holds * MOST > across ? across / holds : MOST
  }
  const rub = (group: Group, forces: Float64Array, name: string): void => {
    const push = pushOn(group, forces)
    if (push <= group.push) return
    group.push = push
    group.name = name
  }
  return {
    visit({ forces, lifted, combination }) {
      const { name } = combination
      for (let i = 0; i < legs.length; i++) {
        const down = forces[at[i]!]!
        if (down > load[i]!) {
          load[i] = down
          loadCase[i] = name
        }
      }
      for (const i of lifted) liftCase[i] ??= name
      for (const group of groups) rub(group, forces, name)
      if (combination.outside) rub(whole, forces, name)
    },
    slidesFirst: ({ forces }) => pushOn(whole, forces) > 1,
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

/** A push is told as at most this many times what resists: next to nothing may. */
const MOST = 99
