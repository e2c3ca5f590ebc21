/**
 * A frame that only touches, from outside: the textbook's dense stiffness (plain-frame.ts), each contact's opening an unknown of its own
 * that is then condensed to. Shares no code with the engine's contacts.
 */
import type { Contact } from '../../../../rules/structure/dock/contacts.ts'
import type { FrameLoad, FrameMember, FrameNode } from '../../../../rules/structure/index.ts'
import {
  add,
  endRows,
  freeUnknowns,
  type Matrix,
  type Rows,
  rotationOf,
  textbook,
  zeros,
} from '../../../rules/structure/plain-frame.ts'
import { lemke, slackOf } from './lcp.ts'

export interface Touching {
  readonly nodes: readonly FrameNode[]
  readonly members: readonly FrameMember[]
  readonly contacts: readonly Contact[]
}

export interface Plain {
  /** Three a contact: up, x, y. What acts there with none open, N; and more for each that opens by 1 m. */
  readonly closed: readonly number[]
  readonly K: Matrix
  /** Twelve a member, member axes. @param open three a contact, m */
  forces(open: readonly number[]): number[][]
}

/** Which of a member's own axes at its first end: an upright one stands along its x, a hook lies level. */
const axesOf = ({ kind }: Contact): readonly number[] => (kind === 'hook' ? [2, 0, 1] : [0, 1, 2])

export function plainContacts({ nodes, members, contacts }: Touching, loads: readonly FrameLoad[]): Plain {
  const opening = nodes.length * 6 + members.length * 12
  const size = opening + contacts.length * 3
  const K = zeros(size)
  const F = new Array<number>(size).fill(0)
  const parts = members.map((member, m) => {
    const { R, L } = rotationOf(member, nodes[member.from]!, nodes[member.to]!)
    const k = textbook(member, L)
    const T: Rows = endRows(K, member, R, k, nodes.length * 6 + m * 12).map((row, i) => {
      const more = contacts.flatMap((one, c) => {
        const dof = one.member === m ? axesOf(one).indexOf(i) : -1
        return dof < 0 || i > 2 ? [] : [[opening + c * 3 + dof, 1] as const]
      })
      return [...row, ...more]
    })
    add(K, k, T)
    return { k, T }
  })
  for (const { node, force } of loads)
    force.forEach((value, c) => {
      F[node * 6 + c]! += value
    })
  // From one end of the dock to the other: fewer numbers come in between.
  const place = (i: number): number => {
    const m = Math.floor((i - nodes.length * 6) / 12)
    const member = members[m]
    if (i < nodes.length * 6 || !member) return nodes[Math.floor(i / 6)]!.x
    return nodes[(i - nodes.length * 6) % 12 < 6 ? member.from : member.to]!.x
  }
  const free = freeUnknowns(nodes, K)
    .filter((i) => i < opening)
    .sort((a, b) => place(a) - place(b))
  const open = contacts.flatMap((_, c) => [0, 1, 2].map((k) => opening + c * 3 + k))
  const U = eliminate(
    free.map((i) => [...free.map((j) => K[i]![j]!), F[i]!, ...open.map((j) => -K[i]![j]!)]),
    free.length,
  )
  /** Movements, column 0 under the loads, then for each opening. */
  const move = (column: number, i: number): number => U[i]![column]!
  const at = open.map((row) => free.flatMap((j, i) => (K[row]![j] === 0 ? [] : [[K[row]![j]!, i] as const])))
  return {
    closed: at.map((row) => row.reduce((sum, [k, i]) => sum + k * move(0, i), 0)),
    K: open.map((row, a) =>
      open.map((column, b) => at[a]!.reduce((sum, [k, i]) => sum + k * move(b + 1, i), K[row]![column]!)),
    ),
    forces(by) {
      const u = new Array<number>(size).fill(0)
      free.forEach((unknown, i) => {
        u[unknown] = by.reduce((sum, q, b) => sum + q * move(b + 1, i), move(0, i))
      })
      open.forEach((unknown, b) => {
        u[unknown] = by[b]!
      })
      return parts.map(({ k, T }, m) => {
        const local = T.map((row) => row.reduce((sum, [i, a]) => sum + a * u[i]!, 0))
        return k.map((row, i) =>
          members[m]!.axialOnly && i % 6 > 2 ? 0 : row.reduce((sum, v, j) => sum + v * local[j]!, 0),
        )
      })
    },
  }
}

/** Gauss–Jordan's first half and back again, for many right sides; rows begin with `n` columns of the matrix. */
function eliminate(rows: Matrix, n: number): Float64Array[] {
  const a = rows.map((row) => Float64Array.from(row))
  for (let c = 0; c < n; c++) {
    let best = c
    for (let r = c; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[best]![c]!)) best = r
    ;[a[c], a[best]] = [a[best]!, a[c]!]
    const own = a[c]!
    const there: number[] = []
    for (let k = c; k < own.length; k++) if (own[k] !== 0) there.push(k)
    for (let r = c + 1; r < n; r++) {
      const other = a[r]!
      const f = other[c]! / own[c]!
      if (f !== 0) for (const k of there) other[k]! -= f * own[k]!
    }
  }
  for (let c = n - 1; c >= 0; c--) {
    const own = a[c]!
    for (let k = n; k < own.length; k++) own[k]! /= own[c]!
    for (let r = 0; r < c; r++) {
      const other = a[r]!
      const f = other[c]!
      if (f !== 0) for (let k = n; k < own.length; k++) other[k]! -= f * own[k]!
    }
  }
  return a.map((row) => row.slice(n))
}

export interface Problem {
  /** Which contacts open upward: all but posts, whose clamps slide. */
  readonly up: readonly number[]
  readonly M: Matrix
  readonly r: number[]
  /** Openings of all three directions for those of `up`, scaled back, m. */
  all(z: readonly number[]): number[]
}

/** What is let go sideways: contact · 3 + 1 or 2, and what goes on acting there, N. Nothing at feet; at a post whose ground gives what it held. */
export type Sideways = ReadonlyMap<number, number>

/**
 * The complementarity problem of the upward directions, with `sideways` free. Openings are counted from where a contact stands with its
 * gap, in units of what moves a leg's own stiffness by 1 N. Null where nothing resists the free ones.
 */
export function problemOf(
  { contacts }: Touching,
  plain: Plain,
  sideways: Sideways,
  unit: number,
): Problem | null {
  const gaps = contacts.flatMap(({ gap }) => [-gap, 0, 0])
  const up = contacts.flatMap(({ kind }, i) => (kind === 'post' ? [] : [i]))
  const aside = [...sideways.keys()]
  const order = [...aside, ...up.map((i) => i * 3)]
  const closed = order.map((a) => gaps.reduce((sum, g, b) => sum + g * plain.K[a]![b]!, plain.closed[a]!))
  const S = aside.length
  const inner = aside.map((a, i) => [
    ...aside.map((b) => plain.K[a]![b]! / unit),
    sideways.get(a)! - closed[i]!,
    ...up.map((b) => -plain.K[a]![b * 3]! / unit),
  ])
  const solved = eliminate(inner, S)
  if (solved.some((row) => row.some((v) => !Number.isFinite(v) || Math.abs(v) > 1e8))) return null
  const through = (a: number, column: number): number =>
    aside.reduce((sum, b, i) => sum + (plain.K[a]![b]! / unit) * solved[i]![column]!, 0)
  // What is left of nothing is nothing: a frame on three feet resists none of them.
  const exact = (value: number): number => (Math.abs(value) < 1e-10 ? 0 : value)
  return {
    up,
    M: up.map((a) => up.map((b, j) => exact(plain.K[a * 3]![b * 3]! / unit + through(a * 3, j + 1)))),
    r: up.map((a, i) => closed[S + i]! + contacts[a]!.holds + through(a * 3, 0)),
    all(z) {
      const by = [...gaps]
      up.forEach((a, i) => {
        by[a * 3]! += z[i]! / unit
      })
      aside.forEach((a, i) => {
        by[a] = z.reduce((sum, v, j) => sum + v * solved[i]![j + 1]!, solved[i]![0]!) / unit
      })
      return by
    },
  }
}

export interface Stance {
  /** Upward openings, m, from where each stands with its gap; none where nothing stops it. */
  readonly open: readonly number[] | null
}

/** Solved, lifted feet freed sideways, solved again, till none is added; posts hold whatever comes. */
export function stanceOf(frame: Touching, plain: Plain, unit: number): Stance | 'loose' {
  const sideways = new Map<number, number>()
  for (;;) {
    const problem = problemOf(frame, plain, sideways, unit)
    if (!problem) return 'loose'
    const z = lemke(problem.M, problem.r)
    if (!z) return { open: null }
    const slack = slackOf(problem.M, problem.r, z)
    const had = sideways.size
    problem.up.forEach((i, at) => {
      if (frame.contacts[i]!.kind !== 'foot' || z[at]! <= 0 || slack[at]! >= 1e-6) return
      sideways.set(i * 3 + 1, 0).set(i * 3 + 2, 0)
    })
    if (sideways.size === had) return { open: z.map((v) => v / unit) }
  }
}
