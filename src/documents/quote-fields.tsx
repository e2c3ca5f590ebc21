/**
 * What the shop puts on its quote beside the parts: services, what is taken off, freight and tax. A customer's estimate has none of it, and
 * is compared with the shop's quote on the screen.
 */
import { type ReactNode, useId } from 'react'
import type { QuoteWanted } from '../../geometry/sheets/quote.ts'
import type { Service } from '../../rules/catalog/index.ts'
import type { QuoteAsked } from '../../rules/papers/quote.ts'
import type { QuoteFile } from '../../rules/papers/quote-file.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { text } from '../words/index.ts'
import { QuoteSince } from './quote-since.tsx'

export interface QuoteChoice {
  /** As typed, by the services' codes; '' where the usual quantity holds. */
  readonly services: Readonly<Record<string, string>>
  /** Percent, as typed; '' for what the catalog gives. */
  readonly discount: string
  readonly fetched: boolean
  readonly untaxed: boolean
  /** An earlier quote that this one is compared with. */
  readonly since: QuoteFile | null
}

export const NO_CHOICE: QuoteChoice = {
  services: {},
  discount: '',
  fetched: false,
  untaxed: false,
  since: null,
}

/** Null for an empty field. A value out of range is not corrected here; it is reported when the quote is made. */
const typed = (value: string): number | null => (value.trim() === '' ? null : Number(value))

/** Services in the shop's order, not in the order of clicks, so that the same choice gives the same paper. */
function askedOf(
  { services, discount, fetched, untaxed }: QuoteChoice,
  offered: readonly Service[],
): Omit<QuoteAsked, 'date'> {
  const share = typed(discount)
  return {
    services: offered.flatMap(({ code }) => {
      const chosen = services[code]
      if (chosen === undefined) return []
      const quantity = typed(chosen)
      return [{ code, ...(quantity !== null && { quantity }) }]
    }),
    ...(share !== null && { discount: { share: share / 100 } }),
    ...(fetched && { fetched }),
    ...(untaxed && { untaxed }),
  }
}

export const wantedOf = (choice: QuoteChoice, offered: readonly Service[]): QuoteWanted => ({
  ...askedOf(choice, offered),
  ...(choice.since && { since: choice.since }),
})

const zoneField = chunk(() => import('../quote-request/zone-field.tsx').then((m) => m.ZoneField))

interface Props {
  readonly choice: QuoteChoice
  /** Of the quote, `YYYY-MM-DD`. */
  readonly date: string
  readonly choose: (choice: QuoteChoice) => void
}

export function QuoteFields({ choice, date, choose }: Props) {
  const { t } = useWords(DOCUMENTS)
  const catalog = useLeadline((s) => s.catalog)
  const audience = useLeadline((s) => s.audience)
  const id = useId()
  const { services, discount, fetched, untaxed } = choice
  const choosing = (code: string, quantity: string | null): void => {
    const { [code]: _, ...rest } = services
    choose({ ...choice, services: quantity === null ? rest : { ...rest, [code]: quantity } })
  }
  const compare = (
    <QuoteSince
      since={choice.since}
      asked={{ ...askedOf(choice, catalog.services ?? []), date }}
      quoted={audience === 'shop'}
      choose={(since) => choose({ ...choice, since })}
    />
  )
  const zone = catalog.quote?.zones && <Lazy chunk={zoneField} props={{}} quiet />
  if (audience !== 'shop')
    return (
      <fieldset className="group">
        <legend>{t('estimate')}</legend>
        <p className="care">{t('estimate-what')}</p>
        {zone}
        {compare}
      </fieldset>
    )
  return (
    <fieldset className="group">
      <legend>{t('on-quote')}</legend>
      {catalog.services?.map((service) => (
        <ServiceFields
          key={service.code}
          service={service}
          chosen={services[service.code] ?? null}
          choose={(quantity) => choosing(service.code, quantity)}
        />
      ))}
      <div className="paper-options">
        <label htmlFor={`${id}-discount`}>{t('discount')}</label>
        <input
          id={`${id}-discount`}
          type="number"
          min={0}
          max={100}
          step={0.5}
          value={discount}
          placeholder={String((catalog.quote?.discount ?? 0) * 100)}
          onChange={(e) => choose({ ...choice, discount: e.currentTarget.value })}
        />
      </div>
      {zone}
      {(catalog.quote?.freight || catalog.quote?.zones) && (
        <Switch on={fetched} set={(on) => choose({ ...choice, fetched: on })}>
          {t('fetched')}
        </Switch>
      )}
      {catalog.quote?.tax && (
        <Switch on={untaxed} set={(on) => choose({ ...choice, untaxed: on })}>
          {t('untaxed', { tax: text(catalog.quote.tax.name) })}
        </Switch>
      )}
      {compare}
    </fieldset>
  )
}

interface ServiceProps {
  readonly service: Service
  /** Its quantity, as typed; null where it is not chosen. */
  readonly chosen: string | null
  readonly choose: (quantity: string | null) => void
}

/** A service to be chosen, and how much of it. */
function ServiceFields({ service, chosen, choose }: ServiceProps) {
  const { price, per } = service
  const name = useNames()(service)
  const { t, money } = useWords(DOCUMENTS)
  const sections = useDock().sections.length
  const id = useId()
  return (
    <>
      <Switch on={chosen !== null} set={(on) => choose(on ? '' : null)}>
        {name} <span className="hint">{t(`price-${per}`, { price: text(money(price)) })}</span>
      </Switch>
      {chosen !== null && per !== 'job' && (
        <div className="paper-options">
          <label htmlFor={id}>{t(`count-${per}`)}</label>
          <input
            id={id}
            type="number"
            min={0}
            max={1e6}
            step={per === 'hour' ? 0.5 : 1}
            value={chosen}
            placeholder={String(per === 'section' ? sections : 1)}
            aria-label={t('count-of', { service: text(name), what: text(t(`count-${per}`)) })}
            onChange={(e) => choose(e.currentTarget.value)}
          />
        </div>
      )}
    </>
  )
}

interface SwitchProps {
  readonly on: boolean
  readonly set: (on: boolean) => void
  readonly children: ReactNode
}

const Switch = ({ on, set, children }: SwitchProps) => (
  <label className="switch">
    <span>{children}</span>
    <input type="checkbox" checked={on} onChange={(e) => set(e.currentTarget.checked)} />
  </label>
)
