/** Two phones wrote otherwise of one leg: neither is thrown away, and somebody says which holds. */
import type { Conflict } from '../../rules/record/index.ts'
import { meters, text } from '../words/index.ts'
import { useBegun, useSay } from './lake.ts'

export function TwoPhones({ conflicts }: { readonly conflicts: readonly Conflict[] }) {
  const { add } = useBegun()
  const { t } = useSay()
  return conflicts.map(({ kind, of, entries }) => (
    <div className="care" key={`${kind}/${of}`}>
      <p>
        <b>{t('phones.title')}</b>
      </p>
      {entries.map((entry) => {
        if (entry.kind !== 'set' && entry.kind !== 'sounding') return null
        const value = entry.kind === 'set' ? entry.height : entry.depth
        const { id: _id, at, device: _device, n: _n, season: _season, saw: _saw, ...said } = entry
        return (
          <button type="button" key={entry.id} onClick={() => add(said)}>
            {t(entry.kind === 'set' ? 'phones.set' : 'phones.sounding', {
              value: meters(value),
              at: text(at.slice(0, 16).replace('T', ' ')),
            })}
          </button>
        )
      })}
    </div>
  ))
}
