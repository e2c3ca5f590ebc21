import type { Figure } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { START } from '../words/start.ts'

/** What nobody has said of the shore yet, and the way back to the questions. */
export function Told({ keys }: { readonly keys: Figure }) {
  const set = useLeadline((s) => s.set)
  const { t } = useWords(START)
  return (
    <div className="control care">
      <p>{t('unsaid.told', { keys })}</p>
      <button type="button" onClick={() => set({ starting: true })}>
        {t('unsaid.ask')}
      </button>
    </div>
  )
}
