/**
 * The independent check, checked: it finds nothing on sound docks, and every law of it fails on a dock that is broken in just
 * the way that the law is about.
 */
import { describe, expect, it } from 'vitest'
import type { Design } from '../../rules/design/schema.ts'
import type { Dock, PartKind, Placement } from '../../rules/dock.ts'
import { demoCatalog } from '../../rules/index.ts'
import { alongCatalog, askedAlong } from '../support/along-shop.ts'
import { deriveAtOnce, deriveFound } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { metricCatalog } from '../support/catalogs.ts'
import { fenderCatalog } from '../support/fender-shop.ts'
import { LAWS, validate } from '../support/validate.ts'
import { contractDemo, scattered, wide, workedL, workedStraight } from '../support/worked-designs.ts'

type Mutable<T> = { -readonly [K in keyof T]: T[K] extends object ? Mutable<T[K]> : T[K] }
type Broken = Mutable<Dock>

const design = parsed(contractDemo)
const wideDesign = parsed(wide)
const fenderDesign = parsed({
  ...contractDemo,
  dock: { ...contractDemo.dock, extras: { 'fender-board': 3 } },
})
const CASES: readonly [string, Design, typeof demoCatalog][] = [
  ['the demo', design, demoCatalog],
  ['the worked check', parsed(workedStraight), demoCatalog],
  ['the L on a cross slope', parsed(workedL), demoCatalog],
  ['a wide dock of the metric shop', wideDesign, metricCatalog],
  ['soundings off one line', parsed(scattered), demoCatalog],
  ['fender boards', fenderDesign, fenderCatalog],
]

describe('the independent check', () => {
  it.each(CASES)('finds nothing wrong with %s', (_name, input, catalog) => {
    expect(validate(deriveAtOnce(input, catalog), input, catalog)).toEqual([])
  })
})

const of = (dock: Broken, kind: PartKind): Mutable<Placement> => dock.placements.find((p) => p.kind === kind)!
/** Adds to a number in place. */
const shift = (target: object, key: string | number, by: number): void => {
  const numbers = target as Record<string | number, number>
  numbers[key] = numbers[key]! + by
}
const drop = (dock: Broken, kind: PartKind): void => {
  const piece = of(dock, kind)
  dock.placements = dock.placements.filter((p) => p !== piece)
}
const moveTo = (piece: Mutable<Placement>, { x, y }: { x: number; y: number }): void => {
  piece.at = [x, y, piece.at[2]]
}
const row = (dock: Broken, kind: PartKind) => dock.parts.find((r) => r.kind === kind)!
const braced = (dock: Broken) => dock.pairs.find((p) => p.brace !== null)!
const along = (dock: Broken) => dock.pairs.find((p) => p.along && p.brace !== null)!
const lift = ({ brace }: Broken['pairs'][number], by: number): void => {
  shift(brace!, 'lowZ', by)
  shift(brace!, 'highZ', by)
}
const leg = (dock: Broken, id: string) => dock.legs.find((l) => l.id === id)!
const section = (dock: Broken, id: string) => dock.sections.find((s) => s.id === id)!
const without = <T extends { id: string }>(list: readonly T[], id: string): T[] =>
  list.filter((x) => x.id !== id)

/** law, what is broken, how. On the demo dock; those in `ON_WIDE` on the wide one, `fenderBoards` on one that has them. */
const BREAKS: readonly [law: string, what: string, breakIt: (dock: Broken) => unknown][] = [
  ['legsPadsCaps', 'a foot pad is missing', (d) => drop(d, 'foot-pad')],
  ['legsPadsCaps', 'a leg cap is missing', (d) => drop(d, 'leg-cap')],
  ['legsPadsCaps', 'a leg has no tube', (d) => drop(d, 'leg')],
  ['sleeveCaps', 'a sleeve cap is missing', (d) => drop(d, 'sleeve-cap')],
  ['setBolts', 'a set bolt is missing', (d) => drop(d, 'set-bolt')],
  ['padBolts', 'a pad bolt is missing', (d) => drop(d, 'pad-bolt')],
  ['hooksAndBolts', 'a bracket is missing', (d) => drop(d, 'hook-bracket')],
  ['hooksAndBolts', 'a hook bolt too many', (d) => d.placements.push(of(d, 'hook-bolt'))],
  ['hingeHardware', 'a hinge pin is missing', (d) => drop(d, 'hinge-pin')],
  [
    'hingeHardware',
    'hinge parts without a hinge',
    (d) => Object.assign(d, { joints: without(d.joints, 's1~s2') }),
  ],
  ['braceHardware', 'a clamp is missing', (d) => drop(d, 'brace-clamp')],
  ['braceHardware', 'a brace bolt is missing', (d) => drop(d, 'brace-bolt')],
  ['framesAndDecking', 'a panel is missing', (d) => drop(d, 'deck-panel')],
  ['framesAndDecking', 'a clip is missing', (d) => drop(d, 'deck-clip')],
  [
    'framesAndDecking',
    'a panel lies on another section',
    (d) => Object.assign(of(d, 'deck-panel'), { section: 's5' }),
  ],
  ['tiePlates', 'a tie plate is missing', (d) => drop(d, 'accessory')],
  ['extrasAsAsked', 'a bumper is missing', (d) => drop(d, 'bumper')],
  ['extrasAsAsked', 'a bumper too many', (d) => d.placements.push(of(d, 'bumper'))],
  [
    'cornersCarriedOrLegged',
    'a corner has no leg',
    (d) => Object.assign(d, { legs: without(d.legs, 's4.end.left') }),
  ],
  [
    'cornersCarriedOrLegged',
    'a carried corner has a leg',
    (d) => d.legs.push({ ...leg(d, 's4.end.left'), id: 's4.start.left', corner: 'start.left' }),
  ],
  ['cornersCarriedOrLegged', 'a corner has two legs', (d) => d.legs.push(leg(d, 's4.end.left'))],
  ['jointsAsPlanned', 'a joint is missing', (d) => Object.assign(d, { joints: without(d.joints, 's3~s4') })],
  [
    'jointsAsPlanned',
    'a joint too many',
    (d) => d.joints.push({ id: 's2~s4', between: ['s2', 's4'], kind: 'hook' }),
  ],
  [
    'jointsTouch',
    'sections far apart are joined',
    (d) => d.joints.push({ id: 's2~s5', between: ['s2', 's5'], kind: 'tie' }),
  ],
  [
    'tiesWhereEdgesTouch',
    'a tie is missing',
    (d) => Object.assign(d, { joints: d.joints.filter((j) => j.kind !== 'tie') }),
  ],
  [
    'tiesWhereEdgesTouch',
    'a tie without touching edges',
    (d) => d.joints.push({ id: 's2~s5', between: ['s2', 's5'], kind: 'tie' }),
  ],
  ['bracketsAtHooks', 'a bracket sits elsewhere on the edge', (d) => shift(of(d, 'hook-bracket').at, 1, 0.1)],
  ['bracketsAtHooks', 'a bracket is too low', (d) => shift(of(d, 'hook-bracket').at, 2, -0.01)],
  [
    'sectionsAsPlanned',
    'a section is missing',
    (d) => Object.assign(d, { sections: without(d.sections, 's5') }),
  ],
  ['sectionsAsPlanned', 'a section is on another', (d) => Object.assign(section(d, 's5'), { on: 's3' })],
  ['sectionsInPlace', 'a section is a hand off', (d) => shift(section(d, 's4'), 'x', 0.1)],
  ['sectionsInPlace', 'a heading is 360', (d) => Object.assign(section(d, 's4'), { heading: 360 })],
  ['sectionsInPlace', 'a deck is low', (d) => shift(section(d, 's4'), 'z', -0.001)],
  ['startAsAsked', 'the start is between two steps', (d) => Object.assign(d, { start: 1.07 })],
  ['legsInTheirSleeves', 'a leg is beside its sleeve', (d) => shift(leg(d, 's3.end.left'), 'x', 0.01)],
  ['bedsFromSoundings', 'a bed is 1 mm off', (d) => shift(leg(d, 's3.end.left'), 'bed', 0.001)],
  ['setHeights', 'a set height is 1 mm off', (d) => shift(leg(d, 's3.end.left'), 'setHeight', 0.001)],
  [
    'setHeights',
    'the height to frame top is 1 mm off',
    (d) => shift(leg(d, 's3.end.left'), 'setHeightFrame', 0.001),
  ],
  ['reserves', 'a reserve is less', (d) => Object.assign(leg(d, 's3.end.left'), { reserve: 0.1 })],
  ['requiredLengths', 'the sole is forgotten', (d) => shift(leg(d, 's3.end.left'), 'required', 0.00635)],
  [
    'shortestStock',
    'a leg is longer than it must be',
    (d) => Object.assign(leg(d, 's3.end.left'), { stock: 2.1336, code: 'leg-7' }),
  ],
  ['shortestStock', 'a leg of no stock length', (d) => Object.assign(leg(d, 's3.end.left'), { stock: 1.6 })],
  [
    'longEnoughOrStop',
    'a leg is too short and no stop says so',
    (d) => Object.assign(leg(d, 's3.end.left'), { stock: 1.2192, code: 'leg-4' }),
  ],
  [
    'longEnoughOrStop',
    'a leg has no length and no stop says so',
    (d) => Object.assign(leg(d, 's3.end.left'), { stock: null, code: null }),
  ],
  [
    'noLengthForAReason',
    'a leg has no length though one would do',
    (d) => Object.assign(leg(d, 's3.end.left'), { stock: null }),
  ],
  [
    'aboveDeck',
    'what stands over the deck is wrong',
    (d) => shift(leg(d, 's3.end.left'), 'aboveDeck', 0.002),
  ],
  [
    'padsAsAsked',
    'a leg stands on another pad',
    (d) => Object.assign(leg(d, 's3.end.left'), { pad: 'mud-pad-14' }),
  ],
  ['legPiecesStand', 'a pad floats', (d) => shift(of(d, 'foot-pad').at, 2, 0.01)],
  ['legPiecesStand', 'a cap is in mid air', (d) => shift(of(d, 'leg-cap').at, 2, 0.01)],
  ['legPiecesStand', 'a tube stands beside its pad', (d) => shift(of(d, 'leg').at, 0, 0.01)],
  ['pairsOfLegs', 'a leg is in two pairs', (d) => d.pairs.push(structuredClone(braced(d)))],
  ['pairsOfLegs', 'a spacing is wrong', (d) => shift(braced(d), 'spacing', 0.01)],
  [
    'pairsByRule',
    'legs of one edge are no pair',
    (d) => Object.assign(d, { pairs: without(d.pairs, 's4.end') }),
  ],
  ['pairIds', 'a pair is called otherwise', (d) => Object.assign(braced(d), { id: 'first' })],
  ['braceNeeded', 'a long pair needs no brace', (d) => Object.assign(braced(d), { needsBrace: false })],
  ['braceOfItsPair', 'a brace of no catalog', (d) => Object.assign(braced(d).brace!, { code: 'brace-43' })],
  [
    'braceOfItsPair',
    'a brace on the leg of another pair',
    (d) => Object.assign(braced(d).brace!, { low: 's5.end.left' }),
  ],
  ['braceFigures', 'a rise is 1 mm off', (d) => shift(braced(d).brace!, 'rise', 0.001)],
  ['braceFigures', 'a clearance is 1 mm off', (d) => shift(braced(d).brace!, 'highClearance', 0.001)],
  ['braceFits', 'a brace reaches into its pad', (d) => shift(braced(d).brace!, 'lowZ', -0.15)],
  ['braceFits', 'a brace reaches into its frame', (d) => shift(braced(d).brace!, 'highZ', 0.18)],
  ['braceFits', 'a brace is in the bed', (d) => Object.assign(braced(d).brace!, { bedClearance: 0.01 })],
  [
    'bracePreferred',
    'the other brace is drawn',
    (d) => Object.assign(d.pairs.find((p) => p.id === 's4.end')!.brace!, { code: 'brace-54' }),
  ],
  ['noBraceForAReason', 'a pair has lost its brace', (d) => Object.assign(braced(d), { brace: null })],
  [
    'braceLowEnd',
    'two neighbors lean alike',
    (d) => Object.assign(d.pairs.find((p) => p.id === 's4.end')!.brace!, { low: 's4.end.left' }),
  ],
  ['braceLowEnd', 'the low end is on the shallower leg', (d) => shift(leg(d, 's3.end.left'), 'bed', 0.1)],
  [
    'bracedFlags',
    'a braced leg says that it is not',
    (d) => Object.assign(leg(d, 's3.end.left'), { braced: false }),
  ],
  ['bracePlaced', 'a brace is drawn elsewhere', (d) => shift(of(d, 'brace').at, 2, 0.01)],
  ['bracePlaced', 'a brace is drawn level', (d) => Object.assign(of(d, 'brace'), { turn: [0, 0, 0, 1] })],
  ['rampThere', 'the ramp has no figures', (d) => Object.assign(d, { ramp: null })],
  ['rampOnItsCircle', 'the ramp is longer', (d) => shift(d.ramp!, 'shoreX', -0.01)],
  ['rampBears', 'the ramp floats', (d) => shift(d.ramp!, 'slope', -0.01)],
  ['rampBears', 'the ramp is in the ground', (d) => shift(d.ramp!, 'slope', 0.01)],
  ['rampTouchOnGround', 'it touches in the air', (d) => shift(d.ramp!, 'shoreZ', 0.001)],
  ['rampPose', 'the ramp section lies level', (d) => Object.assign(section(d, 's1'), { z: 0.45 })],
  ['rampStep', 'the step is another', (d) => shift(d.ramp!, 'step', 0.01)],
  ['framesPlaced', 'a frame is not at its section', (d) => shift(of(d, 'frame').at, 1, 0.01)],
  [
    'framesPlaced',
    'a frame is turned away',
    (d) =>
      Object.assign(d.placements.find((p) => p.kind === 'frame' && p.section === 's3')!, {
        turn: [0, 0, 1, 0],
      }),
  ],
  [
    'capsInEmptySleeves',
    'a cap is in a used sleeve',
    (d) => shift(d.placements.find((p) => p.kind === 'sleeve-cap' && p.section === 's3')!.at, 0, 2.263774),
  ],
  ['setBoltsInSleeves', 'a set bolt is under the sleeve', (d) => shift(of(d, 'set-bolt').at, 2, -0.1)],
  ['clampsAtHoles', 'a clamp has slipped', (d) => shift(of(d, 'brace-clamp').at, 2, -0.01)],
  [
    'panelsOnFrames',
    'a panel overhangs',
    (d) => shift(d.placements.find((p) => p.kind === 'deck-panel' && p.section === 's3')!.at, 0, -0.1),
  ],
  ['postsReach', 'a post is not in the bottom', (d) => shift(of(d, 'anchor-post').at, 2, 0.3)],
  [
    'postsReach',
    'a post is longer than it must be',
    (d) => Object.assign(of(d, 'anchor-post'), { code: 'post-14' }),
  ],
  ['postsBesidePads', 'a post stands on a pad', (d) => moveTo(of(d, 'anchor-post'), leg(d, 's5.end.left'))],
  ['extrasOnEdges', 'a bumper hangs in the air', (d) => shift(of(d, 'bumper').at, 1, 0.2)],
  ['fenderBoards', 'a board is missing', (d) => drop(d, 'fender-board')],
  ['fenderBoards', 'a bolt is missing', (d) => drop(d, 'fender-bolt')],
  ['fenderBoards', 'a board stands over the deck', (d) => shift(of(d, 'fender-board').at, 2, 0.1)],
  [
    'fenderBoards',
    'a board faces the dock',
    (d) => {
      const { turn } = of(d, 'fender-board')
      ;[turn[2], turn[3]] = [turn[3], -turn[2]]
    },
  ],
  ['fenderBoards', 'a bolt is under the rail', (d) => shift(of(d, 'fender-bolt').at, 2, -0.2)],
  ['fenderBoards', 'a bolt is beside its board', (d) => shift(of(d, 'fender-bolt').at, 0, 0.1)],
  ['hingeOnAxis', 'a hinge pin is on the deck', (d) => shift(of(d, 'hinge-pin').at, 2, 0.0635)],
  ['rowsCountPlacements', 'a row counts one more', (d) => shift(row(d, 'foot-pad'), 'quantity', 1)],
  [
    'rowsCountPlacements',
    'a placed piece is in no row',
    (d) => Object.assign(d, { parts: d.parts.filter((r) => r.kind !== 'hinge-bar') }),
  ],
  [
    'rowsCountPlacements',
    'a row of nothing',
    (d) => d.parts.push({ ...row(d, 'frame'), code: '5x8', quantity: 0 }),
  ],
  ['rowsSayTheCatalog', 'a unit weighs 1 g more', (d) => shift(row(d, 'frame'), 'unitMass', 0.001)],
  ['rowsSayTheCatalog', 'a unit costs a cent less', (d) => shift(row(d, 'frame'), 'unitPrice', -1)],
  ['rowsSayTheCatalog', 'a part is in another bag', (d) => Object.assign(row(d, 'set-bolt'), { bag: 'Z' })],
  ['sparesByPolicy', 'a spare is missing', (d) => shift(row(d, 'set-bolt'), 'spares', -1)],
  ['massesAreSums', 'a row weighs 1 g more', (d) => shift(row(d, 'frame'), 'mass', 0.001)],
  ['massesAreSums', 'the total is 1 g off', (d) => shift(d.totals, 'mass', 0.001)],
  ['pricesAreSums', 'a row costs a cent less', (d) => shift(row(d, 'frame'), 'price', -1)],
  ['pricesAreSums', 'the total is a cent off', (d) => shift(d.totals, 'price', 1)],
  ['sectionMasses', 'a section weighs 1 g less', (d) => shift(section(d, 's3'), 'mass', -0.001)],
  ['sectionMasses', 'panels are lifted', (d) => shift(section(d, 's3'), 'lift', 34.03)],
  ['sectionMasses', 'a piece belongs to nothing', (d) => Object.assign(of(d, 'leg'), { section: 's9' })],
  ['heaviestLift', 'another lift is greater', (d) => shift(d.totals, 'heaviestLift', -1)],
  ['heaviestLift', 'another section is named', (d) => Object.assign(d.totals, { heaviestSection: 's1' })],
  ['idsByContract', 'a section is called otherwise', (d) => Object.assign(section(d, 's4'), { id: 's04' })],
  [
    'idsByContract',
    'a leg is called otherwise',
    (d) => Object.assign(leg(d, 's4.end.left'), { id: 's4.left' }),
  ],
  ['idsByContract', 'two joints are called alike', (d) => d.joints.push(d.joints[0]!)],
  [
    'piecesOfSomething',
    'a bolt is of nothing',
    (d) => Object.assign(of(d, 'set-bolt'), { of: 's9.end.left' }),
  ],
  ['turnsAreUnit', 'a turn stretches', (d) => shift(of(d, 'brace').turn, 3, 0.01)],
  [
    'orderOfWork',
    'work begins with the ramp',
    (d) => Object.assign(d, { workOrder: ['s1', 's2', 's3', 's4', 's5'] }),
  ],
  [
    'orderOfWork',
    'a section hangs on one to come',
    (d) => Object.assign(d, { workOrder: ['s2', 's1', 's4', 's3', 's5'] }),
  ],
  ['orderOfWork', 'a section is left out', (d) => d.workOrder.pop()],
  ['findingsAreWhole', 'a finding about nothing', (d) => d.findings.push({ ...FINDING, parts: ['s9'] })],
  [
    'findingsAreWhole',
    'a severity that is none',
    (d) => d.findings.push({ ...FINDING, severity: 'error' as 'stop' }),
  ],
  [
    'findingsAreWhole',
    'a hole in the words',
    (d) => d.findings.push({ ...FINDING, text: 'Leg {leg} is short.' }),
  ],
  ['findingsAreWhole', 'no basis', (d) => d.findings.push({ ...FINDING, basis: '' })],
  [
    'figuresHoldNoWords',
    'a list is made a sentence of',
    (d) =>
      d.findings.push({ ...FINDING, values: { legs: { value: 's4.end.left and 3 more', unit: 'text' } } }),
  ],
  [
    'figuresHoldNoWords',
    'a word of ours stands among names',
    (d) => d.findings.push({ ...FINDING, values: { edge: { value: ['left'], unit: 'text' } } }),
  ],
  [
    'figuresHoldNoWords',
    'no language has a key',
    (d) => d.findings.push({ ...FINDING, values: { edge: { value: 'front', unit: 'key' } } }),
  ],
  [
    'remediesApply',
    'a remedy that changes what is not there',
    (d) =>
      d.findings.push({
        ...FINDING,
        remedy: { key: 'x', values: {}, patch: [{ op: 'replace', path: '/dock/deck/height', value: 1 }] },
      }),
  ],
  ['numbersRounded', 'a number is not rounded', (d) => shift(leg(d, 's4.end.left'), 'bed', 1e-8)],
  ['numbersRounded', 'a zero is negative', (d) => Object.assign(section(d, 's3'), { y: -0 })],
  ['numbersRounded', 'a number is none', (d) => Object.assign(section(d, 's3'), { y: Number.NaN })],
  [
    'fingerprintShape',
    'a hash is cut',
    (d) => Object.assign(d.fingerprint, { all: d.fingerprint.all.slice(1) }),
  ],
  [
    'fingerprintOfContent',
    'the hash of another design',
    (d) => Object.assign(d.fingerprint, { design: '0'.repeat(64) }),
  ],
  [
    'fingerprintOfContent',
    'the hash of another catalog',
    (d) => Object.assign(d.fingerprint, { catalog: '0'.repeat(64) }),
  ],
  ['chancesFollow', 'a chance is faked', (d) => Object.assign(leg(d, 's4.end.left'), { fitChance: 0.5 })],
  [
    'chancesFollow',
    'a chance is left out',
    (d) => {
      Object.assign(d, structuredClone(deriveFound(design, demoCatalog)), { pending: undefined })
      Object.assign(leg(d, 's4.end.left'), { fitChance: null })
    },
  ],
  [
    'chancesFollow',
    'the bed is known better than the reserve says',
    (d) => {
      Object.assign(d, structuredClone(deriveFound(design, demoCatalog)), { pending: undefined })
      for (const one of d.fit!.legs) shift(one, 'error', -0.01)
    },
  ],
  ['structureIsWhole', 'it never comes', (d) => Object.assign(d, { pending: undefined })],
  [
    'structureIsWhole',
    'a leg is not told of',
    (d) => {
      const { structure } = deriveFound(design, demoCatalog)
      Object.assign(d, { structure: { ...structure, legs: structure!.legs.slice(1) } })
    },
  ],
  [
    'structureIsWhole',
    'a leg is over its use without a finding',
    (d) => {
      const { structure } = deriveFound(design, demoCatalog)
      const [first, ...rest] = structure!.legs
      Object.assign(d, { structure: { ...structure, legs: [{ ...first!, use: 1.2 }, ...rest] } })
    },
  ],
  ['wavesByTheBook', 'no waves are told of', (d) => Object.assign(d, { waves: null })],
  ['wavesByTheBook', 'a wave is higher', (d) => shift(d.waves!, 'open', 0.01)],
  ['wavesByTheBook', 'its crest is lower', (d) => shift(d.waves!, 'crest', -0.01)],
  ['wavesByTheBook', 'a deck is recommended lower', (d) => shift(d.waves!, 'recommendedAllSeason', -0.01)],
  ['wavesByTheBook', 'a wave is longer', (d) => shift(d.waves!, 'length', 0.1)],
  [
    'wavesFound',
    'a crest reaches the frame without a finding',
    (d) => shift(d.waves!, 'recommendedDeckHeight', 0.5),
  ],
  ['wavesFound', 'a deck awash that is not', (d) => d.findings.push({ ...FINDING, code: 'deck-awash' })],
]

const FINDING: Mutable<Dock['findings'][number]> = {
  code: 'made-up',
  severity: 'note',
  parts: ['s2'],
  values: {},
  text: 'Made up.',
  basis: 'common practice',
  remedy: null,
}

/** Broken on the wide dock, which has ties. */
const ON_WIDE = ['tiePlates', 'tiesWhereEdgesTouch']

describe('each law fails where it is broken', () => {
  it.each(BREAKS)('%s: %s', (name, what, breakIt) => {
    const onWide = ON_WIDE.includes(name) && what !== 'a tie without touching edges'
    const [input, catalog] = onWide
      ? [wideDesign, metricCatalog]
      : name === 'fenderBoards'
        ? [fenderDesign, fenderCatalog]
        : [design, demoCatalog]
    const dock = structuredClone(deriveAtOnce(input, catalog)) as Broken
    expect(LAWS[name]!(dock as Dock, input, catalog)).toEqual([])
    breakIt(dock)
    expect(LAWS[name]!(dock as Dock, input, catalog)).not.toEqual([])
  })

  it('overlapsAreFound: the plan overlaps and no stop says so', () => {
    const input = parsed({
      ...workedStraight,
      dock: {
        deckHeight: 0.6,
        frame: '4x8',
        plan: [
          { id: 'a', on: null },
          { id: 'b', on: 'a', edge: 'end', with: 'start', along: 0 },
          { id: 'c', on: 'a', edge: 'end', with: 'start', along: 0.3 },
        ],
      },
    })
    const dock = structuredClone(deriveAtOnce(input, demoCatalog)) as Broken
    expect(LAWS.overlapsAreFound!(dock as Dock, input, demoCatalog)).toEqual([])
    dock.findings = dock.findings.filter((f) => !f.parts.includes('b') || !f.parts.includes('c'))
    expect(LAWS.overlapsAreFound!(dock as Dock, input, demoCatalog)).not.toEqual([])
  })

  it('boatsHaveRoom, boatsFloat: a boat lies on another, aground, and nobody says so', () => {
    const boat = { length: 6, height: 0.6, draught: 3, mass: 900, section: 's5', edge: 'left' }
    const input = parsed({
      ...contractDemo,
      dock: {
        ...contractDemo.dock,
        boats: [
          { id: 'a', ...boat },
          { id: 'b', ...boat, section: 's4' },
        ],
      },
    })
    for (const [law, code] of [
      ['boatsHaveRoom', 'boats-overlap'],
      ['boatsFloat', 'boat-aground'],
    ] as const) {
      const dock = structuredClone(deriveAtOnce(input, demoCatalog)) as Broken
      expect(LAWS[law]!(dock as Dock, input, demoCatalog)).toEqual([])
      dock.findings = dock.findings.filter((f) => f.code !== code)
      expect(LAWS[law]!(dock as Dock, input, demoCatalog)).not.toEqual([])
    }
  })

  it.each<[law: 'alongPairs' | 'alongFigures', what: string, (dock: Broken) => unknown]>([
    ['alongPairs', 'its brace is nobody’s wish', (d) => Object.assign(along(d), { id: 's4.right' })],
    [
      'alongPairs',
      'it joins legs across',
      (d) => Object.assign(along(d), { legs: ['s4.end.left', 's5.end.right'] }),
    ],
    ['alongPairs', 'a leg has two', (d) => d.pairs.push({ ...along(d), id: 's5.left' })],
    ['alongFigures', 'it is longer than its holes', (d) => shift(along(d).brace!, 'highZ', 0.05)],
    ['alongFigures', 'it hangs where it need not', (d) => lift(along(d), 0.15)],
    ['alongFigures', 'two clamps meet', (d) => lift(along(d), -0.129)],
    ['alongFigures', 'it is lost, and none fits', (d) => Object.assign(along(d), { brace: null })],
  ])('%s: %s', (name, _what, breakIt) => {
    const input = askedAlong(design, 'last')
    const dock = structuredClone(deriveAtOnce(input, alongCatalog)) as Broken
    expect(LAWS[name]!(dock as Dock, input, alongCatalog)).toEqual([])
    breakIt(dock)
    expect(LAWS[name]!(dock as Dock, input, alongCatalog)).not.toEqual([])
    if (name === 'alongPairs') expect(LAWS[name]!(dock as Dock, design, alongCatalog)).not.toEqual([])
  })

  it('limitsAreTold: a dock is over a limit and nobody says so, or says so for nothing', () => {
    const limits = {
      reach: 5,
      width: 1,
      area: 5,
      depth: 0.3,
      share: 0.1,
      sides: [{ from: [0, 1], to: [5, 1], distance: 1 }],
    }
    const input = parsed({ ...contractDemo, site: { ...contractDemo.site, limits, waterWidth: 50 } })
    const dock = deriveAtOnce(input, demoCatalog)
    expect(LAWS.limitsAreTold!(dock, input, demoCatalog)).toEqual([])
    for (const code of ['reach', 'share', 'width', 'area', 'depth', 'side']) {
      const broken = structuredClone(dock) as Broken
      const kept = broken.findings.filter((f) => f.code !== `limit-${code}`)
      expect(kept.length, code).toBe(broken.findings.length - 1)
      broken.findings = kept
      expect(LAWS.limitsAreTold!(broken as Dock, input, demoCatalog)).toHaveLength(1)
      expect(LAWS.limitsAreTold!(dock, parsed(contractDemo), demoCatalog)).toHaveLength(6)
    }
  })

  it('leaves no law without a dock that breaks it', () => {
    const broken = [
      'overlapsAreFound',
      'boatsHaveRoom',
      'boatsFloat',
      'limitsAreTold',
      'alongPairs',
      'alongFigures',
      ...BREAKS.map(([law]) => law),
    ]
    expect(Object.keys(LAWS).filter((name) => !broken.includes(name))).toEqual([])
  })
})
