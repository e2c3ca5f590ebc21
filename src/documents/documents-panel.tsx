/** Papers, models and pictures to download, made on demand. */
import { type ReactNode, useEffect, useId, useState } from 'react'
import { LABEL_GRIDS, type LabelGrid } from '../../geometry/paper/label-grid.ts'
import { PAPER_SIZE_NAMES, type PaperSize } from '../../geometry/paper/marks.ts'
import type { Dock } from '../../rules/index.ts'
import { isForbidden } from '../../rules/stops.ts'
import { download } from '../platform/download.ts'
import { isJudged, papersAudience, useDock, useLeadline } from '../state/store.ts'
import { Select } from '../ui/select.tsx'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { ArLink, type ArModel, showsModels } from './augmented-reality.tsx'
import { CustomerFields } from './customer-fields.tsx'
import css from './documents-panel.css?inline'
import {
  type Asked,
  FIRST,
  type Figures,
  type Format,
  figuresFor,
  MEDIA,
  type ModelChoice,
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
  const audience = useLeadline(papersAudience)
  const [chosen, setWhat] = useState<What | null>(null)
  // Another audience may not be offered what was chosen.
  const what = chosen && whatFor(audience).includes(chosen) ? chosen : FIRST[audience]
  const [choice, setChoice] = useState(NO_CHOICE)
  const [size, setSize] = useState<PaperSize>(units === 'imperial' ? 'letter' : 'a4')
  const [labels, setLabels] = useState<LabelGrid | 'cut'>('cut')
  const [typedDate, setDate] = useState(today)
  const date = typedDate || today()
  const [by, setBy] = useState('')
  const [model, setModel] = useState<ModelChoice>({ base: 'water', lake: 'none' })
  const { state, make, takePicture, stop } = useMaking({
    size,
    labels: labels === 'cut' ? null : labels,
    model,
    date,
    by,
    choice,
  })
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
  const box = useSheet<HTMLDivElement>(css)
  return (
    <div className="paper-work" ref={box}>
      <p className="hint">{t('what')}</p>
      {isForbidden(dock) && <p className="care">{t('stop')}</p>}
      <PaperOptionFields
        {...{ what, size, labels, by, date: typedDate }}
        choose={{ what: setWhat, size: setSize, labels: setLabels, date: setDate, by: setBy }}
      />
      <Unset by={by} />
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
      <ModelFields model={model} choose={setModel} />
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

/** What a model stands on, and what of the lake is in it. */
function ModelFields({
  model,
  choose,
}: {
  readonly model: ModelChoice
  readonly choose: (model: ModelChoice) => void
}) {
  const { t } = useWords(DOCUMENTS)
  const id = useId()
  return (
    <div className="paper-options">
      <label htmlFor={`${id}-base`}>{t('model-base')}</label>
      <Select
        id={`${id}-base`}
        value={model.base}
        options={['water', 'feet'] as const}
        wordOf={(one) => t(`model-base-${one}`)}
        set={(base) => choose({ ...model, base })}
      />
      <label htmlFor={`${id}-lake`}>{t('model-lake')}</label>
      <Select
        id={`${id}-lake`}
        value={model.lake}
        options={['none', 'water', 'bed', 'both'] as const}
        wordOf={(one) => t(`model-lake-${one}`)}
        set={(lake) => choose({ ...model, lake })}
      />
    </div>
  )
}

/** What the papers cannot write of the names on them. */
function Unset({ by }: { readonly by: string }) {
  const { reader } = useWords(DOCUMENTS)
  const { name, job = {} } = useLeadline((s) => s.design)
  const [said, setSaid] = useState('')
  const names = [name, job.customer ?? '', job.order ?? '', by].join('\n')
  useEffect(() => {
    let over = false
    // Few names need it: the font's letters are loaded where one might.
    if (!/[^\0-\u024F\u0370-\u04FF]/.test(names)) setSaid('')
    else
      import('../../geometry/paper/unset.ts').then(
        ({ unsetIn }) => !over && setSaid(unsetIn([names], reader)),
        () => {},
      )
    return () => {
      over = true
    }
  }, [names, reader])
  return said === '' ? null : <p className="care">{said}</p>
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
  readonly labels: LabelGrid | 'cut'
  readonly date: string
  readonly by: string
}

/** Which paper, how large, of which day and by whom. */
function PaperOptionFields({
  what,
  size,
  labels,
  date,
  by,
  choose,
}: Chosen & { readonly choose: { readonly [K in keyof Chosen]: (to: Chosen[K]) => void } }) {
  const { t } = useWords(DOCUMENTS)
  const audience = useLeadline(papersAudience)
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
      {(what === 'labels' || what === 'packet') && (
        <>
          <label htmlFor={`${id}-labels`}>{t('labels-on')}</label>
          <Select
            id={`${id}-labels`}
            value={labels}
            options={['cut', ...LABEL_GRIDS] as const}
            wordOf={(one) => t(`labels-${one}`)}
            set={choose.labels}
          />
        </>
      )}
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
  const audience = useLeadline(papersAudience)
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
