/** Labels over the picture, in one div whose children are reused. Pointer events pass through it. */
import { type Camera, Vector3 } from 'three'
import type { Vec3 } from '../../../rules/index.ts'
import type { Note } from './dimensions.ts'
import { type Gathered, gathered } from './gather.ts'
import { place, type Wanted } from './label-placement.ts'

export interface Look {
  readonly camera: Camera
  /** Of the picture, px, and along its upper and lower edge what stays free. */
  readonly width: number
  readonly height: number
  readonly head: number
  /** Whether the deck is between the eye and a place. */
  readonly hidden: (at: Vec3) => boolean
  /** Whether a place of the dock is not shown at all. */
  readonly gone: (at: Vec3) => boolean
  /** Places that are better not covered. */
  readonly places: readonly Vec3[]
}

export interface Overlay {
  show(notes: readonly Note[]): void
  /** Puts the labels where the camera sees their places. */
  draw(look: Look): void
  /** The part whose sign stands within `reach` of a point, px; null where there is none. */
  at(x: number, y: number, reach: number): string | null
  dispose(): void
}

/** px */
interface Point {
  readonly x: number
  readonly y: number
}

const _point = /*@__PURE__*/ new Vector3()

interface Shown {
  readonly element: HTMLDivElement
  note: Note
  /** What is written on it: of a mark that stands for others their number. */
  told: string
  width: number
  height: number
  placed: boolean
  /** Upper left corner, px. */
  x: number
  y: number
}

/** Marks of findings are gathered where they crowd; other signs each say something of their own. */
const isMark = ({ text }: Note): boolean => text === '!'

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
          label = { element, note, told: '', width: 0, height: 0, placed: false, x: 0, y: 0 }
          shown.set(note.id, label)
        }
        const { note: before, element } = label
        if (label.told === '' || !isAlike(before, note)) {
          element.className = `scene-label ${note.tone}${note.sign ? ' sign' : ''}`
          element.textContent = label.told = note.text
          label.width = 0
        }
        label.note = note
      }
    },
    draw(look) {
      measure(shown.values())
      const wanted: Wanted[] = []
      const standing = standingMarks(order, look)
      for (const note of order) {
        const { id, at, sign } = note
        const label = shown.get(id)!
        const mark = standing.get(id)
        if ((isMark(note) && !mark) || (note.of !== undefined && look.gone(at[0]!))) continue
        const told = mark && mark.count > 1 ? String(mark.count) : note.text
        if (label.told !== told) label.element.textContent = label.told = told
        const anchors = anchorsOf(note, look)
        if (anchors.length > 0)
          wanted.push({ id, anchors, width: label.width, height: label.height, centered: sign })
      }
      const { width, height, head } = look
      const spots = place(wanted, width, height, pointsOf(look.places, look), head)
      const placed = new Map(spots.map((spot) => [spot.id, spot]))
      for (const [id, label] of shown) {
        const spot = placed.get(id)
        if (!spot) {
          hide(label)
          continue
        }
        label.placed = true
        label.x = spot.x
        label.y = spot.y
        label.element.style.visibility = 'visible'
        label.element.style.transform = `translate(${spot.x}px, ${spot.y}px)`
      }
    },
    at: (x, y, reach) => nearest(shown.values(), x, y, reach),
    dispose() {
      box.remove()
    },
  }
}

const isAlike = (a: Note, b: Note): boolean => a.text === b.text && a.tone === b.tone && a.sign === b.sign

/** All sizes are read before anything is written: one layout when texts change, none while the view turns. */
function measure(labels: Iterable<Shown>): void {
  for (const label of labels)
    if (label.width === 0) {
      label.width = label.element.offsetWidth
      label.height = label.element.offsetHeight
    }
}

/** The part of the label that stands nearest to a point, within `reach`, px; null where there is none. */
function nearest(labels: Iterable<Shown>, x: number, y: number, reach: number): string | null {
  let best: { of: string; off: number } | null = null
  for (const { note, placed, x: left, y: top, width, height } of labels) {
    if (!placed || note.of === undefined) continue
    const off = Math.hypot(Math.max(left - x, 0, x - left - width), Math.max(top - y, 0, y - top - height))
    if (off <= reach && (!best || off < best.off)) best = { of: note.of, off }
  }
  return best?.of ?? null
}

/** By its id, each mark that stands for those around it. */
function standingMarks(notes: readonly Note[], look: Look): ReadonlyMap<string, Gathered> {
  const marks = notes
    .filter(isMark)
    .flatMap(({ id, at }) => pointsOf(at.slice(0, 1), look).map((point) => ({ id, ...point })))
  return new Map(gathered(marks).map((mark) => [mark.id, mark]))
}

/** Nothing on the bed is read through the deck, and no number where its leg has an end that is seen; what stands beside a part is meant to be. */
function anchorsOf({ at, sign, tone }: Note, look: Look): Point[] {
  const open = sign ? at.filter((point) => !look.hidden(point)) : at
  return pointsOf(open.length > 0 || tone === 'water' ? open : at, look)
}

const pointsOf = (places: readonly Vec3[], { camera, width, height }: Look): Point[] =>
  places.flatMap((place) => pointOf(place, camera, width, height) ?? [])

/** On the screen, px; null where it is behind the eye or well off the picture. */
export function pointOf([x, y, z]: Vec3, camera: Camera, width: number, height: number): Point | null {
  _point.set(x, y, z).applyMatrix4(camera.matrixWorldInverse)
  if (_point.z > -0.05) return null
  _point.applyMatrix4(camera.projectionMatrix)
  const px = { x: ((_point.x + 1) / 2) * width, y: ((1 - _point.y) / 2) * height }
  return px.x < -20 || px.y < -20 || px.x > width + 20 || px.y > height + 20 ? null : px
}
