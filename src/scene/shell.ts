/** What the scene puts into its host besides the picture itself: box, hint, spoken words, what to do when the picture is lost. */

import { type Reader, say } from '../../rules/index.ts'
import { SCENE, type SceneWord } from '../words/scene.ts'
import css from './scene.css?inline'

export interface Shell {
  readonly box: HTMLDivElement
  /** Makes a canvas that replaces the previous one. */
  newCanvas(): HTMLCanvasElement
  describe(canvas: HTMLCanvasElement, what: string, reader: Reader): void
  /** Shows some words over the picture for a moment. */
  hint(text: string): void
  /** Shows a caption along the upper edge until it is replaced; null hides it. Returns the height it takes, px. */
  caption(text: string | null): number
  /** Announced by screen readers. */
  say(text: string): void
  /** Offers a button that restores the picture; null hides it. */
  offer(again: (() => void) | null, reader: Reader): void
  dispose(): void
}

export function makeShell(host: HTMLElement): Shell {
  const root = host.getRootNode() as Document | ShadowRoot
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(css)
  root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet]

  const { box, keys, said, hint, caption, lost } = makeBox()
  host.append(box)
  let canvas: HTMLCanvasElement | null = null
  let timer: ReturnType<typeof setTimeout> | undefined

  return {
    box,
    newCanvas() {
      canvas?.remove()
      canvas = document.createElement('canvas')
      canvas.tabIndex = 0
      // Not `img`: screen readers do not pass keys on to an image.
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
      box.remove()
      root.adoptedStyleSheets = root.adoptedStyleSheets.filter((s) => s !== sheet)
    },
  }
}

interface Elements {
  readonly box: HTMLDivElement
  readonly keys: HTMLElement
  readonly said: HTMLElement
  readonly hint: HTMLElement
  readonly caption: HTMLElement
  readonly lost: HTMLElement
}

function makeBox(): Elements {
  const make = (tag: 'p' | 'div', name: string): HTMLElement => {
    const element = document.createElement(tag)
    element.className = name
    return element
  }
  const box = document.createElement('div')
  box.className = 'scene'
  const keys = make('p', 'scene-said')
  // Several scenes on a page may have no shadow root between them: their ids must differ.
  keys.id = `scene-keys-${Math.random().toString(36).slice(2)}`
  const said = make('p', 'scene-said')
  said.setAttribute('role', 'status')
  const hint = make('p', 'scene-hint')
  hint.setAttribute('aria-hidden', 'true')
  const caption = make('p', 'scene-caption')
  const lost = make('div', 'scene-lost')
  caption.hidden = lost.hidden = true
  box.append(keys, said, caption, hint, lost)
  return { box, keys, said, hint, caption, lost }
}
