/** In which order bodies are drawn so that near ones hide far ones. */
import type { Vec3 } from '../../rules/index.ts'

/** What a body is within, along the dock's axes, m. */
export interface Bounded {
  readonly low: Vec3
  readonly high: Vec3
}

/** Bodies overlap by less, m: they touch. */
const TOUCH = 1e-4

/**
 * Far bodies first. Of two bodies that a level or upright plane along the axes parts, the one on the eye's side of it may
 * hide the other; where two planes say otherwise of each, neither does. Others (a brace in its clamp) go by how far off their middles are.
 *
 * @param overlap do the two lie over each other in the picture at all?
 */
export function drawOrder<B extends Bounded>(
  bodies: readonly B[],
  eye: Vec3,
  overlap: (a: B, b: B) => boolean,
): B[] {
  const far = new Map(bodies.map((body) => [body, distance(body, eye)]))
  const sorted = [...bodies].sort((a, b) => far.get(b)! - far.get(a)!)
  /** Of each: those that may hide it; and how many of those that it may hide are not drawn yet. */
  const hiders = sorted.map((): number[] => [])
  const waits = new Int32Array(sorted.length)
  for (let i = 0; i < sorted.length; i++)
    for (let j = i + 1; j < sorted.length; j++) {
      const [a, b] = [sorted[i]!, sorted[j]!]
      const front = overlap(a, b) ? inFront(a, b, eye) : null
      if (front === null) continue
      const [near, behind] = front ? [i, j] : [j, i]
      hiders[behind]!.push(near)
      waits[near]!++
    }
  const left = sorted.map((_, i) => i)
  const order: B[] = []
  while (left.length > 0) {
    const free = left.findIndex((i) => waits[i] === 0)
    // In a circle nothing is free: the farthest of it.
    const [next] = left.splice(Math.max(0, free), 1)
    for (const i of hiders[next!]!) waits[i]!--
    order.push(sorted[next!]!)
  }
  return order
}

function distance({ low, high }: Bounded, eye: Vec3): number {
  return Math.hypot(...eye.map((e, i) => (low[i]! + high[i]!) / 2 - e))
}

/** May `a` hide some of `b`, and not the other way round? Null where neither may, or where no plane along the axes parts them. */
function inFront(a: Bounded, b: Bounded, eye: Vec3): boolean | null {
  let [first, second] = [false, false]
  for (let i = 0; i < 3; i++) {
    const [lower, upper] = [a.high[i]! <= b.low[i]! + TOUCH, b.high[i]! <= a.low[i]! + TOUCH]
    if (!lower && !upper) continue
    const between = lower ? a.high[i]! + b.low[i]! : b.high[i]! + a.low[i]!
    // The one on the eye's side of the plane is hidden by nothing behind it.
    if (eye[i]! <= between / 2 === lower) first = true
    else second = true
  }
  return first === second ? null : first
}
