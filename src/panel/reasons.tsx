/** Why? The reasons of what is picked, and the table of every leg: the same that the drawing shows, to be read. */
import { basisIn, cornerWord, type Dock, type Leg, type Reason } from '../../rules/index.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useWords, type Words } from '../ui/use-words.ts'
import { meters, text } from '../words/index.ts'
import { reasonText } from '../words/reason-text.ts'
import { REASONS, type ReasonWord } from '../words/reasons.ts'
import { Clearances } from './clearances.tsx'
import { MemberUse } from './member-use.tsx'
import { PickButton } from './pick-button.tsx'

export function Reasons() {
  const dock = useDock()
  const selection = useLeadline((s) => s.selection)
  const set = useLeadline((s) => s.set)
  const words = useWords(REASONS)
  const { t } = words
  const picked = selection !== null && (selection in dock.reasons.legs || selection in dock.reasons.pairs)
  const braced = dock.pairs.filter((pair) => pair.needsBrace || pair.brace)
  return (
    <div className="reasons">
      <p className="hint">{t('why.hint')}</p>
      <label className="pick">
        <span className="unseen">{t('why.pick')}</span>
        <select
          value={picked ? selection : ''}
          onChange={(event) => set({ selection: event.currentTarget.value || null })}
        >
          <option value="">{t('why.none')}</option>
          <optgroup label={t('why.legs')}>
            {dock.legs.map((leg) => (
              <option key={leg.id} value={leg.id}>
                {legName(leg, words)}
              </option>
            ))}
          </optgroup>
          {braced.length > 0 && (
            <optgroup label={t('why.pairs')}>
              {braced.map((pair) => (
                <option key={pair.id} value={pair.id}>
                  {t('why.pair', { x: meters(dock.legs.find((leg) => leg.id === pair.legs[0])?.x ?? 0) })}
                </option>
              ))}
            </optgroup>
          )}
        </select>
      </label>
      <ReasonList
        reasons={picked ? reasonsOf(selection, dock) : [...dock.reasons.start, ...dock.reasons.ramp]}
      />
      {picked && <Clearances id={selection} />}
      {picked && <MemberUse id={selection} dock={dock} />}
      <Fold summary={t('why.table')}>
        <LegTable />
      </Fold>
    </div>
  )
}

/** Of a leg also why its pair is braced or not. */
function reasonsOf(id: string, { reasons, pairs }: Dock): readonly Reason[] {
  const own = reasons.legs[id] ?? reasons.pairs[id] ?? []
  const pair = pairs.find((p) => p.legs.includes(id))
  return pair ? [...own, ...(reasons.pairs[pair.id] ?? [])] : own
}

function legName(leg: Leg, { t, length, reader }: Words<ReasonWord>): string {
  const corner = text(cornerWord(leg.corner, reader))
  const x = meters(leg.x)
  return leg.stock === null
    ? t('why.leg-none', { corner, x })
    : t('why.leg', { corner, x, length: text(length(leg.stock)) })
}

function ReasonList({ reasons }: { readonly reasons: readonly Reason[] }) {
  const words = useWords(REASONS)
  return (
    <ol className="steps">
      {reasons.map((reason) => (
        <li key={`${reason.rule} ${reason.result.value}`}>
          {reasonText(reason, words.reader)}{' '}
          <small>{words.t('why.from', { basis: text(basisIn(reason.basis, words)) })}</small>
        </li>
      ))}
    </ol>
  )
}

export function LegTable() {
  const { legs } = useDock()
  const set = useLeadline((s) => s.set)
  const selection = useLeadline((s) => s.selection)
  const { t, length, reader } = useWords(REASONS)
  return (
    <div className="scroll">
      <table className="legs">
        <thead>
          <tr>
            <th scope="col">{t('why.place')}</th>
            <th scope="col">{t('why.out')}</th>
            <th scope="col">{t('why.depth')}</th>
            <th scope="col">{t('why.set')}</th>
            <th scope="col">{t('why.frame-top')}</th>
            <th scope="col">{t('why.length')}</th>
            <th scope="col">{t('why.above')}</th>
            <th scope="col">{t('why.brace')}</th>
          </tr>
        </thead>
        <tbody>
          {legs.map((leg) => (
            <tr
              key={leg.id}
              data-leg={leg.id}
              className={selection === leg.id ? 'lit' : ''}
              onPointerEnter={() => set({ hover: leg.id })}
              onPointerLeave={() => set({ hover: null })}
            >
              <th scope="row">
                <PickButton id={leg.id}>{`${leg.section} ${cornerWord(leg.corner, reader)}`}</PickButton>
              </th>
              <td>{length(leg.x)}</td>
              <td>{length(0 - leg.bed)}</td>
              <td>{length(leg.setHeight)}</td>
              <td>{length(leg.setHeightFrame)}</td>
              <td data-stock={leg.stock ?? ''}>{leg.stock === null ? '?' : length(leg.stock)}</td>
              <td>{leg.aboveDeck === null ? '?' : length(leg.aboveDeck)}</td>
              <td>{t(leg.braced ? 'why.brace-yes' : 'why.brace-no')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
