/** The shop's own words on what is done with a request, with a box where it asks for one. */
import { useId } from 'react'
import { spokenIn } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { REQUEST } from '../words/request.ts'
import { type ConsentText, consentIn } from './consent-text.ts'

export function useConsent(): ConsentText | null {
  const catalog = useLeadline((s) => s.catalog)
  const language = useLeadline((s) => s.language)
  return consentIn(catalog, spokenIn(language))
}

interface Props {
  readonly of: ConsentText
  readonly on: boolean
  readonly set: (on: boolean) => void
  readonly fault: string | undefined
}

export function Consent({ of: { text, tick, web }, on, set, fault }: Props) {
  const { t } = useWords(REQUEST)
  const id = useId()
  return (
    <div className="consent">
      <p id={`${id}-text`}>
        {text}{' '}
        {web && (
          <a href={web} target="_blank" rel="noopener noreferrer">
            {t('request.consent-more')}
          </a>
        )}
      </p>
      {tick && (
        <label className="switch">
          <span>{t('request.consent-tick')}</span>
          <input
            type="checkbox"
            name="agreed"
            checked={on}
            required
            aria-invalid={fault !== undefined}
            aria-describedby={fault ? `${id}-text ${id}-fault` : `${id}-text`}
            onChange={(event) => set(event.currentTarget.checked)}
          />
        </label>
      )}
      {fault && (
        <p className="fault" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  )
}
