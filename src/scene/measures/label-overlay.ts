/** Labels over the picture, in one div whose children are reused. Pointer events pass through it. */
import { type Camera, Vector3 } from 'three'
import type { Vec3 } from '../../../rules/index.ts'
import type { Note } from './dimensions.ts'
import { place, type Wanted } from './label-placement.ts'

export interface Look {
  readonly camera: Camera
  /** Of the picture, px, and along its upper and lower edge what stays free. */
  readonly width: number
  readonly height: number
  readonly head: number
  /** Whether the deck is between the eye and a place. */
  readonly hidden: (at: Vec3) => boolean
  /** Places that are better not covered. */
  readonly places: readonly Vec3[]
}

export interface Overlay {
  show(notes: readonly Note[]): void
  /** Puts the labels where the camera sees their places. */
  draw(look: Look): void
  dispose(): void
}

const _point = /*@__PURE__*/ new Vector3()

interface Shown {
  readonly element: HTMLDivElement
  note: Note
  width: number
  height: number
  placed: boolean
}

export function makeOverlay(parent: HTMLElement): Overlay {
  const box = document.createElement('div')
  box.className = 'scene-labels'
  // The tables beside it say the same.
  box.setAttribute('aria-hidden', 'true')
  parent.append(box)
  const shown = new Map<string, Shown>()
  const spare: HTMLDivElement[] = []
  let order: readonly Note[] = []

  const hide = (label: Shown): void => {
    if (!label.placed) return
    label.placed = false
    label.element.style.visibility = 'hidden'
  }
  return {
    show(notes) {
      order = notes
      const wanted = new Set(notes.map((note) => note.id))
      for (const [id, label] of shown)
        if (!wanted.has(id)) {
          hide(label)
          spare.push(label.element)
          shown.delete(id)
        }
      for (const note of notes) {
        let label = shown.get(note.id)
        if (!label) {
          const element = spare.pop() ?? box.appendChild(document.createElement('div'))
          element.style.visibility = 'hidden'
          label = { element, note, width: 0, height: 0, placed: false }
          shown.set(note.id, label)
        }
        const name = `scene-label ${note.tone}${note.sign ? ' sign' : ''}`
        if (label.element.className !== name || label.element.textContent !== note.text) {
          label.element.className = name
          label.element.textContent = note.text
          label.width = 0
        }
        label.note = note
      }
    },
    draw({ camera, width, height, head, hidden, places }) {
      // All sizes are read before anything is written: one layout when texts change, none while the view turns.
      for (const label of shown.values())
        if (label.width === 0) {
          label.width = label.element.offsetWidth
          label.height = label.element.offsetHeight
        }
      const points = places.flatMap((point) => seen(point, camera, width, height))
      const wanted: Wanted[] = []
      for (const { id, at, sign, tone } of order) {
        const label = shown.get(id)!
        // A depth on the bed is not read through the deck; what stands beside a part is meant to be seen.
        const anchors = at
          .filter((point) => !(sign && tone === 'water' && hidden(point)))
          .flatMap((point) => seen(point, camera, width, height))
        if (anchors.length > 0)
          wanted.push({ id, anchors, width: label.width, height: label.height, centered: sign })
      }
      const placed = new Map(place(wanted, width, height, points, head).map((p) => [p.id, p]))
      for (const [id, label] of shown) {
        const spot = placed.get(id)
        if (!spot) {
          hide(label)
          continue
        }
        label.placed = true
        label.element.style.visibility = 'visible'
        label.element.style.transform = `translate(${spot.x}px, ${spot.y}px)`
      }
    },
    dispose() {
      box.remove()
    },
  }
}

/** On the screen, px; none where it is behind the eye or well off the picture. */
function seen([x, y, z]: Vec3, camera: Camera, width: number, height: number): { x: number; y: number }[] {
  _point.set(x, y, z).applyMatrix4(camera.matrixWorldInverse)
  if (_point.z > -0.05) return []
  _point.applyMatrix4(camera.projectionMatrix)
  const px = { x: ((_point.x + 1) / 2) * width, y: ((1 - _point.y) / 2) * height }
  return px.x < -20 || px.y < -20 || px.x > width + 20 || px.y > height + 20 ? [] : [px]
}
