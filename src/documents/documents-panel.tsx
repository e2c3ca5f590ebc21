/** Papers and models: what leaves the screen, made when it is asked for. */
import { Fragment, useId, useRef, useState } from 'react'
import { PAPER_SIZES, type PaperSize } from '../../geometry/paper/marks.ts'
import { MOST_BYTES } from '../../geometry/paper/qr.ts'
import type { Design, Dock } from '../../rules/index.ts'
import { linkOf } from '../autosave/link.ts'
import { download } from '../platform/download.ts'
import { plainName } from '../platform/file-name.ts'
import { useHost } from '../state/host.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { DOCUMENTS, type DocumentWord } from '../words/documents.ts'
import { count, text } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'
import { ArLink, type ArModel, showsModels } from './ar.tsx'
import { makeFile, SilentError } from './files/make-file.ts'
import {
  type Asked,
  type Figures,
  type Format,
  figuresFor,
  fileName,
  MEDIA,
  type What,
  whatFor,
} from './files/write-file.ts'
import { Qr } from './qr.tsx'
import { NO_CHOICE, QuoteFields, wantedOf } from './quote-fields.tsx'

type State =
  | {
      readonly making: Format | 'png'
      /** The paper that is being made, of several. */
      readonly at?: { readonly paper: What; readonly n: number; readonly of: number }
    }
  | { readonly made: string }
  | { readonly failed: Format | 'png'; readonly why: string }
  | null

/** Sizes of the picture, px. */
const PIXELS = ['1600x900', '1920x1080', '3840x2160', '2000x2000'] as const
/** Least and most of one's own size, px. */
const SIDE = { min: 16, max: 8192 } as const

/** The day here, as a date field has it. */
function today(): string {
  const now = new Date()
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** What is said of a format. */
const NAMES: Readonly<Record<Format | 'png', DocumentWord>> = {
  png: 'png',
  pdf: 'pdf',
  svg: 'svg',
  dxf: 'dxf',
  csv: 'csv',
  json: 'json',
  glb: 'glb',
  usdz: 'usdz',
}

export function DocumentsPanel() {
  const handles = useHandles()
  const host = useHost()
  const { t, units, language } = useWords(DOCUMENTS)
  const dock = useDock()
  const judged = useLeadline(isJudged)
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const id = useId()
  const audience = useLeadline((s) => s.audience)
  const [whatChosen, setWhat] = useState<What>('packet')
  const [figuresChosen, setFigures] = useState<Figures>('packing')
  // Another audience may not be offered what was chosen.
  const what = whatFor(audience).includes(whatChosen) ? whatChosen : 'packet'
  const figures = figuresFor(audience).includes(figuresChosen) ? figuresChosen : 'packing'
  const [choice, setChoice] = useState(NO_CHOICE)
  const [model, setModel] = useState<(ArModel & { readonly of: Dock }) | null>(null)
  const [pixels, setPixels] = useState<(typeof PIXELS)[number] | 'own'>('1920x1080')
  const [own, setOwn] = useState<readonly [string, string]>(['3000', '1000'])
  const [size, setSize] = useState<PaperSize>(units === 'imperial' ? 'letter' : 'a4')
  const [date, setDate] = useState(today)
  const [by, setBy] = useState('')
  const [state, setState] = useState<State>(null)
  const making = state !== null && 'making' in state
  const cancel = useRef<(() => void) | null>(null)
  const make = async (
    format: Format,
    of: Asked['what'],
    hand: (bytes: Uint8Array, name: string) => void,
  ): Promise<void> => {
    setState({ making: format })
    const ending = new AbortController()
    cancel.current = () => ending.abort()
    // The words are on the screen before the work begins.
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
    try {
      const link = addressOf(host.links, design)
      const options = { units, language, size, date: date || today(), by, ...(link !== null && { link }) }
      const quote = audience === 'shop' ? wantedOf(choice, catalog.services ?? []) : null
      const priced = of === 'quote' || of === 'packet'
      if (quote && priced) (await import('./files/since.ts')).checkAsked({ ...quote, date: options.date })
      const bytes = await makeFile(
        format,
        { what: of, audience, ...(quote && { quote }), dock, design, catalog, options },
        (paper, made, all) => all > 1 && setState({ making: format, at: { paper, n: made + 1, of: all } }),
        undefined,
        ending.signal,
      )
      const name = fileName(dock, format, of)
      hand(bytes, name)
      setState({ made: name })
    } catch (error) {
      if (ending.signal.aborted) setState(null)
      else if (error instanceof SilentError) setState({ failed: format, why: t('silent') })
      else setState({ failed: format, why: error instanceof Error ? error.message : String(error) })
    }
    cancel.current = null
  }
  const picture = async (): Promise<void> => {
    setState({ making: 'png' })
    try {
      if (!handles.picture.current) throw new Error(t('picture-none'))
      const sides = pixels === 'own' ? own : pixels.split('x')
      const [width, height] = sides.map((side) =>
        Math.round(Math.min(SIDE.max, Math.max(SIDE.min, Number(side) || 0))),
      ) as [number, number]
      const blob = await handles.picture.current.snapshot(width, height)
      const name = `${plainName(dock.name)}.png`
      download(blob, 'image/png', name)
      setState({ made: name })
    } catch (error) {
      setState({ failed: 'png', why: error instanceof Error ? error.message : String(error) })
    }
  }
  const button = (format: Format, of: Asked['what'] = 'drawing') => (
    <button
      type="button"
      data-format={format}
      disabled={!judged || making}
      onClick={() =>
        make(format, of, (bytes, name) => download(bytes as Uint8Array<ArrayBuffer>, MEDIA[format], name))
      }
    >
      {t(making && state.making === format ? 'making-now' : NAMES[format])}
    </button>
  )
  return (
    <div className="paper-work">
      <p className="hint">{t('what')}</p>
      {dock.findings.some(({ severity }) => severity === 'stop') && <p className="care">{t('stop')}</p>}
      <div className="paper-options">
        <label htmlFor={`${id}-what`}>{t('which')}</label>
        <select id={`${id}-what`} value={what} onChange={(e) => setWhat(e.currentTarget.value as What)}>
          {whatFor(audience).map((one) => (
            <option key={one} value={one}>
              {t(one)}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}-size`}>{t('size')}</label>
        <select id={`${id}-size`} value={size} onChange={(e) => setSize(e.currentTarget.value as PaperSize)}>
          {(Object.keys(PAPER_SIZES) as PaperSize[]).map((one) => (
            <option key={one} value={one}>
              {t(one)}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}-date`}>{t('date')}</label>
        <input id={`${id}-date`} type="date" value={date} onChange={(e) => setDate(e.currentTarget.value)} />
        <label htmlFor={`${id}-by`}>{t('by')}</label>
        <input
          id={`${id}-by`}
          type="text"
          maxLength={80}
          value={by}
          onChange={(e) => setBy(e.currentTarget.value)}
        />
      </div>
      {(what === 'quote' || what === 'estimate' || what === 'packet') && audience !== 'crew' && (
        <QuoteFields choice={choice} date={date || today()} choose={setChoice} />
      )}
      <div className="actions">
        {button('pdf', what)}
        {button('svg', what)}
      </div>
      <h3>{t('figures')}</h3>
      <p className="hint">{t('figures-what')}</p>
      <div className="actions">
        <select
          aria-label={t('figures-which')}
          value={figures}
          onChange={(e) => setFigures(e.currentTarget.value as Figures)}
        >
          {figuresFor(audience).map((one) => (
            <option key={one} value={one}>
              {t(`figures-${one}`)}
            </option>
          ))}
        </select>
        {button('csv', figures)}
        {button('json', figures)}
      </div>
      <h3>{t('cad')}</h3>
      <p className="hint">{t('cad-what')}</p>
      <div className="actions">{button('dxf')}</div>
      <h3>{t('model')}</h3>
      <p className="hint">{t('model-what')}</p>
      <div className="actions">
        {button('glb')}
        {button('usdz')}
        {model?.of === dock ? (
          <ArLink model={model} />
        ) : (
          showsModels() && (
            <button
              type="button"
              className="main"
              disabled={!judged || making}
              onClick={() => make('usdz', 'drawing', (bytes, name) => setModel({ bytes, name, of: dock }))}
            >
              {t('ar')}
            </button>
          )
        )}
      </div>
      {showsModels() && <p className="hint">{t('ar-what')}</p>}
      <h3>{t('picture')}</h3>
      <p className="hint">{t('picture-what')}</p>
      <div className="actions">
        <select
          aria-label={t('picture-size')}
          value={pixels}
          onChange={(e) => setPixels(e.currentTarget.value as typeof pixels)}
        >
          {PIXELS.map((one) => (
            <option key={one} value={one}>
              {one.replace('x', ' × ')}
            </option>
          ))}
          <option value="own">{t('picture-own')}</option>
        </select>
        {pixels === 'own' && (
          <div className="paper-options">
            {(['picture-width', 'picture-height'] as const).map((side, i) => (
              <Fragment key={side}>
                <label htmlFor={`${id}-${side}`}>{t(side)}</label>
                <input
                  id={`${id}-${side}`}
                  type="number"
                  {...SIDE}
                  value={own[i]}
                  onChange={(e) => {
                    const { value } = e.currentTarget
                    setOwn(([w, h]) => (i === 0 ? [value, h] : [w, value]))
                  }}
                />
              </Fragment>
            ))}
          </div>
        )}
        <button type="button" data-format="png" disabled={making} onClick={picture}>
          {t('png')}
        </button>
      </div>
      <p className={state && 'failed' in state ? 'fault' : 'hint'} role="status">
        {!judged
          ? t('wait')
          : state === null
            ? ''
            : 'making' in state
              ? state.at
                ? t('making-paper', {
                    what: text(t(NAMES[state.making])),
                    paper: text(t(state.at.paper)),
                    n: count(state.at.n),
                    of: count(state.at.of),
                  })
                : t('making', { what: text(t(NAMES[state.making])) })
              : 'made' in state
                ? t('made', { file: text(state.made) })
                : t('failed', { what: text(t(NAMES[state.failed])), why: text(state.why) })}
      </p>
      {making && state.making !== 'png' && (
        <button type="button" className="quiet" onClick={() => cancel.current?.()}>
          {t('stop-making')}
        </button>
      )}
      {!matchMedia('(pointer: coarse)').matches && <Phone />}
    </div>
  )
}

/** What opens the dock elsewhere; null where the page puts none into its address, or a square code cannot hold it. */
function addressOf(links: boolean, design: Design): string | null {
  const fragment = links ? linkOf(design) : null
  if (fragment === null) return null
  const address = `${location.origin}${location.pathname}${location.search}${fragment}`
  return new TextEncoder().encode(address).length <= MOST_BYTES ? address : null
}

/** The same dock on a phone, by a code that holds its link. */
function Phone() {
  const { t } = useWords(DOCUMENTS)
  const host = useHost()
  const design = useLeadline((s) => s.design)
  const address = addressOf(host.links, design)
  return (
    <>
      <h3>{t('phone')}</h3>
      {address !== null ? (
        <>
          <p className="hint">{t('phone-what')}</p>
          <Qr text={address} label={t('code')} />
        </>
      ) : (
        <>
          <p className="hint">{t(host.links ? 'phone-too-large' : 'phone-no-link')}</p>
          <div className="actions">
            <button type="button" onClick={() => host.saveFile()}>
              {t('phone-file')}
            </button>
          </div>
        </>
      )}
    </>
  )
}
