/** What the remedies of a dock do: to its price, one by one, and to its findings, all together. */

import { derive } from '../../../rules/derive.ts'
import { applyPatch, type Catalog, type Design, type Finding, parseDesign } from '../../../rules/index.ts'
import { placedHere } from '../../assessment/assess.ts'
import { amountOf } from '../price.ts'
import { verdictOf } from '../verdict.ts'

export interface Mending {
  /** What each remedy does to the price, minor units; null where a finding has none. In the order of the findings. */
  readonly costs: readonly (number | null)[]
  /** Nothing is left to fix in it, and what it does to the price; null where there is none, or it is not worked out yet. */
  readonly all: { readonly design: Design; readonly cost: number } | null
}

/** Remedies that are tried one after the other; each takes as long as a whole derivation. */
const MOST = 6

/** Null where a patch does not fit. */
function mended(design: Design, { remedy }: Finding): Design | null {
  if (!remedy) return null
  try {
    const parsed = parseDesign(applyPatch(design, remedy.patch))
    return parsed.ok ? parsed.value : null
  } catch {
    return null
  }
}

const amountFor = (design: Design, catalog: Catalog): number =>
  amountOf(placedHere(design, catalog).dock, catalog)

/** By placing each dock that a remedy makes; equal patches once. */
export function costsOf(design: Design, catalog: Catalog, findings: readonly Finding[]): Mending['costs'] {
  const known = new Map<string, number | null>()
  let now: number | undefined
  return findings.map((finding) => {
    if (!finding.remedy) return null
    const key = JSON.stringify(finding.remedy.patch)
    if (!known.has(key)) {
      const next = mended(design, finding)
      now ??= amountFor(design, catalog)
      known.set(key, next && amountFor(next, catalog) - now)
    }
    return known.get(key)!
  })
}

/**
 * The dock that all remedies together make: one is taken, what is left is found anew, and so on until nothing is to be fixed. Null where there
 * is one thing to fix, which has a button of its own, or that end is not reached.
 */
export function mendAll(design: Design, catalog: Catalog, findings: readonly Finding[]): Mending['all'] {
  const { toFix } = verdictOf({ findings })
  if (toFix.length < 2) return null
  let [now, left] = [design, toFix]
  for (let step = 0; step < MOST; step++) {
    // A way of several steps was found as one that leaves the least to fix.
    const next = left.find(({ remedy }) => remedy?.steps) ?? left.find(({ remedy }) => remedy)
    const made = next ? mended(now, next) : null
    if (!made) return null
    const dock = derive(made, catalog)
    // What could not be judged has nothing found against it, and is no better for that.
    if (dock.structure === null) return null
    now = made
    left = verdictOf(dock).toFix
    if (left.length === 0) return { design: now, cost: amountOf(dock, catalog) - amountFor(design, catalog) }
  }
  return null
}
