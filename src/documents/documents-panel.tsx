/** Papers, models and pictures to download, made on demand. */
import { type ReactNode, useId, useState } from 'react'
import { PAPER_SIZE_NAMES, type PaperSize } from '../../geometry/paper/marks.ts'
import type { Dock } from '../../rules/index.ts'
import { download } from '../platform/download.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { Select } from '../ui/select.tsx'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { ArLink, type ArModel, showsModels } from './augmented-reality.tsx'
import { CustomerFields } from './customer-fields.tsx'
import {
  type Asked,
  type Figures,
  type Format,
  figuresFor,
  MEDIA,
  type What,
  whatFor,
} from './files/write-file.ts'
import { FORMAT_WORDS, MakingStatus } from './making-status.tsx'
import { Phone } from './phone.tsx'
import { PictureSize } from './picture-size.tsx'
import { NO_CHOICE, QuoteFields } from './quote-fields.tsx'
import { useMaking } from './use-making.ts'

export function DocumentsPanel() {
  const { t, units } = useWords(DOCUMENTS)
  const dock = useDock()
  const judged = useLeadline(isJudged)
  const audience = useLeadline((s) => s.audience)
  const [whatChosen, setWhat] = useState<What>(audience === 'shop' ? 'quote' : 'packet')
  // Another audience may not be offered what was chosen.
  const what = whatFor(audience).includes(whatChosen) ? whatChosen : 'packet'
  const [choice, setChoice] = useState(NO_CHOICE)
  const [size, setSize] = useState<PaperSize>(units === 'imperial' ? 'letter' : 'a4')
  const [typedDate, setDate] = useState(today)
  const date = typedDate || today()
  const [by, setBy] = useState('')
  const { state, make, takePicture, stop } = useMaking({ size, date, by, choice })
  const making = state !== null && 'making' in state
  const button = (format: Format, of: Asked['what'] = 'drawing') => (
    <button
      type="button"
      data-format={format}
      disabled={!judged || making}
      onClick={() => make(format, of, (bytes, name) => download(bytes, MEDIA[format], name))}
    >
      {t(making && state.making === format ? 'making-now' : FORMAT_WORDS[format])}
    </button>
  )
  return (
    <div className="paper-work">
      <p className="hint">{t('what')}</p>
      {dock.findings.some(({ severity }) => severity === 'stop') && <p className="care">{t('stop')}</p>}
      <PaperOptionFields
        {...{ what, size, by, date: typedDate }}
        choose={{ what: setWhat, size: setSize, date: setDate, by: setBy }}
      />
      {(what === 'quote' || what === 'estimate' || what === 'packet') && audience !== 'crew' && (
        <>
          {audience === 'shop' && <CustomerFields />}
          <QuoteFields choice={choice} date={date} choose={setChoice} />
        </>
      )}
      <div className="actions">
        {button('pdf', what)}
        {button('svg', what)}
      </div>
      <FigureFiles button={button} />
      <h3>{t('cad')}</h3>
      <p className="hint">{t('cad-what')}</p>
      <div className="actions">{button('dxf')}</div>
      <h3>{t('model')}</h3>
      <p className="hint">{t('model-what')}</p>
      <div className="actions">
        {button('glb')}
        {button('usdz')}
        <OnTheShore disabled={!judged || making} make={make} />
      </div>
      {showsModels() && <p className="hint">{t('ar-what')}</p>}
      <h3>{t('picture')}</h3>
      <p className="hint">{t('picture-what')}</p>
      <PictureSize disabled={making} take={takePicture} />
      <MakingStatus state={state} ready={judged} stop={stop} />
      {!matchMedia('(pointer: coarse)').matches && <Phone />}
    </div>
  )
}

/** Today in local time, as a date input wants it. */
function today(): string {
  const now = new Date()
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

interface Chosen {
  readonly what: What
  readonly size: PaperSize
  readonly date: string
  readonly by: string
}

/** Which paper, how large, of which day and by whom. */
function PaperOptionFields({
  what,
  size,
  date,
  by,
  choose,
}: Chosen & { readonly choose: { readonly [K in keyof Chosen]: (to: Chosen[K]) => void } }) {
  const { t } = useWords(DOCUMENTS)
  const audience = useLeadline((s) => s.audience)
  const id = useId()
  return (
    <div className="paper-options">
      <label htmlFor={`${id}-what`}>{t('which')}</label>
      <Select
        id={`${id}-what`}
        value={what}
        options={whatFor(audience)}
        wordOf={(one) => t(one)}
        set={choose.what}
      />
      <label htmlFor={`${id}-size`}>{t('size')}</label>
      <Select
        id={`${id}-size`}
        value={size}
        options={PAPER_SIZE_NAMES}
        wordOf={(one) => t(one)}
        set={choose.size}
      />
      <label htmlFor={`${id}-date`}>{t('date')}</label>
      <input
        id={`${id}-date`}
        type="date"
        value={date}
        onChange={(e) => choose.date(e.currentTarget.value)}
      />
      <label htmlFor={`${id}-by`}>{t('by')}</label>
      <input
        id={`${id}-by`}
        type="text"
        maxLength={80}
        value={by}
        onChange={(e) => choose.by(e.currentTarget.value)}
      />
    </div>
  )
}

/** Rows for a spreadsheet, or data. */
function FigureFiles({ button }: { readonly button: (format: Format, of: Figures) => ReactNode }) {
  const { t } = useWords(DOCUMENTS)
  const audience = useLeadline((s) => s.audience)
  const [chosen, setFigures] = useState<Figures>('packing')
  const figures = figuresFor(audience).includes(chosen) ? chosen : 'packing'
  return (
    <>
      <h3>{t('figures')}</h3>
      <p className="hint">{t('figures-what')}</p>
      <div className="actions">
        <Select
          name={t('figures-which')}
          value={figures}
          options={figuresFor(audience)}
          wordOf={(one) => t(`figures-${one}`)}
          set={setFigures}
        />
        {button('csv', figures)}
        {button('json', figures)}
      </div>
    </>
  )
}

/** The model in augmented reality, where the device can show it; made again when the dock changes. */
function OnTheShore({
  disabled,
  make,
}: {
  readonly disabled: boolean
  readonly make: ReturnType<typeof useMaking>['make']
}) {
  const { t } = useWords(DOCUMENTS)
  const dock = useDock()
  const [model, setModel] = useState<(ArModel & { readonly of: Dock }) | null>(null)
  if (model?.of === dock) return <ArLink model={model} />
  if (!showsModels()) return null
  return (
    <button
      type="button"
      className="main"
      disabled={disabled}
      onClick={() => make('usdz', 'drawing', (bytes, name) => setModel({ bytes, name, of: dock }))}
    >
      {t('ar')}
    </button>
  )
}
