/**
 * The Dock: all that follows from a Design and a Catalog, as plain data. Views read it; nothing here is ever stored in a Design.
 *
 * Units: m, kg, minor units of money. Frame of reference: x lakeward from the water's edge along the dock's center line,
 * y to the left looking at the lake, z up from the water surface on the day of the survey. Numbers are rounded to 1e-6.
 */

import type { PartKind } from './part-kinds.ts'

/** A place or a direction in the dock's frame of reference, m: x lakeward, y to the left, z up from the survey day's water. */
export type Vec3 = readonly [x: number, y: number, z: number]
/** Unit quaternion x, y, z, w: turns a part's own frame into the dock's. */
export type Quat = readonly [x: number, y: number, z: number, w: number]

/** An edge of a section, as seen from its start, looking along it. */
export type Edge = 'start' | 'end' | 'left' | 'right'
/** A corner of a section. */
export type Corner = 'start.left' | 'start.right' | 'end.left' | 'end.right'
/** How a section is held: the ramp hinges, the first stands by itself, the others hang on one before them. */
export type Role = 'ramp' | 'standing' | 'following'
/** To which side, looking lakeward. */
export type Side = 'left' | 'right'

export type { PartKind }

/** One piece in its place. `of` is the id of the section, leg, pair, joint or extra that it belongs to. */
export interface Placement {
  readonly kind: PartKind
  readonly code: string
  readonly of: string
  /** The section that carries it when that is lifted: what counts in a section's mass. */
  readonly section: string
  readonly at: Vec3
  readonly turn: Quat
}

/** One section, or the ramp, where it lies. Lengths and elevations in m. */
export interface Section {
  readonly id: string
  readonly role: Role
  /** Catalog code. */
  readonly frame: string
  /** Middle of its start edge (of a ramp: where that edge of its deck surface is, tilted). */
  readonly x: number
  readonly y: number
  /** Elevation there of the deck surface. */
  readonly z: number
  /** Degrees counter-clockwise from above, 0 = lakeward, in [0, 360). */
  readonly heading: number
  readonly length: number
  readonly width: number
  /** Of a corner piece: by how much its end edge is turned to the left of its start edge, degrees. */
  readonly turn?: number
  /** The section that carries it; null for the ramp and the standing section. */
  readonly on: string | null
  /** All that belongs to it, kg. */
  readonly mass: number
  /** As carried: frame, legs, pads, brace, brackets; no panels, clips or caps, kg. */
  readonly lift: number
}

/** Where and how steeply the ramp comes down, m. */
export interface Ramp {
  /** Of the deck plane, up to the dock positive. */
  readonly slope: number
  /** Where its lower shoreward edge touches. */
  readonly shoreX: number
  readonly shoreZ: number
  /** Ground to the deck surface at its shoreward edge; down onto the ramp is negative. */
  readonly step: number
  /** True where a crest of the ground (a wall's edge, say) carries it before its end comes down. */
  readonly onEdge: boolean
}

/** One leg: where it stands and how high it is set. Lengths and elevations in m. */
export interface Leg {
  /** `s3.end.left` */
  readonly id: string
  readonly section: string
  readonly corner: Corner
  /** Tube axis. */
  readonly x: number
  readonly y: number
  /** Elevation of what the pad stands on: firm bottom where sounded, else the bottom. */
  readonly bed: number
  /** Sole of the foot pad to deck surface, without sinkage. */
  readonly setHeight: number
  /** Sole of the foot pad to frame top: what is read while the panels are off. */
  readonly setHeightFrame: number
  /** setHeight + reserve − sole: the shortest leg that will do. */
  readonly required: number
  readonly reserve: number
  /** Stock length; null where none will do. */
  readonly stock: number | null
  readonly code: string | null
  readonly aboveDeck: number | null
  /** Catalog code of its foot pad. */
  readonly pad: string
  /** In a pair with a brace. */
  readonly braced: boolean
  /** That its length fits, 0 to 1 (`Fit`); null while that is being worked out, and without a length. */
  readonly fitChance: number | null
}

/** The brace between two legs: which one, where its holes come, what is clear of it, m. */
export interface Brace {
  readonly code: string
  /** Hole to hole. */
  readonly stock: number
  /** High hole over low hole. */
  readonly rise: number
  /** Of the brace's low end, to bed or pad, the nearer. */
  readonly lowClearance: number
  /** Of the whole brace to the bed below it. */
  readonly bedClearance: number
  /** Of its high end, to the frame or sleeve. */
  readonly highClearance: number
  /** Leg that the low end is on. */
  readonly low: string
  /** Elevations of the two holes. */
  readonly lowZ: number
  readonly highZ: number
}

/** Two legs that a brace may join, m. */
export interface Pair {
  /** `s3.end` for the two legs of one edge, else both leg ids joined by `~`. */
  readonly id: string
  readonly legs: readonly [string, string]
  /** Between the leg axes. */
  readonly spacing: number
  /** True where the trade's rule asks for a brace, or the Design for one lengthwise. */
  readonly needsBrace: boolean
  /** Of a pair for a lengthwise brace, at a side of a section; absent of all others. Its legs are of another pair too. */
  readonly along?: true
  readonly brace: Brace | null
}

/** Where two sections meet, and by what. */
export interface Joint {
  /** `s2~s3` */
  readonly id: string
  /** The section that carries first; of a tie the earlier one. */
  readonly between: readonly [string, string]
  readonly kind: 'hinge' | 'hook' | 'tie'
}

/** A row of the parts list: masses in kg, prices in minor units of the catalog's currency. */
export interface PartRow {
  readonly code: string
  readonly kind: PartKind
  readonly name: string
  readonly bag: string | null
  /** Without spares; a bolt is counted with its nut. */
  readonly quantity: number
  readonly spares: number
  readonly unitMass: number
  /** unitMass × quantity. */
  readonly mass: number
  readonly unitPrice: number
  readonly price: number
}

/** Sums of the parts list. */
export interface Totals {
  /** Without spares, kg. */
  readonly mass: number
  /** Minor units; spares in it where the catalog charges for them. */
  readonly price: number
  readonly currency: string
  /** Heaviest section as carried, kg. */
  readonly heaviestLift: number
  /** Its id; null for an empty dock. */
  readonly heaviestSection: string | null
}

/** What of the parts list is owned already (`dock.existing` of the Design). */
export interface Existing {
  /** Owned and needed: together with `new` they are the parts list. */
  readonly used: readonly {
    readonly kind: PartKind
    readonly code: string
    readonly name: string
    readonly quantity: number
    /** Sections, legs or pairs that they are for, where each has its own (frames, legs, braces); else empty. */
    readonly of: readonly string[]
  }[]
  /** Owned and not needed. */
  readonly left: readonly {
    readonly kind: string
    /** Empty for a leg of a length that the catalog does not have. */
    readonly code: string
    readonly name: string
    /** Of such a leg, m. */
    readonly length?: number
    readonly quantity: number
    /** The catalog has it. */
    readonly known: boolean
  }[]
  /** To be bought: rows like those of the parts list, with spares of their own. */
  readonly new: readonly PartRow[]
  /** Of what is new, without spares, kg. */
  readonly mass: number
  /** Of what is new, minor units; spares in it where the catalog charges for them. */
  readonly price: number
}

/** How grave a finding is: it must not be built; it is to be fixed or checked; good to know. */
export type Severity = 'stop' | 'warn' | 'note'
/** A number, a name or a key in a finding, with its unit. */
export interface Figure {
  /** Several of one unit are a list. */
  readonly value: number | string | readonly (number | string)[]
  /**
   * `m`, `fetch` (m over water), `m/s`, `s`, `mm`, `kg`, `N`, `Nm`, `Pa`, `slope`, `share` (of 1), `factor`, `count`, `deg`; `text` or `list` (all of it; an
   * id, a code or a name of the user's or the shop's own), `kind` of part, `key` (a word of the engine: one of a table in the language
   * files that has the figure's name), `code` of a finding, `case` of loads.
   */
  readonly unit: string
}

/** RFC 6902 operation on the Design. */
export interface PatchOperation {
  readonly op: 'add' | 'replace' | 'remove'
  readonly path: string
  readonly value?: unknown
}

/** What would help against a finding, as a patch of the design; what it is called by a key with its figures. */
export interface Remedy {
  readonly key: string
  readonly values: Readonly<Record<string, Figure>>
  readonly patch: readonly PatchOperation[]
  /** Where it takes several: each by itself, in this order; `patch` does all of them. */
  readonly steps?: readonly Remedy[]
}

/** Something that does not stand, fit or keep a limit: where, by how much, on what basis, and what helps. */
export interface Finding {
  readonly code: string
  readonly severity: Severity
  readonly parts: readonly string[]
  readonly values: Readonly<Record<string, Figure>>
  /** English, SI. */
  readonly text: string
  /** Published source, or that it is common practice. */
  readonly basis: string
  readonly remedy: Remedy | null
}

/** One number that a derived number was made of. */
export interface ReasonTerm {
  readonly key: string
  readonly value: number | string
  readonly unit: string
  /** Where it comes from: `design`, `catalog`, `site` or another derived number. */
  readonly from: string
}

/** Why a derived number is what it is. */
export interface Reason {
  readonly rule: string
  readonly terms: readonly ReasonTerm[]
  readonly result: { readonly value: number | string; readonly unit: string }
  readonly basis: string
}

/** How the dock's numbers came about, by what they are numbers of. */
export interface Reasons {
  readonly waves: readonly Reason[]
  readonly start: readonly Reason[]
  readonly ramp: readonly Reason[]
  readonly legs: Readonly<Record<string, readonly Reason[]>>
  readonly pairs: Readonly<Record<string, readonly Reason[]>>
  readonly placements: readonly Reason[]
  readonly totals: readonly Reason[]
}

/** What a dock was made of, as SHA-256 in hexadecimal, and the engine's version. `all` is the check code: its first twelve are on papers. */
export interface Fingerprint {
  readonly all: string
  readonly design: string
  readonly catalog: string
  readonly engine: string
}

/** Waves at the dock, by wind, fetch and depth along the fetch. Heights in m, trough to crest; elevations over the still water. */
export interface Waves {
  /** Significant, as the depth at the dock lets it stand. */
  readonly height: number
  /** Of the peak, s; 0 where only wakes are told of. */
  readonly period: number
  /** m, and m/s, at `depth`. */
  readonly length: number
  readonly speed: number
  /** Still water at the deepest legs on the day of the survey, m. */
  readonly depth: number
  /** Mean of the highest tenth: for comfort and clearance. */
  readonly tenth: number
  /** Of the wind's, taken for strength: min(1.8 × significant, 0.78 × depth). A wake is tried beside it, the worse counts. */
  readonly highest: number
  /** Crest of the tenth, or of a wake where that is higher, over still water: on the day of the survey, and at the high level. */
  readonly crest: number
  readonly crestHigh: number
  /** Elevation of the underside of the frames that stand, and what is left between it and those crests; negative where they reach it. */
  readonly underside: number
  readonly clear: number
  readonly clearHigh: number
  /** Boat wake of the Design, 0 where none is told of. */
  readonly wake: number
  /** The depth at the dock holds them down. */
  readonly breaks: boolean
  /** Significant, out on the lake. */
  readonly open: number
  /** The law that all of this goes by; and the same by each, out on the lake. */
  readonly law: 'spm1984'
  readonly laws: Readonly<
    Record<'spm1984' | 'cem2002' | 'youngVerhagen1996', { readonly height: number; readonly period: number }>
  >
  /** Deck surface over the survey water: clear of the crest by the shop's clearance, re-set when the lake moves … */
  readonly recommendedDeckHeight: number
  /** … and left all season, over the high level. */
  readonly recommendedAllSeason: number
  /** How far the deck can go up from its planned height before a leg ends at its sleeve's top, m; null while a leg has no length. */
  readonly canRise: number | null
  /** How long such a wind must blow until they are grown, s; 0 where only wakes are told of. */
  readonly duration: number
  /** What is said about them: where a law is used outside of what it was made for, and what is left out. */
  readonly notes: readonly WaveNote[]
}

/**
 * `assumed-deep`: no depth along the fetch is given, so none holds them down (cautious). `short-fetch`: shorter, for this wind, than what
 * the laws were measured on. `depth-breaks`: the depth at the dock lets only lower ones stand. `highest-break`: that of the highest ones.
 * `steep`: the highest would break by themselves; counted whole (cautious). `shallow-long`: so long for their height and depth that linear
 * theory tells too little of how the water moves. `legs-end`: legs do not reach far enough to set the deck again as high over the lake at its
 * high level.
 */
export type WaveNote =
  | 'assumed-deep'
  | 'short-fetch'
  | 'depth-breaks'
  | 'highest-break'
  | 'steep'
  | 'shallow-long'
  | 'legs-end'

/** What the worst case does to one leg. `use` is of what it may carry: over 1 is too much. */
export interface LegUse {
  readonly leg: string
  /** Pressing positive, N. */
  readonly axial: number
  /** N·m */
  readonly moment: number
  readonly use: number
  /** What governs it: `combined`, `shear`, `sleeve` (set bolts slip). */
  readonly governs: string
  /** The case, `0.6D+W high left` say. */
  readonly case: string
}

/** How much of what a brace can take is used, in its worst case. */
export interface BraceUse {
  readonly pair: string
  /** Largest, pulled positive, N. */
  readonly axial: number
  readonly use: number
  /** `buckling`, `tension`, `bolt`, `clamp`. */
  readonly governs: string
  readonly case: string
}

/** How much of what a foot and its ground can take is used, in its worst case. */
export interface FootUse {
  readonly leg: string
  /** Largest, on the pad, N and Pa. */
  readonly load: number
  readonly pressure: number
  /** Of what the bottom is trusted with; null where it is trusted with nothing (muck). */
  readonly use: number | null
  readonly case: string
  /** Lifts off the bed in some case; the case. */
  readonly lifts: boolean
  readonly liftCase: string | null
  /** It and the other foot of its pair are pushed sideways by more than resists; the push over that, and the case. */
  readonly slides: boolean
  readonly push: number
  readonly pushCase: string | null
}

/** One foot lower than it should be, the worst of those that carry most. */
export interface UnevenFoot {
  /** How much lower, m. */
  readonly by: number
  /** The leg whose foot is low, and the one that carries most then with a full deck: its use and what presses it, N. */
  readonly low: string
  readonly leg: string
  readonly use: number
  readonly axial: number
  /** Legs that hang in the air under the dock's own weight when their foot is so much lower. */
  readonly hangs: readonly string[]
}

/** How much of what a hook or hinge can take is used, in its worst case. */
export interface HookUse {
  readonly joint: string
  /** Bearing down, and pulled up, of one hook, N. */
  readonly down: number
  readonly up: number
  readonly upCase: string | null
  /** A lock gives way in some case; the case. */
  readonly opens: boolean
  readonly openCase: string | null
}

/** How much of what a frame's rails can take is used, in their worst case. */
export interface RailUse {
  readonly section: string
  readonly use: number
  /** Under people, between its ends, m, and the length that it is measured over. */
  readonly deflection: number
  readonly span: number
  readonly case: string
}

/**
 * Where dead load and people alone are past what buckles the dock there are no figures: `legs`, `braces`, `feet`, `hooks` and `rails` are
 * empty then, `railUse` and `railDeflection` null.
 */
export interface Structure {
  readonly legs: readonly LegUse[]
  readonly braces: readonly BraceUse[]
  readonly feet: readonly FootUse[]
  readonly hooks: readonly HookUse[]
  readonly rails: readonly RailUse[]
  readonly railUse: number | null
  readonly railDeflection: number | null
  /** How far the softest outer corner gives under a person's shove, m: the larger of along and across. */
  readonly sway: number
  readonly swayAlong: number
  readonly swayAcross: number
  /** What play in the sleeves adds to each before anything resists, m. */
  readonly playAlong: number
  readonly playAcross: number
  /** The larger of both for the same dock without braces. */
  readonly swayUnbraced: number
  readonly swayUnbracedAcross: number
  /** Lowest buckling factor on dead load and people, with braces and without; null where none is found. */
  readonly buckling: number | null
  readonly bucklingUnbraced: number | null
  /** N·m/rad of one sleeve as counted, and whether the shop stated it. */
  readonly sleeve: { readonly stiffness: number; readonly stated: boolean }
  /** Verdicts with sleeves half and twice as firm: buckling, worst leg, sway along. */
  readonly sleeves: readonly {
    readonly part: number
    readonly buckling: number | null
    /** Null past buckling. */
    readonly legUse: number | null
    readonly swayAlong: number
    readonly swayAcross: number
  }[]
  /** Null while it is still to come, and past buckling. */
  readonly uneven: UnevenFoot | null
  /** False while buckling factors and sleeves half and twice as firm are still to come: they take longer. */
  readonly deep: boolean
  /** The whole dock: sideways at its feet over what resists there, in the worst case. */
  readonly slides: {
    readonly push: number
    readonly case: string | null
    readonly slides: boolean
  }
  /** False where some case has no foot bearing, or none that all bear. */
  readonly stands: boolean
  /** Those cases; `D+L` first where dead load and people alone are past what it can be softened by. */
  readonly falls: readonly string[]
  /** Cases looked at. */
  readonly cases: number
  /** People on the deck, Pa. */
  readonly live: number
}

/** How surely a leg's length fits. */
export interface LegFit {
  readonly leg: string
  /** 0 to 1. */
  readonly chance: number
  /** Standard error of the bed under it: of the soundings, and of the bed between and beyond them, m. */
  readonly error: number
  /** How much lower the bed may lie than it is taken to; negative where the length is too short by that, m. */
  readonly room: number
  /** The reserve with which it fits at 95 of 100 places like it, m. */
  readonly reserve95: number
}

/** How surely the legs fit, by what the soundings leave open, and what would help. */
export interface Fit {
  /** Of each leg with a length, in the order of the legs. */
  readonly legs: readonly LegFit[]
  /** The chance that all of them fit. */
  readonly all: number
  /** Stock long enough for any leg in doubt, and the chance that all fit with one of it at hand, with two and so on; null where none is needed or made. */
  readonly spares: {
    readonly code: string
    readonly length: number
    readonly chances: readonly number[]
  } | null
  /** Where one more sounding would tell most, m, and the legs that it is to be expected to settle; null where none is worth the way. */
  readonly sounding: {
    readonly x: number
    readonly y: number
    readonly settles: readonly string[]
  } | null
}

/** All that follows from a design and a catalog, as plain data: m, kg, minor units of currency, the dock's frame of reference. */
export interface Dock {
  /** Engine version. */
  readonly engine: string
  readonly name: string
  /** x of the first standing section's start edge (with a ramp: the hinge axis); null for an empty dock. */
  readonly start: number | null
  readonly sections: readonly Section[]
  readonly ramp: Ramp | null
  readonly legs: readonly Leg[]
  readonly pairs: readonly Pair[]
  readonly joints: readonly Joint[]
  readonly placements: readonly Placement[]
  readonly parts: readonly PartRow[]
  /** Of all parts, whoever has them. */
  readonly totals: Totals
  /** Null where the Design tells of nothing owned. */
  readonly existing: Existing | null
  /** Section ids in the order of work: standing section, ramp, then outward. */
  readonly workOrder: readonly string[]
  /** Null where the Design tells of no wind and no wakes. */
  readonly waves: Waves | null
  /** Null where it cannot be judged (a finding says why), or while it is pending. */
  readonly structure: Structure | null
  /** Null while it is being worked out, and where no leg has a length. */
  readonly fit: Fit | null
  /** Present and true while the structure is still being worked out. */
  readonly pending?: true
  readonly findings: readonly Finding[]
  readonly reasons: Reasons
  readonly fingerprint: Fingerprint
}
