/**
 * Frames shaped like a long dock, for speed and for checks on something irregular. Invented sizes.
 */
import type { End6, FrameLoad, FrameMember, FrameModel, FrameNode } from '../../../rules/structure/index.ts'

/** 76 × 76 × 3.2 mm aluminum tube for rails, 48 × 3.7 mm pipe for legs, 33 × 3.4 mm for braces; Pa, m², m⁴. */
const METAL = { E: 69.6e9, G: 26e9 }
const RAIL = { ...METAL, A: 9.3e-4, Iy: 8.2e-7, Iz: 8.2e-7, J: 1.2e-6 }
const LEG = { ...METAL, A: 5.15e-4, Iy: 1.28e-7, Iz: 1.28e-7, J: 2.56e-7 }
const BRACE = { ...METAL, A: 3.1e-4, Iy: 3.4e-8, Iz: 3.4e-8, J: 6.8e-8, axialOnly: true }

const FOOT = [true, true, true, false, false, true] as const
/** A sleeve turns with 20 kN·m/rad both ways. */
const SLEEVE: End6 = ['rigid', 'rigid', 'rigid', 'rigid', 20e3, 20e3]
/** Hooks carry forces, no moments but torsion (one point each side carries it as a pair). */
const HOOK: End6 = ['rigid', 'rigid', 'rigid', 'rigid', 'free', 'free']

const LENGTH = 2.4
const WIDTH = 1.2
const GAP = 0.02
const DECK = 2.2

interface Built {
  readonly nodes: FrameNode[]
  readonly members: FrameMember[]
}

const add = ({ nodes }: Built, node: FrameNode): number => nodes.push(node) - 1

function hookOn(built: Built, host: readonly number[] | undefined, corners: readonly number[]): void {
  if (host === undefined) return
  for (const i of [0, 1])
    built.members.push({ from: host[2 + i]!, to: corners[i]!, ...RAIL, ends: { from: HOOK } })
}

/** One push and the weight of people on every section. */
const loadsOn = (corners: readonly (readonly number[])[]): FrameLoad[] =>
  corners.flatMap((four) => four.map((node): FrameLoad => ({ node, force: [20, 60, -900, 0, 0, 0] })))

/** Of a section that begins at `x`: start left and right, end left and right. */
function cornersAt(built: Built, x: number): readonly [number, number, number, number] {
  const corner = (along: number, y: number): number => add(built, { x: x + along, y, z: DECK })
  return [corner(0, WIDTH / 2), corner(0, -WIDTH / 2), corner(LENGTH, WIDTH / 2), corner(LENGTH, -WIDTH / 2)]
}

/** Six nodes a section: four corners, two feet under the end edge (all four legs under the first section). */
export function sixNodeDock(sections: number): FrameModel {
  const built: Built = { nodes: [], members: [] }
  const all: number[][] = []
  for (let s = 0; s < sections; s++) {
    const x = s * (LENGTH + GAP)
    const corners = cornersAt(built, x)
    const [sl, sr, el, er] = corners
    built.members.push({ from: sl, to: el, ...RAIL }, { from: sr, to: er, ...RAIL })
    built.members.push({ from: sl, to: sr, ...RAIL }, { from: el, to: er, ...RAIL })
    for (const [left, right] of s === 0 ? [[sl, sr] as const, [el, er] as const] : [[el, er] as const]) {
      const feet = [left, right].map((top) => add(built, { ...built.nodes[top]!, z: 0, fixed: FOOT }))
      built.members.push({ from: feet[0]!, to: left, ...LEG, ends: { to: SLEEVE } })
      built.members.push({ from: feet[1]!, to: right, ...LEG, ends: { to: SLEEVE } })
      built.members.push({ from: feet[0]!, to: right, ...BRACE })
    }
    hookOn(built, all.at(-1), corners)
    all.push([...corners])
  }
  return { ...built, loads: loadsOn(all) }
}

/** Eighteen nodes a section: corners, rail middles, and four legs, each a foot and two clamp points. */
export function eighteenNodeDock(sections: number): FrameModel {
  const built: Built = { nodes: [], members: [] }
  const all: number[][] = []
  for (let s = 0; s < sections; s++) {
    const x = s * (LENGTH + GAP)
    const corners = cornersAt(built, x)
    const [sl, sr, el, er] = corners
    const middles = [WIDTH / 2, -WIDTH / 2].map((y) => add(built, { x: x + LENGTH / 2, y, z: DECK }))
    built.members.push({ from: sl, to: middles[0]!, ...RAIL }, { from: middles[0]!, to: el, ...RAIL })
    built.members.push({ from: sr, to: middles[1]!, ...RAIL }, { from: middles[1]!, to: er, ...RAIL })
    for (const [a, b] of [
      [sl, sr],
      [el, er],
      [middles[0]!, middles[1]!],
    ] as const)
      built.members.push({ from: a, to: b, ...RAIL })
    const legs = corners.map((top) => {
      const at = (z: number, fixed = {}): number => add(built, { ...built.nodes[top]!, z, ...fixed })
      const points = [at(0, { fixed: FOOT }), at(0.5), at(1.8)] as const
      built.members.push(
        { from: points[0], to: points[1], ...LEG },
        { from: points[1], to: points[2], ...LEG },
      )
      built.members.push({ from: points[2], to: top, ...LEG, ends: { to: SLEEVE } })
      return points
    })
    built.members.push({ from: legs[0]![1], to: legs[1]![2], ...BRACE })
    built.members.push({ from: legs[2]![1], to: legs[3]![2], ...BRACE })
    hookOn(built, all.at(-1), corners)
    all.push([...corners])
  }
  return { ...built, loads: loadsOn(all) }
}
