/** What the scene puts into its host besides the picture itself: box, hint, spoken words, what to do when the picture is lost. */

import { type Reader, say } from '../../rules/index.ts'
import { SCENE, type SceneWord } from '../words/scene.ts'
import css from './scene.css?inline'

export interface Shell {
  readonly box: HTMLDivElement
  /** Height along the lower edge that the page's own buttons lie over, px; and what to do when it is another. */
  foot(): number
  onFoot(changed: () => void): () => void
  /** Makes a canvas, in the place of the one before. */
  newCanvas(): HTMLCanvasElement
  describe(canvas: HTMLCanvasElement, what: string, reader: Reader): void
  /** Shows some words over the picture for a moment. */
  hint(text: string): void
  /** Words over the upper edge for as long as they hold; null takes them away. Gives the height that they take, px. */
  caption(text: string | null): number
  /** Said to those who do not see it. */
  say(text: string): void
  /** Offers to bring the picture back; null takes the offer away. */
  offer(again: (() => void) | null, reader: Reader): void
  dispose(): void
}

let count = 0

export function makeShell(host: HTMLElement, controls: HTMLElement | null): Shell {
  const root = host.getRootNode() as Document | ShadowRoot
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(css)
  root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet]

  const box = document.createElement('div')
  box.className = 'scene'
  const keys = document.createElement('p')
  keys.className = 'scene-said'
  // Several on a page: ids must differ where there is no shadow root between them.
  keys.id = `scene-keys-${++count}`
  const said = document.createElement('p')
  said.className = 'scene-said'
  said.setAttribute('role', 'status')
  const hint = document.createElement('p')
  hint.className = 'scene-hint'
  hint.setAttribute('aria-hidden', 'true')
  const caption = document.createElement('p')
  caption.className = 'scene-caption'
  caption.hidden = true
  const lost = document.createElement('div')
  lost.className = 'scene-lost'
  lost.hidden = true
  box.append(keys, said, caption, hint, lost)
  host.append(box)
  let canvas: HTMLCanvasElement | null = null
  let timer: ReturnType<typeof setTimeout> | undefined

  // Rows of buttons come and go with what there is to show; beside a narrow picture they stand under it.
  const feet = new Set<() => void>()
  let foot = 0
  const measure = (): void => {
    const now = controls
      ? Math.max(0, box.getBoundingClientRect().bottom - controls.getBoundingClientRect().top)
      : 0
    if (Math.abs(now - foot) < 1) return
    foot = now
    box.style.setProperty('--scene-foot', `${foot}px`)
    for (const changed of feet) changed()
  }
  const rows = new ResizeObserver(measure)
  if (controls) rows.observe(controls)
  rows.observe(box)
  measure()

  return {
    box,
    foot: () => foot,
    onFoot(changed) {
      feet.add(changed)
      return () => feet.delete(changed)
    },
    newCanvas() {
      canvas?.remove()
      canvas = document.createElement('canvas')
      canvas.tabIndex = 0
      // Not an image: screen readers keep the keys of an image to themselves.
      canvas.setAttribute('role', 'application')
      canvas.setAttribute('aria-describedby', keys.id)
      box.prepend(canvas)
      return canvas
    },
    describe(canvas, what, reader) {
      const words = (key: SceneWord): string => say(SCENE, reader, key)
      const label = say(SCENE, reader, 'label', { what: { value: what, unit: 'text' } })
      canvas.setAttribute('aria-label', label)
      canvas.setAttribute('aria-roledescription', words('role'))
      canvas.textContent = label
      keys.textContent = words('keys')
    },
    hint(text) {
      hint.textContent = text
      hint.classList.add('seen')
      clearTimeout(timer)
      timer = setTimeout(() => hint.classList.remove('seen'), 1600)
    },
    caption(text) {
      caption.hidden = text === null
      caption.textContent = text
      return text === null ? 0 : caption.offsetTop + caption.offsetHeight
    },
    say(text) {
      if (said.textContent !== text) said.textContent = text
    },
    offer(again, reader) {
      lost.hidden = again === null
      lost.replaceChildren()
      if (!again) return
      const button = document.createElement('button')
      button.type = 'button'
      button.textContent = say(SCENE, reader, 'again')
      button.addEventListener('click', again)
      lost.append(say(SCENE, reader, 'lost'), button)
    },
    dispose() {
      clearTimeout(timer)
      rows.disconnect()
      box.remove()
      root.adoptedStyleSheets = root.adoptedStyleSheets.filter((s) => s !== sheet)
    },
  }
}
