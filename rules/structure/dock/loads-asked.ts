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
  weather(level: LevelName, toward: Toward, height: Height): CaseLoad
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
    weather: eachOnce((level, toward, height) => weatherLoad(states, frame, waves, level, toward, height)),
    uplift: eachOnce(
      (level, toward, height) =>
        waves && upliftLoad(states, frame, waves, levelOf(levels, level), toward, height),
    ),
  }
}

type OfWeather<T> = (level: LevelName, toward: Toward, height: Height) => T

function eachOnce<T>(make: OfWeather<T>): OfWeather<T> {
  const made = new Map<string, T>()
  return (level, toward, height) => {
    const key = `${level} ${toward} ${height}`
    if (!made.has(key)) made.set(key, make(level, toward, height))
    return made.get(key) as T
  }
}
