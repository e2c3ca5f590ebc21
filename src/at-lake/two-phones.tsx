/** Two phones wrote otherwise of one leg: neither is thrown away, and somebody says which holds. */
import { type Conflict, type Entry, saidOf } from '../../rules/record/index.ts'
import { count, meters, text } from '../words/index.ts'
import { type Begun, useBegun, useSay } from './lake.ts'
import { levelText } from './level.tsx'
import { legNumberOf } from './names.ts'

export function TwoPhones({ conflicts }: { readonly conflicts: readonly Conflict[] }) {
  const { t } = useSay()
  const told = conflicts.filter(({ kind }) => kind === 'set' || kind === 'sounding' || kind === 'level')
  return told.map(({ kind, of, entries }) => (
    <div className="care" key={`${kind}/${of}`}>
      <p>
        <b>{t('phones.title')}</b>
      </p>
      {entries.map((entry) => (
        <Holds key={entry.id} entry={entry} />
      ))}
    </div>
  ))
}

/** Said once more by somebody who saw both, it holds. */
function Holds({ entry }: { readonly entry: Conflict['entries'][number] }) {
  const begun = useBegun()
  const say = useSay()
  const label = claimText(entry, begun, say)
  if (label === null) return null
  return (
    <button type="button" onClick={() => begun.add(saidOf(entry))}>
      {label}
    </button>
  )
}

/** What an entry says, and when it was written; null of kinds that nobody asks about. */
export function claimText(
  entry: Entry,
  begun: Pick<Begun, 'project' | 'record'>,
  say: ReturnType<typeof useSay>,
): string | null {
  const when = text(entry.at.slice(0, 16).replace('T', ' '))
  const leg = entry.kind === 'set' || entry.kind === 'sounding' ? entry.leg : undefined
  const number = count(legNumberOf(leg ?? '', begun.record))
  return entry.kind === 'set'
    ? say.t('phones.set', { n: number, value: meters(entry.height), at: when })
    : entry.kind === 'sounding'
      ? say.t('phones.sounding', { n: number, value: meters(entry.depth), at: when })
      : entry.kind === 'level'
        ? say.t('phones.level', { level: text(levelText(entry.level, begun, say)), at: when })
        : null
}
