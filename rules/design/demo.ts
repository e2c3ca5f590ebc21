import type { Design } from './schema.ts'

/** The demo: an invented cove with a straight five-section dock. */
export const demoDesign: Design = {
  format: 'leadline/design',
  version: 1,
  name: 'Quillet Cove',
  site: {
    soundings: [
      { distance: -3, offset: 0, depth: -0.9 },
      { distance: 0, offset: 0, depth: 0 },
      { distance: 4, offset: 0, depth: 0.5 },
      { distance: 8, offset: 0, depth: 0.9 },
      { distance: 12, offset: 0, depth: 1.4 },
    ],
    soundingError: 0.03,
    levels: { low: -0.3, high: 0.25 },
    bottom: 'sand',
    wind: { speed: 10, fetch: 400 },
  },
  dock: {
    deckHeight: 0.45,
    frame: '4x8',
    sections: 5,
    ramp: true,
    start: null,
    head: { shape: 'straight', sections: 0 },
    extras: { bumper: 4, 'anchor-post': 2 },
  },
}
