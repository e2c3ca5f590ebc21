/** What nobody has said of the shore yet, and the way back to the questions. */
import { useLeadline, usePlaced } from '../state/store.ts'
import { useWords } from '../words/use-words.ts'

export function Unsaid() {
  const set = useLeadline((s) => s.set)
  const found = usePlaced().findings.find(({ code }) => code === 'site-assumed')
  const { t } = useWords()
  const keys = found?.values.keys
  if (!keys) return null
  return (
    <div className="control care">
      <p>{t('unsaid.told', { keys })}</p>
      <button type="button" onClick={() => set({ starting: true })}>
        {t('unsaid.ask')}
      </button>
    </div>
  )
}
