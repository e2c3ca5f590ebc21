/** 'My boat draws 2 ft': the least dock with that under the keel at low water; searched beside the page, and all that was tried shown. */
import { useEffect, useRef, useState } from 'react'
import { sameDesign } from '../../state/same-design.ts'
import { useLeadline, useLeadlineStore } from '../../state/store.ts'
import { Hint } from '../../ui/controls.tsx'
import { Fold } from '../../ui/fold.tsx'
import { LengthField } from '../../ui/quantity-field.tsx'
import { useNames } from '../../ui/use-names.ts'
import { useSheet } from '../../ui/use-sheet.ts'
import { useWords } from '../../ui/use-words.ts'
import { snapUp } from '../../units/steps.ts'
import { DEPTH_SEARCH } from '../../words/depth-search.ts'
import { count, meters, text } from '../../words/index.ts'
import { CostOverDepth } from './cost-over-depth.tsx'
import css from './depth-search.css?inline'
import { keyOf } from './key.ts'
import type { DepthWish, Progress, Searched, Tried } from './search.ts'
import type { SearchAnswer, SearchQuestion } from './search-worker.ts'

/** What is taken where no boat is told of, m: a runabout's, and a foot under it. */
const USUAL = { draught: 0.6096, length: 5, side: 'right' } as const
const UNDER = 0.3048
const MOST_ROWS = 40

type State =
  | { readonly is: 'idle' | 'stopped' | 'failed' }
  | { readonly is: 'searching'; readonly progress: Progress }
  | { readonly is: 'done'; readonly found: Searched; readonly wanted: number }

export function DepthSearch() {
  const boat = useLeadline((s) => s.design.dock.boat)
  const own = useLeadline((s) => s.design.dock.plan !== undefined)
  const { t } = useDepthWords()
  const [draught, draw] = useState<number | null>(null)
  const [under, leave] = useState(UNDER)
  const { state, search, stop } = useSearch()
  const box = useSheet<HTMLDivElement>(css)
  if (own) return <Hint>{t('plan')}</Hint>
  const wish = {
    draught: draught ?? boat?.draught ?? USUAL.draught,
    under,
    length: boat?.length ?? USUAL.length,
    side: boat?.side ?? USUAL.side,
  }
  return (
    <div className="depth-search" ref={box}>
      <div className="pair">
        <LengthField
          label={t('draws')}
          value={wish.draught}
          commit={(to) => {
            draw(Math.max(0, to))
            return []
          }}
        />
        <LengthField
          label={t('under')}
          value={under}
          commit={(to) => {
            leave(Math.max(0, to))
            return []
          }}
        />
      </div>
      <Hint>{t('hint')}</Hint>
      {state.is === 'searching' ? (
        <button type="button" onClick={stop}>
          {t('stop')}
        </button>
      ) : (
        <button type="button" onClick={() => search(wish)}>
          {t('search')}
        </button>
      )}
      <div role="status">
        {state.is === 'searching' && <Hint>{progressIn(state.progress, t)}</Hint>}
        {(state.is === 'stopped' || state.is === 'failed') && <Hint>{t(state.is)}</Hint>}
      </div>
      {state.is === 'searching' && state.progress.done > 0 && (
        <progress value={state.progress.done} max={state.progress.of} />
      )}
      {state.is === 'done' && <Found found={state.found} wanted={state.wanted} />}
    </div>
  )
}

/** One search at a time, in a worker of its own; over when the part goes. */
function useSearch() {
  const store = useLeadlineStore()
  const { units } = useDepthWords()
  const [state, set] = useState<State>({ is: 'idle' })
  const worker = useRef<Worker | null>(null)
  useEffect(() => () => worker.current?.terminate(), [])
  const stop = (is: 'idle' | 'stopped' | 'failed'): void => {
    worker.current?.terminate()
    worker.current = null
    set({ is })
  }
  const search = (wish: DepthWish): void => {
    const { design, catalog, dock } = store.getState()
    const over = Math.max(0, design.site.levels.high) + catalog.rules.deckOverHigh.value
    const height = snapUp(Math.max(over, dock.waves?.recommendedDeckHeight ?? 0), units)
    const decks = [...new Set([design.dock.deckHeight, height])]
    stop('idle')
    try {
      const made = new Worker(new URL('./search-worker.ts', import.meta.url), {
        type: 'module',
        name: 'leadline-depth-search',
      })
      worker.current = made
      made.addEventListener('message', ({ data }: MessageEvent<SearchAnswer>) => {
        if (worker.current !== made) return
        if ('progress' in data) set({ is: 'searching', progress: data.progress })
        else if (data.found) set({ is: 'done', found: data.found, wanted: wish.draught + wish.under })
        else stop('idle')
      })
      made.addEventListener('error', () => worker.current === made && stop('failed'))
      made.postMessage({ design, catalog, wish, decks } satisfies SearchQuestion)
      set({ is: 'searching', progress: { done: 0, of: 0 } })
    } catch {
      stop('failed')
    }
  }
  return { state, search, stop: () => stop('stopped') }
}

const progressIn = ({ done, of }: Progress, t: ReturnType<typeof useDepthWords>['t']): string =>
  done === 0 ? t('placing', { count: count(of) }) : t('working', { done: count(done), count: count(of) })

const useDepthWords = () => useWords(DEPTH_SEARCH)

/** A dock in a line. */
function useTold() {
  const { t } = useDepthWords()
  const frames = useLeadline((s) => s.catalog.frames)
  const named = useNames()
  return ({ sections, frame, head, deckHeight }: Tried) => ({
    sections: count(sections),
    frame: text(named(frames.find(({ code }) => code === frame) ?? { code: frame, name: frame })),
    head: text(t(headKey(head), { count: count(head.sections) })),
    deck: meters(deckHeight),
  })
}

const headKey = ({ shape }: Tried['head']): `head.${'straight' | 'left' | 'right' | 'tee' | 'wide'}` =>
  `head.${shape}`

function Found({ found, wanted }: { readonly found: Searched; readonly wanted: number }) {
  const { t, priced } = useDepthWords()
  const { all, best, own } = found
  return (
    <>
      {!best && <p>{t('none', { count: count(all.length) })}</p>}
      {own && own !== best && <h3>{t(best ? 'yours' : 'nearest')}</h3>}
      {own && <Offer one={own} all={all} />}
      {!own && best && <p className="care">{t('none-yours')}</p>}
      {best && best !== own && (
        <>
          <h3>{t('least')}</h3>
          <Offer one={best} all={all} beside={own} />
        </>
      )}
      {priced && <CostOverDepth all={all} marked={[own, best]} wanted={wanted} />}
      <Fold summary={t('tried')}>
        <TriedTable all={all} />
      </Fold>
    </>
  )
}

/** What it is, what it costs and whether it does all of it; taken by a button. @param beside that of the shape in hand, where this is another */
function Offer(props: {
  readonly one: Tried
  readonly all: readonly Tried[]
  readonly beside?: Tried | null
}) {
  const { one, all, beside } = props
  const { t, money, priced } = useDepthWords()
  const edit = useLeadline((s) => s.edit)
  const taken = useLeadline((s) => sameDesign(s.design, one.design))
  const told = useTold()
  const neighbor = (by: number): Tried | undefined => {
    const key = keyOf({ ...one, sections: one.sections + by })
    return all.find((other) => keyOf(other) === key)
  }
  const [more, fewer] = [neighbor(1), neighbor(-1)]
  return (
    <>
      <p>
        <strong>
          {t(priced ? 'best' : 'best-crew', {
            ...told(one),
            depth: meters(one.depth),
            price: text(money(one.price)),
          })}
        </strong>{' '}
        <span className={one.found === 'stands' ? undefined : 'care'}>
          {t(`verdict.${one.found === 'stands' ? 'stands' : 'fix'}`, { count: count(one.fixes) })}
        </span>
      </p>
      {priced && beside && (
        <p className="hint">
          {one.price < beside.price
            ? t('saves', { price: text(money(beside.price - one.price)) })
            : t('costs', { price: text(money(one.price - beside.price)) })}
        </p>
      )}
      <button
        type="button"
        className={beside || one.found !== 'stands' ? undefined : 'main'}
        disabled={taken}
        onClick={() => edit(() => one.design)}
      >
        {t(taken ? 'taken' : 'take')}
      </button>
      {priced && more && (
        <p className="hint">
          {t('more', { depth: meters(more.depth), price: text(money(more.price - one.price)) })}
        </p>
      )}
      {priced && fewer && (
        <p className="hint">
          {t('fewer', { depth: meters(fewer.depth), price: text(money(one.price - fewer.price)) })}
        </p>
      )}
    </>
  )
}

function TriedTable({ all }: { readonly all: readonly Tried[] }) {
  const { t, length, money, priced } = useDepthWords()
  const told = useTold()
  // Those that were worked out, and those beside them in price.
  const worked = all.filter(({ found }) => found === 'stands' || found === 'fix')
  const rows = [...worked, ...all.filter((one) => !worked.includes(one))].slice(0, MOST_ROWS)
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">{t('tried-dock')}</th>
            <th scope="col">{t('tried-depth')}</th>
            {priced && <th scope="col">{t('tried-price')}</th>}
            <th scope="col">{t('tried-found')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((one) => (
            <tr key={keyOf(one)}>
              <th scope="row">{t('dock', told(one))}</th>
              <td>{length(one.depth)}</td>
              {priced && <td>{money(one.price)}</td>}
              <td>{t(`found.${one.found ?? 'dearer'}`, { count: count(one.fixes) })}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
