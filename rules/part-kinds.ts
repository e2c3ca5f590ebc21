/**
 * All that is true of a kind of part wherever it lies, in one table. A new kind is a row here; `PartKind`, what a catalog's file may
 * hold, the drawings, the scene and the papers follow from it, and the compiler names what is still missing (its solid, its words).
 */

/** Which list of a catalog names it. */
export type CatalogList =
  | 'frames'
  | 'legs'
  | 'pads'
  | 'braces'
  | 'hardware'
  | 'caps'
  | 'hooks'
  | 'hinge'
  | 'clamp'
  | 'panels'
  | 'clip'
  | 'posts'
  | 'extras'

/**
 * The frame of reference that a placement turns and moves, z up in all: where its origin is, and its own x axis.
 * What goes on at an extra's place (`edge`, `edge-at-rail`, `post-at-bed`, `post-at-rail`) is put there by it (`rules/parts/extras.ts`).
 */
export type PartFrame =
  /** Middle of the start edge, on the deck surface; start to end, y to its left. */
  | 'start-edge'
  /** Bottom of the tube, on its axis; as the section. */
  | 'tube-bottom'
  /** Middle of the underside, below the leg's axis; toward the upturned edge. */
  | 'pad-underside'
  /** Top of the leg; as the section. */
  | 'leg-top'
  /** Middle of the sleeve's mouth, at frame top; as the section. */
  | 'sleeve-mouth'
  /** Where it presses the tube, on the leg's axis; from the axis toward the head. */
  | 'leg-axis'
  /** Low hole; toward the high hole, y square to the plane of the pair. */
  | 'low-hole'
  /** Leg's axis at the height of the hole; toward the hole. */
  | 'leg-at-hole'
  /** The hole; square to the plane of the pair, toward the head. */
  | 'hole'
  /** On the carrying edge, at frame top; outward from the carrying section. */
  | 'carrying-edge'
  /** On the edge that it goes through, mid depth of the bracket; from the edge into its section. */
  | 'bracket-middle'
  /** On the hinge axis; lakeward, y along the axis. Bolts: at their place along it. */
  | 'hinge-axis'
  /** Middle, on the deck surface; toward its outer (notched) end. */
  | 'deck-middle'
  /** On the panel's side edge, at frame top; along the panel's own x, y outward. */
  | 'panel-edge'
  /** On the edge, on the deck surface; outward. Of a tie: middle of the gap, at frame top; outward from the section that stands first in `sections`. */
  | 'edge'
  /** On the edge, several spread over the frame's depth in each piece of their extra that hangs there (`edge`); outward. */
  | 'edge-at-rail'
  /** On the post's axis, at the bed; outward. */
  | 'post-at-bed'
  /** On the post's axis, several spread over the frame's depth; toward the dock. */
  | 'post-at-rail'

/** Groups of a quote that hold parts. */
export type PartGroup = 'frames' | 'legs' | 'bracing' | 'joints' | 'decking' | 'hardware' | 'options'

/** Layers of the drawings that hold parts. */
export type PartLayer = 'FRAME' | 'DECK' | 'LEG' | 'PAD' | 'BRACE' | 'JOINT' | 'EXTRA'

/** Each piece of stock by itself, or one outline of the whole. */
type Drawn = 'pieces' | 'outline'

interface PartFacts {
  readonly list: CatalogList
  readonly frame: PartFrame
  readonly layer: PartLayer
  readonly group: PartGroup
  /** Where the catalog's `packing` does not say. What is small goes into the bag that the catalog names with it, else into a carton. */
  readonly packing: 'small' | 'bundle' | 'loose'
  /** Counts toward a section's weight as lifted. False for decking, parts fitted last, parts locked in the water, and extras. */
  readonly carried: boolean
  /** In the plan, over the deck or hidden under it; null where it is not drawn. */
  readonly plan: readonly ['top' | 'under', Drawn] | null
  /** In the view from the side. */
  readonly side: Drawn | null
  /** In the section strip, of what is drawn there as one line: along its own y, or down its own z. */
  readonly strip: 'y' | 'z' | null
  /** Large enough for its own shadow to be seen. */
  readonly shadow: boolean
  /** Large enough to be missed where the dock is shown swaying. */
  readonly sways: boolean
  /** Its clearances are told: to other parts, and to the ground where it does not stand in it or on it. */
  readonly measured: 'to-parts' | 'to-all' | null
}

/** A bolt: into a bag, drawn in details alone. */
const BOLT = {
  group: 'hardware',
  packing: 'small',
  carried: true,
  plan: null,
  side: null,
  strip: null,
  shadow: false,
  sways: false,
  measured: null,
} as const

/** What customers add. */
const EXTRA = {
  layer: 'EXTRA',
  group: 'options',
  packing: 'small',
  carried: false,
  strip: null,
  shadow: false,
  sways: true,
  measured: null,
} as const

/** Small parts that are drawn in no view of the whole dock. */
const FITTING = {
  packing: 'small',
  plan: null,
  side: null,
  strip: null,
  shadow: false,
  sways: true,
  measured: null,
} as const

/** In the order of the kinds in a catalog's schema. */
export const PART_KINDS = {
  frame: {
    list: 'frames',
    frame: 'start-edge',
    layer: 'FRAME',
    group: 'frames',
    packing: 'loose',
    carried: true,
    plan: ['top', 'pieces'],
    side: 'pieces',
    strip: null,
    shadow: true,
    sways: true,
    measured: 'to-all',
  },
  leg: {
    list: 'legs',
    frame: 'tube-bottom',
    layer: 'LEG',
    group: 'legs',
    packing: 'bundle',
    carried: true,
    plan: ['top', 'pieces'],
    side: 'pieces',
    strip: null,
    shadow: true,
    sways: true,
    measured: 'to-parts',
  },
  'foot-pad': {
    list: 'pads',
    frame: 'pad-underside',
    layer: 'PAD',
    group: 'legs',
    packing: 'small',
    carried: true,
    plan: ['under', 'outline'],
    side: 'outline',
    strip: null,
    shadow: true,
    sways: true,
    measured: 'to-parts',
  },
  'pad-bolt': { ...BOLT, list: 'hardware', frame: 'leg-axis', layer: 'PAD' },
  'leg-cap': {
    ...FITTING,
    list: 'caps',
    frame: 'leg-top',
    layer: 'LEG',
    group: 'decking',
    carried: false,
    plan: ['top', 'pieces'],
    side: 'pieces',
  },
  'sleeve-cap': {
    ...FITTING,
    list: 'caps',
    frame: 'sleeve-mouth',
    layer: 'FRAME',
    group: 'decking',
    carried: false,
  },
  'set-bolt': { ...BOLT, list: 'hardware', frame: 'leg-axis', layer: 'LEG' },
  'hook-bracket': {
    ...FITTING,
    list: 'hooks',
    frame: 'carrying-edge',
    layer: 'JOINT',
    group: 'joints',
    carried: true,
    plan: ['under', 'outline'],
  },
  'hook-bolt': { ...BOLT, list: 'hardware', frame: 'bracket-middle', layer: 'JOINT' },
  'hinge-bar': {
    list: 'hinge',
    frame: 'hinge-axis',
    layer: 'JOINT',
    group: 'joints',
    packing: 'bundle',
    carried: true,
    plan: ['top', 'pieces'],
    side: 'pieces',
    strip: null,
    shadow: false,
    sways: true,
    measured: null,
  },
  'bar-bolt': { ...BOLT, list: 'hardware', frame: 'hinge-axis', layer: 'JOINT' },
  'hinge-pin': {
    ...FITTING,
    list: 'hinge',
    frame: 'hinge-axis',
    layer: 'JOINT',
    group: 'joints',
    carried: true,
    sways: false,
  },
  'pin-bolt': { ...BOLT, list: 'hardware', frame: 'hinge-axis', layer: 'JOINT' },
  brace: {
    list: 'braces',
    frame: 'low-hole',
    layer: 'BRACE',
    group: 'bracing',
    packing: 'bundle',
    carried: true,
    plan: ['under', 'pieces'],
    side: 'pieces',
    strip: null,
    shadow: true,
    sways: true,
    measured: 'to-all',
  },
  'brace-clamp': {
    ...FITTING,
    list: 'clamp',
    frame: 'leg-at-hole',
    layer: 'BRACE',
    group: 'bracing',
    carried: true,
    measured: 'to-all',
  },
  'brace-bolt': { ...BOLT, list: 'hardware', frame: 'hole', layer: 'BRACE' },
  'deck-panel': {
    list: 'panels',
    frame: 'deck-middle',
    layer: 'DECK',
    group: 'decking',
    packing: 'bundle',
    carried: false,
    plan: ['top', 'outline'],
    side: 'pieces',
    strip: null,
    shadow: true,
    sways: true,
    measured: 'to-parts',
  },
  'deck-clip': {
    ...FITTING,
    list: 'clip',
    frame: 'panel-edge',
    layer: 'DECK',
    group: 'decking',
    carried: false,
    sways: false,
  },
  bumper: {
    ...EXTRA,
    list: 'extras',
    frame: 'edge',
    plan: ['top', 'outline'],
    side: 'outline',
    strip: 'y',
  },
  'anchor-post': {
    ...EXTRA,
    list: 'posts',
    frame: 'tube-bottom',
    packing: 'bundle',
    plan: ['top', 'pieces'],
    side: 'pieces',
    shadow: true,
    measured: 'to-parts',
  },
  auger: { ...EXTRA, list: 'extras', frame: 'post-at-bed', plan: ['under', 'outline'], side: 'outline' },
  'post-clamp': { ...EXTRA, list: 'extras', frame: 'post-at-rail', plan: null, side: null },
  'fender-board': {
    ...EXTRA,
    list: 'extras',
    frame: 'edge',
    plan: ['top', 'outline'],
    side: 'outline',
    strip: 'z',
    shadow: true,
    measured: 'to-all',
  },
  'fender-bolt': { ...EXTRA, list: 'extras', frame: 'edge-at-rail', plan: null, side: null, sways: false },
  accessory: {
    ...EXTRA,
    list: 'extras',
    frame: 'edge',
    plan: ['top', 'outline'],
    side: 'outline',
    strip: 'y',
  },
} as const satisfies Readonly<Record<string, PartFacts>>

/** Which family a part is of. */
export type PartKind = keyof typeof PART_KINDS
export const KINDS = Object.keys(PART_KINDS) as readonly PartKind[]
export const factsOf = (kind: PartKind): PartFacts => PART_KINDS[kind]

/** Kinds of which a fact of the table has a value, told apart by type too. */
export type KindsWith<F extends keyof PartFacts, V extends PartFacts[F]> = {
  [K in PartKind]: (typeof PART_KINDS)[K][F] extends V ? K : never
}[PartKind]
export const kindsWith = <F extends keyof PartFacts, const V extends PartFacts[F]>(
  fact: F,
  value: V,
): readonly KindsWith<F, V>[] =>
  KINDS.filter((kind): kind is KindsWith<F, V> => factsOf(kind)[fact] === value)
