/** Clearances of the selected part to the ground and to other parts: at once when it is selected, and after an edit once the pointer rests. */
import { useLayoutEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { type Gap, gapsOf } from '../../../geometry/index.ts'
import type { Dock } from '../../../rules/index.ts'
import { whenIdle } from '../../platform/idle.ts'
import { type LeadlineStore, placedOf } from '../../state/store.ts'

/** An edit not followed by another for this long counts as the last, ms. */
const REST = 160
/** A dock of more pieces than this takes longer than a frame. */
const LARGE = 2000

const NONE: readonly Gap[] = []

/** Only those of the dock that is shown; empty until they are known. */
export function useGaps(store: LeadlineStore): readonly Gap[] {
  const selection = useStore(store, (s) => s.selection)
  const placed = useStore(store, placedOf)
  const [found, setFound] = useState<{ id: string; dock: Dock; gaps: readonly Gap[] } | null>(null)
  const last = useRef<Dock | null>(null)
  useLayoutEffect(() => {
    const same = last.current === null || last.current === placed
    last.current = placed
    if (selection === null || /^(?:finding|part):/.test(selection)) return
    let over = false
    const find = (): void => {
      if (over) return
      const { project } = store.getState()
      setFound({ id: selection, dock: placed, gaps: gapsOf(selection, { ...project, dock: placed }) })
    }
    let timer: ReturnType<typeof setTimeout> | undefined
    if (same && placed.placements.length < LARGE) find()
    else timer = setTimeout(() => whenIdle(find), REST)
    return () => {
      over = true
      clearTimeout(timer)
    }
  }, [store, selection, placed])
  return found && found.id === selection && found.dock === placed ? found.gaps : NONE
}
