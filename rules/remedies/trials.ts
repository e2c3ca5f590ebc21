/**
 * Docks that are tried: each is made once, and no more than a handful with their structure, for that takes as long as the dock in hand did.
 * What there is no more time for is null, as is what a patch makes no design of.
 */
import { proposeKit } from '../assess-kit.ts'
import { STRUCTURE_CHECKS } from '../checks/structure/registry.ts'
import { clashesOf, withClashes } from '../clearance/clashes.ts'
import { type Design, parseDesign } from '../design/index.ts'
import { applyPatch } from '../design/patch.ts'
import type { Dock, PatchOperation } from '../dock.ts'
import { deriveKit, type Kit } from '../kit.ts'
import { type Standing, stand } from '../stand.ts'
import type { Depth } from '../structure/dock/structure.ts'
import { withStructure } from '../with-structure.ts'

/** Docks that are laid out, at the most, ... */
const PLACED = 40
/** those whose structure is solved but for buckling, for ten times the time, ... */
const QUICK = 18
/** and those whose buckling and low feet are solved too, for twice as much again. */
const WHOLE = 5

export interface Trials {
  readonly before: Dock
  readonly kit: Kit
  /** Codes of what could not be judged of the dock in hand: nobody knows what the loads would have done to it. */
  readonly unknown: ReadonlySet<string>
  patched(design: Design, patch: readonly PatchOperation[]): Design | null
  /** Its parts, and all that is found of them without its structure. */
  placed(design: Design): Tried | null
  /** Where the frame and what acts on it are the same, so is what was found of its structure: that takes no time. */
  alike(design: Design): Dock | null
  /** But what needs buckling and low feet. */
  quick(design: Design): Dock | null
  /** All that is found but what `sleeves-decide` asks. */
  whole(design: Design): Dock | null
}

export interface Tried {
  readonly kit: Kit
  readonly dock: Dock
}

export function trialsFrom(before: Dock, kit: Kit, standing: Standing): Trials {
  const structural = new Set(STRUCTURE_CHECKS.map(({ code }) => code))
  const placed = once(PLACED, (design: Design): Tried => {
    const next = deriveKit(design, kit.shop.catalog)
    const proposed = proposeKit(next)
    return { kit: next, dock: withClashes(proposed, clashesOf(proposed, next)) }
  })
  const solved = (most: number, depth: Depth) =>
    once(most, (design: Design) => {
      const tried = placed(design)
      if (!tried) return null
      const after = withStructure(tried.dock, stand(tried.kit, tried.dock.waves, depth))
      // What can no longer be judged has nothing found against it, and is no better for that.
      return standing.structure !== null && after.structure === null ? null : after
    })
  return {
    before,
    kit,
    unknown: standing.structure === null ? structural : new Set(),
    patched,
    placed,
    alike: once(PLACED, (design: Design) => {
      const tried = placed(design)
      return tried && sameFrame({ dock: before, kit }, tried) ? withStructure(tried.dock, standing) : null
    }),
    quick: solved(QUICK, { deep: false, fine: true }),
    whole: solved(WHOLE, { deep: true, compared: false }),
  }
}

/** Remembers what was made of alike things, and makes no more than so many. */
function once<From, To>(most: number, make: (from: From) => To | null) {
  const known = new Map<string, To | null>()
  return (from: From): To | null => {
    const name = JSON.stringify(from)
    if (!known.has(name)) known.set(name, known.size < most ? make(from) : null)
    return known.get(name)!
  }
}

/** Null where the patch does not fit the Design, or makes none. */
function patched(design: Design, patch: readonly PatchOperation[]): Design | null {
  try {
    const parsed = parseDesign(applyPatch(design, patch))
    return parsed.ok ? parsed.value : null
  } catch {
    return null
  }
}

/** All that a structure is solved from: where the parts are, and what acts on them. */
function sameFrame(a: Tried, b: Tried): boolean {
  const from = ({ dock, kit: { design } }: Tried) =>
    JSON.stringify([
      [dock.start, dock.sections, dock.ramp, dock.legs, dock.pairs, dock.joints, dock.waves, dock.placements],
      [design.site, design.dock.load, design.dock.boat, design.dock.boats],
    ])
  return from(a) === from(b)
}
