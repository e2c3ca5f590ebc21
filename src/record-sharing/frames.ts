/**
 * A message in frames that are shown one after the other, and read as they come: some twice, some not at all, in any order. The first frames
 * are the message's blocks themselves; each later one is the sum (exclusive or) of about half of the blocks, chosen by its number. Whoever
 * has as many independent frames as there are blocks has the message: a frame that was missed need not come round again.
 */
import { sha256 } from '@noble/hashes/sha2.js'
import { fromBase45, toBase45 } from './base45.ts'

/** Bytes of the message in a frame: with what goes before them a code of 65 squares a side at the lowest correction. */
const BLOCK = 320
/** Blocks that a message may have: some minutes of showing. */
const MOST_BLOCKS = 600
/** What every frame begins with, and no other code. */
const PREFIX = 'LL1:'
/** Digest of the message (8), blocks (2), length (3), number of the frame (3); digest of the frame (4). */
const HEAD = 16
const CHECK = 4
const ID = 8
/** Frames have numbers below this. */
const NUMBERS = 2 ** 24
/** Messages that are collected side by side: an older one goes. */
const MOST_MESSAGES = 4

/** Which blocks a frame is the sum of, a bit each. */
function blocksOf(frame: number, blocks: number): bigint {
  if (frame < blocks) return 1n << BigInt(frame)
  // Any generator will do as long as both sides have the same: this one is 32-bit mixing by multiplication and shifts.
  let state = (frame * 0x9e3779b1) >>> 0
  let chosen = 0n
  for (let i = 0; i < blocks; i += 32) {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    chosen = (chosen << 32n) | BigInt((mixed ^ (mixed >>> 14)) >>> 0)
  }
  chosen &= (1n << BigInt(blocks)) - 1n
  return chosen === 0n ? 1n << BigInt(frame % blocks) : chosen
}

function addTo(sum: Uint8Array, more: Uint8Array): void {
  for (let i = 0; i < sum.length; i++) sum[i]! ^= more[i]!
}

export interface Frames {
  /** As many at least are to be read. */
  readonly count: number
  /** What the code number `i` says, from 0 on, for ever. */
  text(i: number): string
}

/** null where the message is too long to be shown. */
export function framesOf(message: Uint8Array): Frames | null {
  const count = Math.max(1, Math.ceil(message.length / BLOCK))
  if (count > MOST_BLOCKS) return null
  const whole = new Uint8Array(count * BLOCK)
  whole.set(message)
  const id = sha256(message).subarray(0, ID)
  return {
    count,
    text(i) {
      const number = i % NUMBERS
      const frame = new Uint8Array(HEAD + BLOCK + CHECK)
      const view = new DataView(frame.buffer)
      frame.set(id)
      view.setUint16(ID, count)
      view.setUint16(ID + 2, message.length >> 8)
      view.setUint8(ID + 4, message.length & 255)
      view.setUint16(ID + 5, number >> 8)
      view.setUint8(ID + 7, number & 255)
      const chosen = blocksOf(number, count)
      const sum = frame.subarray(HEAD, HEAD + BLOCK)
      for (let k = 0; k < count; k++)
        if ((chosen >> BigInt(k)) & 1n) addTo(sum, whole.subarray(k * BLOCK, (k + 1) * BLOCK))
      frame.set(sha256(frame.subarray(0, HEAD + BLOCK)).subarray(0, CHECK), HEAD + BLOCK)
      return PREFIX + toBase45(frame)
    },
  }
}

/** What a code said. `other`: it is none of these frames. `damaged`: it is one, misread, or its message does not add up. */
export type Taken =
  | { readonly state: 'other' | 'damaged' }
  | { readonly state: 'more'; readonly have: number; readonly need: number }
  | { readonly state: 'done'; readonly message: Uint8Array; readonly need: number }

interface Row {
  blocks: bigint
  readonly pivot: bigint
  readonly sum: Uint8Array
}

interface Collected {
  readonly count: number
  readonly length: number
  readonly rows: Row[]
}

export interface Collector {
  take(text: string): Taken
}

/** Puts frames together as they come. Never throws. */
export function collectFrames(): Collector {
  const messages = new Map<string, Collected>()
  return {
    take(text) {
      if (!text.startsWith(PREFIX)) return { state: 'other' }
      const frame = fromBase45(text.slice(PREFIX.length))
      if (frame?.length !== HEAD + BLOCK + CHECK) return { state: 'damaged' }
      const check = sha256(frame.subarray(0, HEAD + BLOCK))
      if (!frame.subarray(HEAD + BLOCK).every((byte, i) => byte === check[i])) return { state: 'damaged' }
      const view = new DataView(frame.buffer)
      const count = view.getUint16(ID)
      const length = view.getUint16(ID + 2) * 256 + view.getUint8(ID + 4)
      const number = view.getUint16(ID + 5) * 256 + view.getUint8(ID + 7)
      if (count < 1 || count > MOST_BLOCKS || Math.max(1, Math.ceil(length / BLOCK)) !== count)
        return { state: 'damaged' }
      const id = frame.subarray(0, ID)
      const key = [...id, count, length].join()
      const collected = messages.get(key) ?? { count, length, rows: [] }
      messages.delete(key)
      messages.set(key, collected)
      for (const old of [...messages.keys()].slice(0, -MOST_MESSAGES)) messages.delete(old)
      add(collected, blocksOf(number, count), frame.slice(HEAD, HEAD + BLOCK))
      const have = collected.rows.length
      if (have < count) return { state: 'more', have, need: count }
      const message = messageOf(collected)
      const digest = sha256(message)
      if (id.every((byte, i) => byte === digest[i])) return { state: 'done', message, need: count }
      messages.delete(key)
      return { state: 'damaged' }
    },
  }
}

/** Takes out of a new sum what is known already; if anything is left it is a row of its own. */
function add({ rows }: Collected, blocks: bigint, sum: Uint8Array): void {
  for (const row of rows) {
    if (!(blocks & row.pivot)) continue
    blocks ^= row.blocks
    addTo(sum, row.sum)
  }
  // Its lowest bit.
  if (blocks !== 0n) rows.push({ blocks, pivot: blocks & -blocks, sum })
}

/** From as many rows as blocks: each later row has none of the pivots before it, so from the last one on each is freed of the later ones. */
function messageOf({ rows, count, length }: Collected): Uint8Array {
  const whole = new Uint8Array(count * BLOCK)
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i]!
    for (const later of rows.slice(i + 1)) {
      if (!(row.blocks & later.pivot)) continue
      row.blocks ^= later.blocks
      addTo(row.sum, later.sum)
    }
    whole.set(row.sum, (row.pivot.toString(2).length - 1) * BLOCK)
  }
  return whole.subarray(0, length)
}
