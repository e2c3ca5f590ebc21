/**
 * Can this dock be built? One answer for every place that says so, worked out from the Dock alone.
 *
 * The rule: a `stop` forbids it, and a `warn` says that something is more, or less, than it may be (it sinks, slides, sways, goes over, a
 * brace is missing): both are to be fixed before building, but for what is to be measured (`rules/to-fix.ts`). A `note` asks for nothing. Where something forbids it
 * and no remedy is offered for any of that, it cannot be built like this; which remedies help is known only when all is found.
 */
import type { Dock, Finding } from '../../rules/index.ts'
import { isForbidden, stopsOf } from '../../rules/stops.ts'
import { isToFix } from '../../rules/to-fix.ts'
import type { LeadlineState } from '../state/store.ts'

export interface Verdict {
  readonly standing: 'can' | 'fix' | 'cannot'
  /** Findings to be fixed before building. */
  readonly toFix: readonly Finding[]
  /** Those that ask for the shore to be measured, or told of. */
  readonly toMeasure: readonly Finding[]
}

/** @param dock with all that is found and the remedies that help */
export function verdictOf({ findings }: Pick<Dock, 'findings'>): Verdict {
  const asking = findings.filter(({ severity }) => severity !== 'note')
  const toFix = asking.filter(isToFix)
  const stops = stopsOf({ findings })
  const noWay = stops.length > 0 && stops.every(({ remedy }) => remedy === null)
  const standing = noWay ? 'cannot' : toFix.length > 0 ? 'fix' : 'can'
  return { standing, toFix, toMeasure: asking.filter((finding) => !toFix.includes(finding)) }
}

/** Whether it has a price: what must not be built has none, whatever its parts cost. */
export const hasPrice = ({ findings }: Pick<Dock, 'findings'>): boolean => !isForbidden({ findings })

export type Standing = Verdict['standing'] | 'placing' | 'checking' | 'unknown'

/**
 * The same while not all is found. What forbids building does so whatever is found later; nothing else is said before the end, and nothing
 * good where the structure could not be worked out.
 */
export function standingOf({ dock, status, stale }: Pick<LeadlineState, 'dock' | 'status' | 'stale'>): Omit<
  Verdict,
  'standing'
> & {
  readonly standing: Standing
} {
  const whole = verdictOf(dock)
  const known = (): Standing => {
    if (stale) return status === 'unavailable' ? 'unknown' : 'placing'
    if (status === 'deep' && (dock.structure !== null || !hasPrice(dock))) return whole.standing
    if (!hasPrice(dock)) return 'fix'
    return status === 'deep' || status === 'unavailable' ? 'unknown' : 'checking'
  }
  return { ...whole, standing: known() }
}
