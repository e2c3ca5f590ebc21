/** What forbids building a dock: one question, for screens, papers, models and the terminal alike. */
import type { Dock, Finding } from './dock.ts'

type Found = Pick<Dock, 'findings'>

/** Worst first, as the findings stand. */
export const stopsOf = ({ findings }: Found): readonly Finding[] =>
  findings.filter(({ severity }) => severity === 'stop')

/** Such a dock has no price, no steps, nothing to sign. */
export const isForbidden = ({ findings }: Found): boolean =>
  findings.some(({ severity }) => severity === 'stop')
