/**
 * A whole design in the fragment of an address: JSON, deflated (RFC 1951), base64url (RFC 4648, section 5). The fragment never
 * leaves the browser, so a link tells its design to those who are given it and to nobody else.
 */
import { type Design, type Issue, type Parsed, parseDesignText } from '../../rules/index.ts'
import { fromBase64Url, packText, toBase64Url, unpackText } from '../platform/packed-text.ts'

const PREFIX = '#leadline='
/** Longest fragment, characters: common mail programs and messengers still pass such a link on whole. */
export const LONGEST_LINK = 8000
/** Most that a link is unpacked to, bytes: a forged one must not fill the memory. */
const LARGEST = 4 * 1024 * 1024

/** The fragment, `#` included; null where it would be too long to be passed on. */
export function linkOf(design: Design): string | null {
  const text = JSON.stringify(design)
  // Far more than any link can hold: not worth the work of packing it on every change.
  if (text.length > LONGEST_LINK * 40) return null
  const link = PREFIX + toBase64Url(packText(text))
  return link.length > LONGEST_LINK ? null : link
}

/** Whether a fragment is meant to be a design at all. */
export const isLink = (fragment: string): boolean => fragment.startsWith(PREFIX)

/** The design of a fragment. Never throws. */
export function readLink(fragment: string): Parsed<Design> {
  const broken = (expected: string): Parsed<Design> => {
    const issue: Issue = {
      path: '',
      message: `the link is damaged or cut short; expected ${expected}`,
      expected,
      received: 'a damaged link',
    }
    return { ok: false, issues: [issue] }
  }
  if (!isLink(fragment)) return broken(`an address that ends in ${PREFIX}…`)
  try {
    return parseDesignText(unpackText(fromBase64Url(fragment.slice(PREFIX.length)), LARGEST))
  } catch {
    return broken('the whole address as it was copied')
  }
}
