import fc from 'fast-check'
import jsQrModule from 'jsqr'
import { encode } from 'uqr'
import { expect, it } from 'vitest'
import { fromBase45, toBase45 } from '../../src/record-sharing/base45.ts'
import { collectFrames, type Frames, framesOf } from '../../src/record-sharing/frames.ts'
import { runs } from '../support/runs.ts'

const jsQr = ('default' in jsQrModule ? jsQrModule.default : jsQrModule) as typeof import('jsqr').default

/** As RFC 9285 has them in its section 4. */
it.each([
  ['AB', 'BB8'],
  ['Hello!!', '%69 VD92EX0'],
  ['base-45', 'UJCLQE7W581'],
  ['ietf!', 'QED8WEX0'],
])('%s in base 45 is %s', (plain, text) => {
  expect(toBase45(new TextEncoder().encode(plain))).toBe(text)
  expect(new TextDecoder().decode(fromBase45(text)!)).toBe(plain)
})

it.each(['GGW', '0', 'a00', 'ZZ', ':::'])('%s is no base 45', (text) => expect(fromBase45(text)).toBe(null))

const bytes = (length: number, seed = 1): Uint8Array => {
  let state = seed >>> 0
  return Uint8Array.from({ length }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state >>> 24
  })
}
const framed = (message: Uint8Array): Frames => {
  const frames = framesOf(message)
  if (!frames) throw new Error('too long')
  return frames
}

it('what was put in comes out, with frames lost, twice, and out of order', () => {
  let most = 0
  fc.assert(
    fc.property(
      fc.uint8Array({ minLength: 0, maxLength: 20_000 }),
      fc.integer({ min: 0, max: 1e6 }),
      fc.integer({ min: 0, max: 70 }),
      (message, seed, lost) => {
        const frames = framed(message)
        const reader = collectFrames()
        const chance = bytes(4000, seed)
        let read = 0
        // Whole rounds in which so many of a hundred are lost, each round in another order.
        for (let i = 0; i < 3000; i++) {
          const round = Math.floor(i / 7) * 7
          const shown = round + ((i * 3) % 7)
          if (chance[i]! % 100 < lost) continue
          read++
          const taken = reader.take(frames.text(shown))
          if (taken.state === 'done') {
            expect(taken.message).toEqual(message)
            most = Math.max(most, read - frames.count)
            return
          }
          expect(taken.state).toBe('more')
          // Read twice it tells nothing new and takes nothing away.
          if (i % 5 === 0) reader.take(frames.text(shown))
        }
        throw new Error(`${frames.count} blocks, ${read} frames read, and no message`)
      },
    ),
    { numRuns: runs(100) },
  )
  // Random sums: each frame over the count halves the chance that one more is needed.
  expect(most).toBeLessThan(20)
})

it('two messages shown at once are told apart, and what is damaged is told', () => {
  const [a, b] = [bytes(900, 3), bytes(900, 4)]
  const [ofA, ofB] = [framed(a), framed(b)]
  const reader = collectFrames()
  expect(reader.take('https://example.test/')).toEqual({ state: 'other' })
  expect(reader.take(`${ofA.text(0).slice(0, -3)}000`)).toEqual({ state: 'damaged' })
  expect(reader.take('LL1:')).toEqual({ state: 'damaged' })
  expect(reader.take(ofA.text(0))).toEqual({ state: 'more', have: 1, need: 3 })
  expect(reader.take(ofB.text(0))).toEqual({ state: 'more', have: 1, need: 3 })
  reader.take(ofA.text(1))
  reader.take(ofB.text(1))
  expect(reader.take(ofA.text(2))).toEqual({ state: 'done', message: a, need: 3 })
  expect(reader.take(ofB.text(2))).toEqual({ state: 'done', message: b, need: 3 })
})

it('any text at all is only told', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      expect(collectFrames().take(text).state).toMatch(/other|damaged/)
      expect(collectFrames().take(`LL1:${text}`).state).toBe('damaged')
    }),
    { numRuns: runs(200) },
  )
})

it('a message that would take minutes to show is not begun', () => {
  expect(framesOf(bytes(320 * 600))).not.toBe(null)
  expect(framesOf(bytes(320 * 600 + 1))).toBe(null)
})

it('a frame is a square code that reads back, 73 squares wide with its border', () => {
  const text = framed(bytes(5000)).text(40)
  const { data, size } = encode(text, { ecc: 'L', border: 4 })
  expect(size).toBe(73)
  const SQUARE = 5
  const width = size * SQUARE
  const pixels = new Uint8ClampedArray(width * width * 4)
  for (let y = 0; y < width; y++)
    for (let x = 0; x < width; x++)
      pixels.fill(
        data[Math.floor(y / SQUARE)]![Math.floor(x / SQUARE)] ? 0 : 255,
        (y * width + x) * 4,
        (y * width + x) * 4 + 3,
      )
  for (let i = 3; i < pixels.length; i += 4) pixels[i] = 255
  expect(jsQr(pixels, width, width)?.data).toBe(text)
})
