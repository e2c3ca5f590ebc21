/** Whether a dock lacks a finding that another one has, and whether it is worse in anything else. */
import type { Dock, Finding, Severity } from '../dock.ts'

/** Findings that are told only where a graver one of the same cause is not: coming in its place they are no worse. */
const GRAVER: Readonly<Record<string, string>> = {
  'dock-slides': 'goes-over',
  'clips-lift': 'section-floats',
}

/** What a remedy of a graver finding leaves to be looked at, knowingly: it is that remedy. */
const LEAVES: Readonly<Record<string, string>> = {
  'part-in-obstacle': 'brace-left-out',
}

/** Found by solving the structure with other sleeves, which no trial does; a note, and of the shop's measuring. */
const UNTRIED = 'sleeves-decide'

const RANK: Readonly<Record<Severity, number>> = { note: 0, warn: 1, stop: 2 }

/**
 * Whether what mends a finding brings another to be fixed, or that of a note another note: of a code that was not there, of one more than there were, or a stop of other parts.
 * So each remedy that is taken leaves less to mend, and no two can bring each other back.
 *
 * @param mended what is to be mended; what comes in the place of a graver finding of the same cause is no worse, but of this one's own
 * @param unknown codes of which nobody knows whether they were there
 */
export function isWorse(
  mended: Pick<Finding, 'code' | 'severity'>,
  before: Pick<Dock, 'findings'>,
  after: Pick<Dock, 'findings'>,
  unknown: ReadonlySet<string> = new Set(),
): boolean {
  const were = byCode(before.findings)
  const least = Math.min(RANK[mended.severity], RANK.warn)
  for (const [code, now] of byCode(after.findings)) {
    const { severity } = now[0]!
    if (RANK[severity] < least || code === UNTRIED) continue
    if (severity !== 'stop' && unknown.has(code)) continue
    const was = were.get(code) ?? []
    const graver = GRAVER[code] ?? ''
    if (was.length === 0 && were.has(graver) && graver !== mended.code) continue
    if (LEAVES[mended.code] === code && now.length <= was.length + 1) continue
    if (now.length > was.length) return true
    const parts = new Set(was.flatMap((finding) => finding.parts))
    if (severity === 'stop' && now.some((finding) => finding.parts.some((id) => !parts.has(id)))) return true
  }
  return false
}

/** Gone, and none of its kind has come in its place. Better is not enough: who takes a remedy wants to be done with it. */
export function isGone(
  finding: Finding,
  before: Pick<Dock, 'findings'>,
  after: Pick<Dock, 'findings'>,
): boolean {
  const was = before.findings.filter(({ code }) => code === finding.code)
  const now = after.findings.filter(({ code }) => code === finding.code)
  return now.length < was.length && !now.some((other) => isSame(finding, other))
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
