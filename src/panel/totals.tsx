/** Totals: price with what is not in it, weight, heaviest lift; the whole parts list folded below. */
import { useMemo } from 'react'
import { rowId } from '../state/highlight.ts'
import { type LeadlineState, useLeadline, usePlaced } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { count } from '../words/index.ts'
import { PickButton } from './pick-button.tsx'
import { usePrice } from './use-price.ts'

export function Totals() {
  const { totals, parts } = usePlaced()
  const stale = useLeadline((s) => s.stale)
  const { t, mass, priced } = useWords()
  const price = usePrice()
  const figure = (told: string): string => (stale ? t('takes.working') : told)
  const pieces = parts.reduce((sum, row) => sum + row.quantity, 0)
  return (
    <section className="answer takes">
      <h2>{t('takes.title')}</h2>
      <dl className="totals">
        {priced && (
          <div>
            <dt>{t('takes.price')}</dt>
            <dd className={price.known ? '' : 'none'}>{figure(price.known ? price.short : price.line)}</dd>
            {price.plus !== '' && !stale && <dd className="hint">{price.plus}</dd>}
          </div>
        )}
        <div>
          <dt>{t('takes.weight')}</dt>
          <dd>{figure(mass(totals.mass))}</dd>
        </div>
        <div>
          <dt>{t('takes.lift')}</dt>
          <dd>{figure(mass(totals.heaviestLift))}</dd>
        </div>
      </dl>
      <Fold
        summary={
          <>
            {t('takes.list')} <span className="hint">{t('takes.pieces', { pieces: count(pieces) })}</span>
          </>
        }
      >
        <List />
      </Fold>
    </section>
  )
}

function List() {
  const { totals, parts, existing } = usePlaced()
  const set = useLeadline((s) => s.set)
  const selection = useLeadline((s) => s.selection)
  const { t, mass, money, priced, lined } = useWords()
  const named = useNames()
  return (
    <table className="list-of-parts">
      <thead>
        <tr>
          <th scope="col">{t('takes.part')}</th>
          <th scope="col">{t('takes.quantity')}</th>
          <th scope="col">{t('takes.weight')}</th>
          {priced && <th scope="col">{t('takes.parts-cost')}</th>}
        </tr>
      </thead>
      <tbody>
        {parts.map((row) => (
          <Row
            key={rowId(row)}
            id={rowId(row)}
            kind={row.kind}
            code={row.code}
            name={named(row)}
            quantity={row.quantity}
            spares={row.spares > 0 && t('takes.spares', { spares: count(row.spares) })}
            weight={mass(row.mass)}
            cost={priced && (lined ? money(row.price) : '')}
            picked={selection === rowId(row)}
            set={set}
          />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row" colSpan={2}>
            {t('takes.total')}
          </th>
          <td>{mass(totals.mass)}</td>
          {priced && <td>{money(totals.price)}</td>}
        </tr>
        {existing && (
          <tr>
            <th scope="row" colSpan={2}>
              {t('takes.new')}
            </th>
            <td>{mass(existing.mass)}</td>
            {priced && <td>{money(existing.price)}</td>}
          </tr>
        )}
      </tfoot>
    </table>
  )
}

interface RowProps {
  readonly id: string
  readonly kind: string
  readonly code: string
  readonly name: string
  readonly quantity: number
  /** False: none, or not told. */
  readonly spares: string | false
  readonly weight: string
  readonly cost: string | false
  readonly picked: boolean
  readonly set: LeadlineState['set']
}

/** Drawn anew only where it says something else: of a long list an edit changes a few rows. */
function Row(row: RowProps) {
  const { id, set } = row
  return useMemo(
    () => (
      <tr
        data-kind={row.kind}
        data-code={row.code}
        className={row.picked ? 'lit' : ''}
        onPointerEnter={() => set({ hover: id })}
        onPointerLeave={() => set({ hover: null })}
      >
        <th scope="row">
          <PickButton id={id}>{row.name}</PickButton>
        </th>
        <td>
          {row.quantity}
          {row.spares && <small>{row.spares}</small>}
        </td>
        <td>{row.weight}</td>
        {row.cost !== false && <td>{row.cost}</td>}
      </tr>
    ),
    // biome-ignore lint/correctness/useExhaustiveDependencies: all of them, and each is a plain value.
    Object.values(row),
  )
}
