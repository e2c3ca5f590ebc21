/** Hands and tools: how many people a lift takes, where they stand, what they need. */
import type { Catalog } from '../../catalog/index.ts'
import type { Section } from '../../dock.ts'
import { round6 } from '../../numbers.ts'
import { kindsWith, type PartKind } from '../../part-kinds.ts'
import { FRAME_LIFT, liftingLimit } from '../../structure/strength/lifting.ts'
import { packagingOf } from '../packaging.ts'
import { count, kilograms, saying, text } from '../saying.ts'
import type { Crew, Phase, Place, StepLift, StepLine, Tool, Work } from './step.ts'

const LIMIT = liftingLimit(FRAME_LIFT).limit

/** Never alone, however light. */
const LEAST = 2

/** People by the catalog's limit for one; on dry land with the screen beside it, nowhere else: it does not hold in the water or on a deck. */
export function liftOf({ id, lift: mass }: Section, place: Place, catalog: Catalog): StepLift {
  const person = packagingOf(catalog).person / 1000
  const people = Math.max(LEAST, Math.ceil(mass / person - 1e-9))
  const each = round6(mass / people)
  const screen = place === 'shore' ? { limit: round6(LIMIT), index: round6(each / LIMIT) } : null
  const values = {
    section: text(id),
    mass: kilograms(mass),
    people: count(people),
    each: kilograms(each),
    ...(screen && {
      limit: kilograms(screen.limit),
      index: { value: screen.index, unit: 'factor' },
    }),
  }
  return { section: id, mass, people, each, screen, say: saying(screen ? 'lift-dry' : 'lift', values) }
}

export const crewOf = (...crew: readonly (readonly [Place, number])[]): Crew[] =>
  crew.flatMap(([place, people]) => (people > 0 ? [{ place, people }] : []))

export const peopleOf = (crew: readonly Crew[]): number => crew.reduce((sum, { people }) => sum + people, 0)

/** Bolts that a line tightens (or loosens), by its parts. */
const BOLTS: ReadonlySet<PartKind> = new Set<PartKind>(kindsWith('list', 'hardware'))

/** What else a line of work is done with. */
const OTHER: Partial<Record<Work, 'tool-rod' | 'tool-tape' | 'tool-level' | 'tool-auger-bar'>> = {
  sound: 'tool-rod',
  'set-leg': 'tool-tape',
  level: 'tool-level',
}

export function toolsOf(lines: readonly StepLine[], phase: Phase, catalog: Catalog): Tool[] {
  const tools = new Map<string, Tool>()
  const wrench = (kind: PartKind): void => {
    const size = catalog.hardware.find((bolt) => bolt.kind === kind)?.wrench
    if (size)
      tools.set(`wrench ${size}`, {
        key: 'tool-wrench',
        size,
        say: saying('tool-wrench', { size: text(size) }),
      })
  }
  const add = (key: Tool['key']): void => {
    tools.set(key, { key, size: null, say: saying(key) })
  }
  for (const { work, parts } of lines) {
    for (const { kind } of parts) {
      if (BOLTS.has(kind)) wrench(kind)
      if (kind === 'auger') add('tool-auger-bar')
    }
    // Set bolts are in since the shore; legs are set by loosening and tightening them.
    if (work === 'set-leg') wrench('set-bolt')
    const other = OTHER[work]
    if (other) add(other)
  }
  if (phase === 'first') add('tool-waders')
  if (phase === 'first' || phase === 'outward') add('tool-vests')
  return [...tools.values()]
}
