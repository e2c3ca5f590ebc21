/**
 * The shop's logo, read from its catalog. Whoever writes a paper decodes it without asking, so what cannot be decoded is found here, and the
 * paper is made without it.
 */
import { unzlibSync } from 'fflate'
import type { Catalog } from '../../rules/index.ts'
import type { ImageMark } from './marks.ts'

export interface Logo {
  readonly bytes: Uint8Array
  readonly type: 'png' | 'jpeg'
  /** Pixels. */
  readonly width: number
  readonly height: number
}

/** Along either side: more is no logo, and is slow to decode. */
const MOST_PIXELS = 2000

/** Null where the catalog has none; the reason, as of an issue of a file, where it cannot be read. */
export function logoOf({ shop }: Catalog): Logo | string | null {
  const logo = shop?.logo
  if (logo === undefined || logo === '') return null
  const expected =
    'expected a PNG (8 bit, not interlaced) or JPEG as data:image/png;base64,… or data:image/jpeg;base64,…'
  const [, type, data] = /^data:image\/(png|jpeg);base64,([A-Za-z0-9+/]+={0,2})$/.exec(logo) ?? []
  if (data === undefined) return `no image as data; ${expected}`
  const bytes = bytesOf(data)
  const size = type === 'png' ? pngSize(bytes) : jpegSize(bytes)
  if (!size) return `no ${type === 'png' ? 'PNG' : 'JPEG'} that can be read; ${expected}`
  const [width, height] = size
  if (width > MOST_PIXELS || height > MOST_PIXELS)
    return `${width} x ${height} pixels; expected at most ${MOST_PIXELS} along a side`
  return { bytes, type: type === 'png' ? 'png' : 'jpeg', width, height }
}

/** As large as it goes in a box, mm. */
export function logoMark({ bytes, type, width, height }: Logo, most: readonly [number, number]): ImageMark {
  const k = Math.min(most[0] / width, most[1] / height)
  return {
    kind: 'image',
    at: [0, 0],
    width: width * k,
    height: height * k,
    png: bytes,
    ...(type === 'jpeg' && { type }),
  }
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** RFC 4648, by hand: neither Node's nor the page's is of use in both. */
function bytesOf(base64: string): Uint8Array {
  const text = base64.replace(/=+$/, '')
  const bytes = new Uint8Array((text.length * 3) >> 2)
  let [bits, held, at] = [0, 0, 0]
  for (const letter of text) {
    bits = (bits << 6) | ALPHABET.indexOf(letter)
    held += 6
    if (held < 8) continue
    held -= 8
    bytes[at++] = (bits >> held) & 0xff
    bits &= (1 << held) - 1
  }
  return bytes
}

type Size = readonly [width: number, height: number]

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
/** Values to a pixel, by color type (ISO/IEC 15948, 11.2.2). */
const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }

/** Of a PNG whose every part is whole; null of any other. */
function pngSize(bytes: Uint8Array): Size | null {
  if (!PNG.every((byte, i) => bytes[i] === byte)) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length)
  const data: Uint8Array[] = []
  let head: { width: number; height: number; row: number; palette: boolean } | null = null
  let palette = false
  for (let at = PNG.length; at + 12 <= bytes.length; ) {
    const long = view.getUint32(at)
    const end = at + 8 + long
    if (end + 4 > bytes.length || crc(bytes, at + 4, end) !== view.getUint32(end)) return null
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
    if (name === 'IHDR' && long === 13) {
      const [width, height] = [view.getUint32(at + 8), view.getUint32(at + 12)]
      const [depth, color, , , interlaced] = bytes.subarray(at + 16, at + 21)
      const channels = CHANNELS[color!]
      if (depth !== 8 || channels === undefined || interlaced !== 0 || width < 1 || height < 1) return null
      if (width > MOST_PIXELS || height > MOST_PIXELS) return [width, height]
      head = { width, height, row: 1 + width * channels, palette: color === 3 }
    }
    if (name === 'PLTE') palette = true
    if (name === 'IDAT') data.push(bytes.subarray(at + 8, end))
    if (name === 'IEND')
      return head && (palette || !head.palette) && isWhole(data, head) ? [head.width, head.height] : null
    at = end + 4
  }
  return null
}

function isWhole(data: readonly Uint8Array[], { row, height }: { row: number; height: number }): boolean {
  const all = new Uint8Array(data.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of data) {
    all.set(part, at)
    at += part.length
  }
  try {
    const pixels = unzlibSync(all)
    if (pixels.length !== row * height) return false
    for (let y = 0; y < height; y++) if (pixels[y * row]! > 4) return false
    return true
  } catch {
    return false
  }
}

/** ISO/IEC 15948, annex D. */
function crc(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0xffffffff
  for (let i = from; i < to; i++) {
    sum ^= bytes[i]!
    for (let k = 0; k < 8; k++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1
  }
  return (sum ^ 0xffffffff) >>> 0
}

/** Of a JPEG (ISO/IEC 10918-1) in gray or color that is not cut off; its picture is passed on as it is. */
function jpegSize(bytes: Uint8Array): Size | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null
  if (bytes.at(-2) !== 0xff || bytes.at(-1) !== 0xd9) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length)
  for (let at = 2; at + 10 <= bytes.length; ) {
    if (bytes[at] !== 0xff) return null
    const marker = bytes[at + 1]!
    const long = view.getUint16(at + 2)
    if (long < 2 || marker === 0xda) return null
    // Baseline, extended or progressive.
    if (marker >= 0xc0 && marker <= 0xc2) {
      const [height, width, parts] = [view.getUint16(at + 5), view.getUint16(at + 7), bytes[at + 9]]
      return width > 0 && height > 0 && (parts === 1 || parts === 3) ? [width, height] : null
    }
    at += 2 + long
  }
  return null
}
