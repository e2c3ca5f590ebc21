/**
 * The demo dock's frame as CalculiX can have it: the same nodes, rails, legs, braces, clamp arms, hooks and hinge, feet, and the struts
 * under the ramp's shore end, held upward only; sections that both programs know (calculix/sections.ts), and for each sleeve a short soft
 * piece of leg that turns as much under a moment as the sleeve does. Without the posts: they slide in their clamps, for which CalculiX's
 * beams have no joint.
 */
import { demoCatalog, demoDesign, deriveKit } from '../../../../rules/index.ts'
import { dockFrame } from '../../../../rules/structure/dock/frame.ts'
import { sleeveStiffness } from '../../../../rules/structure/dock/sleeve.ts'
import type { FrameLoad, FrameMember, FrameNode } from '../../../../rules/structure/index.ts'
import type { CalculixFrame, CalculixMember } from '../calculix/frames.ts'
import { E, type Section } from '../calculix/sections.ts'

/** A clamp's arm, a strut under the ramp's shore end: so stout that neither program's way of bending it shows. */
const STOUT: Section = { kind: 'rectangle', deep: 0.1, wide: 0.1 }

/** Length of the soft piece that stands for a sleeve, m. */
const SOFT = 0.06

/** The full rectangle that bends both ways as a member does. */
function rectangle({ Iy, Iz }: Pick<FrameMember, 'Iy' | 'Iz'>): Section {
  const ratio = Math.sqrt(Iy / Iz)
  const wide = ((12 * Iz) / ratio) ** 0.25
  return { kind: 'rectangle', deep: ratio * wide, wide }
}

/** The pipe of a leg's outside that bends as it does. */
const pipe = ({ Iy }: Pick<FrameMember, 'Iy'>, radius: number): Section => ({
  kind: 'pipe',
  radius,
  wall: radius - (radius ** 4 - (4 * Iy) / Math.PI) ** 0.25,
})

/** @param size 1, or the whole frame so many times as large with the same bars: so slender that shear does not show */
export function demoFrame(braces: boolean, size: number): CalculixFrame {
  const kit = deriveKit({ ...demoDesign, dock: { ...demoDesign.dock, extras: {} } }, demoCatalog)
  const frame = dockFrame(kit, { braces, sleeve: 1, cross: true })
  const nodes = frame.nodes.map(
    (node): FrameNode => ({ ...node, x: node.x * size, y: node.y * size, z: node.z * size }),
  )
  const members: CalculixMember[] = []
  const turn = (sleeveStiffness(kit.shop) * SOFT) / E
  const soft = rectangle({ Iy: turn, Iz: turn })
  const legs = new Set(frame.legs.flatMap((leg) => leg.members))
  const stout = new Set([
    ...frame.braces.flatMap((brace) => brace.arms),
    ...frame.contacts.flatMap(({ kind, member }) => (kind === 'shore' ? [member] : [])),
  ])
  const { diameter } = demoCatalog.stock[demoCatalog.legs[0]!.stock] as { diameter: number }
  for (const [i, member] of frame.members.entries()) {
    const { from, to, ends, axialOnly, A } = member
    const section = stout.has(i) ? STOUT : legs.has(i) ? pipe(member, diameter / 2) : rectangle(member)
    if (axialOnly) members.push({ from, to, section: { kind: 'bar', area: A } })
    // A hook turns freely on the carrying side, which CalculiX has at a member's far end.
    else if (ends?.from) members.push({ from: to, to: from, section, ball: true })
    else if (!ends?.to) members.push({ from, to, section })
    else {
      const top = nodes[to]!
      const under = nodes.push({ x: top.x, y: top.y, z: top.z - SOFT }) - 1
      members.push({ from, to: under, section }, { from: under, to, section: soft })
    }
  }
  // CalculiX finds no factor under 1: as much less on the larger frame as it is softer.
  const loads: FrameLoad[] = frame.corners.flatMap((corners) =>
    corners.map((node): FrameLoad => ({ node, force: [0, 0, -1500 / size ** 2, 0, 0, 0] })),
  )
  const outer = frame.corners.at(-1)![2]
  loads.push({ node: outer, force: [300 / size, 890 / size, 0, 0, 0, 0] })
  const name = `demo-dock${braces ? '' : '-unbraced'}${size === 1 ? '' : `-x${size}`}`
  return { name, nodes, members, loads, slender: size > 1, buckles: 'pressed' }
}
