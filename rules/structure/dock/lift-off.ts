/**
 * Which contacts bear, and which are off: feet and ramp corners press and never pull, hooks hold down up to their lock. Those that would
 * do more are let go, until what is left agrees: what bears does not pull, what is off stands clear, and nothing is closed by force. One
 * scheme for all of them, a linear complementarity problem.
 *
 * What is in the air holds nothing, sideways neither: the other leg of its pair takes that over. A foot that comes down again in the
 * course of this bears, and holds nothing sideways: next to nothing presses it, so friction is next to nothing (on the safe side). All
 * other feet stay held sideways; what their friction cannot hold is told as sliding. A post whose ground gives goes on holding what it
 * held then.
 *
 * With the feet given that hold sideways no more, which contacts bear is a problem with one answer (a convex one), and feet
 * are only ever added to those. So it comes to an end.
 */
import { contactOf, isUp, type Touch } from './contacts.ts'

/** Guesses that take all contacts at once, before they are let go one by one. */
const TOGETHER = 3
/** One by one: of the greatest pull, what counts as as much. */
const NEARLY = 0.7
/** Pull under this is none, N. */
const NO_PULL = 0.5
/** A contact this far under what it stands on bears, m. */
const SUNK = 1e-7
/** A foot this high over its bed: small movements are counted on, and on such a deck nobody stands (judgment), m. */
export const TIPPED = 0.3
/** Of a leg's own stiffness along it: what resists a movement by less than this is nothing but rounding. */
const LOOSE = 1e-8
export interface Standing {
  /** Off what they stand on, by index of the contacts (of a frame: the feet first, in the order of its legs). */
  readonly lifted: readonly number[]
  /** What is let go sideways, contact · 3 + 1 or 2 (x or y): of these feet, of those that came down again, of posts whose ground gives. */
  readonly sideways: readonly number[]
  /** False where nothing bears any more, or the dock tips. */
  readonly stands: boolean
}

/**
 * @param forces of the judged members with all contacts closed (but for their gaps); left as they are with contacts let go, or as they
 * were where the dock tips
 * @param standOff contacts that stand off before anything moves besides those with a gap: they are opened before any other, so that none is
 * let go for what only closing them by force would do
 */
export function letGo(touching: Touch, forces: Float64Array, standOff: readonly number[] = []): Standing {
  const { contacts, at } = touching
  /** What acts at a direction once it is let go: nothing, or what the lock, the pin or the ground still holds. */
  const target = new Float64Array(contacts.length * 3)
  contacts.forEach(({ kind, holds }, i) => {
    if (kind !== 'post') target[i * 3] = -holds
  })
  const apart = contacts.flatMap(({ kind, gap }, i) =>
    kind !== 'post' && (gap > 0 || standOff.includes(i)) ? [i] : [],
  )
  const first = apart.filter((i) => forces[at[i * 3]!]! < target[i * 3]! - NO_PULL)
  let given: number[] = []
  let off: Off | 'tips' = { by: new Float64Array(target.length), free: [] }
  // Each round at least one more post gives.
  for (let round = 0; round <= contacts.length; round++) {
    const asked: Asked = { touching, forces, target, given, first }
    off = together(asked) ?? oneByOne(asked)
    if (off === 'tips') return { lifted: [], sideways: [], stands: false }
    const more = givingPosts(asked, off)
    if (more.length === 0) break
    given = [...given, ...more]
  }
  const { by, free } = off as Off
  const lifted = free.filter(isUp).map(contactOf)
  const sideways = free.filter((dof) => !isUp(dof))
  if (lifted.some((i) => contacts[i]!.kind === 'foot' && by[i * 3]! > TIPPED))
    return { lifted, sideways, stands: false }
  touching.move(by, forces)
  // What is let go carries what it is let go to, and no rounding besides.
  for (const dof of free) forces[at[dof]!] = target[dof]!
  // Held sideways by what hangs in the air alone, it is held by nothing.
  const acrossOf = (i: number): number => Math.hypot(forces[at[i * 3 + 1]!]!, forces[at[i * 3 + 2]!]!)
  const hanging = lifted.some((i) => contacts[i]!.kind === 'foot' && acrossOf(i) > NO_PULL)
  // Nor by a post beyond what its ground holds, where nothing else could take over.
  const torn = contacts.some(({ kind, holds }, i) => kind === 'post' && acrossOf(i) > most(holds))
  return { lifted, sideways, stands: !hanging && !torn }
}

interface Asked {
  readonly touching: Touch
  readonly forces: Float64Array
  readonly target: Float64Array
  /** Let go from the beginning: posts whose ground gives. */
  readonly given: readonly number[]
  /** Contacts that stand off: opened first. */
  readonly first: readonly number[]
}

interface Off {
  /** What is let go. */
  readonly free: readonly number[]
  /** How far each contact is moved, three each, m. */
  readonly by: Float64Array
}

/** What acts at a direction with contacts moved, N. */
const forceAt = ({ touching, forces }: Asked, { free, by }: Off, dof: number): number =>
  free.reduce((sum, other) => sum + by[other]! * touching.column(other)[dof]!, forces[touching.at[dof]!]!)

/** Up to here a post's ground counts as holding, N. */
const most = (holds: number): number => holds * (1 + 1e-6) + NO_PULL

/** Posts that hold more than their ground does: both directions of each, their targets set. */
function givingPosts(asked: Asked, off: Off): number[] {
  const { contacts } = asked.touching
  const found: number[] = []
  contacts.forEach(({ kind, holds }, i) => {
    if (kind !== 'post' || off.free.includes(i * 3 + 1)) return
    const x = forceAt(asked, off, i * 3 + 1)
    const y = forceAt(asked, off, i * 3 + 2)
    const across = Math.hypot(x, y)
    if (across <= most(holds)) return
    asked.target[i * 3 + 1] = (x * holds) / across
    asked.target[i * 3 + 2] = (y * holds) / across
    found.push(i * 3 + 1, i * 3 + 2)
  })
  return found
}

/** Contacts that bear and pull by more than they hold, and by how much more, N, negative. */
function pulling({ touching, forces, target }: Asked, { free, by }: Off): [contact: number, up: number][] {
  const { contacts, at, column } = touching
  const found: [number, number][] = []
  const lifted = new Set(free.filter(isUp).map(contactOf))
  const moved = free.filter((dof) => by[dof] !== 0).map((dof) => ({ way: by[dof]!, own: column(dof) }))
  for (let i = 0; i < contacts.length; i++) {
    if (lifted.has(i) || contacts[i]!.kind === 'post') continue
    let up = forces[at[i * 3]!]! - target[i * 3]!
    for (const { way, own } of moved) up += way * own[i * 3]!
    if (up < -NO_PULL) found.push([i, up])
  }
  return found
}

/** All contacts that pull are let go at once, and those that would sink set down: most often that is all. Null where it is not. */
function together(asked: Asked): Off | null {
  const solver = solverOf(asked)
  let ask = begin(asked)
  const begun = solver.release(ask)
  if (!begun.to) return null
  let { by, free } = begun
  for (let round = 0; round <= TOGETHER; round++) {
    const off = { by, free }
    const pulls = pulling(asked, off).map(([i]) => i)
    const sinks = new Set(free.filter((dof) => isUp(dof) && by[dof]! < -SUNK))
    if (pulls.length === 0 && sinks.size === 0) return off
    ask = letLoose(
      asked,
      ask.filter((dof) => !sinks.has(dof)),
      pulls,
    )
    const next = solver.release(ask)
    if (!next.to) return null
    by = next.by
    free = next.free
  }
  return null
}

const begin = (asked: Asked): number[] => letLoose(asked, asked.given, asked.first)

/** Feet sideways, where they are not yet, and up. */
const letLoose = ({ touching }: Asked, ask: readonly number[], pulls: readonly number[]): number[] => {
  const has = new Set(ask)
  const waysOf = (i: number): number[] =>
    touching.contacts[i]!.kind === 'foot' ? [i * 3 + 1, i * 3 + 2, i * 3] : [i * 3]
  return [...ask, ...pulls.flatMap((i) => waysOf(i).filter((dof) => !has.has(dof)))]
}

/**
 * One contact after the other, those that pull most first; whoever would sink on the way is set down again. Each step takes energy
 * out, so no set comes twice. Source: Lawson & Hanson, Solving Least Squares Problems (1974), chapter 23 (memory), with a way out
 * where nothing resists.
 */
function oneByOne(asked: Asked): Off | 'tips' {
  const solver = solverOf(asked)
  let ask: number[] = [...asked.given]
  const begun = solver.release(ask)
  const by = Float64Array.from(begun.by)
  let off: Off = { free: begun.free, by }
  for (let round = 0; round < 4 * asked.touching.contacts.length; round++) {
    const pulls = pulling(asked, off)
    if (pulls.length === 0) return off
    const most = pulls.reduce((least, [, up]) => Math.min(least, up), 0)
    const opened = round === 0 && asked.first.length > 0
    ask = letLoose(
      asked,
      ask,
      opened ? asked.first : pulls.filter(([, up]) => up <= most * NEARLY).map(([i]) => i),
    )
    // With none left in the air the loose ones still give way sideways.
    for (;;) {
      const { to, by: there, free } = solver.release(ask)
      const step = to ? there.map((way, i) => way - by[i]!) : there
      // As far as it goes, or until a contact on the way comes down.
      let part = to ? 1 : Number.POSITIVE_INFINITY
      let down = -1
      for (const dof of free) {
        if (!isUp(dof) || step[dof]! >= 0 || by[dof]! + part * step[dof]! >= 0) continue
        part = by[dof]! / -step[dof]!
        down = dof
      }
      if (part === Number.POSITIVE_INFINITY) return 'tips'
      for (let i = 0; i < step.length; i++) by[i]! += part * step[i]!
      off = { free, by }
      if (down < 0) break
      by[down] = 0
      ask = ask.filter((dof) => dof !== down)
    }
  }
  return 'tips'
}

interface Solver {
  /**
   * Where contacts go until on what is let go acts no more than it holds (`to`); or, where nothing stops a lifted one, the way that they go. A foot without
   * which nothing would hold the dock sideways stays held so: `free` is what is really let go.
   */
  release(ask: readonly number[]): {
    readonly to: boolean
    readonly by: Float64Array
    readonly free: number[]
  }
}

/**
 * By Maxwell's reciprocity what contacts do to each other is symmetric, and positive where the dock is stable: LDLᵀ without exchange of rows.
 * What is asked in the same order as before is kept.
 */
function solverOf({ touching, forces, target }: Asked): Solver {
  const { contacts, at, stiffness, column } = touching
  let asked: number[] = []
  /** By what was asked: how many rows there are after it. */
  let count: number[] = []
  const dofs: number[] = []
  const rows: Float64Array[] = []
  const pivots: number[] = []
  const rest: number[] = []
  /** Adds a row, or gives how the others follow where nothing resists it. */
  const append = (dof: number): Float64Array | null => {
    const n = dofs.length
    const own = column(dof)
    const row = new Float64Array(n)
    let pivot = own[dof]!
    let b = target[dof]! - forces[at[dof]!]!
    for (let c = 0; c < n; c++) {
      const other = rows[c]!
      let sum = own[dofs[c]!]!
      for (let k = 0; k < c; k++) sum -= row[k]! * other[k]!
      row[c] = sum
    }
    for (let c = 0; c < n; c++) {
      const share = row[c]! / pivots[c]!
      pivot -= row[c]! * share
      b -= share * rest[c]!
      row[c] = share
    }
    if (!(pivot > LOOSE * stiffness)) return row
    dofs.push(dof)
    rows.push(row)
    pivots.push(pivot)
    rest.push(b)
    return null
  }
  const place = (x: ArrayLike<number>): Float64Array => {
    const all = new Float64Array(contacts.length * 3)
    dofs.forEach((dof, i) => {
      all[dof] = x[i]!
    })
    return all
  }
  return {
    release(ask) {
      let same = 0
      while (same < asked.length && asked[same] === ask[same]) same++
      const left = same === 0 ? 0 : count[same - 1]!
      for (const list of [dofs, rows, pivots, rest]) list.length = left
      asked = asked.slice(0, same)
      count = count.slice(0, same)
      for (const dof of ask.slice(same)) {
        const follow = append(dof)
        if (follow && isUp(dof)) {
          const by = place(
            backward(
              rows,
              Array.from(follow, (share) => -share),
            ),
          )
          by[dof] = 1
          return { to: false, by, free: [...dofs, dof] }
        }
        asked.push(dof)
        count.push(dofs.length)
      }
      const by = place(
        backward(
          rows,
          rest.map((b, i) => b / pivots[i]!),
        ),
      )
      return { to: true, by, free: [...dofs] }
    },
  }
}

/** Solves Lᵀ·x = x. */
function backward(rows: readonly Float64Array[], x: number[]): number[] {
  for (let r = x.length - 1; r > 0; r--) {
    const row = rows[r]!
    const value = x[r]!
    for (let k = 0; k < r; k++) x[k]! -= row[k]! * value
  }
  return x
}
