/** Which edge a boat lies at: touched in the picture, or by name with the water that it would have there. */
import { boatPlan, boatsIn, type Flat } from '../../../geometry/boats.ts'
import { type Berth, freeBerths, hullBox, type Moored } from '../../../rules/layout/berth.ts'
import type { Rectangle } from '../../../rules/layout/footprint.ts'
import { boundsOf } from '../../../rules/layout/outline.ts'
import { FAIRWAY, type Lane, lanesOf } from '../../../rules/layout/room.ts'
import { limitsOf } from '../../../rules/limits/limits.ts'
import { useLeadline } from '../../state/store.ts'
import { Hint } from '../../ui/controls.tsx'
import { Select } from '../../ui/select.tsx'
import { useWords } from '../../ui/use-words.ts'
import { meters, text } from '../../words/index.ts'
import { PEOPLE_AND_BOAT } from '../../words/people-and-boat.ts'
import { EdgePicture, MOST, useEdgeName } from '../edge-picture.tsx'
import * as change from './boat-edits.ts'
import { bumpersAlong } from './bumpers-along.ts'

interface Props {
  readonly id: string
  readonly placed: readonly Moored[]
  /** Water under it at the lowest, m; less than 0 where it would touch. */
  readonly under: (berth: Berth) => number
}

const keyOf = ({ section, edge }: Pick<Berth, 'section' | 'edge'>): string => `${section.id}.${edge}`

export function Place({ id, placed, under }: Props) {
  const design = useLeadline((s) => s.design)
  const project = useLeadline((s) => s.project)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(PEOPLE_AND_BOAT)
  const edgeName = useEdgeName()
  const all = boatsIn({ ...project, design })
  const berth = all.find((one) => one.id === id)
  const boat = change.boatsOf(design).find((one) => one.id === id)
  if (!boat) return null
  const free = freeBerths(placed, { ...boat.boat, id }, all)
  const edges = new Map([...(berth ? [berth] : []), ...free].map((one) => [keyOf(one), one]))
  const go = (key: string): void => {
    const to = edges.get(key)
    if (to)
      edit((d) =>
        bumpersAlong(d, change.setPlace(d, id, placed, to.section.id, to.edge), placed, project.catalog),
      )
  }
  const named = (key: string): string => {
    const one = edges.get(key)
    if (!one) return t('carried.boat.nowhere')
    const deep = under(one)
    const where = text(edgeName(one.section, one.edge))
    return t(deep < 0 ? 'carried.boat.place.shallow' : 'carried.boat.place.deep', {
      where,
      water: meters(Math.abs(deep)),
    })
  }
  const now = berth ? keyOf(berth) : ''
  const deep = berth ? under(berth) : null
  const { sides = [] } = limitsOf(design, project.catalog)
  const water = { placed, site: design.site, bed: project.bed, sides }
  const lanes = berth && boat.boat.length > 0 ? lanesOf(berth, water) : []
  const way = lanes.find(({ by }) => by === null) ?? lanes[0]
  return (
    <div className="control">
      <div>{t('carried.boat.place')}</div>
      {placed.length <= MOST && (
        <EdgePicture
          placed={placed}
          offers={(section, edge) => edges.has(keyOf({ section, edge }))}
          isTaken={(section, edge) => keyOf({ section, edge }) === now}
          pick={(section, edge) => go(keyOf({ section, edge }))}
          reach={[
            ...all.map(hullBox),
            ...(berth && way ? [seenOf(boundsOf(way.outline), hullBox(berth))] : []),
          ]}
        >
          {way && <Way {...way} />}
          {all.map((one) => (
            <Drawn key={one.id} berth={one} className={classOf(one.id === id, under(one) < 0)} />
          ))}
        </EdgePicture>
      )}
      <Select
        name={t('carried.boat.place')}
        value={now}
        options={[...(berth ? [] : ['']), ...edges.keys()]}
        wordOf={named}
        set={go}
      />
      {deep !== null && (
        <Hint>
          {t(deep < 0 ? 'carried.boat.touches' : 'carried.boat.under', { water: meters(Math.abs(deep)) })}
        </Hint>
      )}
      {way && placed.length <= MOST && (
        <Hint>
          {t(way.by === null ? 'carried.boat.way' : 'carried.boat.way-none', {
            way: meters(FAIRWAY * boat.boat.length),
          })}
        </Hint>
      )}
    </div>
  )
}

/** All of it out on the lake, for that is scrolled; aside as far as the boat, or the sections would be too small to touch. */
const seenOf = (way: Rectangle, { y0, y1 }: Rectangle): Rectangle => ({ ...way, y0, y1 })

/** The water that is to stay free for it; the lakeward one where none is. */
function Way({ outline, by }: Lane) {
  return (
    <polygon
      className={by === null ? 'way' : 'way taken'}
      points={outline.map(([x, y]) => `${x},${-y}`).join(' ')}
    />
  )
}

const classOf = (own: boolean, touches: boolean): string =>
  ['boat', ...(own ? [] : ['other']), ...(touches ? ['touches'] : [])].join(' ')

/** As it is seen from above, true to scale. */
function Drawn({ berth, className }: { readonly berth: Berth; readonly className: string }) {
  const { outlines, within } = boatPlan(berth)
  const at = (points: readonly Flat[]): string => points.map(([x, y]) => `${x} ${-y}`).join('L')
  return (
    <>
      <path className={className} d={outlines.map((points) => `M${at(points)}Z`).join('')} />
      <path className={`${className} within`} d={within.map((points) => `M${at(points)}`).join('')} />
    </>
  )
}
