/** Extras with their places, alike ones in one line: where along which edge, how deep a post goes, how far it stands over the deck. */
import type { Edge } from '../../rules/dock.ts'
import { extrasPlaced } from '../../rules/papers/extras-placed.ts'
import { groupBy } from '../../rules/papers/order.ts'
import type { StepLine } from '../../rules/papers/steps/step.ts'
import { embedOf } from '../../rules/parts/extras.ts'
import { count, meters, text } from '../words/index.ts'
import type { WatersideWord } from '../words/waterside.ts'
import type { Begun, useSay } from './lake.ts'
import { sectionName } from './names.ts'

export function extraLines(
  lines: readonly StepLine[],
  season: 'up' | 'down',
  { project, record }: Begun,
  say: ReturnType<typeof useSay>,
): string[] {
  if (!project) return []
  const { t } = say
  const ids = new Set(lines.filter(({ work }) => work === 'extra').flatMap(({ about }) => about))
  const edge = (at: Edge): WatersideWord => `extra.${at}`
  return [
    ...groupBy(
      extrasPlaced(project).filter(({ id }) => ids.has(id)),
      ({ name }) => name,
    ),
  ].map(([name, alike]) => {
    const places = alike.map((one) =>
      t(edge(one.edge), {
        section: text(sectionName(one.section, record, say)),
        along: meters(one.along),
      }),
    )
    const code = alike[0]!.id.replace(/\.\d+$/, '')
    const post = project.catalog.extras.find((extra) => extra.code === code)
    const values = { count: count(alike.length), name: text(name), places: text(places.join('; ')) }
    if (post?.place !== 'post') return t(`${season}.extras`, values)
    const deep = { embed: meters(embedOf(post, project.shop)), above: meters(post.above) }
    return t(`${season}.posts`, { ...values, ...deep })
  })
}
