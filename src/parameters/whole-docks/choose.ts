/** Of what a wish could be built as, the one to offer: with the least to mend, then the least price. Nothing is offered that was not derived. */
import { newPrice } from '../../../rules/existing/new-parts.ts'
import type { Design, Dock } from '../../../rules/index.ts'
import { type Candidates, KINDS, type Kind } from './candidates.ts'
import { type Fixes, fixesOf } from './fixes.ts'

export interface WholeDock {
  readonly kind: Kind
  readonly design: Design
  readonly dock: Dock
  readonly fixes: Fixes
}

/** Works a design out beside the page; null where it cannot. */
export interface Derive {
  place(design: Design): Promise<Dock | null>
  /** All that is found of it, remedies left out. */
  find(design: Design): Promise<Dock['findings'] | null>
}

/** So many of one wish are worked out to the end; what comes after costs more. */
const MOST = 4

/** One of each kind; a kind of which none could be worked out is left out. @param gone nobody waits any more */
export async function chooseDocks(
  candidates: Candidates,
  derive: Derive,
  gone: () => boolean,
): Promise<WholeDock[]> {
  const chosen: WholeDock[] = []
  for (const kind of KINDS) {
    const best = await chooseOne(kind, candidates[kind], derive, gone)
    if (gone()) return []
    if (best) chosen.push(best)
  }
  return chosen
}

async function chooseOne(
  kind: Kind,
  designs: readonly Design[],
  derive: Derive,
  gone: () => boolean,
): Promise<WholeDock | null> {
  const placed: { readonly design: Design; readonly dock: Dock; readonly atOnce: Fixes }[] = []
  for (const design of designs) {
    if (gone()) return null
    const dock = await derive.place(design)
    if (dock && dock.sections.length > 0) placed.push({ design, dock, atOnce: fixesOf(dock.findings) })
  }
  // What has least to mend before its structure is known is tried first, the cheapest of those before all.
  placed.sort((a, b) => order(a.atOnce, b.atOnce) || newPrice(a.dock) - newPrice(b.dock))
  let best: WholeDock | null = null
  for (const { design, dock } of placed.slice(0, MOST)) {
    if (gone()) return null
    const findings = await derive.find(design)
    if (!findings) continue
    const fixes = fixesOf(findings)
    if (!best || order(fixes, best.fixes) < 0) best = { kind, design, dock, fixes }
    if (order(fixes, NONE) === 0) break
  }
  return best
}

const NONE: Fixes = { stops: 0, warnings: 0 }
const order = (a: Fixes, b: Fixes): number => a.stops - b.stops || a.warnings - b.warnings
