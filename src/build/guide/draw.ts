/** Draws by seed, the same on every machine. */

export interface Draw {
  between(from: number, to: number): number
  /** The same to a cm, and to a tenth. */
  cm(from: number, to: number): number
  tenth(from: number, to: number): number
  /** Of a normal distribution about 0. */
  normal(deviation: number): number
  chance(share: number): boolean
  of<T>(list: readonly T[]): T
  weighed<T>(list: readonly (readonly [T, number])[]): T
}

/** mulberry32: 32 bits of state, plenty for some thousand docks. */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

export function drawing(seed: number): Draw {
  const next = mulberry32(seed)
  const between = (from: number, to: number): number => from + (to - from) * next()
  const of = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!
  return {
    between,
    cm: (from, to) => Math.round(between(Math.ceil(from * 100 - 1e-9), to * 100)) / 100,
    tenth: (from, to) => Math.round(between(from, to) * 10) / 10,
    // Box and Muller 1958.
    normal: (deviation) => deviation * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    chance: (share) => next() < share,
    of,
    weighed: (list) => {
      let left = next() * list.reduce((sum, [, weight]) => sum + weight, 0)
      for (const [item, weight] of list) {
        left -= weight
        if (left < 0) return item
      }
      return list.at(-1)![0]
    },
  }
}
