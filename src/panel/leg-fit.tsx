/** Will every leg be long enough? A sentence or two; leg by leg a tap deeper, for the crew and the shop at once. */
import type { Dock, Fit } from '../../rules/index.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { chanceIn, FIT, fitLines } from '../../rules/words/fit-text.ts'
import { useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import css from './leg-fit.css?inline'
import { PickButton } from './pick-button.tsx'

interface Shown {
  readonly dock: Dock
  readonly of: Fit
}

export function LegFit({ dock, of }: Shown) {
  const { t, reader } = useWords(FIT)
  const deeper = useLeadline((s) => s.audience !== 'customer')
  const box = useSheet<HTMLElement>(css)
  return (
    <section className="leg-fit" ref={box}>
      <h3>{t('title')}</h3>
      {fitLines(of, dock, reader).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {deeper ? (
        <Table dock={dock} of={of} />
      ) : (
        <Fold summary={t('table')}>
          <Table dock={dock} of={of} />
        </Fold>
      )}
    </section>
  )
}

const HEAD = ['leg', 'length', 'chance', 'room', 'error', 'reserve', 'reserve95'] as const

function Table({ dock, of }: Shown) {
  const { t, length, reader } = useWords(FIT)
  const selection = useLeadline((s) => s.selection)
  const set = useLeadline((s) => s.set)
  const legs = new Map(dock.legs.map((leg) => [leg.id, leg]))
  return (
    <>
      <p className="hint">{t('hint')}</p>
      <div className="scroll">
        <table>
          <thead>
            <tr>
              {HEAD.map((key) => (
                <th key={key} scope="col">
                  {t(key)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {of.legs.map((one) => {
              const leg = legs.get(one.leg)!
              return (
                <tr
                  key={one.leg}
                  data-leg={one.leg}
                  className={selection === one.leg ? 'lit' : ''}
                  onPointerEnter={() => set({ hover: one.leg })}
                  onPointerLeave={() => set({ hover: null })}
                >
                  <th scope="row">
                    <PickButton id={one.leg}>{legNumber(dock, one.leg)}</PickButton>
                  </th>
                  <td>{length(leg.stock!)}</td>
                  <td>{chanceIn(one.chance, reader)}</td>
                  <td>{length(one.room)}</td>
                  <td>{length(one.error)}</td>
                  <td>{length(leg.reserve)}</td>
                  <td>{length(one.reserve95)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
    </>
  )
}
