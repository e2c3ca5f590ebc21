/** The dock from above, each edge a button: one more of an extra goes where it is touched, by keyboard to the middle of what is free. */
import { type MouseEvent, useMemo, useState } from 'react'
import type { Edge } from '../../../rules/dock.ts'
import { deriveKit, type Kit } from '../../../rules/index.ts'
import { edgeOf, footprint, type PlacedSection } from '../../../rules/layout/index.ts'
import { type ExtraPlaces, extraPlaces } from '../../../rules/parts/extra-places.ts'
import { useLeadline } from '../../state/store.ts'
import { Choice, Hint } from '../../ui/controls.tsx'
import { LengthField } from '../../ui/quantity-field.tsx'
import { useSheet } from '../../ui/use-sheet.ts'
import { useWords } from '../../ui/use-words.ts'
import { snap } from '../../units/steps.ts'
import { EXTRAS_PLACED } from '../../words/extras-placed.ts'
import { text } from '../../words/index.ts'
import css from './edge-plan.css?inline'
import * as change from './place-edits.ts'

/** More sections than this are no picture to touch any more. */
const MOST = 60
/** A meter is never drawn smaller, px: both sides of a walkway can be touched. */
const LEAST = 22
const EDGES = ['left', 'right', 'end', 'start'] as const

export function EdgePlan() {
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const bed = useLeadline((s) => s.project.bed)
  const large = useLeadline((s) => s.project.dock.sections.length > MOST)
  const [code, choose] = useState(catalog.extras[0]?.code ?? '')
  const box = useSheet<HTMLDivElement>(css)
  const { t } = useWords(EXTRAS_PLACED)
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
            options={catalog.extras.map((extra) => ({ value: extra.code, label: extra.name }))}
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

/** Lake to the right, as in the section under the picture. */
function Plan({ kit, places, code }: PlanProps) {
  const edit = useLeadline((s) => s.edit)
  const { t, units } = useWords(EXTRAS_PLACED)
  const { placed } = kit.layout
  const name = useSectionName()
  const boxes = placed.map(footprint)
  const [x0, x1] = [Math.min(...boxes.map((b) => b.x0)) - 0.8, Math.max(...boxes.map((b) => b.x1)) + 0.8]
  const [y0, y1] = [Math.min(...boxes.map((b) => b.y0)) - 0.8, Math.max(...boxes.map((b) => b.y1)) + 0.8]
  const share = (value: number, of: number): string => `${(100 * value) / of}%`
  const put = (section: PlacedSection, edge: Edge, wanted: number | undefined): void => {
    const free = places.nearest(section, edge, wanted)
    if (free === null) return
    // Rounded to what is read, if that is free too.
    const rounded = snap(free, units)
    const along = places.nearest(section, edge, rounded) ?? free
    edit((d) => change.addPlaced(d, { code, section: section.id, edge, along }))
  }
  return (
    <div className="edge-scroll">
      <div
        className="edge-picture"
        style={{ aspectRatio: `${x1 - x0} / ${y1 - y0}`, minInlineSize: `${LEAST * (x1 - x0)}px` }}
      >
        <svg viewBox={`${x0} ${-y1} ${x1 - x0} ${y1 - y0}`} aria-hidden="true">
          {boxes.map((b, i) => (
            <rect
              key={placed[i]!.id}
              x={b.x0}
              y={-b.y1}
              width={b.x1 - b.x0}
              height={b.y1 - b.y0}
              data-role={placed[i]!.role}
            />
          ))}
          {kit.extras.placed.map((one) => (
            <circle key={one.id} cx={one.x} cy={-one.y} r={0.16} />
          ))}
        </svg>
        {placed.flatMap((section) =>
          EDGES.flatMap((edge) => {
            if (places.nearest(section, edge) === null) return []
            const line = edgeOf(section, edge)
            const [mx, my] = [line.x + (line.dx * line.length) / 2, line.y + (line.dy * line.length) / 2]
            const level = Math.abs(line.dx) > 0.5
            const length = share(line.length, level ? x1 - x0 : y1 - y0)
            const onClick = (event: MouseEvent<HTMLButtonElement>): void => {
              const at = event.currentTarget.getBoundingClientRect()
              const part = level
                ? (event.clientX - at.left) / at.width
                : 1 - (event.clientY - at.top) / at.height
              const along = line.length * ((level ? line.dx : line.dy) > 0 ? part : 1 - part)
              // A key has no place of its own.
              put(section, edge, event.detail === 0 ? undefined : along)
            }
            return [
              <button
                key={`${section.id}.${edge}`}
                type="button"
                className={level ? 'level' : 'upright'}
                aria-label={t(`edge.${wayOf(line)}`, { section: text(name(section.id)) })}
                style={{
                  left: share(mx - x0, x1 - x0),
                  top: share(y1 - my, y1 - y0),
                  [level ? 'width' : 'height']: length,
                }}
                onClick={onClick}
              />,
            ]
          }),
        )}
      </div>
    </div>
  )
}

/** Which way an edge looks, for one who looks at the lake. */
const wayOf = ({ nx, ny }: { readonly nx: number; readonly ny: number }) =>
  nx > 0.5 ? 'lake' : nx < -0.5 ? 'shore' : ny > 0 ? 'left' : 'right'

function useSectionName(): (id: string) => string {
  const { t } = useWords(EXTRAS_PLACED)
  return (id) => {
    const [, row, n] = /^([sh])(\d+)$/.exec(id) ?? []
    return row === undefined ? id : t(row === 's' ? 'section.run' : 'section.head', { n: n! })
  }
}

/** Those that have a place: where, to be moved by typing, or taken away. */
function List({ kit }: { readonly kit: Kit }) {
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(EXTRAS_PLACED)
  const name = useSectionName()
  const given = kit.design.dock.placed ?? []
  if (given.length === 0) return null
  const byId = new Map(kit.layout.placed.map((p) => [p.id, p]))
  return (
    <ul>
      {given.map((one, i) => {
        const section = byId.get(one.section)
        const where = section
          ? t(`edge.${wayOf(edgeOf(section, one.edge))}`, { section: text(name(one.section)) })
          : name(one.section)
        const what = kit.shop.extras.get(one.code)?.name ?? one.code
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
