/**
 * Ways round what lies on the bed. A dock is slid along its line, its head or its braces turned, a brace left out, a boat kept on the other
 * side; of these the first is proposed that geometry finds nothing against. Whether the dock stands as well is proved as of any remedy.
 */
import { proposeKit } from '../assess-kit.ts'
import { meters, remedy, replace } from '../checks/check.ts'
import { type Design, parseDesign } from '../design/index.ts'
import { applyPatch } from '../design/patch.ts'
import type { Dock, Finding, PatchOperation, Remedy } from '../dock.ts'
import { deriveKit, type Kit } from '../kit.ts'
import { isWorse } from '../remedies/compare.ts'
import { withClashes } from './clashes.ts'
import { OBSTRUCTIONS, obstructionsOf } from './obstructions.ts'

/** The dock is slid in such steps, m, ... */
const STEP = 0.1
/** so many of them out and as many back, ... */
const STEPS = 20
/** of a large dock fewer: each is placed anew. */
const PLACED = 2400

/** The dock with a way round proposed for each obstruction that has one. */
export function withWaysRound(dock: Dock, kit: Kit): Dock {
  const codes = new Set<string>(Object.values(OBSTRUCTIONS).map(({ code }) => code))
  const isObstruction = (finding: Finding): boolean => codes.has(finding.code)
  if (!dock.findings.some(isObstruction)) return dock
  const tried = new Map<string, Dock | null>()
  const made = ({ patch }: Remedy): Dock | null => {
    const name = JSON.stringify(patch)
    if (!tried.has(name)) tried.set(name, placedBy(patch, kit))
    return tried.get(name)!
  }
  const count = (of: Dock): number => of.findings.filter(isObstruction).length
  const clears = (finding: Finding, way: Remedy): boolean => {
    const after = made(way)
    return (
      after !== null &&
      !isWorse(finding, dock, after) &&
      count(after) < count(dock) &&
      !after.findings.some((f) => isSame(f, finding))
    )
  }
  const findings = dock.findings.map((finding) => {
    if (finding.remedy || !isObstruction(finding)) return finding
    for (const way of waysOf(finding, kit)) if (clears(finding, way)) return { ...finding, remedy: way }
    return finding
  })
  return Object.freeze({ ...dock, findings })
}

const isSame = (a: Finding, b: Finding): boolean =>
  a.code === b.code && a.parts.join() === b.parts.join() && a.values.id?.value === b.values.id?.value

/** What can be seen at once of the dock that a patch makes; null where it does not fit. */
function placedBy(patch: readonly PatchOperation[], kit: Kit): Dock | null {
  const parsed = parseDesign(applyPatch(kit.design, patch))
  if (!parsed.ok) return null
  const next = deriveKit(parsed.value, kit.shop.catalog, kit.bed)
  const placed = proposeKit(next)
  return withClashes(placed, obstructionsOf(placed, next))
}

/** In the order in which they are tried: what changes the least first. */
function* waysOf({ code, parts }: Finding, kit: Kit): Generator<Remedy> {
  const { design } = kit
  const { boat, head } = design.dock
  const ofBoat = code === OBSTRUCTIONS.boat.code || code === OBSTRUCTIONS.boatNear.code
  const pair = kit.pairs.find((one) => one.pair.id === parts[0])?.pair
  if (ofBoat && boat)
    yield remedy('boat-over', [replace('/dock/boat/side', boat.side === 'left' ? 'right' : 'left')])
  if (pair) yield turnedBraces(design)
  yield* slides(kit)
  if (head && head.sections > 0 && (head.shape === 'left' || head.shape === 'right'))
    yield remedy('turn-head', [replace('/dock/head/shape', head.shape === 'left' ? 'right' : 'left')])
  if (pair && code === OBSTRUCTIONS.part.code) yield withoutBrace(design, pair.id)
}

function turnedBraces({ dock: { bracing } }: Design): Remedy {
  const first = bracing?.first === 'right' ? 'left' : 'right'
  const patch: PatchOperation[] = bracing
    ? [{ op: 'add', path: '/dock/bracing/first', value: first }]
    : [{ op: 'add', path: '/dock/bracing', value: { first } }]
  return remedy('turn-braces', patch)
}

function withoutBrace({ dock: { bracing } }: Design, pair: string): Remedy {
  const patch: PatchOperation = !bracing
    ? { op: 'add', path: '/dock/bracing', value: { none: [pair] } }
    : bracing.none
      ? { op: 'add', path: '/dock/bracing/none/-', value: pair }
      : { op: 'add', path: '/dock/bracing/none', value: [pair] }
  return remedy('skip-brace', [patch])
}

/** The nearest first, out before back. */
function* slides({ start, layout }: Kit): Generator<Remedy> {
  if (!start.found) return
  const most = Math.min(STEPS, Math.ceil(PLACED / Math.max(1, layout.placed.length) / 2))
  for (let n = 1; n <= most; n++)
    for (const way of [1, -1] as const) {
      const to = Math.round((start.x + way * n * STEP) * 1e4) / 1e4
      yield remedy(way > 0 ? 'slide-out' : 'slide-back', [replace('/dock/start', to)], {
        by: meters(n * STEP),
      })
    }
}
