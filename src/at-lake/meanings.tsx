/** What the trade calls a thing, in plain words, at the step that it is met in. */
import type { StepLine, Work } from '../../rules/papers/steps/step.ts'
import { useSay } from './lake.ts'

const MEANT = {
  pads: 'mean.pad',
  clamps: 'mean.clamp',
  hooks: 'mean.hook',
  'hinge-bar': 'mean.hinge',
  'first-pin': 'mean.pin',
  panels: 'mean.panel',
} as const satisfies Partial<Record<Work, string>>

const isMeant = (work: Work): work is keyof typeof MEANT => work in MEANT

export function Meanings({ lines }: { readonly lines: readonly StepLine[] }) {
  const { t } = useSay()
  const keys = [...new Set(lines.flatMap(({ work }) => (isMeant(work) ? [MEANT[work]] : [])))]
  if (keys.length === 0) return null
  return (
    <details>
      <summary>{t('mean.title')}</summary>
      {keys.map((key) => (
        <p key={key}>{t(key)}</p>
      ))}
    </details>
  )
}
