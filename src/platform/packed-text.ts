/** Texts on their way through links and codes: deflated (RFC 1951), and base64url (RFC 4648, section 5) where an address is to hold them. */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate'

export const packText = (text: string): Uint8Array => deflateSync(strToU8(text), { level: 9 })

/**
 * @param most that it may be unpacked to, bytes: a forged one must not fill the memory
 * Throws where it is damaged, cut short, or larger.
 */
export function unpackText(packed: Uint8Array, most: number): string {
  const pieces: Uint8Array[] = []
  let size = 0
  let done = false
  const inflate = new Inflate((piece, final) => {
    size += piece.length
    if (size > most) throw new Error('too large')
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
  return strFromU8(all)
}

export function toBase64Url(bytes: Uint8Array): string {
  let binary = ''
  for (const byte of bytes) binary += String.fromCharCode(byte)
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

/** Throws where it is none. */
export function fromBase64Url(text: string): Uint8Array {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  return Uint8Array.from(binary, (character) => character.charCodeAt(0))
}
