/** Laws of the layout: where sections lie, which joints hold them, what stands on legs. */
import type { Joint, Placement } from '../../../rules/dock.ts'
import {
  expectNear,
  findingsOn,
  type Law,
  LIMIT_SLACK,
  near,
  sectionById,
  stopOn,
  stopOnBoth,
  TOLERANCE,
} from './law.ts'
import {
  cornerAt,
  EDGES,
  facing,
  hooksOf,
  type Placed,
  type Point,
  placePlan,
  planOf,
  sharedArea,
} from './plan.ts'

const CORNERS = ['start.left', 'start.right', 'end.left', 'end.right'] as const
/** Joints along a loop may close with a little error; nearer than this two edges touch for sure. */
const TOUCH = 1e-5

/** Level poses of the sections that the Dock has, by id. */
function poses(...[dock, design, catalog]: Parameters<Law>): Map<string, Placed> {
  const placed = dock.start === null ? [] : placePlan(design, catalog, dock.start)
  return new Map(placed.map((p) => [p.id, p]))
}

/** Every section of the plan that can be reached is there, in the plan's order and with its role, frame and carrier. */
export const sectionsAsPlanned: Law = (dock, design, catalog) => {
  const out: string[] = []
  const expected = [...poses(dock, design, catalog).values()]
  const ids = dock.sections.map((s) => s.id)
  if (ids.join() !== expected.map((p) => p.id).join())
    out.push(`sections ${ids}, the plan asks for ${expected.map((p) => p.id)}`)
  for (const item of planOf(design, catalog))
    if (!ids.includes(item.id) && !dock.findings.some((f) => f.severity === 'stop'))
      out.push(`${item.id} is left out without a stop`)
  const by = sectionById(dock)
  for (const p of expected) {
    const s = by.get(p.id)
    if (s === undefined) continue
    if (s.role !== p.role) out.push(`${p.id} is ${s.role}, expected ${p.role}`)
    if (s.frame !== p.frame) out.push(`${p.id} has frame ${s.frame}, expected ${p.frame}`)
    if (s.on !== p.carrier) out.push(`${p.id} is on ${s.on}, expected ${p.carrier}`)
    expectNear(out, `${p.id} length`, s.length, p.length)
    expectNear(out, `${p.id} width`, s.width, p.width)
  }
  return out
}

/** Every section stands where the plan puts it, one pitch on from its host, deck at the deck height. The ramp has a law of its own. */
export const sectionsInPlace: Law = (dock, design, catalog) => {
  const out: string[] = []
  const by = sectionById(dock)
  for (const p of poses(dock, design, catalog).values()) {
    const s = by.get(p.id)
    if (s === undefined) continue
    if (!(s.heading >= 0 && s.heading < 360)) out.push(`${p.id} heading ${s.heading} is not in [0, 360)`)
    if (!near(s.heading, p.heading)) out.push(`${p.id} heading ${s.heading}, expected ${p.heading}`)
    expectNear(out, `${p.id} y`, s.y, p.y)
    if (p.role === 'ramp') continue
    expectNear(out, `${p.id} x`, s.x, p.x)
    expectNear(out, `${p.id} deck`, s.z, design.dock.deckHeight)
  }
  return out
}

/** The start is the one asked for; by rule it is a whole number of steps. */
export const startAsAsked: Law = (dock, design, catalog) => {
  if (dock.start === null) return dock.sections.length === 0 ? [] : ['sections stand, but there is no start']
  const asked = design.dock.start
  if (asked !== null && asked !== undefined)
    return near(dock.start, asked) ? [] : [`start ${dock.start}, asked for ${asked}`]
  const steps = dock.start / catalog.rules.startStep.value
  return near(steps, Math.round(steps), 1e-4) ? [] : [`start ${dock.start} is no whole number of steps`]
}

const away = (p: Placement, [x, y]: Point) => Math.hypot(p.at[0] - x, p.at[1] - y)

const jointKey = (j: Joint) => `${j.kind} ${j.between.join(' ')}`

/** One carrying joint to each following section, one hinge where a ramp meets the standing section, and no others but ties. */
export const jointsAsPlanned: Law = (dock, design, catalog) => {
  const expected = [...poses(dock, design, catalog).values()].flatMap((p) => {
    if (p.role === 'following') return [`hook ${p.carrier} ${p.id}`]
    return p.role === 'standing' && p.on !== null ? [`hinge ${p.on} ${p.id}`] : []
  })
  const actual = dock.joints.filter((j) => j.kind !== 'tie').map(jointKey)
  const out = expected.filter((key) => !actual.includes(key)).map((key) => `no joint: ${key}`)
  return [
    ...out,
    ...actual
      .filter((key, i) => !expected.includes(key) || actual.indexOf(key) !== i)
      .map((key) => `joint too many: ${key}`),
  ]
}

/** Two sections that are joined touch: facing edges, over the joint gap (hinge: none), with some overlap. */
export const jointsTouch: Law = (dock, design, catalog) => {
  const out: string[] = []
  const at = poses(dock, design, catalog)
  // Arms that come back to each other over corner pieces may do so by a little more or less: a tie's plates take a millimeter.
  const tied = [...at.values()].some(({ turn }) => turn !== undefined) ? 1e-3 + TOUCH : TOUCH
  for (const joint of dock.joints) {
    const [a, b] = joint.between.map((id) => at.get(id))
    if (a === undefined || b === undefined) {
      out.push(`${joint.id} joins a section that is not there`)
      continue
    }
    const gap = joint.kind === 'hinge' ? 0 : catalog.rules.jointGap.value
    const least = joint.kind === 'tie' ? catalog.rules.tieOverlap.value - LIMIT_SLACK : 0
    const touching = EDGES.some((ea) =>
      EDGES.some((eb) => {
        const face = facing(a, ea, b, eb)
        return (
          face !== null &&
          near(face.gap, gap, joint.kind === 'tie' ? tied : TOUCH) &&
          face.overlap > least - TOUCH
        )
      }),
    )
    if (!touching && !stopOn(dock, a.id) && !stopOn(dock, b.id))
      out.push(`${joint.id} (${joint.kind}) does not touch`)
  }
  return out
}

/** Sections side by side in the order of their least x, with those that could touch: no look at every pair of 4,000. */
function* neighbors(all: readonly Placed[]): Generator<[Placed, Placed]> {
  const reach = (p: Placed) => {
    const xs = CORNERS.map((c) => cornerAt(p, c)[0])
    return { p, from: Math.min(...xs), to: Math.max(...xs) }
  }
  const sorted = all.map(reach).sort((a, b) => a.from - b.from)
  for (let i = 0; i < sorted.length; i++)
    for (let j = i + 1; j < sorted.length && sorted[j]!.from < sorted[i]!.to + 0.6; j++)
      yield [sorted[i]!.p, sorted[j]!.p]
}

/** Further edges that touch along enough are tied, once; nothing else is. A ramp ties nothing. */
export const tiesWhereEdgesTouch: Law = (dock, design, catalog) => {
  const out: string[] = []
  const { jointGap, tieOverlap } = catalog.rules
  const at = [...poses(dock, design, catalog).values()]
  const key = (a: string, b: string) => [a, b].sort().join(' ')
  const held = new Set(dock.joints.filter((j) => j.kind !== 'tie').map((j) => key(...j.between)))
  const ties = dock.joints.filter((j) => j.kind === 'tie').map((j) => key(...j.between))
  const may = new Set<string>()
  for (const [a, b] of neighbors(at)) {
    if (a.role === 'ramp' || b.role === 'ramp' || held.has(key(a.id, b.id))) continue
    for (const ea of EDGES)
      for (const eb of EDGES) {
        const face = facing(a, ea, b, eb)
        if (
          face === null ||
          !near(face.gap, jointGap.value, 0.005) ||
          face.overlap < tieOverlap.value - TOUCH
        )
          continue
        may.add(key(a.id, b.id))
        const sure = near(face.gap, jointGap.value, TOUCH) && face.overlap > tieOverlap.value + TOUCH
        if (sure && !ties.includes(key(a.id, b.id)))
          out.push(`${a.id} and ${b.id} touch along ${face.overlap} and are not tied`)
      }
  }
  for (const tie of ties) if (!may.has(tie)) out.push(`tie without touching edges: ${tie}`)
  if (new Set(ties).size !== ties.length) out.push('two sections are tied twice')
  return out
}

/** A joint's brackets sit on the carrying edge at frame top, as many at each of its two hooks as the catalog says. */
export const bracketsAtHooks: Law = (dock, design, catalog) => {
  const out: string[] = []
  const at = poses(dock, design, catalog)
  const each = catalog.rules.bracketsPerHook.value
  const spread = (each - 1) * catalog.hooks.bracket.size[1] + 1e-5
  for (const joint of dock.joints) {
    if (joint.kind !== 'hook') continue
    const section = at.get(joint.between[1])
    const host = at.get(joint.between[0])
    if (section === undefined || host === undefined) continue
    const hooks = hooksOf(host, section, catalog)
    const brackets = dock.placements.filter((p) => p.kind === 'hook-bracket' && p.of === joint.id)
    if (hooks === null && brackets.length === 0 && stopOnBoth(dock, joint)) continue
    if (brackets.length !== 2 * each)
      out.push(`${joint.id} has ${brackets.length} brackets, expected ${2 * each}`)
    for (const hook of hooks ?? []) {
      const nearest = (b: Placement) => hooks!.reduce((p, q) => (away(b, q) < away(b, p) - 1e-9 ? q : p))
      const here = brackets.filter((b) => away(b, hook) <= spread && nearest(b) === hook)
      if (here.length !== each)
        out.push(`${joint.id} has ${here.length} brackets at hook ${hook}, expected ${each}`)
    }
    const top = design.dock.deckHeight - catalog.decking.rise
    for (const b of brackets) expectNear(out, `${joint.id} bracket height`, b.at[2], top)
  }
  return out
}

/**
 * Each corner of a legged section has a hook of its own carrying joint within the overhang, or a leg; a carried corner has none,
 * a ramp has no legs, and no corner two.
 */
export const cornersCarriedOrLegged: Law = (dock, design, catalog) => {
  const out: string[] = []
  const overhang = catalog.rules.overhang.value
  const at = poses(dock, design, catalog)
  const legs = new Map<string, number>()
  for (const leg of dock.legs)
    legs.set(`${leg.section}.${leg.corner}`, (legs.get(`${leg.section}.${leg.corner}`) ?? 0) + 1)
  for (const p of at.values()) {
    const host = p.carrier === null ? undefined : at.get(p.carrier)
    const hooks = host === undefined ? [] : carryingHooks(dock, host, p, catalog)
    for (const corner of CORNERS) {
      const count = legs.get(`${p.id}.${corner}`) ?? 0
      const where = cornerAt(p, corner)
      const distance = Math.min(Infinity, ...hooks.map(([x, y]) => Math.hypot(x - where[0], y - where[1])))
      const doubtful = near(distance, overhang, TOLERANCE)
      const expected = p.role === 'ramp' || distance < overhang ? 0 : 1
      if (count !== expected && !(doubtful && count <= 1)) {
        const why = p.role === 'ramp' ? 'a ramp' : `nearest hook ${distance} m off`
        out.push(`${p.id}.${corner} has ${count} legs, expected ${expected} (${why})`)
      }
    }
  }
  return out
}

function carryingHooks(
  ...[dock, host, section, catalog]: [Parameters<Law>[0], Placed, Placed, Parameters<Law>[2]]
): readonly Point[] {
  const computed = hooksOf(host, section, catalog)
  if (computed !== null) return computed
  const joint = `${host.id}~${section.id}`
  return dock.placements
    .filter((p) => p.kind === 'hook-bracket' && p.of === joint)
    .map((p) => [p.at[0], p.at[1]] as Point)
}

/** Sections lie clear of each other, or a stop says which do not. */
export const overlapsAreFound: Law = (dock, design, catalog) => {
  const out: string[] = []
  const box = (p: Placed) => {
    const xs = CORNERS.map((c) => cornerAt(p, c)[0])
    const ys = CORNERS.map((c) => cornerAt(p, c)[1])
    return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const
  }
  for (const [a, b] of neighbors([...poses(dock, design, catalog).values()])) {
    const [ax0, ax1, ay0, ay1] = box(a)
    const [bx0, bx1, by0, by1] = box(b)
    const into = Math.min(Math.min(ax1, bx1) - Math.max(ax0, bx0), Math.min(ay1, by1) - Math.max(ay0, by0))
    const told = findingsOn(dock, a.id, 'stop').some((f) => f.parts.includes(b.id))
    const askew = a.turn || b.turn || a.heading % 90 !== 0 || b.heading % 90 !== 0
    if (into > 1e-4 && (!askew || sharedArea(a, b) > 1e-4) && !told)
      out.push(`${a.id} and ${b.id} overlap by ${into} without a stop`)
  }
  return out
}
