/** Who stands where, in the pictures of the steps: a person of common height beside the dock, m of the side view. */
import type { Bed, Dock, Section } from '../../rules/index.ts'
import { footprintOf } from '../../rules/layout/footprint.ts'
import type { Crew } from '../../rules/papers/steps/step.ts'
import type { Ink, Point } from '../paper/marks.ts'
import type { ViewPath } from './view.ts'

/** Common practice, no source: a grown person, for scale. */
const TALL = 1.75
const HEAD = 0.115
/** From one to the next, and from an edge to the first. */
const APART = 0.62
const FROM_EDGE = 0.4
export const PERSON: Ink = '#aab3ba'
/** Left half of what is under the head, feet to neck, of the whole height. */
const HALF: readonly Point[] = [
  [0.02, 0],
  [0.08, 0],
  [0.07, 0.45],
  [0.13, 0.5],
  [0.13, 0.78],
  [0.1, 0.83],
  [0.03, 0.845],
]

/** The dock's deck, the bed, and what lies in the picture. */
export interface Ground {
  readonly dock: Dock
  readonly deck: number
  readonly bed: Bed
  /** Shoreward and lakeward edge of the picture. */
  readonly from: number
  readonly to: number
}

/** Where a section reaches from and to, as seen from the side. */
export function spanOf(section: Section): readonly [number, number] {
  const { x0, x1 } = footprintOf(section)
  return [x0, x1]
}

/** People at work on a section: in the water beside it, on shore behind it, or on the deck that it is hung on. */
export function peopleAt(crew: readonly Crew[], section: Section, ground: Ground): ViewPath[] {
  const { dock, deck, bed } = ground
  const [from, to] = spanOf(section)
  const on = dock.sections.find(({ id }) => id === section.on)
  const feet = ({ place, people }: Crew): Point[] => {
    const each = Array.from({ length: people }, (_, i) => i)
    switch (place) {
      case 'water':
        return each.map((i): Point => {
          const x = from + ((i + 1) * (to - from)) / (people + 1)
          return [x, bed.bedAt(x, section.y)]
        })
      case 'shore':
        return each.map((i): Point => {
          const x = Math.min(from, 0) - FROM_EDGE - i * APART
          return [x, bed.bedAt(x, bed.lineY)]
        })
      case 'deck': {
        if (!on) return []
        const [a, b] = spanOf(on)
        const step = Math.min(APART, Math.max(0, b - a - 2 * FROM_EDGE) / Math.max(1, people - 1))
        // At the end that the section is hung on.
        const outward = from + to >= a + b
        return each.map((i): Point => {
          const back = FROM_EDGE + i * step
          return [outward ? b - back : a + back, deck]
        })
      }
    }
  }
  return crew
    .flatMap(feet)
    .filter(([x]) => x - HEAD > ground.from && x + HEAD < ground.to)
    .flatMap(person)
}

/** Standing with both feet at a place. */
export function person([x, z]: Point): ViewPath[] {
  const right = HALF.map(([u, v]): Point => [x + u * TALL, z + v * TALL])
  const left = HALF.map(([u, v]): Point => [x - u * TALL, z + v * TALL]).reverse()
  const middle = z + TALL - HEAD
  const head = Array.from({ length: 12 }, (_, i): Point => {
    const turn = (i * Math.PI) / 6
    return [x + HEAD * Math.cos(turn), middle + HEAD * Math.sin(turn)]
  })
  return [[...right, ...left], head].map((points) => ({
    layer: 'EXTRA',
    points,
    closed: true,
    fill: PERSON,
    bare: true,
  }))
}

/** Highest that anybody reaches; null where nobody stands. */
export const topOf = (people: readonly ViewPath[]): number | null =>
  people.length === 0 ? null : Math.max(...people.flatMap(({ points }) => points.map(([, z]) => z)))
