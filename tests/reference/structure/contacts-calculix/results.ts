/**
 * Frames that only touch, in CalculiX: the deck of `writeInp` with each contact's node on a gap (GAPUNI, upward) over a node of the ground.
 *
 * Traps avoided:
 * - Gaps are closed only in a step that iterates: NLGEOM. What that adds at these movements is within the tolerances.
 * - A gap on the free end of a single beam does not find it: a short stub, loose at its other end, makes the knot.
 */
import { fileURLToPath } from 'node:url'
import { readDisplacements, runCcx } from '../calculix/run-ccx.ts'
import { writeInp } from '../calculix/write-inp.ts'
import type { TouchingFrame } from './frames.ts'

export const RESULTS = fileURLToPath(new URL('results.json', import.meta.url))
export const deckOf = ({ name }: TouchingFrame): string =>
  fileURLToPath(new URL(`${name}.inp`, import.meta.url))

export interface Result {
  /** For each node x, y, z, m. */
  readonly displacements: readonly (readonly number[])[]
  /** For each contact, what the ground does to it upward, N. */
  readonly bears: readonly number[]
}
export interface Results {
  readonly program: string
  readonly frames: Readonly<Record<string, Result>>
}

/** Numbers of what is added, far above the frame's own: ground, stub's middle and end, by contact. */
const GROUND = 5000
const MIDDLE = 5100
const END = 5200

export function contactDeck(frame: TouchingFrame): string {
  const { contacts, nodes, loose } = frame
  const own = nodes.map((node, n) => {
    const i = contacts.findIndex((one) => one.node === n)
    if (i < 0 || !node.fixed) return node
    const [x, y, , ...turns] = node.fixed
    const stays = !loose.includes(i)
    return { ...node, fixed: [x && stays, y && stays, false, ...turns] as typeof node.fixed }
  })
  const add = (to: string, lines: readonly string[], deck: string): string => {
    if (!deck.includes(to)) throw new Error(`deck without ${to}`)
    return deck.replace(to, [...lines, to].join('\n'))
  }
  const each = <T>(one: (at: { x: number; y: number; z: number }, i: number) => T): T[] =>
    contacts.map(({ node }, i) => one(nodes[node]!, i))
  const line = (number: number, x: number, y: number, z: number): string =>
    `${number}, ${x.toFixed(6)}, ${y.toFixed(6)}, ${z.toFixed(6)}`
  let deck = writeInp({ ...frame, nodes: own }, 'static')
  const stubs = [
    '*ELEMENT, TYPE=B32R, ELSET=KNOT',
    ...each((_, i) => `${END + i}, ${END + i}, ${MIDDLE + i}, ${contacts[i]!.node + 1}`),
  ]
  const gaps = each((_, i) => [
    `*ELEMENT, TYPE=GAPUNI, ELSET=G${i + 1}`,
    `${GROUND + i}, ${GROUND + i}, ${contacts[i]!.node + 1}`,
    `*GAP, ELSET=G${i + 1}`,
    `${contacts[i]!.gap.toFixed(6)}, 0., 0., 1.`,
  ]).flat()
  deck = add(
    '*NSET, NSET=JOINTS',
    [
      ...each(({ x, y, z }, i) => line(GROUND + i, x, y, z)),
      ...each(({ x, y, z }, i) => line(MIDDLE + i, x - 0.05, y, z)),
      ...each(({ x, y, z }, i) => line(END + i, x - 0.1, y, z)),
      '*NSET, NSET=GROUND',
      ...each((_, i) => `${GROUND + i},`),
    ],
    deck,
  )
  deck = add('*MATERIAL', [...stubs, ...gaps], deck)
  deck = add(
    '*BOUNDARY',
    ['*BEAM SECTION, ELSET=KNOT, MATERIAL=METAL, SECTION=RECT', '0.05, 0.05', '0., 0., 1.'],
    deck,
  )
  deck = add(
    '*STEP',
    each((_, i) => `${GROUND + i}, 1, 3`),
    deck,
  )
  deck = deck.replace('*STEP\n*STATIC', '*STEP, NLGEOM\n*STATIC\n1., 1.')
  return deck.replace('*END STEP', '*NODE PRINT, NSET=GROUND\nRF\n*END STEP')
}

export function runTouching(frame: TouchingFrame): Result {
  const dat = runCcx(contactDeck(frame))
  const at = dat.indexOf('forces (')
  const rows = new Map<number, number>()
  for (const line of dat.slice(at).split('\n')) {
    const [number, ...values] = line.trim().split(/\s+/).map(Number)
    if (values.length === 3 && values.every(Number.isFinite)) rows.set(number!, values[2]!)
  }
  return {
    displacements: readDisplacements(dat.slice(0, at), frame.nodes.length),
    bears: frame.contacts.map((_, i) => {
      const up = rows.get(GROUND + i)
      if (up === undefined) throw new Error(`ccx printed no force of contact ${i}`)
      return up
    }),
  }
}
