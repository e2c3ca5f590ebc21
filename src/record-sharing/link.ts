/** A whole record in the fragment of an address, which never leaves the browser; without its photos. */
import type { Parsed } from '../../rules/index.ts'
import { parseRecordText, RECORD_LIMITS, type SeasonRecord } from '../../rules/record/index.ts'
import { fromBase64Url, packText, toBase64Url, unpackText } from '../platform/packed-text.ts'
import { type Arrived, damaged, withPhotos } from './arrived.ts'

const PREFIX = '#leadline-record='
/** Longest fragment, characters: common mail programs and messengers still pass such a link on whole. */
const LONGEST_LINK = 8000

/** The fragment, `#` included; null where it would be too long to be passed on: then a file or codes. */
export function recordLink(record: SeasonRecord): string | null {
  const text = JSON.stringify(record)
  // Far more than any link can hold: not worth the work of packing it.
  if (text.length > LONGEST_LINK * 40) return null
  const link = PREFIX + toBase64Url(packText(text))
  return link.length > LONGEST_LINK ? null : link
}

/** Whether a fragment is meant to be a record at all. */
export const isRecordLink = (fragment: string): boolean => fragment.startsWith(PREFIX)

/** The record of a fragment. Never throws. */
export function readRecordLink(fragment: string): Parsed<Arrived> {
  if (!isRecordLink(fragment)) return damaged('the link', `an address that ends in ${PREFIX}…`)
  try {
    const packed = fromBase64Url(fragment.slice(PREFIX.length))
    return withPhotos(parseRecordText(unpackText(packed, RECORD_LIMITS.textBytes)))
  } catch {
    return damaged('the link', 'the whole address as it was copied')
  }
}
