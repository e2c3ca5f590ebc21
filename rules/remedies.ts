/**
 * Which remedies help. A check proposes one; it is offered only where the dock that it makes lacks the finding, or has it less badly, and
 * is not worse in anything else. That is found by deriving that dock, which takes as long as deriving this one: off the frame of a drag,
 * alike patches once, what geometry alone refuses first, and no more than a handful with their structure. What is not tried is not
 * offered.
 */
import { proposeKit } from './assess-kit.ts'
import { key } from './checks/check.ts'
import { toFindings } from './checks/index.ts'
import { STRUCTURE_CHECKS } from './checks/structure/registry.ts'
import { clashesOf, withClashes } from './clearance/clashes.ts'
import { type Design, parseDesign } from './design/index.ts'
import { applyPatch } from './design/patch.ts'
import type { Dock, Figure, Finding, PatchOperation, Remedy } from './dock.ts'
import { deriveKit, type Kit } from './kit.ts'
import { type Standing, stand } from './stand.ts'
import { withStructure } from './with-structure.ts'
import { FOUND_LATER } from './words/structure-words.ts'

/** Docks that are laid out, at the most, ... */
const TRIED = 24
/** those whose structure is solved quickly, for ten times the time, ... */
const QUICK = 6
/** and those whose buckling and sleeves are solved too, for five times as much again. */
const SOLVED = 4
/** A figure that moves by less than this part of it is no better. Judgment. */
const BETTER_BY = 0.05

/** The figure that tells how bad a finding is, and whether more of it is worse; others only go or stay. */
const FIGURES: Readonly<Record<string, { readonly name: string; readonly worse: 'more' | 'less' }>> = {
  'goes-over': { name: 'cases', worse: 'more' },
  buckles: { name: 'factor', worse: 'less' },
  'buckling-near': { name: 'factor', worse: 'less' },
  'leg-overloaded': { name: 'use', worse: 'more' },
  'brace-overloaded': { name: 'use', worse: 'more' },
  'brace-slips': { name: 'use', worse: 'more' },
  'dock-slides': { name: 'push', worse: 'more' },
  'sways-across': { name: 'sway', worse: 'more' },
  'sways-along': { name: 'sway', worse: 'more' },
  'section-floats': { name: 'lift', worse: 'more' },
  'hooks-lift': { name: 'up', worse: 'more' },
  'foot-sinks': { name: 'pressure', worse: 'more' },
  'foot-low': { name: 'use', worse: 'more' },
}

/** What two remedies ask of the same thing, and which way. */
const ASKS: Readonly<Record<string, { readonly ask: 'deck' | 'sections'; readonly way: 1 | -1 }>> = {
  'raise-deck': { ask: 'deck', way: 1 },
  'lower-deck': { ask: 'deck', way: -1 },
  'more-sections': { ask: 'sections', way: 1 },
  'fewer-sections': { ask: 'sections', way: -1 },
}

/** @param proposed the dock whose remedies are as the checks propose them; it becomes the one with those that help */
export function proveRemedies(proposed: Dock, kit: Kit, standing: Standing): Dock {
  const trial = makeTrial(proposed, kit, standing)
  const helping = new Set(inTurn(proposed.findings).filter((finding) => trial(finding, finding.remedy!)))
  const findings = proposed.findings.map((finding) =>
    helping.has(finding) || !finding.remedy ? finding : { ...finding, remedy: null },
  )
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

/** Whether a remedy does what it says. False where that is not known: its patch fits nowhere, or too much was tried before it. */
function makeTrial(before: Dock, kit: Kit, standing: Standing) {
  const structural = new Set(STRUCTURE_CHECKS.map(({ code }) => code))
  /** Of a dock that could not be judged nobody knows what the loads would have done to it. */
  const unknown = standing.structure === null ? structural : new Set<string>()
  const designs = once(Number.POSITIVE_INFINITY, (patch: Patch) => patched(kit.design, patch))
  const near = once(TRIED, (design: Design) => {
    const next = deriveKit(design, kit.shop.catalog)
    const placed = proposeKit(next)
    const dock = withClashes(placed, clashesOf(placed, next))
    return isWorse(before, dock, unknown) ? null : { next, dock }
  })
  const alike = once(TRIED, (design: Design) => {
    const { next, dock } = near(design)!
    return sameFrame({ dock: before, kit }, { dock, kit: next }) ? withStructure(dock, standing) : null
  })
  const stood = (deep: boolean) => (design: Design) => {
    const { next, dock } = near(design)!
    const after = withStructure(dock, stand(next, dock.waves, { deep, fine: true }))
    // What can no longer be judged has nothing found against it, and is no better for that.
    const lost = standing.structure !== null && after.structure === null
    return lost || isWorse(before, after, unknown) ? null : after
  }
  const quick = once(QUICK, stood(false))
  const whole = once(SOLVED, stood(true))
  return (finding: Finding, { patch }: Remedy): boolean => {
    const design = designs(patch)
    const good = (after: Dock | null | undefined) => after != null && helps(finding, before, after)
    if (!design || !good(near(design)?.dock)) return false
    const same = alike(design)
    return same ? helps(finding, before, same) : good(quick(design)) && good(whole(design))
  }
}

type Patch = readonly PatchOperation[]

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
function patched(design: Design, patch: Patch): Design | null {
  try {
    const parsed = parseDesign(applyPatch(design, patch))
    return parsed.ok ? parsed.value : null
  } catch {
    return null
  }
}

/** All that a structure is solved from: where the parts are, and what acts on them. */
function sameFrame(a: { dock: Dock; kit: Kit }, b: { dock: Dock; kit: Kit }): boolean {
  const from = ({ dock, kit: { design } }: typeof a) =>
    JSON.stringify([
      [dock.start, dock.sections, dock.ramp, dock.legs, dock.pairs, dock.joints, dock.waves, dock.placements],
      [design.site, design.dock.load, design.dock.boat],
    ])
  return from(a) === from(b)
}

/** Findings that are told only where a graver one of the same cause is not: coming in its place they are no worse. */
const GRAVER: Readonly<Record<string, string>> = {
  'dock-slides': 'goes-over',
  'clips-lift': 'section-floats',
  'crest-near-frame': 'crest-reaches-frame',
}

/** A stop or a warn that was not there, of one code more than there were, or a stop of other parts. */
function isWorse(before: Dock, after: Dock, unknown: ReadonlySet<string> = new Set()): boolean {
  const were = byCode(before.findings)
  for (const [code, now] of byCode(after.findings)) {
    const { severity } = now[0]!
    if (severity === 'note' || (severity === 'warn' && unknown.has(code))) continue
    const was = were.get(code) ?? []
    if (was.length === 0 && were.has(GRAVER[code] ?? '')) continue
    if (now.length > was.length) return true
    const parts = new Set(was.flatMap((finding) => finding.parts))
    if (severity === 'stop' && now.some((finding) => finding.parts.some((id) => !parts.has(id)))) return true
  }
  return false
}

/** The finding is gone, or its figure is better, and none of its kind has come in its place. */
function helps(finding: Finding, before: Dock, after: Dock): boolean {
  const was = before.findings.filter(({ code }) => code === finding.code)
  const now = after.findings.filter(({ code }) => code === finding.code)
  if (now.length > was.length) return false
  const still = now.find((other) => isSame(finding, other)) ?? (was.length === 1 ? now[0] : undefined)
  if (!still) return now.length < was.length
  const figure = FIGURES[finding.code]
  if (!figure) return false
  const [then, next] = [finding, still].map(({ values }) => Number(values[figure.name]?.value))
  return figure.worse === 'more' ? next! < then! * (1 - BETTER_BY) : next! > then! * (1 + BETTER_BY)
}

/** Of the same parts, and of the same names where it has no parts. */
const isSame = (a: Finding, b: Finding): boolean =>
  a.parts.join() === b.parts.join() && (a.parts.length > 0 || namesIn(a) === namesIn(b))

const namesIn = ({ values }: Finding): string =>
  JSON.stringify(Object.entries(values).filter(([, { unit }]) => unit === 'text' || unit === 'key'))

function byCode(findings: readonly Finding[]): Map<string, Finding[]> {
  const groups = new Map<string, Finding[]>()
  for (const finding of findings) groups.set(finding.code, [...(groups.get(finding.code) ?? []), finding])
  return groups
}

/** Findings that ask for opposite things, whether or not either step helps: one note for each of these. */
function opposed(findings: readonly Finding[]): Finding[] {
  const asking = (what: string, way: number): Finding | undefined =>
    findings.find(({ remedy }) => {
      const asks = remedy ? ASKS[remedy.key] : undefined
      return asks?.ask === what && asks.way === way
    })
  return (['deck', 'sections'] as const).flatMap((ask) => {
    const [first, second] = [asking(ask, 1), asking(ask, -1)]
    if (!first || !second) return []
    const values = { first: code(first), second: code(second), ask: key(ask) }
    return toFindings(OPPOSED, [{ parts: [], values }], FOUND_LATER)
  })
}

const code = (finding: Finding): Figure => ({ value: finding.code, unit: 'code' })
const OPPOSED = {
  code: 'remedies-oppose',
  severity: 'note',
  basis: 'The remedies of the findings that it names',
} as const
