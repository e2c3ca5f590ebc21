/**
 * The dock as a space frame: what bends, what is held, and which member is which part.
 *
 * Of each section two side rails and two end rails between the four leg axes, at the rails' mid height, subdivided where hooks,
 * hinge or posts join. Legs are one tube from the foot to the middle of the sleeve, held there by
 * a rotational spring both ways (`sleeve.ts`), stiff in twist. Braces are bars between the holes of their clamps, which stand out
 * from the leg by the clamp's reach. A hook is a stiff link from the hung section's edge that turns freely where it lies on the
 * carrying one. The ramp hangs the same way; its shore end stands on the bank by two short struts, one under each rail where it rests.
 * Feet, those struts and hooks only touch (`contacts.ts`): held here, they are let go where they would pull. Feet are held sideways and
 * free to turn, posts by the springs of their ground; the ramp's end slides unless the shop pins it there.
 *
 * Left out, each time on the side of less: the rails' offset outward from the leg axes (the deck's load there comes in as a twist),
 * ties, decking as a stiff plate, friction of pads against turning.
 *
 * Frame of reference: the dock's (x lakeward, y left, z up, m).
 */
import type { Stock } from '../../catalog/index.ts'
import { sectionProperties } from '../../catalog/section-properties.ts'
import type { Kit } from '../../kit.ts'
import { poseOf } from '../../kit.ts'
import { CORNERS, hooksOf, type PlacedJoint, type PlacedSection, toPlan } from '../../layout/index.ts'
import type { BracedPair } from '../../parts/braces.ts'
import { fromSlant, slantOf } from '../../parts/corner-piece.ts'
import type { Pose } from '../../parts/emit-part.ts'
import { axisAcross, axisAlong, type PlacedLeg } from '../../parts/legs.ts'
import type { End6, FrameMember, FrameNode } from '../frame-model.ts'
import { type Bar, barOf } from './bars.ts'
import type { Contact } from './contacts.ts'
import { type PostHold, postHold } from './post-hold.ts'
import { sleeveStiffness } from './sleeve.ts'

export interface FrameOptions {
  /** False: the same dock without its braces. */
  readonly braces: boolean
  /** Part of the sleeves' stiffness that is there; 1 as stated. */
  readonly sleeve: number
  /** Cross members in the model. They take up to a fifth off the sway (40 sections, along) and half again as long to solve: left out, on the side of less. */
  readonly cross: boolean
}

export const AS_BUILT: FrameOptions = { braces: true, sleeve: 1, cross: false }

export interface LegInFrame {
  readonly leg: PlacedLeg
  /** Node of the foot, and of the corner in the sleeve's middle. */
  readonly foot: number
  readonly top: number
  /** From the foot up. */
  readonly members: readonly number[]
}

export interface RailInFrame {
  readonly section: PlacedSection
  readonly edge: 'start' | 'end' | 'left' | 'right'
  readonly stock: Stock
  /** From the edge's start (start and end: left) corner on. */
  readonly members: readonly number[]
  readonly nodes: readonly number[]
}

export interface BraceInFrame {
  readonly pair: BracedPair
  readonly member: number
  /** The clamps' arms: low, high. */
  readonly arms: readonly [number, number]
}

export interface LinkInFrame {
  readonly joint: PlacedJoint
  readonly member: number
  /** Node on the carrying section, and on the hung one. */
  readonly host: number
  readonly guest: number
}

export interface PostInFrame {
  readonly id: string
  readonly member: number
  /** Sideways at its clamp before the ground gives, N. */
  readonly holds: number
}

export interface DockFrame {
  readonly kit: Kit
  readonly nodes: readonly FrameNode[]
  readonly members: readonly FrameMember[]
  readonly legs: readonly LegInFrame[]
  readonly rails: readonly RailInFrame[]
  readonly braces: readonly BraceInFrame[]
  readonly links: readonly LinkInFrame[]
  /** Feet first, in the order of the legs; then the ramp's shore end, posts, hooks. */
  readonly contacts: readonly Contact[]
  /** Posts: member from the fixed tip to the clamp. */
  readonly posts: readonly PostInFrame[]
  /** Members whose forces are judged: legs, rails, braces, links, posts, the ramp's struts; and where each stands among them, -1 where it does not. */
  readonly judged: Int32Array
  readonly slot: Int32Array
  /** Corner nodes of each section by its index: start.left, start.right, end.left, end.right. */
  readonly corners: readonly (readonly [number, number, number, number])[]
}

const FREE_TURN: End6 = ['rigid', 'rigid', 'rigid', 'free', 'free', 'free']
/** A clamp on a post holds sideways; the post slides and turns in it. */
const SLIDES: End6 = ['free', 'rigid', 'rigid', 'free', 'free', 'free']
const FOOT = [true, true, true, false, false, false] as const
const ON_BANK = [false, false, true, false, false, false] as const
const ALL = [true, true, true, true, true, true] as const

/** Two places on an edge nearer than this are one, m. */
const SAME = 1e-3

interface Build {
  readonly kit: Kit
  readonly nodes: FrameNode[]
  readonly members: FrameMember[]
}

/** A rail's line from leg axis to leg axis in a section's own frame: a place on it, its direction, how far it goes each way from there. */
interface RailLine {
  readonly x: number
  readonly y: number
  readonly dx: number
  readonly dy: number
  readonly low: number
  readonly high: number
}

interface Edges {
  readonly pose: Pose
  readonly placed: PlacedSection
  readonly lines: Readonly<Record<'start' | 'end' | 'left' | 'right', RailLine>>
  readonly z: number
  readonly corners: [number, number, number, number]
  /** By edge: own coordinate along it and node. */
  readonly on: Record<'start' | 'end' | 'left' | 'right', { at: number; node: number }[]>
}

/** Null where a member's material states no stiffness, or a part that must carry is not there. */
export function dockFrame(kit: Kit, options: FrameOptions = AS_BUILT): DockFrame {
  const build: Build = { kit, nodes: [], members: [] }
  // By a section's own index: one that has no known frame leaves a hole.
  const edges: Edges[] = []
  for (const p of kit.layout.placed) edges[p.index] = sectionNodes(build, p)
  const links = kit.joints.all.flatMap((joint) =>
    joint.kind === 'tie' ? [] : hang(build, joint, edges[joint.host.index]!, edges[joint.guest.index]!),
  )
  const posts = kit.extras.placed.flatMap((extra) => {
    const own = edges[extra.section.index]
    if (!own || !extra.post?.stock) return []
    const hold = postHold(kit, extra)
    if (!(hold.kLateral > 0)) return []
    return [{ id: extra.id, member: drivePost(build, extra, own, hold), holds: hold.lateral }]
  })
  const { ramp } = kit.layout
  const shore = ramp ? standOnShore(build, edges[ramp.index]!) : []
  if (options.cross) for (const p of kit.layout.placed) addCross(build, edges[p.index]!)
  const rails = edges.flatMap((own) => addRails(build, own))
  const legs: LegInFrame[] = []
  const braces: BraceInFrame[] = []
  const clamps = new Map<PlacedLeg, number[]>()
  if (options.braces) for (const pair of kit.pairs) if (pair.fit) braces.push(addBrace(build, pair, clamps))
  const spring = sleeveStiffness(kit.shop) * options.sleeve
  for (const leg of kit.legs)
    legs.push(addLeg(build, leg, edges[leg.section.index]!, clamps.get(leg) ?? [], spring))
  const contacts: Contact[] = [
    ...legs.map(
      (leg): Contact => ({ kind: 'foot', member: leg.members[0]!, node: leg.foot, holds: 0, gap: 0 }),
    ),
    ...shore,
    ...posts.map(
      ({ member, holds }): Contact => ({
        kind: 'post',
        member,
        node: build.members[member]!.from,
        holds,
        gap: 0,
      }),
    ),
    ...links.filter(({ joint }) => joint.kind === 'hook').map((link) => hookContact(link, kit)),
  ]
  const judged = Int32Array.from([
    ...legs.flatMap((leg) => leg.members),
    ...rails.flatMap((rail) => rail.members),
    ...braces.map((brace) => brace.member),
    ...links.map((link) => link.member),
    ...posts.map((post) => post.member),
    ...shore.map((strut) => strut.member),
  ])
  const slot = new Int32Array(build.members.length).fill(-1)
  judged.forEach((member, at) => {
    slot[member] = at
  })
  return {
    kit,
    judged,
    slot,
    nodes: build.nodes,
    members: build.members,
    legs,
    rails,
    braces,
    links,
    contacts,
    posts,
    corners: edges.map((e) => e.corners),
  }
}

const addNode = (build: Build, node: FrameNode): number => build.nodes.push(node) - 1

function addMember(
  build: Build,
  bar: Bar,
  from: number,
  to: number,
  more: Partial<FrameMember> = {},
): number {
  return build.members.push({ from, to, ...bar, ...more }) - 1
}

/** A point of a section's own frame in space; only a ramp is tilted, and a ramp heads lakeward. */
function inSpace({ placed, x, y, z, tilt }: Pose, ox: number, oy: number, oz: number): FrameNode {
  if (tilt === 0)
    return { x: x + placed.c * ox - placed.s * oy, y: y + placed.s * ox + placed.c * oy, z: z + oz }
  const c = Math.cos(tilt)
  const s = Math.sin(tilt)
  return { x: x + ox * c - oz * s, y: y + oy, z: z + ox * s + oz * c }
}

function sectionNodes(build: Build, placed: PlacedSection): Edges {
  const { kit } = build
  const { catalog } = kit.shop
  const pose = poseOf(placed, kit)
  const { frame } = placed
  const z = -catalog.decking.rise - sectionProperties(catalog.stock[frame.rail]!).height / 2
  const at = (ox: number, oy: number): number => addNode(build, inSpace(pose, ox, oy, z))
  const axes = CORNERS.map((corner) => [
    axisAlong(frame, corner, kit.shop),
    axisAcross(frame, corner, kit.shop),
  ]) as unknown as Axes
  const corners = axes.map(([x, y]) => at(x, y)) as Edges['corners']
  const [sl, sr, el, er] = corners
  const lines = linesOf(frame, axes)
  const ends = ({ low, high }: RailLine, first: number, last: number) => [
    { at: low, node: first },
    { at: high, node: last },
  ]
  return {
    pose,
    placed,
    lines,
    z,
    corners,
    on: {
      start: ends(lines.start, sr, sl),
      end: ends(lines.end, er, el),
      left: ends(lines.left, sl, el),
      right: ends(lines.right, sr, er),
    },
  }
}

type Axes = readonly [Place, Place, Place, Place]
type Place = readonly [x: number, y: number]

/** Start and end from right to left, the sides lakeward as the section itself looks. */
function linesOf(frame: PlacedSection['frame'], [sl, sr, el, er]: Axes): Edges['lines'] {
  if (!frame.turn) {
    const [[x0, y], [x1]] = [sl, el]
    return {
      start: { x: x0, y: 0, dx: 0, dy: 1, low: -y, high: y },
      end: { x: x1, y: 0, dx: 0, dy: 1, low: -y, high: y },
      left: { x: 0, y, dx: 1, dy: 0, low: x0, high: x1 },
      right: { x: 0, y: -y, dx: 1, dy: 0, low: x0, high: x1 },
    }
  }
  const line = ([ax, ay]: Place, [bx, by]: Place): RailLine => {
    const long = Math.hypot(bx - ax, by - ay)
    return { x: ax, y: ay, dx: (bx - ax) / long, dy: (by - ay) / long, low: 0, high: long }
  }
  return { start: line(sr, sl), end: line(er, el), left: line(sl, el), right: line(sr, er) }
}

/** The node of an edge nearest to a place in plan, made where there is none. */
function nodeOn(build: Build, own: Edges, edge: keyof Edges['on'], x: number, y: number): number {
  const { placed, z } = own
  const line = own.lines[edge]
  const dx = x - placed.x
  const dy = y - placed.y
  const along =
    line.dx * (placed.c * dx + placed.s * dy - line.x) + line.dy * (placed.c * dy - placed.s * dx - line.y)
  const at = Math.min(line.high, Math.max(line.low, along))
  for (const known of own.on[edge]) if (Math.abs(known.at - at) < SAME) return known.node
  const node = addNode(build, inSpace(own.pose, line.x + line.dx * at, line.y + line.dy * at, z))
  own.on[edge].push({ at, node })
  return node
}

function hang(build: Build, joint: PlacedJoint, host: Edges, guest: Edges): LinkInFrame[] {
  const { shop } = build.kit
  const places = joint.kind === 'hinge' ? hingePlaces(joint, build.kit) : hooksOf(joint, shop)
  const bar = barOf(shop, joint.guest.frame.ends)
  return places.map(({ x, y }) => {
    const a = nodeOn(build, host, joint.edge, x, y)
    const b = nodeOn(build, guest, joint.guestEdge, x, y)
    // The ramp is the one that hangs at a hinge, whichever stands first in the list.
    const [free, fixed] = joint.kind === 'hinge' ? [b, a] : [a, b]
    const member = addMember(build, bar, free, fixed, { ends: { from: FREE_TURN } })
    return { joint, member, host: free, guest: fixed }
  })
}

/** The outer two hinge pins, on the edge that ramp and standing section share. */
function hingePlaces(joint: PlacedJoint, { shop }: Kit): { x: number; y: number }[] {
  const { length } = shop.catalog.hinge.bar
  const pins = shop.rules.hingePins
  const { host } = joint
  const middle = host.frame.width / 2 - (joint.from + joint.to) / 2
  const off = pins > 1 ? (length * (pins - 1)) / pins / 2 : length / 2
  const x = joint.guest.x
  return [1, -1].map((side) => ({ x, y: host.y + middle + side * off }))
}

/** Held by the ground's springs at a depth, as `postHold` has them. */
function drivePost(
  build: Build,
  extra: Kit['extras']['placed'][number],
  own: Edges,
  { depth, kLateral, kTurn }: PostHold,
): number {
  const { shop } = build.kit
  const stock = extra.post!.stock!
  const rail = nodeOn(build, own, extra.edge, extra.x, extra.y)
  const { z } = build.nodes[rail]!
  const clamp = addNode(build, { x: extra.x, y: extra.y, z })
  addMember(build, barOf(shop, own.placed.frame.rail), rail, clamp)
  // Ground over the clamp holds nothing (a post behind a wall): its springs are as deep under the clamp.
  const ground = Math.min(extra.post!.bed, z)
  const tip = addNode(build, { x: extra.x, y: extra.y, z: ground - depth, fixed: ALL })
  const springs: End6 = ['rigid', kLateral, kLateral, 'rigid', kTurn, kTurn]
  return addMember(build, barOf(shop, stock.stock), tip, clamp, {
    ends: { from: springs, to: SLIDES },
  })
}

function addCross(build: Build, own: Edges): void {
  const { frame } = own.placed
  const bar = barOf(build.kit.shop, frame.cross.stock)
  for (let i = 1; i <= frame.cross.count; i++) {
    const [a, b] = crossAt(frame, i / (frame.cross.count + 1)).map((place) => toPlan(own.placed, ...place))
    addMember(build, bar, nodeOn(build, own, 'left', ...a!), nodeOn(build, own, 'right', ...b!))
  }
}

/** Where a cross member meets the left and the right rail, in a section's own frame; so far along the left side. */
function crossAt(frame: PlacedSection['frame'], part: number): readonly [Place, Place] {
  if (!frame.turn)
    return [
      [frame.length * part, 0],
      [frame.length * part, 0],
    ]
  const slant = slantOf(frame)
  const e = frame.length * (part - 0.5)
  return [fromSlant(slant, e, slant.high / 2), fromSlant(slant, e, -slant.high / 2)]
}

function addRails(build: Build, own: Edges): RailInFrame[] {
  const { shop } = build.kit
  const { frame } = own.placed
  return (['left', 'right', 'start', 'end'] as const).map((edge) => {
    const across = edge === 'start' || edge === 'end'
    const code = across ? frame.ends : frame.rail
    const bar = barOf(shop, code)
    const places = own.on[edge].sort((a, b) => (across ? b.at - a.at : a.at - b.at))
    const members: number[] = []
    for (let i = 1; i < places.length; i++)
      members.push(addMember(build, bar, places[i - 1]!.node, places[i]!.node))
    return {
      section: own.placed,
      edge,
      stock: shop.catalog.stock[code]!,
      members,
      nodes: places.map((p) => p.node),
    }
  })
}

function addBrace(build: Build, pair: BracedPair, clamps: Map<PlacedLeg, number[]>): BraceInFrame {
  const { shop } = build.kit
  const { low, high, lowZ, highZ, brace } = pair.fit!
  const far = Math.hypot(high.x - low.x, high.y - low.y)
  const ux = (high.x - low.x) / far
  const uy = (high.y - low.y) / far
  const { reach } = shop.catalog.clamp
  const end = (leg: PlacedLeg, z: number, sign: number): [number, number] => {
    const on = addNode(build, { x: leg.x, y: leg.y, z })
    clamps.set(leg, [...(clamps.get(leg) ?? []), on])
    if (reach < SAME) return [on, -1]
    const hole = addNode(build, { x: leg.x + sign * reach * ux, y: leg.y + sign * reach * uy, z })
    return [hole, addMember(build, barOf(shop, leg.stock!.stock), on, hole)]
  }
  const [a, lowArm] = end(low, lowZ, 1)
  const [b, highArm] = end(high, highZ, -1)
  const member = addMember(build, barOf(shop, brace.stock), a, b, { axialOnly: true })
  return { pair, member, arms: [lowArm, highArm] }
}

function addLeg(
  build: Build,
  leg: PlacedLeg,
  own: Edges,
  clamps: readonly number[],
  spring: number,
): LegInFrame {
  const bar = barOf(build.kit.shop, leg.stock!.stock)
  const top = own.corners[CORNER[leg.corner]]
  const foot = addNode(build, { x: leg.x, y: leg.y, z: leg.bed + leg.pad.sole, fixed: FOOT })
  const ends = { to: ['rigid', 'rigid', 'rigid', 'rigid', spring, spring] as const }
  const up = [...clamps].sort((a, b) => build.nodes[a]!.z - build.nodes[b]!.z)
  const nodes = [foot, ...up, top]
  const members = nodes
    .slice(1)
    .map((to, i) => addMember(build, bar, nodes[i]!, to, to === top ? { ends } : {}))
  return { leg, foot, top, members }
}

const CORNER = { 'start.left': 0, 'start.right': 1, 'end.left': 2, 'end.right': 3 } as const

/** A lock holds until it gives; what is not stated is not counted on. */
const hookContact = ({ member, host }: LinkInFrame, { shop }: Kit): Contact => ({
  kind: 'hook',
  member,
  node: host,
  holds: (shop.catalog.hooks.lock ?? 0) * shop.rules.bracketsPerHook,
  gap: 0,
})

/** Length of the struts under a ramp's shore end, m: so short that they give by nothing. */
const STRUT = 0.1

/** Under each of the ramp's side rails, where it rests: at its end, or on the crest that carries it. */
function standOnShore(build: Build, ramp: Edges): Contact[] {
  const { kit } = build
  const { contact } = kit.ramp!
  if (!contact) return []
  const { placed } = ramp
  const along = placed.frame.length - (kit.start.x - contact.x) / Math.cos(contact.tilt)
  const { gaps } = kit.ramp!
  const holds = kit.shop.catalog.hinge.shorePin ?? 0
  return (['left', 'right'] as const).map((edge, i): Contact => {
    const rail = nodeOn(build, ramp, edge, placed.x + Math.max(0, along), placed.y)
    const { x, y, z } = build.nodes[rail]!
    // It slides on the bank: a strut that stood on a fixed point would lean with the ramp.
    const ground = addNode(build, { x, y, z: z - STRUT, fixed: ON_BANK })
    const bar = barOf(kit.shop, placed.frame.rail)
    const member = addMember(build, bar, ground, rail)
    return { kind: 'shore', member, node: ground, holds, gap: gaps[i]! }
  })
}
