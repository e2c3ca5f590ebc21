/** Why? The reasons of what is picked, and the table of every leg: the same that the drawing shows, to be read. */
import { basisIn, type Dock, type Leg, type Reason } from '../../rules/index.ts'
import { legListed, legNamed, pairListed } from '../../rules/words/leg-name.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useWords, type Words } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
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
                {legName(leg, dock, words)}
              </option>
            ))}
          </optgroup>
          {braced.length > 0 && (
            <optgroup label={t('why.pairs')}>
              {braced.map((pair) => (
                <option key={pair.id} value={pair.id}>
                  {t('why.pair', { legs: text(pairListed(dock, pair.id)) })}
                </option>
              ))}
            </optgroup>
          )}
        </select>
      </label>
      <ReasonList
        dock={dock}
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

function legName(leg: Leg, dock: Dock, { t, length, reader }: Words<ReasonWord>): string {
  const named = legNamed(dock, leg.id, reader)
  return leg.stock === null ? named : t('why.leg', { leg: text(named), length: text(length(leg.stock)) })
}

function ReasonList({ reasons, dock }: { readonly reasons: readonly Reason[]; readonly dock: Dock }) {
  const words = useWords(REASONS)
  return (
    <ol className="steps">
      {reasons.map((reason) => (
        <li key={`${reason.rule} ${reason.result.value}`}>
          {reasonText(reason, words.reader, dock)}{' '}
          <small>{words.t('why.from', { basis: text(basisIn(reason.basis, words)) })}</small>
        </li>
      ))}
    </ol>
  )
}

function LegTable() {
  const dock = useDock()
  const { legs } = dock
  const set = useLeadline((s) => s.set)
  const selection = useLeadline((s) => s.selection)
  const { t, length, reader } = useWords(REASONS)
  return (
    <div className="scroll">
      <table className="legs">
        <thead>
          <tr>
            <th scope="col">{t('why.place')}</th>
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
                <PickButton id={leg.id}>{legListed(dock, leg.id, reader)}</PickButton>
              </th>
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
