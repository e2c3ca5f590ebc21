/** People on the dock: how many it is to carry, and what that comes to. */

import { basisIn, type Figure } from '../../rules/index.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { Choice, Hint } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { PEOPLE_AND_BOAT, type PeopleAndBoatWord } from '../words/people-and-boat.ts'
import * as carry from './deck-load-edits.ts'

const pressure = (value: number): Figure => ({ value, unit: 'Pa' })

export function People() {
  const now = useLeadline((s) => carry.loadOf(s.design))
  const edit = useLeadline((s) => s.edit)
  const { t, language } = useWords(PEOPLE_AND_BOAT)
  const known = carry.LOADS.find((load) => Math.abs(load.pressure - now) < 0.5)
  const option = (key: string, value: number) => ({
    value: key,
    label: (
      <>
        {t('carried.load', { load: pressure(value) })}
        <small>{t(`carried.load.${key}` as PeopleAndBoatWord)}</small>
      </>
    ),
  })
  return (
    <div>
      <Choice
        legend={t('carried.people')}
        value={known ? String(known.psf) : 'own'}
        options={[
          ...carry.LOADS.map((load) => option(String(load.psf), load.pressure)),
          ...(known ? [] : [option('own', now)]),
        ]}
        hint={t('carried.people.hint')}
        set={(key) => {
          const load = carry.LOADS.find(({ psf }) => String(psf) === key)
          if (load) edit((d) => carry.setLoad(d, load.pressure))
        }}
      />
      <Hint>
        <Used />
      </Hint>
      {known && (
        <Fold summary={t('carried.from-what')}>
          <Hint>{t('carried.from', { basis: text(basisIn(known.basis, { language })) })}</Hint>
        </Fold>
      )}
    </div>
  )
}

/** The resulting use, shown when it is known. */
function Used() {
  const { structure } = useDock()
  const whole = useLeadline(isJudged)
  const { t } = useWords(PEOPLE_AND_BOAT)
  if (!structure || structure.legs.length === 0) return whole ? null : t('carried.checking')
  const most = (list: readonly { readonly use: number }[]): Figure => ({
    value: list.reduce((high, { use }) => Math.max(high, use), 0),
    unit: 'share',
  })
  return t('carried.used', { legs: most(structure.legs), frames: most(structure.rails) })
}
