/** Why each derived number is what it is, as data: words are made from it per language. */
import { COMMON } from './basis.ts'
import type { Reason, Reasons, ReasonTerm, Waves } from './dock.ts'
import type { Kit } from './kit.ts'
import { round6 } from './numbers.ts'
import { type BracedPair, longestOf, riseOf, toBed, toFrame, toPad } from './parts/braces.ts'
import { clampsBeside, triedOn } from './parts/braces-tried.ts'
import {
  aboveDeck,
  type PlacedLeg,
  requiredOf,
  reserveOf,
  reservePartsOf,
  setHeightOf,
} from './parts/legs.ts'
import { footingAt } from './site/footing.ts'

const term = (key: string, value: number | string, unit: string, from: string): ReasonTerm => ({
  key,
  value: typeof value === 'number' ? round6(value) : value,
  unit,
  from,
})
const reason = (
  rule: string,
  terms: readonly ReasonTerm[],
  value: number | string,
  unit: string,
  basis: string = COMMON,
): Reason => ({
  rule,
  terms,
  result: { value: typeof value === 'number' ? round6(value) : value, unit },
  basis,
})

export function explain(kit: Kit, waves: Waves | null): Reasons {
  return {
    waves: waves ? waveReasons(kit, waves) : [],
    start: startReasons(kit),
    ramp: rampReasons(kit),
    legs: Object.fromEntries(kit.legs.map((leg) => [leg.id, legReasons(leg, kit)])),
    pairs: Object.fromEntries(kit.pairs.map((pair) => [pair.pair.id, pairReasons(pair, kit)])),
    placements: countReasons(kit),
    totals: [
      reason(
        'mass',
        [term('parts', kit.count.parts.length, 'count', 'parts')],
        kit.count.grams / 1000,
        'kg',
        'Sum of the parts list, spares left out',
      ),
      reason(
        'price',
        [term('parts', kit.count.parts.length, 'count', 'parts')],
        kit.count.price,
        'minor',
        'Sum of the parts list by the catalog',
      ),
    ],
  }
}

function waveReasons({ design, shop }: Kit, waves: Waves): Reason[] {
  const { wind, levels } = design.site
  const basis = 'Shore Protection Manual 1984; crest and breaking by ASCE 7-16 5.4.4 (from memory)'
  const frame = design.dock.deckHeight - waves.underside
  const sum = [
    term('clearance', shop.rules.waveClearance, 'm', 'catalog'),
    term('frame', frame, 'm', 'catalog'),
  ]
  const high = Math.max(0, levels.high)
  const byWake = waves.wake > waves.tenth
  const raised = wind
    ? [
        reason(
          waves.breaks ? 'wave-height-depth' : 'wave-height',
          [
            term('wind', wind.speed, 'm/s', 'site'),
            term('fetch', wind.fetch, 'm', 'site'),
            ...(wind.depth ? [term('fetchDepth', wind.depth, 'm', 'site')] : []),
            term('open', waves.open, 'm', 'Shore Protection Manual 1984'),
            term('period', waves.period, 's', 'Shore Protection Manual 1984'),
            term('depth', waves.depth, 'm', 'site'),
          ],
          waves.height,
          'm',
          basis,
        ),
      ]
    : []
  return [
    ...raised,
    reason(
      byWake ? 'wake-crest' : 'wave-crest',
      [
        byWake ? term('wake', waves.wake, 'm', 'site') : term('tenth', waves.tenth, 'm', 'waves'),
        term('depth', waves.depth, 'm', 'site'),
      ],
      waves.crest,
      'm',
      basis,
    ),
    reason(
      'deck-re-set',
      [term('crest', waves.crest, 'm', 'waves'), ...sum],
      waves.recommendedDeckHeight,
      'm',
      basis,
    ),
    reason(
      'deck-all-season',
      [term('high', high, 'm', 'site'), term('crest', waves.crestHigh, 'm', 'waves'), ...sum],
      waves.recommendedAllSeason,
      'm',
      basis,
    ),
  ]
}

function startReasons({ start, design, shop, layout }: Kit): Reason[] {
  if (!layout.standing) return []
  const terms =
    start.by === 'given'
      ? [term('start', start.x, 'm', 'design')]
      : start.by === 'ramp'
        ? [
            term('high', design.site.levels.high, 'm', 'design'),
            term('margin', shop.rules.startMargin, 'm', 'catalog'),
            term('step', shop.rules.startStep, 'm', 'catalog'),
          ]
        : [
            term('clearance', shop.rules.frameToBed, 'm', 'catalog'),
            term('step', shop.rules.startStep, 'm', 'catalog'),
          ]
  return [reason(`start-${start.found ? start.by : 'not-found'}`, terms, start.x, 'm')]
}

function rampReasons({ ramp, layout, shop }: Kit): Reason[] {
  if (!ramp?.contact) return []
  return [
    reason(
      ramp.contact.onEdge ? 'ramp-on-crest' : 'ramp-on-end',
      [
        term('length', layout.ramp!.frame.length, 'm', 'catalog'),
        term('hingeHeight', ramp.hingeZ, 'm', 'design'),
        term('depth', shop.shape(layout.ramp!.frame).depth, 'm', 'catalog'),
        term('shoreX', ramp.contact.x, 'm', 'site'),
        term('shoreZ', ramp.contact.z, 'm', 'site'),
      ],
      Math.tan(ramp.contact.tilt),
      'slope',
      'Geometry: arc about the hinge axis',
    ),
  ]
}

function legReasons(leg: PlacedLeg, kit: Kit): Reason[] {
  const { design, shop, bed } = kit
  const setHeight = setHeightOf(leg, kit)
  const reserve = reserveOf(leg, kit)
  const parts = reservePartsOf(leg, kit)
  const bottom = footingAt(bed, leg.x, leg.y)
  const reasons = [
    reason(
      'set-height',
      [term('deck', design.dock.deckHeight, 'm', 'design'), term('bed', leg.bed, 'm', 'site')],
      setHeight,
      'm',
      'Geometry: deck surface to the sole of the foot pad',
    ),
    reason(
      'reserve',
      [
        term('minimum', shop.rules.reserveMin, 'm', 'catalog'),
        term('soundingError', design.site.soundingError, 'm', 'design'),
        term('scour', parts.scour, 'm', `catalog: ${bottom}`),
        term('sinkage', parts.sinkage, 'm', `catalog: ${bottom}, ${leg.pad.code}`),
        term('rise', parts.rise, 'm', 'design: high level'),
        term('added', parts.added, 'm', 'design'),
      ],
      reserve,
      'm',
    ),
    reason(
      leg.by === 'rule' ? 'length' : leg.by === 'override' ? 'length-by-hand' : 'length-owned',
      [
        term('setHeight', setHeight, 'm', 'set-height'),
        term('reserve', reserve, 'm', 'reserve'),
        term('sole', leg.pad.sole, 'm', 'catalog'),
        term('required', requiredOf(leg, kit), 'm', 'set-height + reserve - sole'),
      ],
      leg.stock?.length ?? 'none',
      'm',
    ),
  ]
  const above = aboveDeck(leg, kit)
  if (above !== null)
    reasons.push(
      reason(
        'above-deck',
        [
          term('length', leg.stock!.length, 'm', 'length'),
          term('sole', leg.pad.sole, 'm', 'catalog'),
          term('setHeight', setHeight, 'm', 'set-height'),
        ],
        above,
        'm',
        'Geometry',
      ),
    )
  return reasons
}

function pairReasons(braced: BracedPair, kit: Kit): Reason[] {
  const { pair, needsBrace, leftOut, level, fit } = braced
  const { shop } = kit
  const reasons = [
    pair.along && !leftOut
      ? reason('brace-along', [], 'yes', 'text')
      : reason(
          leftOut ? 'brace-left-out' : 'brace-needed',
          [
            term('longest', longestOf(pair) ?? 'none', 'm', 'legs'),
            term('from', shop.rules.braceFrom, 'm', 'catalog'),
          ],
          needsBrace && !leftOut ? 'yes' : 'no',
          'text',
        ),
  ]
  const shown = fit ?? triedOn(braced, kit)[0]
  if (shown)
    reasons.push(
      reason(
        fit ? 'brace-fit' : 'brace-no-fit',
        [
          term('holes', shown.brace.holes, 'm', 'catalog'),
          term(
            'span',
            pair.spacing - 2 * shop.catalog.clamp.reach,
            'm',
            'spacing of the legs less the clamps',
          ),
          term('rise', riseOf(shown, pair, shop), 'm', 'holes and span, by Pythagoras'),
          term('toBed', toBed(shown, kit), 'm', 'site'),
          term('toPad', toPad(shown, kit), 'm', 'site'),
          term('toFrame', toFrame(shown, kit), 'm', 'catalog'),
          term('low', shown.low.id, 'text', level ? 'level ground' : 'the deeper leg'),
        ],
        shown.brace.code,
        'text',
      ),
    )
  const beside = shown && clampsBeside(shown, pair, kit)
  if (beside !== null && beside !== undefined)
    reasons.push(reason('brace-beside', [term('least', shop.rules.braceToPad, 'm', 'catalog')], beside, 'm'))
  return reasons
}

function countReasons({ legs, layout, joints, pairs, shop }: Kit): Reason[] {
  const sleeves = layout.placed.length * 4
  const braces = pairs.filter((p) => p.fit).length
  const hooks = joints.all.filter((j) => j.kind === 'hook').length
  const count = (rule: string, key: string, each: number, n: number, of: string): Reason =>
    reason(rule, [term(of, n, 'count', 'placing'), term('each', each, 'count', 'catalog')], each * n, key)
  return [
    count('foot-pads', 'count', 1, legs.length, 'legs'),
    count('leg-caps', 'count', 1, legs.length, 'legs'),
    reason(
      'sleeve-caps',
      [term('sleeves', sleeves, 'count', 'placing'), term('legs', legs.length, 'count', 'placing')],
      sleeves - legs.length,
      'count',
    ),
    count('set-bolts', 'count', shop.catalog.sleeve.bolts.length, legs.length, 'legs'),
    count('hook-brackets', 'count', 2 * shop.rules.bracketsPerHook, hooks, 'joints'),
    count('brace-clamps', 'count', 2, braces, 'braces'),
  ]
}
