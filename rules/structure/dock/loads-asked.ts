/** The basic loads that combinations are made of, each made when it is first asked for: all states of the frame use the same ones. */
import type { Waves } from '../../dock.ts'
import type { Height } from '../../site/waves/trains.ts'
import type { CaseLoad, StateLayout } from '../second-order.ts'
import { type LevelName, levelOf, liveLoad, type Toward, weatherLoad } from './basic-loads.ts'
import type { DockFrame } from './frame.ts'
import type { LoadedSide } from './people.ts'
import { upliftLoad } from './uplift.ts'

export interface BasicLoads {
  readonly dead: CaseLoad
  readonly live: CaseLoad
  /** People on one half of the deck. */
  readonly half: { readonly left: CaseLoad; readonly right: CaseLoad }
  readonly sides: readonly LoadedSide[]
  weather(level: LevelName, toward: Toward, height: Height, moored: boolean): CaseLoad
  /** Null where no crest reaches the deck. */
  uplift(level: LevelName, toward: Toward, height: Height): CaseLoad | null
}

export function basicLoads(
  states: StateLayout,
  frame: DockFrame,
  waves: Waves | null,
  { dead, live, sides }: Pick<BasicLoads, 'dead' | 'live' | 'sides'>,
): BasicLoads {
  const { levels } = frame.kit.design.site
  return {
    dead,
    live,
    half: {
      left: liveLoad(states, frame, { left: 1, right: 0 }),
      right: liveLoad(states, frame, { left: 0, right: 1 }),
    },
    sides,
    weather: eachOnce((level: LevelName, toward: Toward, height: Height, moored: boolean) =>
      weatherLoad(states, frame, waves, level, toward, height, moored),
    ),
    uplift: eachOnce(
      (level: LevelName, toward: Toward, height: Height) =>
        waves && upliftLoad(states, frame, waves, levelOf(levels, level), toward, height),
    ),
  }
}

function eachOnce<A extends readonly (string | boolean)[], T>(make: (...asked: A) => T): (...asked: A) => T {
  const made = new Map<string, T>()
  return (...asked) => {
    const key = asked.join(' ')
    if (!made.has(key)) made.set(key, make(...asked))
    return made.get(key) as T
  }
}
