/** A frame turned as a whole, its `up` vectors with it; a member divided. */
import type { FrameModel, Vec3, Vec6 } from '../../../rules/structure/index.ts'

/** Rows of a rotation matrix about a unit axis (Rodrigues). */
export function rotation(axis: Vec3, angle: number): readonly [Vec3, Vec3, Vec3] {
  const size = Math.hypot(...axis)
  const [x, y, z] = [axis[0] / size, axis[1] / size, axis[2] / size]
  const c = Math.cos(angle)
  const s = Math.sin(angle)
  const t = 1 - c
  return [
    [t * x * x + c, t * x * y - s * z, t * x * z + s * y],
    [t * x * y + s * z, t * y * y + c, t * y * z - s * x],
    [t * x * z - s * y, t * y * z + s * x, t * z * z + c],
  ]
}

export const turn = (R: readonly [Vec3, Vec3, Vec3], v: Vec3): [number, number, number] => [
  R[0][0] * v[0] + R[0][1] * v[1] + R[0][2] * v[2],
  R[1][0] * v[0] + R[1][1] * v[1] + R[1][2] * v[2],
  R[2][0] * v[0] + R[2][1] * v[1] + R[2][2] * v[2],
]

/** Force and moment, or movement and rotation. */
export const turnSix = (R: readonly [Vec3, Vec3, Vec3], v: Vec6): Vec6 => [
  ...turn(R, [v[0], v[1], v[2]]),
  ...turn(R, [v[3], v[4], v[5]]),
]

/** Supports must hold all six or none, and every member must have an `up`. */
export const turned = (model: FrameModel, R: readonly [Vec3, Vec3, Vec3]): FrameModel => ({
  ...model,
  nodes: model.nodes.map(({ x, y, z, ...rest }) => {
    const [tx, ty, tz] = turn(R, [x, y, z])
    return { ...rest, x: tx, y: ty, z: tz }
  }),
  members: model.members.map((member) => ({ ...member, up: turn(R, member.up!) })),
  loads: model.loads.map(({ node, force }) => ({ node, force: turnSix(R, force) })),
})

/** One member in two, at part `t` of its length; the new node and piece come last. */
export function divided(model: FrameModel, member: number, t: number): FrameModel {
  const { ends, ...whole } = model.members[member]!
  const a = model.nodes[whole.from]!
  const b = model.nodes[whole.to]!
  const middle = model.nodes.length
  const first = { ...whole, to: middle, ...(ends?.from ? { ends: { from: ends.from } } : {}) }
  const second = { ...whole, from: middle, ...(ends?.to ? { ends: { to: ends.to } } : {}) }
  return {
    nodes: [...model.nodes, { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t, z: a.z + (b.z - a.z) * t }],
    members: [...model.members.map((one, i) => (i === member ? first : one)), second],
    loads: model.loads,
    memberLoads: (model.memberLoads ?? []).flatMap((load) =>
      load.member === member ? [load, { ...load, member: model.members.length }] : [load],
    ),
  }
}
