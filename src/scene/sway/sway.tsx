/**
 * The dock as it gives under a shove, slowly and many times as far as it does (told beside it), and beside it the same without its braces.
 * It moves only while it is shown; where less motion is asked for it stands still at its farthest. While the design is being
 * dragged the real dock is shown at rest: nothing that moves belongs to another design.
 */

import { useFrame, useThree } from '@react-three/fiber'
import { type RefObject, useEffect, useLayoutEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import { type Dock, type Reader, say, type Vec3 } from '../../../rules/index.ts'
import { footprintOf } from '../../../rules/layout/footprint.ts'
import type { SwayShape } from '../../../rules/structure/dock/sway-shape.ts'
import { type LeadlineState, type LeadlineStore, placedOf } from '../../state/store.ts'
import { FORCES } from '../../words/forces.ts'
import { useMedia } from '../components/use-media.ts'
import type { World } from '../materials/world.ts'
import type { Note } from '../measures/dimensions.ts'
import type { Joined } from '../measures/label-sources.ts'
import type { Parts } from '../parts/parts.ts'
import { useReader } from '../use-reader.ts'
import { exaggeration } from './exaggeration.ts'
import { type Model, makeModel } from './model.ts'

/** Period of the movement shown, s: much slower than a dock sways. */
const PERIOD = 4

export interface SwayProps {
  readonly world: World
  readonly store: LeadlineStore
  readonly overlay: Joined
  readonly parts: Parts
  /** Where the one without braces stands, m to the left. */
  readonly aside: number
  /** Set while it moves: each frame is then followed by another. */
  readonly moving: RefObject<boolean>
}

export function Sway({ world, store, overlay, parts, aside, moving }: SwayProps) {
  const invalidate = useThree((s) => s.invalidate)
  const dock = useStore(store, placedOf)
  const catalog = useStore(store, (s) => s.catalog)
  const shapes = useStore(store, shapesOf)
  const reader = useReader(store)
  const reduced = useMedia('(prefers-reduced-motion: reduce)')
  const uSway = useMemo(() => ({ value: 0 }), [])
  const models = useMemo(() => {
    const model = (): Model => makeModel(world, uSway, parts.shapeOf)
    return [model(), model()] as const
  }, [world, uSway, parts])
  const times = exaggeration(Math.max(0, ...shapes.map(({ most }) => most)))

  useLayoutEffect(() => {
    const shown = shapes.length > 0
    parts.group.visible = !shown
    models.forEach(({ group, show }, i) => {
      const shape = shapes[i]
      group.visible = shape !== undefined
      if (shape) show(dock, catalog, shape)
    })
    invalidate()
    return () => {
      parts.group.visible = true
      invalidate()
    }
  }, [models, parts, shapes, dock, catalog, invalidate])
  useLayoutEffect(() => {
    models[1].group.position.y = aside
    overlay.add('sway', notesOf(shapes, dock, aside, reader))
    invalidate()
    return () => overlay.add('sway', [])
  }, [models, overlay, shapes, dock, aside, reader, invalidate])
  useEffect(() => {
    moving.current = shapes.length > 0 && !reduced
    uSway.value = reduced ? times : 0
    invalidate()
    return () => {
      moving.current = false
    }
  }, [moving, shapes, reduced, times, uSway, invalidate])
  useEffect(() => () => models.forEach((model) => void model.dispose()), [models])

  useFrame(() => {
    if (moving.current) uSway.value = times * Math.sin((performance.now() / 1000 / PERIOD) * 2 * Math.PI)
  })
  return (
    <>
      <primitive object={models[0].group} />
      <primitive object={models[1].group} />
    </>
  )
}

const NONE: readonly SwayShape[] = []

/** Of the dock in view and the way that is asked for; they are worked out beside the page (`assessment.ts`). */
function shapesOf({ swayed, sway, dragging, stale, design, catalog }: LeadlineState): readonly SwayShape[] {
  const known = swayed?.way === sway && swayed.of.design === design && swayed.of.catalog === catalog
  return known && !dragging && !stale ? swayed.shapes : NONE
}

function notesOf(shapes: readonly SwayShape[], dock: Dock, aside: number, reader: Reader): Note[] {
  const far = dock.sections
    .map(footprintOf)
    .reduce((a, b) => (b.x1 > a.x1 ? b : a), footprintOf(dock.sections[0]!))
  const z = dock.sections[0]!.z
  return shapes.map(({ most, braces }, i): Note => {
    const at: Vec3 = [far.x1 - 0.3, (far.y0 + far.y1) / 2 + (i === 0 ? 0 : aside), z + 0.35]
    const sway = { value: most * 1000, unit: 'mm' }
    const key = shapes.length === 1 ? 'single' : braces ? 'braced' : 'bare'
    return {
      id: `sway ${key}`,
      at: [at],
      text: say(FORCES, reader, `sway.label-${key}`, { sway }),
      tone: 'picked',
      sign: false,
    }
  })
}
