/**
 * A dock shaped by hand, from above: each free edge takes a section, each section is slid, turned, moved, given another size or taken away.
 * What cannot be is drawn as it was asked for, with why, and the dock stays as it is.
 */
import { useEffect, useMemo } from 'react'
import { shopOf } from '../../rules/index.ts'
import { freshId, toggleRamp } from '../../rules/plan/operations.ts'
import { type Lying, lie, spokenOf } from '../../rules/plan/troubles.ts'
import { useLeadline, useLeadlineStore } from '../state/store.ts'
import { Choice, Hint } from '../ui/controls.tsx'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { count, text } from '../words/index.ts'
import { PLAN_EDITOR } from '../words/plan-editor.ts'
import { Chosen } from './chosen.tsx'
import { KeepTemplate } from './keep-template.tsx'
import { offeredOf, turnsFor } from './new-section.ts'
import css from './plan-editor.css?inline'
import { PlanPicture } from './plan-picture.tsx'
import { labelOf, MOST_SHAPED } from './sentences.ts'
import { useShaping } from './use-shaping.ts'
import { Why } from './why.tsx'

export function PlanEditor() {
  const plan = useLeadline((s) => s.design.dock.plan)
  const frame = useLeadline((s) => s.design.dock.frame)
  const catalog = useLeadline((s) => s.catalog)
  const shop = shopOf(catalog)
  const box = useSheet<HTMLDivElement>(css)
  const { t } = useWords(PLAN_EDITOR)
  const set = useLeadline((s) => s.set)
  // The scene offers free edges too while this is open.
  useEffect(() => {
    set({ shaping: 'out' })
    return () => set({ shaping: null })
  }, [set])
  const lying = useMemo(
    () => (plan && plan.length <= MOST_SHAPED && shop.frames.has(frame) ? lie(plan, frame, shop) : null),
    [plan, frame, shop],
  )
  return (
    <div className="plan-editor" ref={box}>
      {lying ? (
        <Editing lying={lying} />
      ) : (
        <Hint>{t(plan && plan.length > MOST_SHAPED ? 'too-many' : 'no-frame')}</Hint>
      )}
    </div>
  )
}

function Editing({ lying }: { readonly lying: Lying }) {
  const store = useLeadlineStore()
  const frame = useLeadline((s) => s.design.dock.frame)
  const shop = shopOf(useLeadline((s) => s.catalog))
  const set = useLeadline((s) => s.set)
  const selection = useLeadline((s) => s.selection)
  const forShop = useLeadline((s) => s.audience === 'shop')
  const next = useLeadline((s) => s.shaping ?? 'out')
  const { t } = useWords(PLAN_EDITOR)
  const { t: ts } = useWords()
  const shaping = useShaping(lying)
  const { gone } = shaping
  const own = shop.frames.get(frame)!
  const offered = useMemo(() => offeredOf(next, shop.catalog, own), [next, shop, own])
  const turns = turnsFor(shop.catalog, own).flatMap(({ code, turn }) =>
    (['left', 'right'] as const).map((way) => ({
      value: `${way} ${code}` as const,
      label: t(`next.${way}`, { turn: count(turn!) }),
    })),
  )
  const chosen = lying.layout.placed.find(({ id }) => id === selection) ?? null
  const ramp = toggleRamp(lying.plan, freshId(lying.plan, spokenOf(store.getState().design), 'r'))
  return (
    <>
      <Hint>{t('hint')}</Hint>
      <Choice
        legend={t('next')}
        value={next}
        columns={2}
        options={[
          { value: 'out', label: t('next.out') },
          { value: 'beside', label: t('next.beside') },
          ...turns,
        ]}
        set={(way) => set({ shaping: way })}
      />
      <PlanPicture
        lying={lying}
        shop={shop}
        next={offered}
        chosen={chosen}
        choose={(id) => {
          set({ selection: id })
          shaping.move(null)
        }}
        shaping={shaping}
      />
      <div role="status">
        {shaping.tried && <Why tried={shaping.tried} lying={lying} drop={() => shaping.show(null)} />}
        {gone && <Hint>{t('removed', { section: text(gone.name), n: count(gone.n) })}</Hint>}
      </div>
      {chosen && (
        <Chosen
          key={chosen.id}
          lying={lying}
          section={chosen}
          name={labelOf(t, lying, chosen.id)}
          moving={shaping.moving === chosen.id}
          setMoving={(on) => shaping.move(on ? chosen.id : null)}
          perform={shaping.perform}
          remove={shaping.remove}
        />
      )}
      {ramp?.kind === 'ramp' && (
        <label className="switch">
          <span>{ts('ramp.label')}</span>
          <input type="checkbox" checked={ramp.ramp === null} onChange={() => shaping.perform(ramp)} />
        </label>
      )}
      {forShop && <KeepTemplate plan={lying.plan} frame={frame} />}
    </>
  )
}
