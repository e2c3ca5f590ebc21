/** The dock from above, each edge a button: one more of an extra goes where it is touched, by keyboard to the middle of what is free. */
import { useMemo, useState } from 'react'
import type { Edge } from '../../../rules/dock.ts'
import { deriveKit, type Kit } from '../../../rules/index.ts'
import type { PlacedSection } from '../../../rules/layout/index.ts'
import { type ExtraPlaces, extraPlaces } from '../../../rules/parts/extra-places.ts'
import { useLeadline } from '../../state/store.ts'
import { Choice, Hint } from '../../ui/controls.tsx'
import { LengthField } from '../../ui/quantity-field.tsx'
import { useNames } from '../../ui/use-names.ts'
import { useSheet } from '../../ui/use-sheet.ts'
import { useWords } from '../../ui/use-words.ts'
import { snap } from '../../units/steps.ts'
import { EXTRAS_PLACED } from '../../words/extras-placed.ts'
import { text } from '../../words/index.ts'
import { EdgePicture, MOST, useEdgeName, useSectionName } from '../edge-picture.tsx'
import css from './edge-plan.css?inline'
import * as change from './place-edits.ts'

export function EdgePlan() {
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const bed = useLeadline((s) => s.project.bed)
  const large = useLeadline((s) => s.project.dock.sections.length > MOST)
  const offered = catalog.extras.filter(({ hidden }) => !hidden)
  const [code, choose] = useState(offered[0]?.code ?? '')
  const box = useSheet<HTMLDivElement>(css)
  const { t } = useWords(EXTRAS_PLACED)
  const named = useNames()
  const kit = useMemo(() => (large ? null : deriveKit(design, catalog, bed)), [design, catalog, bed, large])
  const places = useMemo(() => (kit ? extraPlaces(kit, code) : null), [kit, code])
  return (
    <div className="edge-plan" ref={box}>
      {large && <Hint>{t('too-many')}</Hint>}
      {kit && (
        <>
          <Choice
            legend={t('which')}
            value={code}
            columns={2}
            options={offered.map((extra) => ({ value: extra.code, label: named(extra) }))}
            set={choose}
          />
          <Hint>{t('hint')}</Hint>
          {places && <Plan kit={kit} places={places} code={code} />}
          <List kit={kit} />
        </>
      )}
    </div>
  )
}

interface PlanProps {
  readonly kit: Kit
  readonly places: ExtraPlaces
  readonly code: string
}

function Plan({ kit, places, code }: PlanProps) {
  const edit = useLeadline((s) => s.edit)
  const { units } = useWords(EXTRAS_PLACED)
  const put = (section: PlacedSection, edge: Edge, wanted: number | undefined): void => {
    const free = places.nearest(section, edge, wanted)
    if (free === null) return
    // Rounded to what is read, if that is free too.
    const rounded = snap(free, units)
    const along = places.nearest(section, edge, rounded) ?? free
    edit((d) => change.addPlaced(d, { code, section: section.id, edge, along }))
  }
  return (
    <EdgePicture
      placed={kit.layout.placed}
      offers={(section, edge) => places.nearest(section, edge) !== null}
      pick={put}
    >
      {kit.extras.placed.map((one) => (
        <circle key={one.id} cx={one.x} cy={-one.y} r={0.16} />
      ))}
    </EdgePicture>
  )
}

/** Those that have a place: where, to be moved by typing, or taken away. */
function List({ kit }: { readonly kit: Kit }) {
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(EXTRAS_PLACED)
  const named = useNames()
  const name = useSectionName()
  const edgeName = useEdgeName()
  const given = kit.design.dock.placed ?? []
  if (given.length === 0) return null
  const byId = new Map(kit.layout.placed.map((p) => [p.id, p]))
  return (
    <ul>
      {given.map((one, i) => {
        const section = byId.get(one.section)
        const where = section ? edgeName(section, one.edge) : name(one.section)
        const what = named(kit.shop.extras.get(one.code) ?? { code: one.code, name: one.code })
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: their order is what they are known by in the design.
          <li key={i}>
            <LengthField
              label={t('placed', { name: text(what), where: text(where) })}
              value={one.along}
              commit={(along) => edit((d) => change.movePlaced(d, i, along))}
            />
            <button
              type="button"
              aria-label={t('remove', { name: text(what), where: text(where) })}
              onClick={() => edit((d) => change.removePlaced(d, i))}
            >
              {t('remove.short')}
            </button>
          </li>
        )
      })}
    </ul>
  )
}
