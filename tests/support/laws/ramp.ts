/** Laws of the ramp: the arc of its end about the hinge, the ground that carries it, its slope and step. */
import { groundOf } from './ground.ts'
import { elevations, expectNear, frameOf, type Law, near, stopOn } from './law.ts'

/** The ramp, its start, or the standing section that it is hinged to is stopped: it may lie in the ground. */
const stopped: (...args: [Parameters<Law>[0], string]) => boolean = (dock, ramp) =>
  stopOn(dock, ramp) ||
  dock.findings.some((f) => f.code === 'start-not-found') ||
  dock.joints.some((j) => j.kind === 'hinge' && j.between[0] === ramp && stopOn(dock, j.between[1]))

/** What the laws need: the hinge axis, and the ramp's lower shoreward edge and deck edge at the slope that it says. */
function rampOf(...[dock, design, catalog]: Parameters<Law>) {
  const section = dock.sections.find((s) => s.role === 'ramp')
  const frame = frameOf(catalog, section?.frame ?? '')
  if (section === undefined || frame === undefined || dock.ramp === null || dock.start === null) return null
  const { railHeight } = elevations(design.dock.deckHeight, frame.rail, catalog)
  const drop = catalog.hinge.drop
  const axis = { x: dock.start, z: design.dock.deckHeight - drop }
  /** Lower edge below the axis, square to the deck. */
  const below = catalog.decking.rise + railHeight - drop
  const tilt = Math.atan(dock.ramp.slope)
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)]
  const at = (along: number, up: number) => ({
    x: axis.x - along * c - up * s,
    z: axis.z - along * s + up * c,
  })
  return {
    ramp: dock.ramp,
    section,
    axis,
    radius: Math.hypot(frame.length, below),
    lower: at(frame.length, -below),
    deckEdge: at(frame.length, drop),
    /** Elevation of the ramp's underside over x. */
    underside: (x: number) => axis.z - below / c - (axis.x - x) * (s / c),
    ground: groundOf(design.site),
  }
}

/** Ground at one distance under the ramp's center line and both its sides; none where it is not known under all three. */
function acrossRamp(r: NonNullable<ReturnType<typeof rampOf>>, x: number): number[] {
  const half = r.section.width / 2
  const lines = [0, half, -half].map((dy) => r.ground.at(x, r.section.y + dy, false))
  return lines.every((z) => z.length > 0) ? lines.flat() : []
}

/** A ramp section has its figures, or a stop says why not; without one there are none. */
export const rampThere: Law = (dock) => {
  const section = dock.sections.find((s) => s.role === 'ramp')
  if (section === undefined) return dock.ramp === null ? [] : ['ramp figures without a ramp']
  return dock.ramp === null && !stopOn(dock, section.id)
    ? [`${section.id} has no ramp figures, and no stop names it`]
    : []
}

/** The lower shoreward edge is on the circle about the hinge axis, where the slope puts it. */
export const rampOnItsCircle: Law = (dock, design, catalog) => {
  const out: string[] = []
  const r = rampOf(dock, design, catalog)
  if (r === null || r.ramp.onEdge) return out
  const { shoreX, shoreZ } = r.ramp
  expectNear(out, 'ramp radius', Math.hypot(r.axis.x - shoreX, r.axis.z - shoreZ), r.radius, 6e-6)
  expectNear(out, 'ramp shoreX', shoreX, r.lower.x, 1e-5)
  expectNear(out, 'ramp shoreZ', shoreZ, r.lower.z, 1e-5)
  return out
}

/** A bank nearly as steep as the ramp may graze its underside elsewhere by less than this, m. */
const GRAZE = 1e-3

/**
 * The ramp bears on the ground: nowhere does its underside pass through it, and somewhere it touches. Asked along its center line
 * and both sides, so on a cross slope the higher side carries it.
 */
export const rampBears: Law = (dock, design, catalog) => {
  const r = rampOf(dock, design, catalog)
  if (r === null || stopped(dock, r.section.id)) return []
  if (!r.ground.line) return bearsAtEdge(r)
  const from = r.lower.x
  const to = r.axis.x
  const xs = [from, from + 1e-5, to, ...r.ground.breaks.flatMap((x) => [x - 1e-9, x])].filter(
    (x) => x >= from && x <= to,
  )
  const gapAlong = (y: number) =>
    Math.min(...xs.map((x) => r.underside(x) - (r.ground.at(x, y, false)[0] ?? -Infinity)))
  const half = r.section.width / 2
  const least = Math.min(...[0, half, -half].map((dy) => gapAlong(r.section.y + dy)))
  return least >= -GRAZE && least <= 2e-5
    ? []
    : [`the ramp's underside is ${least} m over the ground at the least`]
}

function bearsAtEdge(r: NonNullable<ReturnType<typeof rampOf>>): string[] {
  const right = acrossRamp(r, r.ramp.shoreX)
  if (right.length === 0 || r.ramp.onEdge || right.some((z) => near(z, r.ramp.shoreZ, GRAZE))) return []
  return [`the ramp's end is at ${r.ramp.shoreZ}, the ground there at ${right.join(' or ')}`]
}

/** The place that is named as its touch is on the ground. */
export const rampTouchOnGround: Law = (dock, design, catalog) => {
  const r = rampOf(dock, design, catalog)
  if (r === null || stopped(dock, r.section.id) || r.ramp.onEdge) return []
  const places = [-2e-6, 0, 2e-6].flatMap((dx) => acrossRamp(r, r.ramp.shoreX + dx))
  const tolerance = r.ground.line ? 2e-5 : GRAZE
  if (places.length === 0 || places.some((z) => near(z, r.ramp.shoreZ, tolerance))) return []
  return [`the ramp is said to touch at ${r.ramp.shoreZ}, the ground there is at ${places.join(' or ')}`]
}

/** The ramp section's pose is that of its tilted start edge. */
export const rampPose: Law = (dock, design, catalog) => {
  const out: string[] = []
  const r = rampOf(dock, design, catalog)
  if (r === null || stopOn(dock, r.section.id)) return out
  expectNear(out, 'ramp section x', r.section.x, r.deckEdge.x, 1e-5)
  expectNear(out, 'ramp section z', r.section.z, r.deckEdge.z, 1e-5)
  return out
}

/** The step is from the ground to the deck's edge: from where it touches or from below that edge, a thumb's breadth apart. */
export const rampStep: Law = (dock, design, catalog) => {
  const r = rampOf(dock, design, catalog)
  if (r === null || r.ramp.onEdge || stopped(dock, r.section.id)) return []
  const sides = acrossRamp(r, r.deckEdge.x)
  if (sides.length === 0) return []
  const grounds = [r.ramp.shoreZ, ...sides]
  const tolerance = r.ground.line ? 2e-5 : GRAZE
  if (grounds.some((z) => near(r.deckEdge.z - z, r.ramp.step, tolerance))) return []
  return [
    `ramp step ${r.ramp.step}, the deck's edge is ${grounds.map((z) => r.deckEdge.z - z).join(' or ')} over the ground`,
  ]
}
