/** A dock that stands already, of which there is no plan: how many legs it has, what it is called. All else is told as it is measured. */
import { useState } from 'react'
import type { SeasonRecord } from '../../rules/record/index.ts'
import { newId } from '../platform/new-id.ts'
import { Stepper } from '../ui/controls.tsx'
import { LineField, Measure, NOTHING } from './fields.tsx'
import { Frame, Head } from './frame.tsx'
import { useLake, useSay } from './lake.ts'
import { oldDockRecord } from './old-dock-record.ts'

const MOST_PAIRS = 60

interface OldDockProps {
  readonly back: () => void
  readonly begun: (record: SeasonRecord) => Promise<void>
}

export function OldDock({ back, begun }: OldDockProps) {
  const { records } = useLake()
  const { t } = useSay()
  const [name, setName] = useState('')
  const [pairs, setPairs] = useState(4)
  const [mark, setMark] = useState('')
  const [down, setDown] = useState(NOTHING)
  const begin = (): Promise<void> =>
    begun(
      oldDockRecord(
        { name: name.trim(), pairs, mark: mark.trim(), down: down.value },
        { id: newId(), device: records.device, at: new Date().toISOString() },
        newId(),
      ),
    )
  return (
    <Frame title={t('old.title')} back={back}>
      <Head of={t('old.head')} />
      <p>{t('old.lead')}</p>
      <LineField label={t('old.name')} value={name} set={setName} />
      <Stepper
        label={t('old.pairs')}
        fewer={t('old.fewer')}
        more={t('old.more')}
        value={pairs}
        min={1}
        max={MOST_PAIRS}
        set={setPairs}
      />
      <p className="hint">{t('old.numbers')}</p>
      <LineField label={t('old.mark')} value={mark} set={setMark} />
      {mark.trim() !== '' && <Measure label={t('old.down')} kind="down" typed={down} set={setDown} />}
      <p className="hint">{t('old.mark-more')}</p>
      <div className="ways">
        <button
          type="button"
          className="main"
          disabled={mark.trim() !== '' && down.value === null}
          onClick={() => void begin()}
        >
          {t('old.begin')}
        </button>
      </div>
    </Frame>
  )
}
