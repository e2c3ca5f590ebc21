/** The dock with how surely its legs fit, which comes later than the rest. */
import { COMMON } from '../basis.ts'
import type { Dock, Finding, Fit, LegFit, Reason } from '../dock.ts'

/** @param doubts findings about that, to be told among the others of their severity */
export function withFit(dock: Dock, fit: Fit | null, doubts: readonly Finding[]): Dock {
  if (!fit) return dock
  const found = new Map(fit.legs.map((one) => [one.leg, one]))
  const legs: Record<string, readonly Reason[]> = { ...dock.reasons.legs }
  for (const one of found.values()) legs[one.leg] = [...(legs[one.leg] ?? []), reasonOf(one)]
  const graver = (one: Finding, other: Finding): boolean =>
    one.severity === other.severity || one.severity !== 'note'
  const findings = doubts.reduce<readonly Finding[]>((all, doubt) => {
    const at = all.filter((other) => graver(other, doubt)).length
    return [...all.slice(0, at), doubt, ...all.slice(at)]
  }, dock.findings)
  return Object.freeze({
    ...dock,
    legs: dock.legs.map((leg) => ({ ...leg, fitChance: found.get(leg.id)?.chance ?? null })),
    fit,
    findings,
    reasons: { ...dock.reasons, legs },
  })
}

const reasonOf = ({ room, error, chance, reserve95 }: LegFit): Reason => ({
  rule: 'fit-chance',
  terms: [
    { key: 'room', value: room, unit: 'm', from: 'above-deck - what must stay' },
    { key: 'error', value: error, unit: 'm', from: 'site' },
    { key: 'reserve95', value: reserve95, unit: 'm', from: 'site' },
  ],
  result: { value: chance, unit: 'share' },
  basis: COMMON,
})
