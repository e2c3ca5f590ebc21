/** A case for each check of soundings. */
import { type Cases, calmSite } from './support.ts'

export const soundings: Cases = {
  // 3 sqrt(2) x 0.03 m = 0.1273 m more than soundings of 0.03 m differ by.
  'soundings-differ': {
    raise: { site: { soundings: [...calmSite.soundings, { distance: 8.05, offset: 0.06, depth: 1.035 }] } },
    neighbor: { site: { soundings: [...calmSite.soundings, { distance: 8.05, offset: 0.06, depth: 1.02 }] } },
    tells: {
      parts: [],
      values: { x: 8, y: 0, depth: 0.9, x2: 8.05, y2: 0.06, depth2: 1.035 },
      where: null,
    },
  },
  // Sand stands at 0.62: over 0.5 m 0.31 m, and 0.1273 m for the soundings.
  'soundings-cliff': {
    raise: { site: { soundings: [...calmSite.soundings, { distance: 8, offset: 0.5, depth: 1.345 }] } },
    neighbor: { site: { soundings: [...calmSite.soundings, { distance: 8, offset: 0.5, depth: 1.33 }] } },
    // (1.345 - 0.9) / 0.5
    tells: {
      parts: [],
      values: { x: 8, y: 0, x2: 8, y2: 0.5, slope: 0.89, most: 0.62 },
      where: null,
    },
  },
  // Deck at 0.45 m.
  'soundings-over-deck': {
    raise: { site: { soundings: [...calmSite.soundings, { distance: 6, offset: 2, depth: -0.46 }] } },
    neighbor: { site: { soundings: [...calmSite.soundings, { distance: 6, offset: 2, depth: -0.45 }] } },
    tells: {
      parts: [],
      values: { count: 1, x: 6, y: 2, height: 0.46, deck: 0.45 },
      where: null,
    },
  },
  'soundings-few': {
    raise: {
      site: {
        soundings: [
          { distance: -3, depth: -0.9 },
          { distance: 0, depth: 0 },
          { distance: 6, depth: 0.7 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
    neighbor: {},
    tells: { parts: [], values: { wet: 2, least: 3 }, where: null },
  },
  // 20 ft = 6.096 m.
  'soundings-far-apart': {
    raise: {
      site: {
        soundings: [
          { distance: -3, depth: -0.9 },
          { distance: 0, depth: 0 },
          { distance: 3, depth: 0.4 },
          { distance: 9.2, depth: 1 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
    neighbor: {
      site: {
        soundings: [
          { distance: -3, depth: -0.9 },
          { distance: 0, depth: 0 },
          { distance: 3, depth: 0.4 },
          { distance: 9.09, depth: 1 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
    tells: { parts: [], values: { from: 3, to: 9.2, gap: 6.2, most: 6.096 }, where: null },
  },
  // The last legs stand at 10.79 m with five sections, 13.26 m with six.
  'soundings-passed': { raise: { dock: { sections: 6 } }, neighbor: { dock: { sections: 5 } } },
  // Legs of a head of one section stand at 0.6096 + 0.0254 + 2.4384 - 0.0873 = 2.986 m, of two at 5.45 m; 10 ft = 3.048 m.
  'soundings-aside': {
    raise: { dock: { head: { shape: 'left', sections: 2 } } },
    neighbor: { dock: { head: { shape: 'left', sections: 1 } } },
    // 0.6096 + 0.0254 + 2 x 2.4384 + 0.0254 - 0.087313
    tells: {
      parts: ['h2.end.left', 'h2.end.right'],
      values: { off: 5.449887, most: 3.048 },
      where: null,
    },
  },
  'bank-not-sounded': {
    raise: {
      site: {
        soundings: calmSite.soundings.map((s) => (s.distance < 0 ? { ...s, distance: -1, depth: -0.3 } : s)),
      },
    },
    neighbor: {},
  },
  'site-assumed': {
    raise: {
      site: {
        soundings: calmSite.soundings.map((s) =>
          s.distance === -3 || s.distance === 8 ? { ...s, assumed: true } : s,
        ),
        assumed: ['levels'],
      },
    },
    neighbor: { site: { soundings: calmSite.soundings.map((s) => ({ ...s, assumed: false })), assumed: [] } },
    tells: { parts: [], values: { keys: ['shore', 'levels'] }, where: null },
  },
}
