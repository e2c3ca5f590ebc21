/** Who asks and how to answer them: a name, an email address or a telephone number, and what they would like done. */
import { useId } from 'react'
import { hasPrice } from '../panel/verdict.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { REQUEST } from '../words/request.ts'

/** As typed. */
export interface Typed {
  readonly name: string
  readonly email: string
  readonly phone: string
  readonly place: string
  readonly note: string
  /** Codes of the catalog's services. */
  readonly wants: readonly string[]
  readonly picture: boolean
  /** The box beside the shop's consent text. */
  readonly agreed: boolean
}

export const NOTHING_TYPED: Typed = {
  ...{ name: '', email: '', phone: '', place: '', note: '' },
  wants: [],
  picture: true,
  agreed: false,
}

type TextField = 'name' | 'email' | 'phone' | 'place'
const FIELDS: readonly {
  readonly key: TextField
  readonly complete: string
  readonly mode: 'text' | 'email' | 'tel'
}[] = [
  { key: 'name', complete: 'name', mode: 'text' },
  { key: 'email', complete: 'email', mode: 'email' },
  { key: 'phone', complete: 'tel', mode: 'tel' },
  { key: 'place', complete: 'off', mode: 'text' },
]

export type Fault = 'name-missing' | 'contact-missing' | 'email-wrong' | 'consent-missing'

/** What an answer cannot do without, at the field where it is to be mended. */
export function faultsOf(
  { name, email, phone, agreed }: Typed,
  mustAgree: boolean,
): Partial<Record<TextField | 'agreed', Fault>> {
  const [mail, call] = [email.trim(), phone.trim()]
  return {
    ...(name.trim() === '' && { name: 'name-missing' }),
    ...(mail === '' && call === '' && { email: 'contact-missing' }),
    ...(mustAgree && !agreed && { agreed: 'consent-missing' as const }),
    ...(mail !== '' && !/^[^\s@]+@[^\s@]+$/.test(mail) && { email: 'email-wrong' }),
  }
}

export interface FieldsProps {
  readonly typed: Typed
  /** What is missing is told. */
  readonly checked: boolean
  readonly set: (typed: Typed) => void
}

export function ContactFields({ typed, checked, set }: FieldsProps) {
  const { t } = useWords(REQUEST)
  const dock = useDock()
  const { picture } = useHandles()
  const id = useId()
  const faults = checked ? faultsOf(typed, false) : {}
  return (
    <>
      {!hasPrice(dock) && <p className="care">{t('request.stop')}</p>}
      <div className="contact">
        {FIELDS.map(({ key, complete, mode }) => {
          const fault = faults[key]
          return (
            <div className="field" key={key}>
              <label htmlFor={`${id}-${key}`}>{t(`request.${key}`)}</label>
              <input
                id={`${id}-${key}`}
                name={key}
                type="text"
                inputMode={mode}
                autoComplete={complete}
                required={key === 'name'}
                maxLength={200}
                value={typed[key]}
                aria-invalid={fault !== undefined}
                aria-describedby={fault ? `${id}-${key}-fault` : undefined}
                onChange={(event) => set({ ...typed, [key]: event.currentTarget.value })}
              />
              {fault && (
                <p className="fault" id={`${id}-${key}-fault`}>
                  {t(`request.${fault}`)}
                </p>
              )}
            </div>
          )
        })}
      </div>
      <Wants wants={typed.wants} set={(wants) => set({ ...typed, wants })} />
      <div className="field">
        <label htmlFor={`${id}-note`}>{t('request.note')}</label>
        <textarea
          id={`${id}-note`}
          rows={2}
          maxLength={4000}
          value={typed.note}
          onChange={(event) => set({ ...typed, note: event.currentTarget.value })}
        />
      </div>
      {picture.current && (
        <Check on={typed.picture} set={(on) => set({ ...typed, picture: on })} label={t('request.picture')} />
      )}
    </>
  )
}

/** What the shop does besides, by its catalog's own names. */
function Wants({
  wants,
  set,
}: {
  readonly wants: readonly string[]
  readonly set: (wants: readonly string[]) => void
}) {
  const { t } = useWords(REQUEST)
  const named = useNames()
  // Work by the hour is the shop's to offer.
  const services = useLeadline((s) => s.catalog.services)?.filter(({ per }) => per !== 'hour') ?? []
  if (services.length === 0) return null
  return (
    <fieldset className="wants">
      <legend>{t('request.wants')}</legend>
      {services.map(({ code, name }) => (
        <Check
          key={code}
          label={named({ code, name })}
          on={wants.includes(code)}
          // In the shop's order, not in the order of clicks: the same wish is the same request.
          set={(on) =>
            set(services.map((one) => one.code).filter((one) => (one === code ? on : wants.includes(one))))
          }
        />
      ))}
    </fieldset>
  )
}

interface CheckProps {
  readonly label: string
  readonly on: boolean
  readonly set: (on: boolean) => void
}

const Check = ({ label, on, set }: CheckProps) => (
  <label className="switch">
    <span>{label}</span>
    <input type="checkbox" checked={on} onChange={(event) => set(event.currentTarget.checked)} />
  </label>
)
