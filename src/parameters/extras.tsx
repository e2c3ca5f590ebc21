/** What is added: braces along the dock, bumpers, ladders, cleats, posts, each with what one more comes to. */
import { useMemo } from 'react'
import { LIMITS } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { Stepper } from '../ui/controls.tsx'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { WANTS } from '../words/wants.ts'
import { useAdded } from './added.ts'
import { BracingAlong } from './bracing-along.tsx'
import * as change from './design-edits.ts'

/** What one more of each extra adds. */
function useOneMore(): (code: string) => string | null {
  const extras = useLeadline((s) => s.catalog.extras)
  const added = useAdded(
    useMemo(() => new Map(extras.map(({ code }) => [code, (d) => change.oneMore(d, code)])), [extras]),
  )
  const { t } = useWords(WANTS)
  return (code) => {
    const price = added(code)
    return price === null ? null : t('extras.one-more', { price: text(price) })
  }
}

export function Extras() {
  const extras = useLeadline((s) => s.catalog.extras)
  const wanted = useLeadline((s) => s.design.dock.extras)
  const edit = useLeadline((s) => s.edit)
  const oneMore = useOneMore()
  const { t } = useWords(WANTS)
  const named = useNames()
  return (
    <>
      <BracingAlong />
      <fieldset className="control list">
        <legend>{t('extras.label')}</legend>
        {extras
          .filter(({ code, hidden }) => !hidden || wanted[code])
          .map((one) => ({ ...one, name: named(one) }))
          .map(({ code, name }) => (
            <Stepper
              key={code}
              label={
                <>
                  {name}
                  <small>{oneMore(code)}</small>
                </>
              }
              fewer={t('extras.fewer', { name: text(name) })}
              more={t('extras.more', { name: text(name) })}
              value={wanted[code] ?? 0}
              min={0}
              max={LIMITS.extras}
              set={(n) => edit((d) => change.setExtra(d, code, n))}
            />
          ))}
      </fieldset>
    </>
  )
}
