/** Which shape the dock has, by picture: the usual ones, the shop's own, and one's own, which is then shaped by hand. */
import { useMemo } from 'react'
import { straightFrames } from '../../rules/catalog/straight.ts'
import type { Shop } from '../../rules/catalog-index.ts'
import { shopOf } from '../../rules/index.ts'
import { LEAST_REACH, type TemplateName, templatePlan } from '../../rules/plan/templates.ts'
import * as change from '../parameters/design-edits.ts'
import { useLeadline, useLeadlineStore } from '../state/store.ts'
import { Choice, Hint, Stepper } from '../ui/controls.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useNames } from '../ui/use-names.ts'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { PLAN_EDITOR } from '../words/plan-editor.ts'
import {
  HEADS,
  type Head,
  reachOf,
  type Shape,
  shapeOf,
  WRITTEN,
  withReach,
  withShape,
  writtenOf,
} from './shape-edits.ts'
import { ShapePicture } from './shape-picture.tsx'
import css from './shapes.css?inline'

const editor = chunk(() => import('./plan-editor.tsx').then((m) => m.PlanEditor))

const TEMPLATE_OF: Readonly<Record<Exclude<Head, 'right'>, TemplateName>> = {
  straight: 'straight',
  left: 'L',
  tee: 'T',
  wide: 'wide',
}
/** Farther out by picture than this is shaped by hand. */
const MOST_REACH = 60
/** Sections of the run in the pictures. */
const REACH = 4

const NO_HEAD = { shape: 'straight', sections: 0 } as const

export function Shapes() {
  const dock = useLeadline((s) => s.design.dock)
  const store = useLeadlineStore()
  const shop = shopOf(useLeadline((s) => s.catalog))
  const edit = useLeadline((s) => s.edit)
  const box = useSheet<HTMLDivElement>(css)
  const { t } = useWords()
  const { t: tp } = useWords(PLAN_EDITOR)
  const options = useOptions(shop)
  const { plan, frame, head = NO_HEAD } = dock
  // Not at every move of a drag that has nothing to do with it: a plan can be long.
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the design what says its shape.
  const [shape, reach] = useMemo(() => {
    const { design } = store.getState()
    return [shapeOf(design, shop), reachOf(design)] as const
  }, [store, shop, plan, frame, head])
  const name = writtenOf(shape)
  const step = change.headStep(head.shape)
  return (
    <div className="control" ref={box}>
      <Choice<Shape>
        legend={tp('shape')}
        value={shape}
        columns={5}
        options={options}
        set={(to) => edit((d) => withShape(d, to, shop))}
      />
      {!plan && head.shape !== 'straight' && (
        <Stepper
          label={tp('head.count')}
          fewer={tp('head.fewer')}
          more={tp('head.more')}
          value={head.sections}
          min={step}
          max={head.shape === 'wide' ? change.legged({ dock }) : 40}
          by={step}
          set={(n) => edit((d) => change.setHeadSections(d, n))}
        />
      )}
      {name && (
        <Stepper
          label={tp('reach')}
          fewer={t('sections.fewer')}
          more={t('sections.more')}
          value={reach}
          min={LEAST_REACH[name]}
          max={MOST_REACH}
          set={(n) => edit((d) => withReach(d, name, n, shop))}
        />
      )}
      {(shape === 'left' || shape === 'right') && <Hint>{tp('head.hint')}</Hint>}
      {plan && <Lazy chunk={editor} props={{}} />}
    </div>
  )
}

/** All that can be chosen, each with its picture. */
function useOptions(shop: Shop) {
  const { t } = useWords()
  const { t: tp } = useWords(PLAN_EDITOR)
  const named = useNames()
  return useMemo(() => {
    const frame = straightFrames(shop.catalog)[0]!
    const picture = (name: TemplateName, right = false) => {
      const plan = templatePlan(name, { frame, reach: REACH, ramp: false })
      const turned = plan.map((one) => (one.edge === 'left' ? { ...one, edge: 'right' as const } : one))
      return <ShapePicture plan={right ? turned : plan} frame={frame.code} shop={shop} />
    }
    return [
      ...HEADS.map((one) => ({
        value: one,
        label: t(`head.${one}`),
        picture: one === 'right' ? picture('L', true) : picture(TEMPLATE_OF[one]),
      })),
      ...WRITTEN.map((one) => ({ value: one, label: tp(`shape.${one}`), picture: picture(one) })),
      ...(shop.catalog.templates ?? []).map((one, i) => ({
        value: `shop-${i}` as const,
        label: named(one),
        picture: <ShapePicture plan={one.plan} frame={one.frame} shop={shop} />,
      })),
      { value: 'own' as const, label: tp('shape.own'), picture: <OwnPicture /> },
    ]
  }, [shop, t, tp, named])
}

const OwnPicture = () => (
  <svg className="shape-picture" viewBox="0 0 44 44" aria-hidden="true">
    <path className="shore" d="M2 40q10-4 20-1t20-2" />
    <path className="hand" d="M18.5 36V12h7v24ZM25.5 19h9v7h-9M10 5v10M5 10h10" />
  </svg>
)
