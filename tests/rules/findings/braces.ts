/** A case for each check of braces. */
import { alongCatalog } from '../../support/along-shop.ts'
import { type Cases, flat } from './support.ts'

/** A pair across, and its legs. */
const across = (pair: string): readonly string[] => [pair, `${pair}.left`, `${pair}.right`]

/**
 * The short brace for 4 ft frames rises sqrt(42^2 - 37.125^2) = 19.64 in = 0.4989 m over 0.942975 m between its holes.
 * With the deck at 0.45 m the underside is at 0.2722 m. On a level bed at -d it hangs midway: what is left over it is
 * ((0.2722 + d) - 0.4989) / 2 - 0.0254, at least 2 in = 0.0508; over the pad the same less 0.08255, at least 1 in = 0.0254.
 */
export const braces: Cases = {
  // A reserve of 0.8 m asks for 5 ft legs where there is too little room under the frame for any brace.
  'brace-does-not-fit': {
    raise: { site: flat(0.4), dock: { reserve: 0.8 } },
    neighbor: { site: flat(0.7) },
    // Legs 1.2192 - 2 x 0.087313 apart; (0.2722 + 0.4 - 0.49886) / 2 - 0.0254, over the pad 0.08255 less.
    tells: {
      parts: across('s2.start'),
      values: {
        pair: 's2.start',
        spacing: 1.044574,
        brace: ['brace-42'],
        bed: 0.06127,
        pad: -0.02128,
        frame: 0.06127,
      },
      where: null,
    },
  },
  // Over the bed (0.2722 + d - 0.4989) / 2 - 0.0254 < 0.1016 where d < 0.4807; the pads stand on firm bottom 0.3 m under it.
  'brace-near-bed': {
    raise: { site: flat(0.479, 0.3) },
    neighbor: { site: flat(0.482, 0.3) },
    // (0.2722 + 0.479 - 0.49886) / 2 - 0.0254
    tells: {
      parts: across('s2.start'),
      values: { pair: 's2.start', clear: 0.10077, least: 0.0762 },
      where: null,
    },
  },
  // Over the pad ((0.2722 + d) - 0.4989) / 2 - 0.0254 - 0.08255 < 0.0508 where d < 0.5442; fits from d = 0.4934.
  'brace-near-pad': {
    raise: { site: flat(0.54), dock: { reserve: 0.4 } },
    neighbor: { site: flat(0.55), dock: { reserve: 0.4 } },
    // (0.2722 + 0.54 - 0.49886) / 2 - 0.0254 - 0.08255
    tells: {
      parts: across('s2.start'),
      values: { pair: 's2.start', clear: 0.04872, least: 0.0254 },
      where: null,
    },
  },
  // Over it ((0.2722 + d) - 0.4989) / 2 - 0.0254 < 0.0762 where the higher bed d < 0.4299: on a slope, where the pad stands deeper.
  'brace-near-frame': {
    raise: { site: { ...flat(0.62), crossSlope: 0.38 } },
    neighbor: { site: flat(0.62), dock: { reserve: 0.4 } },
    // The higher bed 0.62 - 0.38 x 0.522287 = 0.42153 m down: (0.2722 + 0.42153 - 0.49886) / 2 - 0.0254
    tells: {
      parts: across('s2.start'),
      values: { pair: 's2.start', clear: 0.072035, least: 0.0508 },
      where: null,
    },
  },
  'brace-left-out': {
    raise: { dock: { bracing: { none: ['s3.end'] } } },
    neighbor: { dock: { bracing: { none: ['s2.end'] } } },
    tells: {
      parts: across('s3.end'),
      values: { pair: 's3.end' },
      where: { '/dock/bracing/none/0': undefined },
    },
    helped: true,
  },
  'brace-along-none': {
    raise: { dock: { bracing: { along: 'last' } } },
    neighbor: {},
    tells: { parts: [], values: { why: 'no-brace' }, where: null },
  },
  // The longest rises sqrt(2.5908^2 - (2.4638 - 0.1016)^2) = 1.064075 m, and the shortest that spans it, 96 in, 0.604819: with half a clamp
  // at each end, 2 in under the frame and 1 in over the pad (0.08255) that asks for 0.814369 m of the 0.6722 m between underside and bed.
  'brace-along-does-not-fit': {
    raise: { site: flat(0.4), dock: { bracing: { along: 'last' } }, shop: alongCatalog },
    neighbor: { site: flat(0.4) },
    // Midway at -0.0639: holes at -0.5959375 and 0.4681375; 0.0254 beyond each of them the bed at -0.4, the pad 0.08255 over it, the frame at 0.2722.
    tells: {
      parts: [...['s5.left', 's4.end.left', 's5.end.left'], ...['s5.right', 's4.end.right', 's5.end.right']],
      values: {
        pairs: ['s5.left', 's5.right'],
        brace: ['along-102'],
        bed: -0.221338,
        pad: -0.303888,
        frame: -0.221338,
      },
      where: null,
    },
  },
}
