/** Papers and models: what leaves the screen, made when it is asked for. */
import { useId, useState } from 'react'
import { PAPER_SIZES, type PaperSize } from '../../geometry/paper/marks.ts'
import { type Format, fileName, MEDIA, WHAT, type What, writeFile } from '../papers/write.ts'
import { useHost } from '../state/host.ts'
import { linkOf } from '../state/link.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { text } from '../words/index.ts'
import { type PaperWord, usePaperWords } from '../words/use-paper-words.ts'
import { download, modelLink, showsModels } from './hand-over.ts'
import { MOST_BYTES, Qr } from './qr.tsx'

type State =
  | { readonly making: Format }
  | { readonly made: string }
  | { readonly failed: Format; readonly why: string }
  | null

/** The day here, as a date field has it. */
function today(): string {
  const now = new Date()
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** What is said of a format. */
const NAMES: Readonly<Record<Format, PaperWord>> = {
  pdf: 'pdf',
  svg: 'svg',
  dxf: 'dxf',
  glb: 'glb',
  usdz: 'usdz',
}

export function Papers() {
  const { p, units, lang } = usePaperWords()
  const dock = useDock()
  const judged = useLeadline(isJudged)
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const id = useId()
  const [what, setWhat] = useState<What>('packet')
  const [size, setSize] = useState<PaperSize>(units === 'imperial' ? 'letter' : 'a4')
  const [date, setDate] = useState(today)
  const [by, setBy] = useState('')
  const [state, setState] = useState<State>(null)
  const making = state !== null && 'making' in state
  const make = async (format: Format, hand: (bytes: Uint8Array, name: string) => void): Promise<void> => {
    setState({ making: format })
    // The words are on the screen before the work begins.
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
    try {
      const fonts = async () => (await import('../papers/fonts.ts')).paperFonts()
      const options = { units, lang, size, date: date || today(), by }
      const asked = { what, dock, design, catalog, options }
      const bytes = await writeFile(format, asked, fonts)
      const name = fileName(dock, format, format === 'pdf' || format === 'svg' ? what : 'drawing')
      hand(bytes, name)
      setState({ made: name })
    } catch (error) {
      setState({ failed: format, why: error instanceof Error ? error.message : String(error) })
    }
  }
  const button = (format: Format) => (
    <button
      type="button"
      data-format={format}
      disabled={!judged || making}
      onClick={() => make(format, (bytes, name) => download(bytes, MEDIA[format], name))}
    >
      {p(NAMES[format])}
    </button>
  )
  return (
    <div className="paper-work">
      <p className="hint">{p('what')}</p>
      {dock.findings.some(({ severity }) => severity === 'stop') && <p className="care">{p('stop')}</p>}
      <div className="paper-options">
        <label htmlFor={`${id}-what`}>{p('which')}</label>
        <select id={`${id}-what`} value={what} onChange={(e) => setWhat(e.currentTarget.value as What)}>
          {WHAT.map((one) => (
            <option key={one} value={one}>
              {p(one)}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}-size`}>{p('size')}</label>
        <select id={`${id}-size`} value={size} onChange={(e) => setSize(e.currentTarget.value as PaperSize)}>
          {(Object.keys(PAPER_SIZES) as PaperSize[]).map((one) => (
            <option key={one} value={one}>
              {p(one)}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}-date`}>{p('date')}</label>
        <input id={`${id}-date`} type="date" value={date} onChange={(e) => setDate(e.currentTarget.value)} />
        <label htmlFor={`${id}-by`}>{p('by')}</label>
        <input
          id={`${id}-by`}
          type="text"
          maxLength={80}
          value={by}
          onChange={(e) => setBy(e.currentTarget.value)}
        />
      </div>
      <div className="actions">
        {button('pdf')}
        {button('svg')}
      </div>
      <h3>{p('cad')}</h3>
      <p className="hint">{p('cad-what')}</p>
      <div className="actions">{button('dxf')}</div>
      <h3>{p('model')}</h3>
      <p className="hint">{p('model-what')}</p>
      <div className="actions">
        {button('glb')}
        {button('usdz')}
        {showsModels() && (
          <button
            type="button"
            className="main"
            disabled={!judged || making}
            onClick={() => make('usdz', (bytes, name) => modelLink(bytes, MEDIA.usdz, name).click())}
          >
            {p('ar')}
          </button>
        )}
      </div>
      <p className={state && 'failed' in state ? 'fault' : 'hint'} role="status">
        {!judged
          ? p('wait')
          : state === null
            ? ''
            : 'making' in state
              ? p('making', { what: text(p(NAMES[state.making])) })
              : 'made' in state
                ? p('made', { file: text(state.made) })
                : p('failed', { what: text(p(NAMES[state.failed])), why: text(state.why) })}
      </p>
      {!matchMedia('(pointer: coarse)').matches && <Phone />}
    </div>
  )
}

/** The same dock on a phone, by a code that holds its link. */
function Phone() {
  const { p } = usePaperWords()
  const host = useHost()
  const design = useLeadline((s) => s.design)
  const fragment = host.links ? linkOf(design) : null
  const address =
    fragment === null ? null : `${location.origin}${location.pathname}${location.search}${fragment}`
  const fits = address !== null && new TextEncoder().encode(address).length <= MOST_BYTES
  return (
    <>
      <h3>{p('phone')}</h3>
      {fits ? (
        <>
          <p className="hint">{p('phone-what')}</p>
          <Qr text={address} label={p('code')} />
        </>
      ) : (
        <p className="hint">{p(host.links ? 'phone-too-large' : 'phone-no-link')}</p>
      )}
    </>
  )
}
