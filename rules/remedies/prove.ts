/**
 * Which remedies help. A check proposes one; it is offered only where the dock that it makes lacks the finding, and has no other as grave that
 * this one has not. That is found by deriving that dock, which takes as long as deriving this one: off the frame of a drag, alike designs
 * once, what geometry alone refuses first, and no more than a handful with their structure. What is not tried is not offered.
 *
 * Where none is enough by itself for something that is to be fixed, a way out of several steps is looked for (`way-out.ts`).
 */
import { endBefore } from '../checks/structure/judged.ts'
import type { Design } from '../design/index.ts'
import type { Dock, Finding, Remedy } from '../dock.ts'
import type { Kit } from '../kit.ts'
import type { Standing } from '../stand.ts'
import { isToFix } from '../to-fix.ts'
import { isGone, isWorse } from './compare.ts'
import { opposed } from './opposed.ts'
import { type Trials, trialsFrom } from './trials.ts'
import { atHeight, heightsFor, wayOut } from './way-out.ts'

/** @param proposed the dock whose remedies are as the checks propose them; it becomes the one with those that help */
export function proveRemedies(proposed: Dock, kit: Kit, standing: Standing): Dock {
  const trials = trialsFrom(proposed, kit, standing)
  const proven = new Map<Finding, Remedy>()
  for (const finding of inTurn(proposed.findings)) {
    const helping = optionsFor(finding, proposed, kit.design).find((remedy) => helps(trials, finding, remedy))
    if (helping) proven.set(finding, helping)
  }
  const bare = proposed.findings.filter((finding) => isToFix(finding) && !proven.has(finding))
  const way = bare.length > 0 && proposed.structure !== null ? wayOut(trials) : null
  if (way) for (const finding of bare) if (mends(trials, finding, way.dock)) proven.set(finding, way.remedy)
  for (const finding of bare) {
    const shorter = proven.has(finding) ? null : shorterFor(finding, kit)
    if (shorter && helps(trials, finding, shorter)) proven.set(finding, shorter)
  }
  const findings = proposed.findings.map((finding) => {
    const remedy = proven.get(finding) ?? null
    return remedy === finding.remedy ? finding : { ...finding, remedy }
  })
  return Object.freeze({ ...proposed, findings: [...findings, ...opposed(proposed.findings)] })
}

/** Those with a remedy, the first of each kind of remedy before the second of any: four braces to put back do not use up the budget. */
function inTurn(findings: readonly Finding[]): Finding[] {
  const turns = new Map<string, number>()
  return findings
    .filter(({ remedy }) => remedy)
    .map((finding) => {
      const turn = turns.get(finding.remedy!.key) ?? 0
      turns.set(finding.remedy!.key, turn + 1)
      return { finding, turn }
    })
    .sort((a, b) => a.turn - b.turn)
    .map(({ finding }) => finding)
}

/** Of several heights of the deck that are asked for the lowest that is enough, so that one is asked for; posts by count: the way out finds how many. */
function optionsFor(finding: Finding, { findings }: Dock, design: Design): Remedy[] {
  const { remedy } = finding
  if (!remedy || !isToFix(finding)) return remedy ? [remedy] : []
  if (remedy.key === 'more-posts') return []
  if (remedy.key !== 'raise-deck') return [remedy]
  return heightsFor(findings, design).map((height) => atHeight(remedy, height))
}

/** What no post holds may be left out: the run then ends before the first section whose part is too weak. */
const shorterFor = ({ severity, remedy, parts }: Finding, kit: Kit): Remedy | null =>
  severity === 'stop' && remedy?.key === 'more-posts' && parts.length > 0
    ? endBefore(kit, parts[0]!.split('.')[0]!)
    : null

/** False where that is not known: the patch fits nowhere, or too much was tried before it. */
function helps(trials: Trials, finding: Finding, { patch }: Remedy): boolean {
  const design = trials.patched(trials.kit.design, patch)
  const good = (after: Dock | null | undefined): boolean => after != null && mends(trials, finding, after)
  if (!design || !good(trials.placed(design)?.dock)) return false
  const same = trials.alike(design)
  return same ? mends(trials, finding, same) : good(trials.quick(design)) && good(trials.whole(design))
}

const mends = ({ before, unknown }: Trials, finding: Finding, after: Dock): boolean =>
  isGone(finding, before, after) && !isWorse(finding, before, after, unknown)
