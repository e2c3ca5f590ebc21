/** Other ways to begin than with questions: an example, a file, a link, none of it. */
import { useEffect, useId, useState } from 'react'
import { messageOf } from '../platform/error-message.ts'
import { useHost } from '../state/host.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { Fold } from '../ui/fold.tsx'
import { useWords } from '../ui/use-words.ts'
import { START } from '../words/start.ts'
import { type Preset, readPresets } from './presets.ts'

export function Elsewise({ leave }: { readonly leave: () => void }) {
  const host = useHost()
  const { t } = useWords(START)
  return (
    <div className="elsewise">
      <p className="hint">{t('start.elsewise')}</p>
      <div className="actions">
        <button type="button" onClick={() => host.showExample()}>
          {t('start.example')}
        </button>
        <Presets />
        <button type="button" className="quiet" onClick={leave}>
          {t('start.leave')}
        </button>
      </div>
      <Fold summary={t('start.have')}>
        <Have />
      </Fold>
    </div>
  )
}

/** The docks that the page offers, by its own names. */
function Presets() {
  const host = useHost()
  const [presets, setPresets] = useState<readonly Preset[]>([])
  useEffect(() => {
    const { presets: url } = host
    if (url === null) return
    const over = new AbortController()
    readPresets(url, over.signal).then(
      ({ presets, faults }) => {
        setPresets(presets)
        host.fail(faults)
      },
      (error) =>
        over.signal.aborted || host.fail([{ code: 'presets', path: url, message: messageOf(error) }]),
    )
    return () => over.abort()
  }, [host])
  return presets.map(({ name, design }) => (
    <button key={name} type="button" onClick={() => host.bringBack(design)}>
      {name}
    </button>
  ))
}

function Have() {
  const host = useHost()
  const id = useId()
  const { t } = useWords(START)
  const { t: screen } = useWords()
  const [address, setAddress] = useState('')
  const [wrong, setWrong] = useState(false)
  const open = async (): Promise<void> => setWrong(!(await host.openLink(address)))
  return (
    <form
      className="have"
      onSubmit={(event) => {
        event.preventDefault()
        void open()
      }}
    >
      <FilePick label={screen('file.open')} take={(file) => host.openFile(file)} />
      <div className="field">
        <label htmlFor={id}>{t('start.link')}</label>
        <input
          id={id}
          type="text"
          inputMode="url"
          autoComplete="off"
          value={address}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-fault` : undefined}
          onChange={(event) => {
            setAddress(event.currentTarget.value)
            setWrong(false)
          }}
        />
        {wrong && (
          <p className="fault" id={`${id}-fault`} role="alert">
            {t('start.no-link')}
          </p>
        )}
      </div>
      <button type="submit" disabled={address.trim() === ''}>
        {t('start.open')}
      </button>
    </form>
  )
}
