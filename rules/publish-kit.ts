/** A kit as the Dock that it is, before anything of it is judged or explained: all that a first picture needs. */
import type { Brace, Dock, Joint, Leg, Pair, Ramp, Reasons, Section } from './dock.ts'
import { fingerprintIn } from './fingerprint.ts'
import { type Kit, placementsOf, poseOf } from './kit.ts'
import { round6 } from './numbers.ts'
import { lowClearance, riseOf, toBed, toFrame } from './parts/braces.ts'
import { frameTop } from './parts/emit-part.ts'
import { aboveDeck, requiredOf, reserveOf, setHeightOf } from './parts/legs.ts'
import { totalsOf } from './parts/parts-list.ts'
import { wavesOf } from './site/waves/waves.ts'
import { ENGINE_VERSION } from './version.ts'

/** Of a dock that nobody has explained yet. */
export const NO_REASONS: Reasons = {
  waves: [],
  start: [],
  ramp: [],
  legs: {},
  pairs: {},
  placements: [],
  totals: [],
}

/** Plain data, numbers rounded to 1e-6. `structure` is null and `pending` true; no findings, no reasons: they are in `assessKit`. */
export function publishKit(kit: Kit): Dock {
  const { design, shop, layout, joints, count } = kit
  return Object.freeze({
    engine: ENGINE_VERSION,
    name: design.name,
    start: layout.standing ? round6(kit.start.x) : null,
    sections: layout.placed.map((p) => sectionOf(p, kit)),
    ramp: rampOf(kit),
    legs: legsOf(kit),
    pairs: pairsOf(kit),
    joints: joints.all.map(
      (j): Joint => ({
        id: j.id,
        between: [j.host.id, j.guest.id],
        kind: j.kind,
      }),
    ),
    placements: placementsOf(kit),
    parts: count.parts,
    totals: totalsOf(count, layout, shop.catalog.currency),
    existing: kit.existing,
    workOrder: layout.workOrder.map((p) => p.id),
    waves: wavesOf(kit),
    structure: null,
    fit: null,
    pending: true,
    findings: [],
    reasons: NO_REASONS,
    fingerprint: fingerprintIn(design, shop),
  })
}

function sectionOf(p: Kit['layout']['placed'][number], kit: Kit): Section {
  const pose = poseOf(p, kit)
  const { sectionGrams, liftGrams } = kit.count
  return {
    id: p.id,
    role: p.role,
    frame: p.frame.code,
    x: round6(pose.x),
    y: round6(pose.y),
    z: round6(pose.z),
    heading: p.heading,
    length: p.frame.length,
    width: p.frame.width,
    ...(p.frame.turn !== undefined && { turn: p.frame.turn }),
    on: p.host?.id ?? null,
    mass: sectionGrams[p.index]! / 1000,
    lift: liftGrams[p.index]! / 1000,
  }
}

function rampOf({ ramp }: Kit): Ramp | null {
  if (!ramp?.contact) return null
  const { x, z, tilt, onEdge } = ramp.contact
  return {
    slope: round6(Math.tan(tilt)),
    shoreX: round6(x),
    shoreZ: round6(z),
    step: round6(ramp.step),
    onEdge,
  }
}

function legsOf(kit: Kit): Leg[] {
  const { legs, pairs, shop } = kit
  const braced = new Set(pairs.filter((p) => p.fit).flatMap((p) => p.pair.legs.map((leg) => leg.id)))
  return legs.map((leg) => {
    const above = aboveDeck(leg, kit)
    const setHeight = setHeightOf(leg, kit)
    return {
      id: leg.id,
      section: leg.section.id,
      corner: leg.corner,
      x: round6(leg.x),
      y: round6(leg.y),
      bed: round6(leg.bed),
      setHeight: round6(setHeight),
      setHeightFrame: round6(setHeight + frameTop(shop)),
      required: round6(requiredOf(leg, kit)),
      reserve: round6(reserveOf(leg, kit)),
      stock: leg.stock?.length ?? null,
      code: leg.stock?.code ?? null,
      aboveDeck: above === null ? null : round6(above),
      pad: leg.pad.code,
      braced: braced.has(leg.id),
      fitChance: null,
    }
  })
}

const pairsOf = (kit: Kit): Pair[] =>
  kit.pairs.map(({ pair, needsBrace, fit }) => ({
    id: pair.id,
    legs: [pair.legs[0].id, pair.legs[1].id],
    spacing: round6(pair.spacing),
    needsBrace,
    ...(pair.along && { along: true }),
    brace: fit
      ? ({
          code: fit.brace.code,
          stock: fit.brace.holes,
          rise: round6(riseOf(fit, pair, kit.shop)),
          lowClearance: round6(lowClearance(fit, kit)),
          bedClearance: round6(toBed(fit, kit)),
          highClearance: round6(toFrame(fit, kit)),
          low: fit.low.id,
          lowZ: round6(fit.lowZ),
          highZ: round6(fit.highZ),
        } satisfies Brace)
      : null,
  }))
