/** A record in square codes that one screen shows in turn and another phone reads; without its photos. */
import type { Parsed } from '../../rules/index.ts'
import { parseRecordText, RECORD_LIMITS, type SeasonRecord } from '../../rules/record/index.ts'
import { packText, unpackText } from '../platform/packed-text.ts'
import { type Arrived, damaged, withPhotos } from './arrived.ts'
import { collectFrames, type Frames, framesOf } from './frames.ts'

/** How long each code stands, ms: a camera that reads five pictures a second gets most of them. */
export const EACH = 250

/** The codes of a record; null where it is too long for them: then a file. */
export const recordCodes = (record: SeasonRecord): Frames | null => framesOf(packText(JSON.stringify(record)))

/** After each code that was read. `other`: a code, and none of ours. */
export type CodeRead =
  | { readonly state: 'other' | 'damaged' }
  | { readonly state: 'more'; readonly have: number; readonly need: number }
  | { readonly state: 'done'; readonly arrived: Parsed<Arrived> }

/** Gets what codes say, in any order, and gives the record when enough of them came. Never throws. */
export function codeReader(): (text: string) => CodeRead {
  const frames = collectFrames()
  return (text) => {
    const taken = frames.take(text)
    if (taken.state !== 'done') return taken
    try {
      const record = parseRecordText(unpackText(taken.message, RECORD_LIMITS.textBytes))
      return { state: 'done', arrived: withPhotos(record) }
    } catch {
      return { state: 'done', arrived: damaged('what the codes say', 'a record') }
    }
  }
}
