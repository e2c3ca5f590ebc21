/** Changes of soundings and obstacles in plan, as pure functions of the Design. */
import type { Design } from '../../../rules/index.ts'
import { changeSounding, removeSounding, withSoundings } from '../../section-strip/soundings.ts'
import type { Picked } from './plan-view.ts'

export type Obstacle = NonNullable<Design['site']['obstacles']>[number]

const withObstacles = (design: Design, obstacles: readonly Obstacle[]): Design => {
  const { obstacles: _, ...site } = design.site
  return { ...design, site: obstacles.length === 0 ? site : { ...site, obstacles: [...obstacles] } }
}

export const changeObstacle = (design: Design, index: number, change: Partial<Obstacle>): Design =>
  withObstacles(
    design,
    (design.site.obstacles ?? []).map((one, i) => (i === index ? { ...one, ...change } : one)),
  )

export const moved = (design: Design, { what, index }: Picked, x: number, y: number): Design =>
  what === 'sounding'
    ? changeSounding(design, index, { distance: x, offset: y })
    : changeObstacle(design, index, { x, y })

export const removed = (design: Design, { what, index }: Picked): Design =>
  what === 'sounding'
    ? removeSounding(design, index)
    : withObstacles(
        design,
        (design.site.obstacles ?? []).filter((_, i) => i !== index),
      )

export const addedSounding = (design: Design, distance: number, offset: number, depth: number): Design =>
  withSoundings(design, [...design.site.soundings, { distance, offset, depth }])

/** As large as a boulder that two can roll aside; its own measures are typed. m */
const SIZE = { length: 0.6, width: 0.5, height: 0.35 } as const

/** Named after its kind, by the first number that is free. */
export function addedObstacle(design: Design, kind: Obstacle['kind'], x: number, y: number): Design {
  const known = design.site.obstacles ?? []
  const ids = new Set(known.map(({ id }) => id))
  let n = 1
  while (ids.has(`${kind}-${n}`)) n++
  return withObstacles(design, [...known, { id: `${kind}-${n}`, kind, x, y, ...SIZE, heading: 0 }])
}
