/**
 * Refuses a frame that cannot be meant: an index that leads nowhere, a number that is none.
 *
 * The solver is open to anyone, so its input meets these checks once, here; behind them there are none.
 * Throws a RangeError that names the node, member or load.
 */
import type { End6, EndJoint, FrameLoad, FrameModel, MemberLoad } from './frame-model.ts'

const refuse = (what: string): never => {
  throw new RangeError(`frame: ${what}`)
}

const NOT_NEGATIVE = ['G', 'A', 'Iy', 'Iz', 'J'] as const

const allFinite = (values: readonly number[]): boolean => values.every((value) => Number.isFinite(value))

const jointIsKnown = (joint: EndJoint): boolean =>
  joint === 'rigid' || joint === 'free' || (Number.isFinite(joint) && joint >= 0)

function checkEnd(member: number, name: string, end: End6 | undefined): void {
  if (end === undefined) return
  if (end.length !== 6 || !end.every(jointIsKnown))
    refuse(`member ${member}: ends.${name} must be six of 'rigid', 'free' or a stiffness of at least 0`)
}

/** Checks loads by themselves, for they may come after the frame (one factorization, many cases). */
export function checkLoads(
  model: Pick<FrameModel, 'nodes' | 'members'>,
  loads: readonly FrameLoad[],
  memberLoads: readonly MemberLoad[],
): void {
  loads.forEach(({ node, force }, i) => {
    if (model.nodes[node] === undefined) refuse(`load ${i}: there is no node ${node}`)
    if (force.length !== 6 || !allFinite(force)) refuse(`load ${i}: force must be six finite numbers`)
  })
  memberLoads.forEach(({ member, perLength }, i) => {
    if (model.members[member] === undefined) refuse(`member load ${i}: there is no member ${member}`)
    if (perLength.length !== 3 || !allFinite(perLength))
      refuse(`member load ${i}: perLength must be three finite numbers`)
  })
}

/** Checks nodes and members. */
export function checkFrame(model: Pick<FrameModel, 'nodes' | 'members'>): void {
  model.nodes.forEach(({ x, y, z, fixed }, i) => {
    if (!(Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(z)))
      refuse(`node ${i}: x, y and z must be finite numbers`)
    if (fixed !== undefined && fixed.length !== 6) refuse(`node ${i}: fixed must be six booleans`)
  })
  model.members.forEach((member, i) => {
    const from = model.nodes[member.from]
    const to = model.nodes[member.to]
    if (from === undefined) refuse(`member ${i}: there is no node ${member.from}`)
    if (to === undefined) refuse(`member ${i}: there is no node ${member.to}`)
    if (from!.x === to!.x && from!.y === to!.y && from!.z === to!.z) refuse(`member ${i} has no length`)
    if (!(Number.isFinite(member.E) && member.E > 0)) refuse(`member ${i}: E must be over 0`)
    for (const key of NOT_NEGATIVE)
      if (!(Number.isFinite(member[key]) && member[key] >= 0))
        refuse(`member ${i}: ${key} must be at least 0`)
    if (member.up !== undefined && (member.up.length !== 3 || !allFinite(member.up)))
      refuse(`member ${i}: up must be three finite numbers`)
    checkEnd(i, 'from', member.ends?.from)
    checkEnd(i, 'to', member.ends?.to)
  })
}
