/**
 * Whether each section rests on its hooks and feet by its own weight and by what hangs on it, with nothing pulling. Rigid sections of their
 * frame's and decking's weight, hooks and feet that only bear, from the outermost inward: statics of the plan alone, for every move of
 * a hand. What people, wind and waves do is for the structure.
 */
import type { Shop } from '../catalog-index.ts'
import { centerOf, toPlan } from '../layout/footprint.ts'
import { hooksOf, type Joints, type Layout, type PlacedSection } from '../layout/index.ts'
import { SLACK } from '../numbers.ts'
import { axisAcross, axisAlong } from '../parts/legs.ts'

interface Point {
  readonly x: number
  readonly y: number
}
interface Load extends Point {
  readonly weight: number
}

/** Sections that their hooks would have to hold down: what they weigh lies beyond all that bears them. */
export function pulling(layout: Layout, joints: Joints, shop: Shop): readonly PlacedSection[] {
  const jointOf = new Map(joints.all.flatMap((j) => (j.kind === 'hook' ? [[j.guest, j] as const] : [])))
  const hung = new Map<PlacedSection, Load[]>()
  const found: PlacedSection[] = []
  for (const p of [...layout.workOrder].reverse()) {
    if (p.role === 'ramp') continue
    const joint = jointOf.get(p)
    const hooks = joint ? hooksOf(joint, shop) : []
    const feet = joints.legCorners[p.index]!.map((corner) => {
      const [x, y] = toPlan(p, axisAlong(p.frame, corner, shop), axisAcross(p.frame, corner, shop))
      return { x, y }
    })
    const loads = [ownWeight(p, shop), ...(hung.get(p) ?? [])]
    const borne = bearing([...hooks, ...feet], loads)
    if (!borne) found.push(p)
    if (p.host) {
      const on = hung.get(p.host) ?? []
      const total = loads.reduce((sum, { weight }) => sum + weight, 0)
      hooks.forEach((hook, i) => {
        on.push({ x: hook.x, y: hook.y, weight: borne ? borne[i]! : total / 2 })
      })
      hung.set(p.host, on)
    }
  }
  return found.reverse()
}

function ownWeight(p: PlacedSection, shop: Shop): Load {
  const { frame } = p
  const panel = shop.panels.get(frame.panel)!
  const weight =
    shop.type('frame', frame.code).grams + frame.panels * shop.type('deck-panel', panel.code).grams
  const [along, across] = centerOf(frame)
  const [x, y] = toPlan(p, along, across)
  return { x, y, weight }
}

/** What each support bears of the loads if all give alike and none pulls; null where they cannot without pulling. */
function bearing(supports: readonly Point[], loads: readonly Load[]): readonly number[] | null {
  const total = loads.reduce((sum, { weight }) => sum + weight, 0)
  const cx = loads.reduce((sum, { x, weight }) => sum + x * weight, 0) / total
  const cy = loads.reduce((sum, { y, weight }) => sum + y * weight, 0) / total
  const at = supports.map(({ x, y }) => ({ x: x - cx, y: y - cy }))
  if (!surrounded(at)) return null
  // Of those that would pull the one that would most lets go first; what is left still surrounds the load.
  const on = at.map(() => true)
  for (;;) {
    const borne = alike(at, on, total)
    if (!borne) return at.map(() => total / at.length)
    let worst = -1
    borne.forEach((force, i) => {
      if (on[i] && force < -1e-9 * total && (worst < 0 || force < borne[worst]!)) worst = i
    })
    if (worst < 0) return borne.map((force) => Math.max(0, force))
    on[worst] = false
  }
}

/** The origin lies within the hull of the points: no half of the plane around it is without one. */
function surrounded(at: readonly Point[]): boolean {
  if (at.some(({ x, y }) => Math.hypot(x, y) < SLACK)) return true
  const angles = at.map(({ x, y }) => Math.atan2(y, x)).sort((a, b) => a - b)
  return (
    angles.length > 1 &&
    angles.every((angle, i) => {
      const next = i + 1 < angles.length ? angles[i + 1]! : angles[0]! + 2 * Math.PI
      return next - angle <= Math.PI + 1e-9
    })
  )
}

/** Shares of a load at the origin on springs alike under a rigid plate; null where those that are on do not hold it level. */
function alike(at: readonly Point[], on: readonly boolean[], total: number): number[] | null {
  let [n, sx, sy, sxx, sxy, syy] = [0, 0, 0, 0, 0, 0]
  at.forEach(({ x, y }, i) => {
    if (!on[i]) return
    n++
    sx += x
    sy += y
    sxx += x * x
    sxy += x * y
    syy += y * y
  })
  // a + b x + c y at each: sums to the total, without a moment about the load. By Cramer's rule.
  const det = n * (sxx * syy - sxy * sxy) - sx * (sx * syy - sxy * sy) + sy * (sx * sxy - sxx * sy)
  if (Math.abs(det) < 1e-9) return null
  const a = (total * (sxx * syy - sxy * sxy)) / det
  const b = (-total * (sx * syy - sxy * sy)) / det
  const c = (total * (sx * sxy - sxx * sy)) / det
  return at.map(({ x, y }, i) => (on[i] ? a + b * x + c * y : 0))
}
