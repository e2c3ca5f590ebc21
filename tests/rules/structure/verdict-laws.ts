/** What the verdicts of docks obey, as plain questions: each gives what is wrong, or nothing. */
import type { Design, Kit } from '../../../rules/index.ts'
import { wavesOf } from '../../../rules/site/waves/waves.ts'
import { type Standing, stand } from '../../../rules/stand.ts'
import { analyze } from '../../../rules/structure/dock/analysis.ts'
import {
  leanLoad,
  levelOf,
  liveLoad,
  TOWARD,
  weatherLoad,
} from '../../../rules/structure/dock/basic-loads.ts'
import { type DockFrame, dockFrame } from '../../../rules/structure/dock/frame.ts'
import type { Solved } from '../../../rules/structure/dock/soften.ts'
import { upliftLoad } from '../../../rules/structure/dock/uplift.ts'
import { type CaseLoad, endForces, respond } from '../../../rules/structure/second-order.ts'
import { unlessLoose } from './dock-cases.ts'

/** What a verdict is made of: what follows from loads, and is nobody's taste. */
const CODES = new Set([
  'goes-over',
  'tips',
  'dock-slides',
  'does-not-stand',
  'leg-overloaded',
  'brace-overloaded',
  'rail-overloaded',
  'buckles',
])
const WHOLE = new Set(['goes-over', 'tips', 'dock-slides', 'does-not-stand'])
const RANKS = ['note', 'warn', 'stop'] as const

export interface Verdict {
  /** 0 for no finding up to 3 for a stop, and half a step more where the dock goes over. */
  readonly rank: number
  /** The same by what is asked of the dock as a whole alone: slides, tips, goes over, does not stand. */
  readonly whole: number
  readonly codes: readonly string[]
  readonly structure: NonNullable<Standing['structure']>
  readonly legUse: number
}

/** Undefined where it cannot be judged, or can move without resistance. */
export function verdictOf(kit: Kit, deep = false): Verdict | undefined {
  const { structure, findings } = stand(kit, wavesOf(kit), { deep })
  if (!structure) return undefined
  const own = findings.filter(({ code }) => CODES.has(code))
  const rankOf = (found: typeof own): number =>
    found.reduce((most, { severity }) => Math.max(most, RANKS.indexOf(severity) + 1), 0) +
    (structure.stands ? 0 : 0.5)
  return {
    rank: rankOf(own),
    whole: rankOf(own.filter(({ code }) => WHOLE.has(code))),
    codes: [...new Set(own.map(({ code }) => code))],
    structure,
    legUse: structure.legs.reduce((most, { use }) => Math.max(most, use), 0),
  }
}

/** Of two docks, is everything that they are made of the same? */
export const sameParts = (a: Kit, b: Kit): boolean => JSON.stringify(made(a)) === JSON.stringify(made(b))

const made = ({ legs, pairs, extras }: Kit) => [
  legs.map(({ id, stock, pad }) => [id, stock?.code, pad.code]),
  pairs.map(({ pair, fit }) => [pair.id, fit?.brace.code, fit?.low.id]),
  extras.placed.map(({ extra, post }) => [extra.code, post?.stock?.code]),
]

export const windy = (design: Design, wind: Design['site']['wind']): Design => ({
  ...design,
  site: { ...design.site, wind },
})

/** Soundings in water that much deeper, what stands on shore as it was. */
export const deeper = (design: Design, by: number): Design => ({
  ...design,
  site: {
    ...design.site,
    soundings: design.site.soundings.map((s) =>
      s.depth > 0 ? { ...s, depth: s.depth + by, ...(s.firm !== undefined && { firm: s.firm + by }) } : s,
    ),
  },
})

/** The dock with what was worked out for it written down: where it stands, and each leg's stock. */
export const asBuilt = (design: Design, kit: Kit): Design => ({
  ...design,
  dock: {
    ...design.dock,
    start: kit.start.x,
    overrides: Object.fromEntries(kit.legs.map(({ id, stock }) => [id, { stock: stock!.length }])),
  },
})

/** A contact pulls by less than this without being let go, N, doubled for rounding (`lift-off.ts`). */
const NO_PULL = 1

/** Which supports do more than they may in this case, in words. Forces are looked up here anew, not by `contacts.ts`. */
function trespasses({ contacts, slot }: DockFrame, { forces, lifted }: Solved): string[] {
  const off = new Set(lifted)
  return contacts.flatMap(({ kind, member, holds }, i): string[] => {
    const at = slot[member]! * 12
    // A hook lies level, its third axis up; all others stand on their first end.
    const up = forces[at + (kind === 'hook' ? 2 : 0)]!
    if (kind === 'post') {
      const across = Math.hypot(forces[at + 1]!, forces[at + 2]!)
      return across > holds * (1 + 1e-5) + NO_PULL ? [`post ${i}: ${across} of ${holds}`] : []
    }
    if (up < -holds - NO_PULL) return [`${kind} ${i} pulls ${-up} of ${holds}`]
    if (off.has(i) && Math.abs(up + holds) > NO_PULL) return [`${kind} ${i} is off and carries ${up}`]
    return kind === 'foot' && off.has(i) && Math.hypot(forces[at + 1]!, forces[at + 2]!) > NO_PULL
      ? [`foot ${i} hangs and holds sideways`]
      : []
  })
}

export interface Carried {
  cases: number
  /** That stand. */
  standing: number
  lifted: number
  wrong: string[]
  /** What is missing between what acts and what pushes back, over what acts; one for each case that is no push. */
  missing: number[]
}

/** @param broken what the engine is handed instead of the frame that is checked */
export function carried(kit: Kit, broken: (frame: DockFrame) => DockFrame = (frame) => frame): Carried {
  const frame = dockFrame(kit)
  const waves = wavesOf(kit)
  const result: Carried = { cases: 0, standing: 0, lifted: 0, wrong: [], missing: [] }
  const kept: { combination: Solved['combination']; back: readonly number[] }[] = []
  const analysis = unlessLoose(() =>
    analyze(broken(frame), waves, (solved) => {
      result.cases++
      if (!solved.stands) return
      result.standing++
      if (solved.lifted.length > 0) result.lifted++
      result.wrong.push(...trespasses(frame, solved).map((what) => `${solved.combination.name}: ${what}`))
      if (solved.combination.side === null)
        kept.push({ combination: solved.combination, back: pushedBack(frame, solved.forces) })
    }),
  ) as ReturnType<typeof analyze> | undefined
  if (!analysis) return result
  const { states, plain, dead, live, lean } = analysis
  const { levels } = kit.design.site
  const half = (['left', 'right'] as const).map((side) =>
    sumOf(liveLoad(states, frame, { left: side === 'left' ? 1 : 0, right: side === 'right' ? 1 : 0 })),
  )
  const end = new Float64Array(12)
  const moves = [respond(plain, dead.onNodes), respond(plain, live.onNodes)]
  const pressing = (share: number): Float64Array =>
    Float64Array.from(frame.legs, ({ members }) =>
      [dead, live].reduce((sum, load, i) => {
        endForces(plain, members[0]!, moves[i]!, load.onMembers, end, 0)
        return sum + ((i === 0 ? 1 : share) * (end[0]! - end[6]!)) / 2
      }, 0),
    )
  const press = { full: pressing(1), none: pressing(0) }
  const known = new Map<string, readonly number[]>()
  const once = (key: string, make: () => CaseLoad | null): readonly number[] => {
    let sum = known.get(key)
    if (!sum) {
      const load = make()
      sum = load ? sumOf(load) : [0, 0, 0]
      known.set(key, sum)
    }
    return sum
  }
  for (const { combination, back } of kept) {
    const { weather, gravity } = combination
    const key = weather ? `${weather.level} ${weather.toward} ${weather.waves} ${weather.moored}` : ''
    const terms: [number, readonly number[]][] = [
      [combination.dead, sumOf(dead)],
      [combination.live[0], half[0]!],
      [combination.live[1], half[1]!],
      [
        1,
        once(`${gravity} ${combination.lean}`, () =>
          leanLoad(states, frame, press[gravity], lean, TOWARD[combination.lean]),
        ),
      ],
    ]
    if (weather) {
      const { level, toward, waves: height, factor, uplift, moored } = weather
      terms.push([factor, once(key, () => weatherLoad(states, frame, waves, level, toward, height, moored))])
      if (waves && uplift)
        terms.push([
          uplift,
          once(`up ${key}`, () => upliftLoad(states, frame, waves, levelOf(levels, level), toward, height)),
        ])
    }
    const acts = [0, 1, 2].map((k) => terms.reduce((sum, [by, load]) => sum + by * load[k]!, 0))
    const size = terms.reduce((sum, [by, load]) => sum + by * Math.hypot(...load), 0)
    result.missing.push(Math.max(...acts.map((act, k) => Math.abs(act + back[k]!))) / size)
  }
  return result
}

/** All that a load does, in x, y and z. */
function sumOf({ onNodes }: CaseLoad): readonly number[] {
  const sum = [0, 0, 0]
  for (let i = 0; i < onNodes.length; i += 6) for (let k = 0; k < 3; k++) sum[k]! += onNodes[i + k]!
  return sum
}

/** What feet, posts and the ramp's shore end push back with, in x, y and z. */
function pushedBack({ legs, posts, contacts, slot }: DockFrame, forces: Float64Array): readonly number[] {
  const members = [
    ...legs.map((leg) => leg.members[0]!),
    ...posts.map(({ member }) => member),
    ...contacts.filter(({ kind }) => kind === 'shore').map(({ member }) => member),
  ]
  return [1, 2, 0].map((axis) => members.reduce((sum, member) => sum + forces[slot[member]! * 12 + axis]!, 0))
}
