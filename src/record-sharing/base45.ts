/** Bytes in the letters that a square code packs closest (RFC 9285): three for two bytes. */

const LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'
const BASE = LETTERS.length

export function toBase45(bytes: Uint8Array): string {
  let text = ''
  for (let i = 0; i < bytes.length; i += 2) {
    const two = i + 1 < bytes.length
    let value = two ? bytes[i]! * 256 + bytes[i + 1]! : bytes[i]!
    for (let k = 0; k < (two ? 3 : 2); k++) {
      text += LETTERS[value % BASE]
      value = Math.floor(value / BASE)
    }
  }
  return text
}

/** null where it is none. */
export function fromBase45(text: string): Uint8Array | null {
  if (text.length % 3 === 1) return null
  const bytes = new Uint8Array(Math.floor(text.length / 3) * 2 + (text.length % 3 === 2 ? 1 : 0))
  for (let i = 0, at = 0; i < text.length; i += 3) {
    const digits = [...text.slice(i, i + 3)].map((letter) => LETTERS.indexOf(letter))
    if (digits.includes(-1)) return null
    const value = digits.reduceRight((sum, digit) => sum * BASE + digit, 0)
    if (value >= 256 ** (digits.length - 1)) return null
    if (digits.length === 3) bytes[at++] = value >> 8
    bytes[at++] = value & 255
  }
  return bytes
}
