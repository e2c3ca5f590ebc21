/** What parts use of their strength, in color on the parts themselves, and in words at those that use most. The legend is the page's. */
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Dock } from '../../../rules/index.ts'
import { type Reader, say } from '../../../rules/index.ts'
import { dockOf, type LeadlineStore } from '../../state/store.ts'
import { worstOf } from '../../utilization/worst-member.ts'
import { FORCES } from '../../words/forces.ts'
import type { World } from '../materials/world.ts'
import { anchorsOf, type Note } from '../measures/dimensions.ts'
import type { Joined } from '../measures/label-sources.ts'
import { useReader } from '../use-reader.ts'
import { makePaint } from './paint.ts'

export interface ForcesProps {
  readonly world: World
  readonly store: LeadlineStore
  readonly overlay: Joined
}

export function Forces({ world, store, overlay }: ForcesProps) {
  const invalidate = useThree((s) => s.invalidate)
  const dock = useStore(store, dockOf)
  const catalog = useStore(store, (s) => s.catalog)
  const reader = useReader(store)
  const paint = useMemo(() => makePaint(world), [world])
  useLayoutEffect(() => {
    paint.show(dock, catalog)
    overlay.add('forces', notesOf(dock, reader))
    invalidate()
  }, [paint, overlay, dock, catalog, reader, invalidate])
  useEffect(
    () => () => {
      overlay.add('forces', [])
      paint.dispose()
      invalidate()
    },
    [overlay, paint, invalidate],
  )
  return <primitive object={paint.group} />
}

function notesOf(dock: Dock, reader: Reader): Note[] {
  if (!dock.structure) return []
  const anchors = anchorsOf(dock)
  return worstOf(dock.structure).flatMap(({ kind, id, use }): Note[] => {
    const at = anchors.get(id)
    if (!at) return []
    const text = say(FORCES, reader, `forces.label-${kind}`, { use: { value: use, unit: 'share' } })
    return [{ id: `use ${kind}`, at: [at], text, tone: use > 1 ? 'stop' : 'picked', sign: false }]
  })
}
