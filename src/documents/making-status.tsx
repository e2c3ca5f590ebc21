/** The progress of a file that is being made, and its outcome. */
import { count, text } from '../words/index.ts'
import { type PaperWord, usePaperWords } from '../words/use-paper-words.ts'
import type { MadeFormat, Making } from './use-making.ts'

/** The word for each format. */
export const FORMAT_WORDS: Readonly<Record<MadeFormat, PaperWord>> = {
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
  const { p } = usePaperWords()
  const told = (): string => {
    if (!ready) return p('wait')
    if (state === null) return ''
    if ('made' in state) return p('made', { file: text(state.made) })
    if ('failed' in state)
      return p('failed', { what: text(p(FORMAT_WORDS[state.failed])), why: text(state.why) })
    const what = text(p(FORMAT_WORDS[state.making]))
    return state.at
      ? p('making-paper', {
          what,
          paper: text(p(state.at.paper)),
          n: count(state.at.n),
          of: count(state.at.of),
        })
      : p('making', { what })
  }
  return (
    <>
      <p className={state && 'failed' in state ? 'fault' : 'hint'} role="status">
        {told()}
      </p>
      {state && 'making' in state && state.making !== 'png' && (
        <button type="button" className="quiet" onClick={stop}>
          {p('stop-making')}
        </button>
      )}
    </>
  )
}
