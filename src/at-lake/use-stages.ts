/** The screens of setting up and of taking out, for the dock in hand. */
import { useMemo } from 'react'
import type { DayStep } from '../../rules/at-lake/index.ts'
import { autumn } from '../../rules/papers/steps/set-up.ts'
import type { Begun } from './lake.ts'
import { oldDockStages, outStages, type Stage, setUpStages } from './stages.ts'

export function useSetUpStages({ day, last, record }: Begun): readonly Stage[] {
  return useMemo(() => {
    if (!day) return oldDockStages(record)
    const stood = new Set(last?.legs.filter(({ set }) => set).map(({ leg }) => leg.id))
    return setUpStages(day.order, (leg) => stood.has(leg))
  }, [day, last, record])
}

export function useOutStages({ project, record }: Begun): readonly Stage[] {
  return useMemo(() => {
    if (!project) return outStages([], record)
    const order = autumn(project).steps.map((step): DayStep => ({ step, tighten: {}, legs: [] }))
    return outStages(order, record)
  }, [project, record])
}
