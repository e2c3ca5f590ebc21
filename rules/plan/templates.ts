/** Shapes that a dock can begin with, each written out as a plan. Those of a shop are in its catalog. */
import type { Frame } from '../catalog/index.ts'
import type { Edge } from '../dock.ts'
import { quantize } from '../numbers.ts'
import type { PlanItem } from './schema.ts'

export const TEMPLATES = ['straight', 'L', 'T', 'wide', 'U', 'F', 'H', 'double-slip'] as const
export type TemplateName = (typeof TEMPLATES)[number]

/** Sections of a finger or of a crosspiece: a slip between two of 8 ft sections is 12 ft wide and 16 ft long. */
const ARM = 2

/** Sections with legs that a shape takes from the shore out: U and double slip go on past their crosspiece, F has a finger on the way. */
export const LEAST_REACH: Readonly<Record<TemplateName, number>> = {
  straight: 1,
  L: 1,
  T: 1,
  wide: 2,
  U: 1 + ARM,
  F: 1 + ARM,
  H: 2,
  'double-slip': 1 + ARM,
}

export interface TemplateWish {
  readonly frame: Frame
  /** Sections with legs from the shore to the farthest out; a shape that needs more has more. */
  readonly reach: number
  readonly ramp: boolean
}

/** All of the dock's own frame. */
export function templatePlan(name: TemplateName, { frame, reach, ramp }: TemplateWish): PlanItem[] {
  const plan: PlanItem[] = []
  const { length, width } = frame
  const add = (id: string, on: string, edge: Edge, mate: Edge, along: number): string => {
    plan.push({ id, on, edge, with: mate, along: quantize(along) })
    return id
  }
  // U and double slip go on past their crosspiece, F has a finger in between.
  const least = { straight: 1, L: 1, T: 1, wide: 2, U: 1 + ARM, F: 1 + ARM, H: 2, 'double-slip': 1 + ARM }[
    name
  ]
  const legged = Math.max(least, reach)
  const first = ramp ? 2 : 1
  if (ramp) plan.push({ id: 's1', on: null, role: 'ramp', along: 0 })
  if (ramp) add('s2', 's1', 'end', 'start', 0)
  else plan.push({ id: 's1', on: null, along: 0 })
  for (let i = 1; i < legged; i++) add(`s${first + i}`, `s${first + i - 1}`, 'end', 'start', 0)
  /** The run's section, counted from the lake. */
  const run = (fromLake: number): string => `s${first + legged - 1 - fromLake}`
  let heads = 0
  const head = (on: string, edge: Edge, mate: Edge, along: number): string =>
    add(`h${++heads}`, on, edge, mate, along)
  /** End to end from a side of a section, flush with its end. */
  const row = (on: string, side: 'left' | 'right', n = ARM): string => {
    let last = head(on, side, 'start', length - width)
    for (let i = 1; i < n; i++) last = head(last, 'end', 'start', 0)
    return last
  }
  switch (name) {
    case 'straight':
      break
    case 'L':
      row(run(0), 'left', 1)
      break
    case 'T':
      row(run(0), 'left', 1)
      row(run(0), 'right', 1)
      break
    case 'wide':
      head(run(1), 'left', 'right', 0)
      head(run(0), 'left', 'right', 0)
      break
    case 'U':
      // The outer edge of the crosspiece's end looks at the lake: from there the second arm goes out beside the first.
      row(row(run(ARM), 'left'), 'right')
      break
    case 'F':
      row(run(ARM), 'left')
      row(run(0), 'left')
      break
    case 'H': {
      // Its second leg lies across the crosspiece's end, and goes on to both sides.
      const across = head(row(run(1), 'left'), 'end', 'right', (width - length) / 2)
      head(across, 'end', 'start', 0)
      head(across, 'start', 'end', 0)
      break
    }
    case 'double-slip':
      row(row(run(ARM), 'left'), 'right')
      row(row(run(ARM), 'right'), 'left')
      break
  }
  return plan
}
