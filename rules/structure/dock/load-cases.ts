/** Load cases as data, each beside the id that stands for it in a Dock: what acts, at which level of the lake, where it pushes to. */
import type { LevelName, Toward } from './ways.ts'

interface ActFacts {
  /** As in ASCE 7-16 2.4.1; a push P, a boat's bump B, a crowd C and somebody at the edge E are ours. */
  readonly sign: string
  /** Where it can push to; null: nowhere, or of people all over the deck. */
  readonly ways: readonly (Toward | null)[]
  /** With wind and waves: at one of the lake's levels. */
  readonly weather?: boolean
  /** With the shove of a person or a boat. */
  readonly push?: boolean
}

const ALL = ['left', 'right', 'shore', 'lake'] as const
const LEVELS: readonly LevelName[] = ['low', 'today', 'high']

/** Named as the languages name them (`case.…` in `src/words/loads.json`). */
const ACTS = {
  dead: { sign: 'D', ways: [null] },
  live: { sign: 'D+L', ways: [null, 'left', 'right'] },
  shove: { sign: 'D+P', ways: ALL, push: true },
  boat: { sign: 'D+B', ways: ALL, push: true },
  crowd: { sign: 'D+C', ways: ['lake', 'left', 'right'] },
  edge: { sign: 'D+E', ways: ['left', 'right'] },
  storm: { sign: 'D+W', ways: ALL, weather: true },
  'storm-light': { sign: '0.6D+W', ways: ALL, weather: true },
  'storm-live': { sign: 'D+0.75L+0.75W', ways: ALL, weather: true },
} as const satisfies Readonly<Record<string, ActFacts>>

export type Act = keyof typeof ACTS

export interface LoadCase {
  /** `D+L`, `D+L left`, `0.6D+W high left`, `D+P lake` … : what `case` says in the Dock, and stays. */
  readonly id: string
  readonly act: Act
  readonly level: LevelName | null
  readonly toward: Toward | null
  readonly weather: boolean
  readonly push: boolean
}

export const caseId = (act: Act, toward: Toward | null = null, level: LevelName | null = null): string =>
  [ACTS[act].sign, level, toward].filter((word) => word !== null).join(' ')

const CASES: ReadonlyMap<string, LoadCase> = new Map(
  (Object.keys(ACTS) as Act[]).flatMap((act) => {
    const { ways, weather = false, push = false }: ActFacts = ACTS[act]
    return ways.flatMap((toward) =>
      (weather ? LEVELS : [null]).map((level): [string, LoadCase] => {
        const id = caseId(act, toward, level)
        return [id, { id, act, level, toward, weather, push }]
      }),
    )
  }),
)

/** null for an id that is none of them. */
export const loadCaseOf = (id: string): LoadCase | null => CASES.get(id) ?? null
