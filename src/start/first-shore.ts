/**
 * Where somebody begins who has no dock yet: a gentle shore of which nothing is known. Whatever stands there for want of an answer is marked
 * as assumed, is told as such (`site-assumed`), and goes as soon as it is answered.
 */
import { straightFrames } from '../../rules/catalog/straight.ts'
import { type Catalog, type Design, EXACT, type Units } from '../../rules/index.ts'
import { quantize } from '../../rules/numbers.ts'

/** m. Asked in the figures that people have: whole feet, or meters. */
const ASKED = {
  imperial: { near: 10 * EXACT.foot, far: 30 * EXACT.foot, back: 10 * EXACT.foot },
  metric: { near: 3, far: 10, back: 3 },
} as const

/** Rise over run of a shore that nobody has measured. */
const GENTLE = 0.1
/** A dock to step onto from a boat and out of reach of small waves; and how far a small lake goes up and down. m. */
const ORDINARY = {
  imperial: { deck: 18 * EXACT.inch, level: 6 * EXACT.inch },
  metric: { deck: 0.45, level: 0.15 },
} as const

/** As it would be read: a design that is in hand has been through the border. */
export function firstShore(units: Units, { frames, survey }: Pick<Catalog, 'frames' | 'survey'>): Design {
  const { near, far, back } = ASKED[units]
  const deck = quantize(ORDINARY[units].deck)
  const level = quantize(ORDINARY[units].level)
  const taken = (distance: number) => ({
    distance: quantize(distance),
    offset: 0,
    depth: quantize(GENTLE * distance),
    assumed: true,
  })
  return {
    format: 'leadline/design',
    version: 1,
    name: '',
    site: {
      soundings: [taken(-back), { distance: 0, offset: 0, depth: 0 }, taken(near), taken(far)],
      soundingError: survey?.soundingError ?? 0.03,
      levels: { low: -level, high: level },
      bottom: 'sand',
      assumed: ['bottom', 'levels', 'wind'],
    },
    dock: {
      deckHeight: deck,
      frame: straightFrames({ frames })[0]!.code,
      sections: 2,
      ramp: true,
      start: null,
      head: { shape: 'straight', sections: 0 },
      extras: {},
    },
  }
}
