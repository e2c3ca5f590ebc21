/** A + at each free edge of the dock in the scene, while it is shaped by hand. The plan beside it offers the same, and more. */
import { useThree } from '@react-three/fiber'
import { useEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Frame } from '../../../rules/catalog/index.ts'
import { type Reader, shopOf, wordsOf } from '../../../rules/index.ts'
import { asPlan, withPlan } from '../../../rules/plan/as-plan.ts'
import { addAt, type FreeEdge, freeEdges } from '../../../rules/plan/free-edges.ts'
import { attempt, type Lying, lie } from '../../../rules/plan/troubles.ts'
import { offeredOf } from '../../plan-editor/new-section.ts'
import { MOST_SHAPED, nameOf, whyNot } from '../../plan-editor/sentences.ts'
import { type LeadlineStore, placedOf } from '../../state/store.ts'
import { PLAN_EDITOR } from '../../words/plan-editor.ts'
import { pointOf } from '../measures/label-overlay.ts'
import type { Joined } from '../measures/label-sources.ts'
import type { Shell } from '../shell.ts'
import { useReader } from '../use-reader.ts'
import css from './free-edges.css?inline'

export interface FreeEdgesProps {
  readonly store: LeadlineStore
  readonly shell: Shell
  readonly overlay: Joined
}

/** Off the edge, m: over the water, where the section would begin. */
const OFF = 0.3
/** Nearer to each other than this they could not be told apart, px: of two the first is shown. */
const APART = 26

export function FreeEdges({ store, shell, overlay }: FreeEdgesProps) {
  const invalidate = useThree((s) => s.invalidate)
  const design = useStore(store, (s) => s.design)
  const catalog = useStore(store, (s) => s.catalog)
  const next = useStore(store, (s) => s.shaping ?? 'out')
  const start = useStore(store, (s) => placedOf(s).start)
  const reader = useReader(store)
  const shop = shopOf(catalog)
  const { frame, deckHeight } = design.dock
  const plan = asPlan(design, shop)
  const lying = useMemo(
    () => (plan && plan.length <= MOST_SHAPED && shop.frames.has(frame) ? lie(plan, frame, shop) : null),
    [plan, frame, shop],
  )
  useEffect(() => {
    if (!lying || start === null) return
    const sheet = adopt(shell.box)
    const offered = offeredOf(next, shop.catalog, shop.frames.get(frame)!)
    const free = freeEdges(lying, shop, { ...offered, moving: null })
    const shown = [...free.values()].flat().map((edge) => ({
      edge,
      button: buttonFor(shell.box, lying, edge, reader, () =>
        hang(edge, offered.frame, lying, store, shell, reader),
      ),
    }))
    const stop = overlay.watch(({ camera, width, height }) => {
      const taken: { x: number; y: number }[] = []
      for (const { edge, button } of shown) {
        const { line } = edge
        const at = pointOf(
          [start + edge.x + OFF * line.nx, edge.y + OFF * line.ny, deckHeight],
          camera,
          width,
          height,
        )
        const free = at && taken.every((one) => Math.hypot(one.x - at.x, one.y - at.y) >= APART)
        button.hidden = !free
        if (!free) continue
        taken.push(at)
        button.style.transform = `translate(${at.x}px, ${at.y}px)`
      }
    })
    invalidate()
    return () => {
      stop()
      sheet()
      for (const { button } of shown) button.remove()
    }
  }, [lying, shop, frame, next, start, deckHeight, reader, store, shell, overlay, invalidate])
  return null
}

function adopt(box: HTMLElement): () => void {
  const root = box.getRootNode() as Document | ShadowRoot
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(css)
  root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet]
  return () => {
    root.adoptedStyleSheets = root.adoptedStyleSheets.filter((one) => one !== sheet)
  }
}

function buttonFor(
  box: HTMLElement,
  lying: Lying,
  { hanging, way }: FreeEdge,
  reader: Reader,
  press: () => void,
): HTMLButtonElement {
  const t = wordsOf(PLAN_EDITOR, reader)
  const button = document.createElement('button')
  button.type = 'button'
  button.className = 'scene-add'
  // By keyboard the plan beside it is the way: here are as many buttons again.
  button.tabIndex = -1
  button.textContent = '+'
  const section = { value: nameOf(t, lying, hanging.on), unit: 'text' }
  button.setAttribute('aria-label', t(`scene.${way}`, { section }))
  button.addEventListener('click', press)
  box.append(button)
  return button
}

function hang(
  { hanging }: FreeEdge,
  { code }: Frame,
  lying: Lying,
  store: LeadlineStore,
  shell: Shell,
  reader: Reader,
): void {
  const { design, catalog, edit, set } = store.getState()
  const operation = addAt(lying, design, hanging, code)
  const tried = attempt(lying, operation, design.dock.frame, shopOf(catalog))
  if (!tried.ok || tried.brought.length > 0) {
    shell.hint(whyNot(wordsOf(PLAN_EDITOR, reader), lying, tried).join(' '))
    return
  }
  edit((d) => withPlan(d, tried.after.plan))
  set({ selection: operation.arm[0]!.item.id })
}
