/**
 * The Catalog: one shop's parts, thresholds, counts, masses and prices, as data.
 *
 * One source for the types below, the check at the border and `public/schema/catalog.json`. SI throughout (m, kg, kg/m3);
 * prices are integers in the currency's minor unit. Codes are opaque strings of the shop.
 *
 * Masses: an item's mass is computed from its stock shapes and densities unless the shop states `mass`. Small bought or cast
 * parts (bolts, caps, clamps) state theirs.
 */
import * as v from 'valibot'
import { MOST_ALLOWED } from '../design/schema.ts'
import { KINDS, kindsWith } from '../part-kinds.ts'
import { PlanSchema } from '../plan/schema.ts'

const length = (max: number, description: string) =>
  v.pipe(v.number(), v.minValue(0.0001), v.maxValue(max), v.description(`${description}, m`))
const measure = (min: number, max: number, description: string) =>
  v.pipe(v.number(), v.minValue(min), v.maxValue(max), v.description(description))
const count = (max: number, description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(max), v.description(description))

const Code = v.pipe(v.string(), v.minLength(1), v.maxLength(60), v.description("The shop's code, opaque"))
const Name = v.pipe(v.string(), v.minLength(1), v.maxLength(120), v.description('Name in plain words'))
const Price = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(0),
  v.maxValue(100_000_000),
  v.description('Unit price in minor units of the currency (cents)'),
)
const Mass = v.pipe(
  v.number(),
  v.minValue(0),
  v.maxValue(2000),
  v.description('Stated unit mass, kg; where absent it is computed from the shapes'),
)
const Bag = v.pipe(v.string(), v.maxLength(20), v.description('Bag or bundle that it is packed in'))

const hidden = v.optional(
  v.pipe(v.boolean(), v.description('Not offered on the page; a dock that has it keeps it')),
)

/** Fields that everything with a row in the parts list has. */
const item = { code: Code, name: Name, price: Price, mass: v.optional(Mass), bag: v.optional(Bag) }
/** An item whose mass the shop must state, because no shape gives it. */
const statedItem = { ...item, mass: Mass }

const pressure = (min: number, max: number, description: string) => measure(min, max, `${description}, Pa`)

const elastic = {
  E: pressure(1e9, 1e12, 'Modulus of elasticity (in compression, where a standard tells the two apart)'),
  G: pressure(1e8, 5e11, 'Shear modulus'),
  yield: pressure(1e6, 5e9, 'Least tensile yield strength'),
  ultimate: pressure(1e6, 5e9, 'Least tensile ultimate strength'),
}

/** Strength of a material. Minimum values of a product standard, not typical ones. Where absent no check of strength is made. */
export const StrengthSchema = v.variant('family', [
  v.looseObject({
    family: v.literal('aluminum'),
    temper: v.pipe(
      v.picklist(['T5-T9', 'other']),
      v.description('T5-T9: artificially aged; other: O, H, T1 to T4'),
    ),
    ...elastic,
    compressive: v.optional(
      pressure(1e6, 5e9, 'Least compressive yield strength; where absent that in tension'),
    ),
    notch: v.optional(measure(1, 2, 'Tension coefficient for notches, at least 1; where absent 1')),
    welded: v.optional(
      v.pipe(
        v.looseObject({
          yield: pressure(1e6, 5e9, 'Yield strength'),
          ultimate: pressure(1e6, 5e9, 'Ultimate strength'),
        }),
        v.description('Beside a weld, where heat has softened it'),
      ),
    ),
  }),
  v.looseObject({ family: v.literal('steel'), ...elastic }),
])

const depth = measure(0, 1, 'm')
const byBottom = v.looseObject({ rock: depth, gravel: depth, sand: depth, clay: depth, muck: depth })

/** Cross-section of bar stock. `width` is across the part, `height` its other side (vertical where it lies level). */
export const StockSchema = v.variant('shape', [
  v.looseObject({
    shape: v.literal('round-tube'),
    diameter: length(1, 'Outside diameter'),
    wall: length(0.1, 'Wall'),
    material: Code,
  }),
  v.looseObject({
    shape: v.literal('rect-tube'),
    width: length(1, 'Outside width'),
    height: length(1, 'Outside height'),
    wall: length(0.1, 'Wall'),
    material: Code,
  }),
  v.looseObject({ shape: v.literal('round-bar'), diameter: length(1, 'Diameter'), material: Code }),
  v.looseObject({
    shape: v.literal('flat'),
    width: length(3, 'Width'),
    height: length(1, 'Height or thickness'),
    material: Code,
  }),
])

const FrameSchema = v.looseObject({
  ...item,
  hidden,
  length: length(20, 'Length over the frame, start to end'),
  width: length(10, 'Width over the frame, left to right'),
  turn: v.optional(
    measure(
      5,
      75,
      'Of a corner piece, which turns the run: its end edge looks so many degrees to the left of where its start edge looks away from (hung by its end edge it turns to the right). Start and end edge are as wide as `width`, the left side is as long as `length`, the right side longer. Degrees',
    ),
  ),
  rail: v.pipe(Code, v.description('Stock of the two side rails, full length')),
  ends: v.pipe(Code, v.description('Stock of the end and start rails, between the side rails')),
  cross: v.looseObject({
    stock: Code,
    count: count(40, 'Cross members between the side rails, evenly spaced, flush with the underside'),
  }),
  panel: v.pipe(Code, v.description('Code of its deck panel')),
  panels: count(40, 'Deck panels in a row along the frame; one on a corner piece'),
})

const SleeveSchema = v.looseObject({
  stock: v.pipe(Code, v.description('Stock that the leg slides in')),
  length: length(1, 'Length, down from the frame top'),
  along: length(1, 'Leg axis from the start or end edge'),
  across: length(2, 'Leg axis from the left or right edge'),
  bolts: v.pipe(
    v.array(length(1, 'Set bolt below the frame top')),
    v.minLength(1),
    v.maxLength(8),
    v.description('Set bolts of a used sleeve, from the upper down'),
  ),
  stiffness: v.optional(
    measure(
      100,
      1e7,
      'As measured by the shop: moment that turns a leg in its sleeve by one radian, set bolts tight, N·m/rad; where absent it is computed from the shapes',
    ),
  ),
  slack: v.optional(
    measure(
      0,
      0.1,
      'As measured by the shop: lean that a leg can take in its sleeve before it resists, set bolts tight, rad',
    ),
  ),
  slip: v.optional(
    measure(
      1,
      1e6,
      'As measured by the shop: push along a leg at which it slides in its sleeve, all set bolts tight, N',
    ),
  ),
  screw: v.optional(
    length(
      0.05,
      'Of a leveling screw at each leg: how far one turn lifts the deck; where absent there is none',
    ),
  ),
})

const LegSchema = v.looseObject({ ...item, length: length(20, 'Length'), stock: Code })

const BraceSchema = v.looseObject({
  ...item,
  stock: Code,
  holes: length(20, 'Hole to hole'),
  end: length(0.5, 'Tube beyond each hole'),
  legs: v.pipe(
    v.looseObject({ from: length(20, 'Shortest'), to: length(20, 'Longest') }),
    v.description('Lengths of the longer leg of a pair that it is meant for'),
  ),
  spacing: v.pipe(
    v.looseObject({ from: length(20, 'Least'), to: length(20, 'Most') }),
    v.description('Spacings of leg axes that it is meant for'),
  ),
  along: v.optional(
    v.pipe(
      v.boolean(),
      v.description(
        'Meant for lengthwise, between two legs one behind the other at a side of a section; not across',
      ),
    ),
  ),
})

const PadSchema = v.looseObject({
  ...item,
  sole: length(0.2, 'Underside to where the tube rests'),
  plate: v.looseObject({ length: length(1, 'Along the dock'), width: length(1, 'Across'), material: Code }),
  lip: length(0.3, 'Height of the upturned edge over the underside'),
  socket: v.looseObject({ stock: Code, height: length(0.5, 'Height of the socket over the sole') }),
  mud: v.pipe(v.boolean(), v.description('Meant for muck')),
  sinkage: v.pipe(byBottom, v.description('Expected sinkage by bottom, m')),
})

const BoltSchema = v.looseObject({
  ...statedItem,
  kind: v.picklist(kindsWith('list', 'hardware')),
  diameter: length(0.1, 'Nominal diameter'),
  length: length(0.5, 'Length under the head'),
  wrench: v.pipe(v.string(), v.maxLength(40), v.description('Wrench size, as stamped on it')),
  ultimate: v.optional(pressure(1e7, 5e9, 'Least tensile strength of its grade')),
  turns: v.pipe(
    v.array(
      v.looseObject({
        at: v.pipe(v.string(), v.maxLength(40), v.description('Where: sleeve, carrier side, hung side …')),
        from: measure(0, 10, 'Least turns past finger-tight'),
        to: measure(0, 10, 'Most turns past finger-tight'),
      }),
    ),
    v.maxLength(6),
  ),
})

const PanelSchema = v.looseObject({
  ...item,
  length: length(20, 'Along the frame'),
  width: length(10, 'Across'),
  turn: v.optional(measure(5, 75, 'Of the panel of a corner piece: that of its frame, degrees')),
  plank: v.looseObject({
    stock: Code,
    count: count(200, 'Planks, across the dock, evenly spaced; of a corner piece along its sides'),
  }),
  batten: v.looseObject({
    stock: Code,
    count: count(20, 'Battens under the planks'),
    length: length(20, 'Length'),
  }),
  notch: v.optional(
    v.looseObject({
      along: length(2, 'From the outer end'),
      across: length(2, 'From each side'),
    }),
  ),
})

const DeckingSchema = v.looseObject({
  code: v.pipe(Code, v.description('What a Design asks for it by, as its dock.finish')),
  name: v.pipe(Name, v.description('Material and color in plain words')),
  hidden,
  color: v.pipe(
    v.string(),
    v.regex(/^#[0-9a-fA-F]{6}$/, 'a color such as #8a8f91'),
    v.description('Color of its planks, sRGB'),
  ),
  panels: v.pipe(
    v.record(Code, Code),
    v.description(
      'By the code of a deck panel that a frame names, the one of decking.panels that is laid in its place; of the same size. None: what the frames carry anyway',
    ),
  ),
})

const Size = v.pipe(
  v.tuple([length(5, 'Along'), length(5, 'Across'), length(5, 'Up')]),
  v.description('Overall size along, across and up, m'),
)
const small = { ...statedItem, size: Size }

const ExtraPartSchema = v.looseObject({
  ...small,
  kind: v.picklist(kindsWith('list', 'extras')),
  shape: v.optional(
    v.pipe(
      v.picklist(['box', 'plate', 'tube']),
      v.description(
        'What an accessory is drawn as: a box on the deck, a plate down the edge, an upright tube on the deck; where absent what its size looks like',
      ),
    ),
  ),
  count: count(20, 'How many to one extra'),
  stiffness: v.optional(
    measure(
      100,
      1e8,
      'Of a bumper: force that squeezes it, over how far it gives, N/m; where absent it is counted as hard',
    ),
  ),
})

/** A post pulled sideways with a rope and a scale. */
const PullSchema = v.looseObject({
  force: measure(0, 1e5, 'Most that it held without giving way, N'),
  height: measure(0, 10, 'Rope over the bed, m'),
  embedment: v.optional(measure(0.01, 5, 'How deep that post stood in the bottom, m')),
  movement: v.optional(measure(0, 2, 'How far it moved under that pull where the rope was, m')),
})

const ExtraSchema = v.variant('place', [
  v.looseObject({
    code: v.pipe(Code, v.description('What a Design asks for it by')),
    name: Name,
    hidden,
    place: v.literal('edge'),
    space: length(10, 'Length of free edge that one takes'),
    parts: v.pipe(v.array(ExtraPartSchema), v.minLength(1), v.maxLength(20)),
  }),
  v.looseObject({
    code: v.pipe(Code, v.description('What a Design asks for it by')),
    name: Name,
    hidden,
    place: v.literal('post'),
    space: length(10, 'Length of free edge that one takes'),
    standoff: length(1, 'Post axis off the edge'),
    above: measure(0, 3, 'Least post above the deck, m'),
    embed: v.optional(
      measure(0.05, 5, 'How deep this post goes into the bottom, m; where absent the rule postEmbed'),
    ),
    helix: v.optional(
      v.pipe(
        v.looseObject({
          diameter: length(1, 'Outside diameter of its flight'),
          above: measure(0, 3, "Middle of the flight over the post's tip, m"),
        }),
        v.description('The flight that holds it in the bottom, as a plate; where absent it holds up nothing'),
      ),
    ),
    pull: v.optional(
      v.pipe(
        v.looseObject({
          rock: v.optional(PullSchema),
          gravel: v.optional(PullSchema),
          sand: v.optional(PullSchema),
          clay: v.optional(PullSchema),
          muck: v.optional(PullSchema),
        }),
        v.description('As measured by the shop, by bottom; where absent what it holds is worked out by soil'),
      ),
    ),
    posts: v.pipe(
      v.array(v.looseObject({ ...item, length: length(20, 'Length'), stock: Code })),
      v.minLength(1),
      v.maxLength(60),
    ),
    parts: v.pipe(v.array(ExtraPartSchema), v.maxLength(20)),
  }),
])

const ruleOf = <V extends v.GenericSchema>(value: V, unit: string, description: string) =>
  v.pipe(
    v.looseObject({
      value,
      unit: v.literal(unit),
      description: v.pipe(v.string(), v.maxLength(600)),
    }),
    v.description(description),
  )
const rule = (unit: string, min: number, max: number, description: string) =>
  ruleOf(measure(min, max, unit), unit, description)
const counts = (description: string) => ruleOf(count(40, ''), '', description)

/** Thresholds and counts that another shop could set otherwise. Each carries its unit and a description in the file. */
const RulesSchema = v.looseObject({
  jointGap: rule('m', 0, 0.5, 'Gap between mated edges; pitch = length + gap. No gap at the hinge'),
  hookInset: rule('m', 0, 5, 'Hook from each end of the overlap of two edges'),
  overhang: rule('m', 0, 5, 'A corner this near to a hook of its own carrying joint is carried'),
  tieOverlap: rule('m', 0, 20, 'Least overlap of two touching edges that gets a tie'),
  reserveMin: rule('m', 0, 2, 'Least reserve of leg over the set height'),
  aboveDeckMax: rule('m', 0, 5, 'A leg standing more than this over the deck is remarked on'),
  braceFrom: rule('m', 0, 20, 'Legs of this length and longer are braced'),
  braceLevel: rule('m', 0, 1, 'Beds of a pair within this count as level'),
  pairAlign: rule('m', 0, 1, 'Two legs this near to one line square to an edge can be a pair'),
  braceToFrame: rule('m', 0, 1, 'Least clearance of a brace to the frame or sleeve above'),
  braceToBed: rule('m', 0, 1, 'Least clearance of a brace to the lake bed'),
  braceToPad: rule(
    'm',
    0,
    1,
    "Least clearance of a brace or its clamp to a foot pad, and to another brace's clamp on the same leg",
  ),
  braceNear: rule('m', 0, 1, 'Within this of its clearance a brace is remarked on'),
  startMargin: rule('m', 0, 3, 'Ground under the ramp end over the high level'),
  rampBearing: rule('m', 0, 2, 'Least of a ramp on top of a wall, behind its edge'),
  startStep: rule('m', 0.001, 1, 'The start is sought in steps of this'),
  frameToBed: rule('m', 0, 2, 'Least clearance of a frame over bed and bank'),
  rampSlopeMax: rule('', 0.01, 3, 'Steepest slope of the ramp deck, rise over run'),
  rampStepMax: rule('m', 0, 2, 'Highest step onto the ramp or dock before it is remarked on'),
  soundingsMin: counts('Fewest soundings under water'),
  soundingsGap: rule('m', 0.1, 100, 'Farthest apart along the dock'),
  soundingsSide: rule('m', 0.1, 100, 'Farthest to the side of a single line of soundings'),
  padSlopeMax: rule('', 0, 3, 'Steepest bed under a foot pad, rise over run'),
  deckOverHigh: rule('m', 0, 3, 'Least deck surface over the high level'),
  waveClearance: v.optional(
    rule('m', 0, 3, 'Least clearance of the frame over the crests of waves; where absent 0.15'),
  ),
  boatStepMax: v.optional(
    rule(
      'm',
      0.05,
      3,
      'Highest step from the deck down to a boat before it is remarked on; where absent 0.6',
    ),
  ),
  fitChanceMin: v.optional(rule('', 0, 1, 'Least chance that all legs fit; where absent 0.8')),
  postEmbed: rule('m', 0, 5, 'Auger and post in the bottom'),
  padBolts: counts('Bolts to a foot pad'),
  bracketsPerHook: counts('Hook brackets at each hook'),
  boltsCarrier: counts('Bolts of a bracket to the carrying section'),
  boltsHung: counts('Bolts of a bracket to the hung section'),
  barBolts: counts('Bolts of the hinge bar'),
  hingePins: counts('Hinge pins'),
  pinBolts: counts('Bolts to a hinge pin'),
  braceBolts: counts('Bolts to a brace, one at each hole'),
  clipsPerPanel: counts('Deck clips to a panel'),
  tiesPerTie: counts('Tie plates where two edges are tied'),
  scour: v.pipe(
    v.looseObject({
      value: byBottom,
      unit: v.literal('m'),
      description: v.pipe(v.string(), v.maxLength(600)),
    }),
    v.description('Scour at a leg by bottom'),
  ),
})

const weight = v.optional(measure(0, 20_000, 'Weight under water, N/m3'))
const granular = v.optional(
  v.looseObject({
    friction: v.optional(measure(20, 45, 'Angle of friction, degrees')),
    weight,
    stiffness: v.optional(measure(0, 1e8, 'Growth of its subgrade modulus with depth, N/m3')),
  }),
)
const cohesive = v.optional(
  v.looseObject({
    cohesion: v.optional(measure(0, 2e5, 'Undrained cohesion, Pa')),
    weight,
    stiffness: v.optional(measure(0, 1e8, 'Subgrade modulus, Pa; where absent 67 times the cohesion')),
  }),
)

/** Soil of the lake beds that the shop works on, for what posts hold. What is left out is taken from rules/structure/strength/soil.ts. */
const SoilsSchema = v.looseObject({ gravel: granular, sand: granular, clay: cohesive, muck: cohesive })

const kinds = (description: string) =>
  v.optional(v.pipe(v.array(v.picklist(KINDS)), v.maxLength(60), v.description(description)))
const most = (max: number, description: string) => v.optional(measure(0.1, max, `${description}, kg`))

/** How goods are packed. What is left out is taken from rules/papers/packaging.ts. */
const PackingSchema = v.looseObject({
  person: most(100, 'Most that one person carries'),
  bag: most(100, 'Most in one bag'),
  carton: most(200, 'Most in one carton'),
  bundle: most(500, 'Most in one bundle'),
  pieces: v.optional(v.pipe(count(1000, 'Most pieces in one bundle'), v.minValue(1))),
  long: v.optional(length(20, 'Pieces of this length and longer are bundled')),
  bundled: kinds('Kinds of parts that are bundled whatever their length'),
  loose: kinds('Kinds of parts that go each by itself'),
  kits: v.optional(
    v.pipe(
      v.boolean(),
      v.description(
        'Small hardware in a kit for each section, spares in one more; where absent in bags by letter',
      ),
    ),
  ),
})

const ServiceSchema = v.looseObject({
  code: Code,
  name: Name,
  price: Price,
  per: v.pipe(v.picklist(['job', 'section', 'hour']), v.description('What the price is for')),
  taxed: v.optional(v.boolean()),
})

/** What a quote goes by. Without it: no tax, no discount, no freight, no day that it ends on. */
const QuoteSchema = v.looseObject({
  days: v.optional(count(1000, 'Days that a quote holds, the day itself not counted')),
  discount: v.optional(measure(0, 1, 'Off parts and options where a quote is asked for without another')),
  tax: v.optional(
    v.looseObject({
      name: Name,
      share: measure(0, 1, 'Of what is taxed'),
      goods: v.optional(
        v.pipe(v.boolean(), v.description('Parts and options are taxed; where absent they are')),
      ),
      freight: v.optional(v.pipe(v.boolean(), v.description('Freight is taxed; where absent it is not'))),
    }),
  ),
  freight: v.optional(
    v.pipe(
      v.array(
        v.looseObject({
          mass: measure(0, 1e6, 'Up to this mass, kg'),
          longest: length(50, 'And up to this longest piece'),
          price: Price,
        }),
      ),
      v.maxLength(100),
      v.description('Bands: the first that both fit'),
    ),
  ),
  zones: v.optional(
    v.pipe(
      v.array(v.looseObject({ code: Code, name: Name, price: Price })),
      v.maxLength(100),
      v.description(
        'Where a dock may go to, and what freight there costs; where there are bands too, over the band that holds it',
      ),
    ),
  ),
  round: v.optional(
    v.pipe(
      v.number(),
      v.integer(),
      v.minValue(1),
      v.maxValue(100_000_000),
      v.description(
        'Totals are rounded to the nearest multiple of this, in minor units of the currency (cents); where absent they are as they come',
      ),
    ),
  ),
  terms: v.optional(v.pipe(v.array(v.pipe(v.string(), v.maxLength(600))), v.maxLength(40))),
})

const line = (most: number, what: string) => v.pipe(v.string(), v.maxLength(most), v.description(what))

/** What a customer is told and may have to agree to before a request is sent. */
const ConsentSchema = v.looseObject({
  text: v.pipe(
    v.string(),
    v.minLength(1),
    v.maxLength(2000),
    v.description('What is done with what a customer sends, in plain words; it goes along with the request'),
  ),
  tick: v.optional(
    v.pipe(
      v.boolean(),
      v.description('A box beside it must be ticked before anything is sent; where absent it is only told'),
    ),
  ),
  web: v.optional(
    v.pipe(
      v.string(),
      v.maxLength(400),
      v.regex(/^https?:\/\//, 'an http or https address'),
      v.description('Where more of it stands'),
    ),
  ),
  languages: v.optional(
    v.pipe(
      v.record(v.string(), v.pipe(v.string(), v.minLength(1), v.maxLength(2000))),
      v.description('The same text by language (BCP 47)'),
    ),
  ),
})

/** How the shop's papers speak of it. No dock and no total hangs on any of it, so no check code does. */
const LetterheadSchema = v.looseObject({
  name: v.optional(line(120, "On its papers, where the catalog's own name is not for customers")),
  address: v.optional(v.pipe(v.array(line(120, 'A line of it')), v.maxLength(6))),
  phone: v.optional(line(60, 'As it is printed')),
  mail: v.optional(line(120, 'As it is printed')),
  web: v.optional(line(120, 'As it is printed')),
  logo: v.optional(
    line(
      400_000,
      'PNG or JPEG as data: `data:image/png;base64,…`; one that cannot be read is said and left out',
    ),
  ),
  deposit: v.optional(measure(0, 1, 'Of the total, due with the order')),
  brings: v.optional(
    v.pipe(v.array(Code), v.maxLength(100), v.description('Services that bring the goods, as freight does')),
  ),
  cautions: v.optional(
    v.pipe(
      v.array(v.pipe(v.string(), v.minLength(1), v.maxLength(300))),
      v.maxLength(12),
      v.description('Cautions of the shop, told after those that are always told'),
    ),
  ),
  prices: v.optional(
    v.pipe(
      v.picklist(['none', 'total', 'lines']),
      v.description(
        'What customers are shown of prices: nothing, totals alone, or each line too; where absent each line',
      ),
    ),
  ),
  each: v.optional(
    v.pipe(v.boolean(), v.description('A quote has each part with its price too; where absent it has not')),
  ),
  consent: v.optional(ConsentSchema),
})

const TemplateSchema = v.pipe(
  v.looseObject({
    code: Code,
    name: Name,
    frame: v.pipe(Code, v.description('Frame of the sections that name none')),
    plan: PlanSchema,
  }),
  v.description('A shape to begin with, beside the usual ones'),
)

export const CatalogSchema = v.looseObject({
  format: v.literal('leadline/catalog'),
  version: v.literal(1),
  id: Code,
  name: Name,
  edition: v.pipe(v.string(), v.maxLength(60), v.description("The shop's own version of this catalog")),
  currency: v.pipe(
    v.string(),
    v.regex(/^[A-Z]{3}$/, 'three capital letters'),
    v.description('ISO 4217 code'),
  ),
  limits: v.optional(
    v.pipe(
      // Lot lines are a lot's own: a shop has none.
      v.looseObject({
        ...MOST_ALLOWED,
        name: v.optional(v.pipe(v.string(), v.maxLength(200), v.description('Whose rules'))),
        source: v.optional(
          v.pipe(v.string(), v.maxLength(400), v.description('As of when, where from, whom to ask')),
        ),
      }),
      v.description("What the rules of the shop's waters allow; a design's own stand in their place"),
    ),
  ),
  materials: v.record(
    Code,
    v.looseObject({
      name: Name,
      density: measure(50, 20000, 'kg/m3'),
      strength: v.optional(StrengthSchema),
    }),
  ),
  stock: v.record(Code, StockSchema),
  frames: v.pipe(v.array(FrameSchema), v.minLength(1), v.maxLength(200)),
  sleeve: SleeveSchema,
  legs: v.pipe(v.array(LegSchema), v.minLength(1), v.maxLength(200)),
  braces: v.pipe(v.array(BraceSchema), v.maxLength(200)),
  pads: v.pipe(
    v.array(PadSchema),
    v.minLength(1),
    v.maxLength(60),
    v.description('The first is the standard one'),
  ),
  clamp: v.looseObject({
    ...statedItem,
    reach: measure(0, 1, 'Leg axis to the hole, toward the other leg, m'),
    height: length(0.5, 'Height along the leg'),
    width: length(0.5, 'Width over the leg'),
    slip: v.optional(
      measure(1, 1e6, 'As measured by the shop: push along the leg at which the clamp slides on it, N'),
    ),
  }),
  hooks: v.looseObject({
    bracket: v.looseObject(small),
    lock: v.optional(
      measure(
        0,
        1e6,
        'As measured by the shop: upward pull that the lock of one hook bracket holds, hung side bolted, N',
      ),
    ),
  }),
  tie: v.looseObject(small),
  hinge: v.looseObject({
    bar: v.looseObject({ ...item, stock: Code, length: length(10, 'Length') }),
    pin: v.looseObject(small),
    drop: measure(0, 0.5, 'Hinge axis below the deck surface, m'),
    shorePin: v.optional(
      measure(
        0,
        1e6,
        "As measured by the shop: upward pull that a stake or pin holds at each corner of the ramp's shore end, N; where absent that end lies free",
      ),
    ),
  }),
  decking: v.looseObject({
    rise: measure(0, 0.3, 'Deck surface over the frame top, m'),
    panels: v.pipe(v.array(PanelSchema), v.minLength(1), v.maxLength(200)),
    clip: v.looseObject({
      ...small,
      holds: v.optional(
        measure(0, 1e5, 'As measured by the shop: upward pull on a panel that one clip holds, N'),
      ),
    }),
  }),
  deckings: v.optional(
    v.pipe(v.array(DeckingSchema), v.maxLength(60), v.description('Decking to choose from')),
  ),
  caps: v.looseObject({ leg: v.looseObject(small), sleeve: v.looseObject(small) }),
  hardware: v.pipe(v.array(BoltSchema), v.maxLength(60)),
  extras: v.pipe(v.array(ExtraSchema), v.maxLength(200)),
  spares: v.looseObject({
    priced: v.pipe(v.boolean(), v.description('Spares are charged for')),
    byKind: v.record(
      v.string(),
      v.looseObject({
        share: measure(0, 1, 'Of the quantity, rounded up'),
        atLeast: count(100, 'At least this many where any are used'),
      }),
    ),
  }),
  rules: RulesSchema,
  soils: v.optional(SoilsSchema),
  packing: v.optional(PackingSchema),
  services: v.optional(v.pipe(v.array(ServiceSchema), v.maxLength(100))),
  quote: v.optional(QuoteSchema),
  shop: v.optional(LetterheadSchema),
  survey: v.optional(
    v.pipe(
      v.looseObject({
        soundingError: measure(0, 2, 'One standard deviation of a sounding of the shop, m'),
        measurements: v.optional(count(1_000_000, 'Measured legs that it is learned from')),
      }),
      v.description('As learned from season records'),
    ),
  ),
  templates: v.optional(v.pipe(v.array(TemplateSchema), v.maxLength(100))),
  words: v.optional(
    v.pipe(
      v.record(v.string(), v.record(v.string(), v.pipe(v.string(), v.maxLength(200)))),
      v.description('Names of items by language and code'),
    ),
  ),
})

/** A catalog as parsed: all of `CatalogSchema`, cross-references resolved by `parseCatalog`. */
export type Catalog = v.InferOutput<typeof CatalogSchema>
export type Frame = Catalog['frames'][number]
export type LegStock = Catalog['legs'][number]
export type BraceStock = Catalog['braces'][number]
export type Pad = Catalog['pads'][number]
export type Panel = Catalog['decking']['panels'][number]
/** A decking to choose: which panels are laid, and their color. */
export type DeckingChoice = v.InferOutput<typeof DeckingSchema>
export type Bolt = Catalog['hardware'][number]
export type Extra = Catalog['extras'][number]
export type Service = v.InferOutput<typeof ServiceSchema>
export type Strength = v.InferOutput<typeof StrengthSchema>
export type AluminumStrength = Extract<Strength, { family: 'aluminum' }>
export type SteelStrength = Extract<Strength, { family: 'steel' }>
/** What a straight piece is cut from: its section, m, and its material by name. */
export type Stock = v.InferOutput<typeof StockSchema>
export type RuleName = keyof typeof RulesSchema.entries
