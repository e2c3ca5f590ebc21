/**
 * A frame as a CalculiX input deck: four quadratic beams (B32R) a member for displacements, eight for buckling;
 * bars as trusses (T3D2).
 *
 * Traps avoided:
 * - U1 user beams go wrong in the second plane.
 * - Expanded beams carry shear; Poisson's ratio 0 keeps it at its smallest.
 * - A clamp opens a section that lies askew (up to 30 %): a stout stub along global x makes the clamped node a joint
 *   of two beams, which CalculiX ties into a rigid knot.
 * - A truss on a node within a straight run finds no knot and no hold: a moment too small to matter makes one.
 * - A moment on the free end of a single beam is wrong in general: moments only where beams meet at an angle.
 */
import { type CalculixFrame, pressing } from './frames.ts'
import { E } from './sections.ts'

/** All loads to displacements; the pressing ones to buckling; all of them to buckling. */
export const STEPS = ['static', 'buckle', 'buckle-all'] as const
export type Step = (typeof STEPS)[number]

/** Enough digits to be the same model, few enough to be the same text on every machine. */
const text = (value: number): string => {
  const rounded = Number(value.toPrecision(10))
  return Number.isInteger(rounded) ? `${rounded}.` : `${rounded}`
}

const axisAcross = (frame: CalculixFrame, member: CalculixFrame['members'][number]): string => {
  const a = frame.nodes[member.from]!
  const b = frame.nodes[member.to]!
  const d = [b.x - a.x, b.y - a.y, b.z - a.z]
  const size = Math.hypot(...d)
  const x = d.map((value) => value / size)
  const up = member.up ?? (Math.hypot(x[0]!, x[1]!) < 1e-6 ? [0, 1, 0] : [0, 0, 1])
  const along = up.reduce((sum, value, k) => sum + value * x[k]!, 0)
  const z = up.map((value, k) => value - along * x[k]!)
  return z.map((value) => text(value / Math.hypot(...z))).join(', ')
}

/** Node numbers are the frame's plus one; those inside members follow. */
export function writeInp(frame: CalculixFrame, step: Step): string {
  const caseLoads = step === 'buckle' ? pressing(frame) : frame.loads
  const pieces = step === 'static' ? 4 : 8
  const nodes = frame.nodes.map(({ x, y, z }) => [x, y, z])
  const beams: string[] = []
  const sections: string[] = []
  const ties: string[] = []
  let elements = 0
  frame.members.forEach(({ from, to, section, ball }, m) => {
    const name = `M${m + 1}`
    if (section.kind === 'bar') {
      elements++
      beams.push(`*ELEMENT, TYPE=T3D2, ELSET=${name}`, `${elements}, ${from + 1}, ${to + 1}`)
      sections.push(`*SOLID SECTION, ELSET=${name}, MATERIAL=METAL`, text(section.area))
      return
    }
    const a = nodes[from]!
    const b = nodes[to]!
    const along = [from + 1]
    for (let i = 1; i < 2 * pieces; i++)
      along.push(nodes.push(a.map((value, k) => value + ((b[k]! - value) * i) / (2 * pieces))))
    along.push(ball ? nodes.push([...b]) : to + 1)
    if (ball)
      for (const k of [1, 2, 3])
        ties.push('*EQUATION', '2', `${along.at(-1)}, ${k}, 1., ${to + 1}, ${k}, -1.`)
    beams.push(`*ELEMENT, TYPE=B32R, ELSET=${name}`)
    for (let i = 0; i < pieces; i++) {
      elements++
      beams.push(`${elements}, ${along[2 * i]}, ${along[2 * i + 1]}, ${along[2 * i + 2]}`)
    }
    sections.push(
      ...(section.kind === 'pipe'
        ? [
            `*BEAM SECTION, ELSET=${name}, MATERIAL=METAL, SECTION=PIPE`,
            `${text(section.radius)}, ${text(section.wall)}`,
          ]
        : [
            `*BEAM SECTION, ELSET=${name}, MATERIAL=METAL, SECTION=RECT`,
            `${text(section.deep)}, ${text(section.wide)}`,
          ]),
      axisAcross(frame, frame.members[m]!),
    )
  })
  const touching = (kind: 'bar' | 'beam') => (node: number) =>
    frame.members.some(({ from, to, section }) => {
      const is = section.kind === 'bar' ? 'bar' : 'beam'
      return is === kind && (from === node || to === node)
    })
  const hasBeam = touching('beam')
  const hasBar = touching('bar')
  const clamps = frame.nodes.flatMap(({ fixed }, n) => (hasBeam(n) && fixed?.every((yes) => yes) ? [n] : []))
  const stubs = clamps.map((n) => {
    const [x, y, z] = nodes[n] as [number, number, number]
    const far = nodes.push([x - 0.2, y, z])
    const middle = nodes.push([x - 0.1, y, z])
    elements++
    return { far, line: `${elements}, ${far}, ${middle}, ${n + 1}` }
  })
  const stubSection = ['*BEAM SECTION, ELSET=STUB, MATERIAL=METAL, SECTION=RECT', '0.3, 0.3', '0., 0., 1.']
  const held = [
    ...frame.nodes.flatMap(({ fixed }, n) =>
      (fixed ?? []).flatMap((yes, k) => (yes && (k < 3 || hasBeam(n)) ? [`${n + 1}, ${k + 1}`] : [])),
    ),
    ...stubs.map(({ far }) => `${far}, 1, 6`),
  ]
  const loads = caseLoads.flatMap(({ node, force }) =>
    force.flatMap((value, k) => (value === 0 ? [] : [`${node + 1}, ${k + 1}, ${text(value)}`])),
  )
  const knots = frame.nodes.flatMap((_, n) =>
    hasBar(n) && hasBeam(n) && !clamps.includes(n) ? [`${n + 1}, 4, 1e-09`] : [],
  )
  return [
    `** ${frame.name}, ${step}`,
    '*NODE',
    ...nodes.map((at, i) => `${i + 1}, ${at.map(text).join(', ')}`),
    `*NSET, NSET=JOINTS, GENERATE`,
    `1, ${frame.nodes.length}`,
    ...beams,
    ...(stubs.length > 0 ? ['*ELEMENT, TYPE=B32R, ELSET=STUB', ...stubs.map(({ line }) => line)] : []),
    '*MATERIAL, NAME=METAL',
    '*ELASTIC',
    `${text(E)}, 0.`,
    ...sections,
    ...(stubs.length > 0 ? stubSection : []),
    ...ties,
    '*BOUNDARY',
    ...held,
    '*STEP',
    ...(step === 'static' ? ['*STATIC'] : ['*BUCKLE', '6, 1e-6']),
    '*CLOAD',
    ...loads,
    ...knots,
    ...(step === 'static' ? ['*NODE PRINT, NSET=JOINTS', 'U'] : []),
    '*END STEP',
    '',
  ].join('\n')
}
