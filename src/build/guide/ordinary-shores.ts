/** An ordinary shore as it is, and what a builder's soundings tell of it. The ranges' why: `ordinary-docks.ts`. */
import type { Draw } from './draw.ts'

export interface Shore {
  /** Rise over run of the bank, landward. */
  readonly bank: number
  /** True depth, ripples included, m; negative on the bank. */
  depthAt(x: number): number
}

/** How far out its curve is told of, m: the longest dock. */
const FAR = 26

export function shoreOf(draw: Draw): Shore {
  const bank = 1 / draw.between(3, 8)
  const fall = 1 / draw.between(8, 25)
  // Slope at the edge is that much more (hollow) or less (round) than on the whole; as much the other way far out.
  const curve = draw.between(-0.25, 0.25)
  const ripples = [draw.between(2.5, 4), draw.between(5, 9)].map((length) => ({
    length,
    height: draw.between(0.005, 0.02),
    phase: draw.between(0, 2 * Math.PI),
  }))
  const rough = (x: number): number =>
    ripples.reduce((sum, r) => sum + r.height * Math.sin((2 * Math.PI * x) / r.length + r.phase), 0)
  return {
    bank,
    depthAt: (x) => (x < 0 ? bank * x : fall * x * (1 + curve * (1 - x / FAR)) + rough(x) * Math.min(1, x)),
  }
}

/** Most between two soundings under water, before they are set a little off, m: two sections. */
const APART = 4.5

/**
 * Soundings on the line of the dock, and where a head goes out to the side two more beside its far end, and the bank on either side; one on the bank, one at the edge.
 *
 * @param reach where the ramp comes down, how far out the dock goes, and how far to the side, m
 */
export function soundingsOf(
  draw: Draw,
  shore: Shore,
  { foot, end, side }: { readonly foot: number; readonly end: number; readonly side: number },
): { readonly soundings: readonly Record<string, number>[]; readonly soundingError: number } {
  const soundingError = draw.between(0.02, 0.03)
  const sound = (x: number): number => Math.round((shore.depthAt(x) + draw.normal(soundingError)) * 100) / 100
  const last = end + draw.between(0.3, 1.5)
  const least = Math.max(4, Math.ceil(last / APART))
  const count = Math.round(draw.between(least, side > 0 ? Math.max(6, least) : 8))
  const back = Math.min(-3, Math.floor(foot * 2) / 2)
  const line = Array.from({ length: count }, (_, i) => {
    const at = ((i + 1) * last) / count
    return Math.round((i + 1 < count ? at + draw.between(-0.2, 0.2) : at) * 10) / 10
  })
  const far = Math.round((end + 0.5) * 10) / 10
  const beside = side > 0 ? [side + 1, -side - 1] : []
  return {
    soundingError: Math.round(soundingError * 1000) / 1000,
    soundings: [
      // A dock is wider than a line: the bank on both sides of it, so that its first legs too are among what was measured.
      ...(side > 0 ? [1, -1] : [0]).map((offset) => ({ distance: back, offset, depth: sound(back) })),
      { distance: 0, depth: 0 },
      ...line.map((distance) => ({ distance, depth: sound(distance) })),
      ...beside.map((offset) => ({ distance: far, offset: Math.round(offset * 10) / 10, depth: sound(far) })),
    ],
  }
}
