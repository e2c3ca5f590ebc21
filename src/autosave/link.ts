/**
 * A whole design in the fragment of an address: JSON, deflated (RFC 1951), base64url (RFC 4648, section 5). The fragment never
 * leaves the browser, so a link tells its design to those who are given it and to nobody else.
 */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate'
import { type Design, type Issue, type Parsed, parseDesignText } from '../../rules/index.ts'

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
  const link = PREFIX + toBase64Url(deflateSync(strToU8(text), { level: 9 }))
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
    return parseDesignText(strFromU8(unpack(fromBase64Url(fragment.slice(PREFIX.length)))))
  } catch {
    return broken('the whole address as it was copied')
  }
}

function unpack(packed: Uint8Array): Uint8Array {
  const pieces: Uint8Array[] = []
  let size = 0
  let done = false
  const inflate = new Inflate((piece, final) => {
    size += piece.length
    if (size > LARGEST) throw new Error('too large')
    pieces.push(piece)
    done ||= final
  })
  // In small portions, so that the limit bites before the memory is gone.
  for (let i = 0; i < packed.length; i += 512)
    inflate.push(packed.subarray(i, i + 512), i + 512 >= packed.length)
  if (!done) throw new Error('cut short')
  const all = new Uint8Array(size)
  let at = 0
  for (const piece of pieces) {
    all.set(piece, at)
    at += piece.length
  }
  return all
}

function toBase64Url(bytes: Uint8Array): string {
  let binary = ''
  for (const byte of bytes) binary += String.fromCharCode(byte)
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

function fromBase64Url(text: string): Uint8Array {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  return Uint8Array.from(binary, (character) => character.charCodeAt(0))
}
