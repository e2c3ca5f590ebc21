/** The designs of the docks that are worked by hand, and of some that the laws are tried on. Plain inputs, as a file would hold them; parse them before use. */

/** The demo, as the contract prints it. */
export const contractDemo = {
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

/**
 * The trade's worked check: a ramp and three sections, 29 in deep with the deck 21 in up. The bank rises 0.4 m in 1 m, the bed
 * levels off at 29 in = 0.7366 m from 6 m out. Soundings on purpose in no order.
 */
export const workedStraight = {
  format: 'leadline/design',
  version: 1,
  name: 'Worked straight',
  site: {
    soundings: [
      { distance: 6, offset: 0, depth: 0.7366 },
      { distance: 0, offset: 0, depth: 0 },
      { distance: 2, offset: 0, depth: 0.35 },
      { distance: -2, offset: 0, depth: -0.8 },
      { distance: 12, offset: 0, depth: 0.7366 },
      { distance: 4, offset: 0, depth: 0.6 },
    ],
    soundingError: 0.03,
    levels: { low: -0.2, high: 0.15 },
    bottom: 'sand',
  },
  dock: { deckHeight: 0.5334, frame: '4x8', sections: 4, ramp: true },
}

/**
 * An L, two sections to the right of a run of four without a ramp, on 5 ft frames. The bed falls 0.03 m in 1 m to the left of the
 * line of soundings, which lies 0.5 m left of the dock; no sounding is on the shore, one has firm bottom under soft, two say what
 * the bottom is. σ = 0.08 m and 0.02 m more in reserve, so the least reserve never decides.
 */
export const workedL = {
  format: 'leadline/design',
  version: 1,
  name: 'Worked L',
  site: {
    soundings: [
      { distance: 2, offset: 0.5, depth: 0.5 },
      { distance: 5, offset: 0.5, depth: 0.9, bottom: 'sand' },
      { distance: 8, offset: 0.5, depth: 1.3, firm: 1.45, bottom: 'gravel' },
      { distance: 11, offset: 0.5, depth: 1.6 },
      { distance: 14, offset: 0.5, depth: 1.7 },
    ],
    soundingError: 0.08,
    levels: { low: -0.3, high: 0.2 },
    bottom: 'rock',
    crossSlope: 0.03,
  },
  dock: {
    deckHeight: 0.5,
    frame: '5x8',
    sections: 4,
    ramp: false,
    head: { shape: 'right', sections: 2 },
    reserve: 0.025,
    extras: { cleat: 2, ladder: 1 },
  },
}

/** A gentle shore with a run of five and two more beside its end: two carrying joints, and ties. */
export const wide = {
  ...workedStraight,
  name: 'Wide',
  dock: { deckHeight: 0.6, frame: 'R125', sections: 5, ramp: true, head: { shape: 'wide', sections: 2 } },
}

/** Soundings off one line, so that the bed is a surface. */
export const scattered = {
  ...workedStraight,
  name: 'Scattered',
  site: {
    ...workedStraight.site,
    soundings: [
      { distance: -4, offset: 3, depth: -1.4 },
      { distance: -4, offset: -3.5, depth: -1.2 },
      { distance: 0, offset: 0.4, depth: 0 },
      { distance: 3, offset: 4, depth: 0.5 },
      { distance: 3.5, offset: -4, depth: 0.4 },
      { distance: 8, offset: 0.5, depth: 0.9 },
      { distance: 14, offset: 5, depth: 1.5 },
      { distance: 15, offset: -5, depth: 1.4 },
    ],
  },
}

/** Over a level bed 29 in deep with the deck 21 in up, on 4 x 8 ft frames from 8 m on; with what a test has otherwise of the dock. */
export const overLevelBed = (dock: object) => ({
  format: 'leadline/design',
  version: 1,
  name: 'Level',
  site: {
    soundings: [
      { distance: 0, depth: 0 },
      { distance: 6, depth: 0.7366 },
      { distance: 30, depth: 0.7366 },
    ],
    soundingError: 0.03,
    levels: { low: -0.2, high: 0.15 },
    bottom: 'sand',
  },
  dock: { deckHeight: 0.5334, frame: '4x8', start: 8, ...dock },
})
