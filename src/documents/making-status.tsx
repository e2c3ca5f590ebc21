/** The progress of a file that is being made, and its outcome. */

import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS, type DocumentWord } from '../words/documents.ts'
import { count, text } from '../words/index.ts'
import type { MadeFormat, Making } from './use-making.ts'

/** The word for each format. */
export const FORMAT_WORDS: Readonly<Record<MadeFormat, DocumentWord>> = {
  png: 'png',
  pdf: 'pdf',
  svg: 'svg',
  dxf: 'dxf',
  csv: 'csv',
  json: 'json',
  glb: 'glb',
  usdz: 'usdz',
}

/** `ready`: all findings are there, so papers can be made. */
export function MakingStatus({
  state,
  ready,
  stop,
}: {
  readonly state: Making
  readonly ready: boolean
  readonly stop: () => void
}) {
  const { t } = useWords(DOCUMENTS)
  const told = (): string => {
    if (!ready) return t('wait')
    if (state === null) return ''
    if ('made' in state) return t('made', { file: text(state.made) })
    if ('failed' in state)
      return t('failed', { what: text(t(FORMAT_WORDS[state.failed])), why: text(state.why) })
    const what = text(t(FORMAT_WORDS[state.making]))
    return state.at
      ? t('making-paper', {
          what,
          paper: text(t(state.at.paper)),
          n: count(state.at.n),
          of: count(state.at.of),
        })
      : t('making', { what })
  }
  return (
    <>
      <p className={state && 'failed' in state ? 'fault' : 'hint'} role="status">
        {told()}
      </p>
      {state && 'making' in state && state.making !== 'png' && (
        <button type="button" className="quiet" onClick={stop}>
          {t('stop-making')}
        </button>
      )}
    </>
  )
}
