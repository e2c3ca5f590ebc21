/**
 * What is measured in the picture: lines where the measures are, and the words at them. Plain data from the Dock; the numbers are the
 * Dock's own, only the level that is looked at comes in here.
 */

import { type BedMesh, contours, depthSteps } from '../../../geometry/index.ts'
import {
  type Design,
  type Dock,
  EXACT,
  type Figure,
  type Leg,
  type Pair,
  type Reader,
  type Section,
  type Subject,
  say,
  tellFinding,
  type Units,
  type Vec3,
} from '../../../rules/index.ts'
import {
  footprintOf,
  footprintOfAll,
  type Rectangle,
  stanceOf,
  toPlan,
} from '../../../rules/layout/footprint.ts'
import { findingOf } from '../../state/highlight.ts'
import { meters, SCREEN } from '../../words/index.ts'
import { SCENE, type SceneWord } from '../../words/scene.ts'
import { warnedParts } from '../parts/marks.ts'

export type Tone = 'plain' | 'water' | 'picked' | 'warn' | 'stop'

export interface Line {
  readonly from: Vec3
  readonly to: Vec3
  readonly tone: Tone
  /** Direction of the short strokes at both ends; none where there is none, m. */
  readonly stroke: Vec3 | null
}

export interface Note {
  readonly id: string
  /** Places that it may stand at, the best first. */
  readonly at: readonly Vec3[]
  readonly text: string
  readonly tone: Tone
  /** A sign that stands on its place; else words beside it. */
  readonly sign: boolean
  /** Of a sign that a finger may mean: the part that it is of. */
  readonly of?: string
}

export interface Measured {
  readonly lines: readonly Line[]
  /** The most important first. */
  readonly notes: readonly Note[]
}

export interface MeasuredFrom {
  readonly dock: Dock
  readonly design: Design
  readonly selection: string | null
  readonly labels: boolean
  /** m over the survey level. */
  readonly level: number
  readonly reader: Reader
  /** Words of findings. */
  readonly foundLater?: readonly Subject[]
  /** Elevation of the ground that is drawn, m, and the ground itself. */
  readonly ground: (x: number, y: number) => number
  readonly mesh: BedMesh
  /** Interval of the contour lines, m; 0 = none. */
  readonly contour: number
  /** Distances that the picture is about, m. */
  readonly range: { readonly x0: number; readonly x1: number }
  /** The camera is on the left of the dock. */
  readonly left: boolean
  /** Offset of the plane that the lake is cut along, m; null where it is whole. */
  readonly plane: number | null
}

/** Off the part, m: dimension lines stand beside what they measure. */
const BESIDE = 0.22
const STROKE = 0.07

interface Sheet {
  readonly from: MeasuredFrom
  readonly lines: Line[]
  readonly notes: Note[]
  tell(key: SceneWord, values?: Readonly<Record<string, Figure>>): string
}

export function measure(from: MeasuredFrom): Measured {
  const { dock, selection, reader, labels } = from
  const sheet: Sheet = {
    from,
    lines: [],
    notes: [],
    tell: (key, values) => say(SCENE, reader, key, values),
  }
  const leg = dock.legs.find((l) => l.id === selection)
  const pair = dock.pairs.find((p) => p.id === selection)
  const section = dock.sections.find((s) => s.id === selection)
  if (leg) ofLeg(leg, sheet)
  if (pair) ofPair(pair, sheet)
  if (section) ofSection(section, sheet)
  ofFindings(sheet)
  if (labels) {
    // The dimensions of a selected part replace those at the lake end.
    if (sheet.lines.length === 0) ofEnd(sheet)
    ofContours(sheet)
  }
  return { lines: sheet.lines, notes: sheet.notes }
}

function dimension(
  sheet: Sheet,
  id: string,
  from: Vec3,
  to: Vec3,
  stroke: Vec3,
  tone: Tone,
  text: string,
): void {
  sheet.lines.push({ from, to, tone, stroke })
  const at = (t: number): Vec3 => [
    from[0] + (to[0] - from[0]) * t,
    from[1] + (to[1] - from[1]) * t,
    from[2] + (to[2] - from[2]) * t,
  ]
  sheet.notes.push({ id, at: [at(0.5), at(0.72), at(0.28)], text, tone, sign: false })
}

/** Bed to deck, leg over deck, the water there. */
function ofLeg(leg: Leg, sheet: Sheet): void {
  const { design, level, reader } = sheet.from
  const deck = design.dock.deckHeight
  const side = leg.corner.endsWith('left') ? 1 : -1
  const section = sheet.from.dock.sections.find((s) => s.id === leg.section)
  const turn = ((section?.heading ?? 0) * Math.PI) / 180
  const out = (far: number): [number, number] => [
    leg.x - Math.sin(turn) * side * far,
    leg.y + Math.cos(turn) * side * far,
  ]
  const stroke: Vec3 = [Math.cos(turn) * STROKE, Math.sin(turn) * STROKE, 0]
  const upright = (key: string, far: number, z0: number, z1: number, tone: Tone, text: string): void => {
    const [x, y] = out(far)
    dimension(sheet, `${leg.id} ${key}`, [x, y, z0], [x, y, z1], stroke, tone, text)
  }
  const height = say(SCREEN, reader, 'measure.set-height', { height: meters(leg.setHeight) })
  upright('set', BESIDE, leg.bed, leg.bed + leg.setHeight, 'picked', height)
  if (leg.aboveDeck !== null) {
    const above = say(SCREEN, reader, 'measure.above-deck', { height: meters(leg.aboveDeck) })
    upright('above', BESIDE, deck, deck + leg.aboveDeck, 'picked', above)
  }
  const depth = level - leg.bed
  if (depth > 0.01)
    upright('deep', BESIDE * 2, leg.bed, level, 'water', sheet.tell('deep.here', { depth: meters(depth) }))
  else
    sheet.notes.push({
      id: `${leg.id} dry`,
      at: [[...out(BESIDE * 2), leg.bed]],
      text: sheet.tell('dry.here'),
      tone: 'water',
      sign: false,
    })
}

/** Clearance of the brace's foot, and of its head to the frame. */
function ofPair(pair: Pair, sheet: Sheet): void {
  const { dock, reader } = sheet.from
  const { brace } = pair
  const low = dock.legs.find((leg) => leg.id === brace?.low)
  const high = dock.legs.find((leg) => leg.id === pair.legs.find((id) => id !== brace?.low))
  if (!brace || !low || !high) return
  const long = Math.hypot(high.x - low.x, high.y - low.y)
  const [ux, uy] = [(high.x - low.x) / long, (high.y - low.y) / long]
  // Just inside its hole, where the tube ends.
  const reach = 0.12
  const stroke: Vec3 = [ux * STROKE, uy * STROKE, 0]
  const [lx, ly] = [low.x + ux * reach, low.y + uy * reach]
  const [hx, hy] = [high.x - ux * reach, high.y - uy * reach]
  dimension(
    sheet,
    `${pair.id} low`,
    [lx, ly, brace.lowZ - brace.lowClearance],
    [lx, ly, brace.lowZ],
    stroke,
    'picked',
    say(SCREEN, reader, 'measure.brace-low', { height: meters(brace.lowClearance) }),
  )
  dimension(
    sheet,
    `${pair.id} high`,
    [hx, hy, brace.highZ],
    [hx, hy, brace.highZ + brace.highClearance],
    stroke,
    'picked',
    say(SCREEN, reader, 'measure.brace-high', { height: meters(brace.highClearance) }),
  )
}

function ofSection(section: Section, sheet: Sheet): void {
  const { z, length, width } = section
  const stance = stanceOf(section)
  const at = (along: number, across: number): Vec3 => [...toPlan(stance, along, across), z + 0.02]
  // A ramp is tilted: its far end is where the deck is.
  const end = section.role === 'ramp' ? sheet.from.design.dock.deckHeight + 0.02 : z + 0.02
  const far = (point: Vec3): Vec3 => [point[0], point[1], end]
  const off = width / 2 + BESIDE
  const up: Vec3 = [0, 0, STROKE]
  const long = sheet.tell('section.long', { length: meters(length) })
  const wide = sheet.tell('section.wide', { length: meters(width) })
  dimension(sheet, `${section.id} long`, at(0, -off), far(at(length, -off)), up, 'picked', long)
  dimension(
    sheet,
    `${section.id} wide`,
    far(at(length * 0.5, width / 2)),
    far(at(length * 0.5, -width / 2)),
    up,
    'picked',
    wide,
  )
}

/** More signs than this say no more. */
const MOST_SIGNS = 60

/** A warning sign at each part that a finding is about; the selected finding shows its text. */
function ofFindings(sheet: Sheet): void {
  const { dock, selection, reader } = sheet.from
  const picked = findingOf(dock, selection)
  const warned = warnedParts(dock)
  if (!picked && warned.size === 0) return
  const anchors = anchorsOf(dock)
  if (picked) {
    const at = picked.parts.slice(0, 6).flatMap((id) => {
      const place = anchors.get(id)
      return place ? [place] : []
    })
    if (at.length > 0)
      sheet.notes.push({
        id: 'finding',
        at,
        text: tellFinding(picked, 'plain', reader, sheet.from.foundLater ?? []),
        tone: toneOf(picked.severity),
        sign: false,
      })
  }
  const signed = [...warned].sort((a, b) => b[1] - a[1]).slice(0, MOST_SIGNS)
  for (const [id, grade] of signed) {
    const at = anchors.get(id)
    if (at)
      sheet.notes.push({
        id: `sign ${id}`,
        at: [at],
        text: '!',
        tone: grade === 1 ? 'stop' : 'warn',
        sign: true,
      })
  }
}

const toneOf = (severity: 'stop' | 'warn' | 'note'): Tone => (severity === 'note' ? 'plain' : severity)

/** Where a sign stands for each section, leg, pair, joint and extra: over what belongs to it. */
export function anchorsOf({ placements, legs, pairs, sections }: Dock): ReadonlyMap<string, Vec3> {
  const sums = new Map<string, { x: number; y: number; z: number; n: number }>()
  for (const { of, at } of placements) {
    const sum = sums.get(of) ?? { x: 0, y: 0, z: Number.NEGATIVE_INFINITY, n: 0 }
    sums.set(of, { x: sum.x + at[0], y: sum.y + at[1], z: Math.max(sum.z, at[2]), n: sum.n + 1 })
  }
  const found = new Map<string, Vec3>()
  const top = new Map(legs.map((leg) => [leg.id, [leg.x, leg.y, leg.bed + leg.setHeight + 0.1] as const]))
  for (const [id, at] of top) found.set(id, at)
  for (const { id, legs: of } of pairs) {
    const [a, b] = of.map((leg) => top.get(leg))
    if (a && b) found.set(id, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, Math.max(a[2], b[2])])
  }
  for (const [id, { x, y, z, n }] of sums) found.set(id, [x / n, y / n, z + 0.12])
  for (const section of sections) {
    const { x0, x1, y0, y1 } = footprintOf(section)
    found.set(section.id, [(x0 + x1) / 2, (y0 + y1) / 2, section.z + 0.25])
  }
  return found
}

/** Deck over water and depth, at the lake end. */
function ofEnd(sheet: Sheet): void {
  const { dock, design, level, ground } = sheet.from
  const deck = design.dock.deckHeight
  let far: Rectangle | null = null
  for (const section of dock.sections) {
    const rect = footprintOf(section)
    if (!far || rect.x1 > far.x1 + 1e-6) far = rect
  }
  if (!far) return
  const x = far.x1 + 0.16
  const y = far.y0 + 0.1
  // The depth at the outermost legs, as the summary tells it: a hand's breadth farther out it would read otherwise.
  const out = dock.legs.reduce((most, leg) => Math.max(most, leg.x), Number.NEGATIVE_INFINITY)
  const beds = dock.legs.filter((leg) => leg.x > out - 0.5).map((leg) => leg.bed)
  const bed = beds.length > 0 ? Math.min(...beds) : ground(x, y)
  const stroke: Vec3 = [0, STROKE * 1.4, 0]
  const over = deck - level
  const word = over >= 0 ? 'over-water' : 'under-water'
  if (Math.abs(over) > 0.005)
    dimension(
      sheet,
      'over',
      [x, y, level],
      [x, y, deck],
      stroke,
      'plain',
      sheet.tell(word, { height: meters(Math.abs(over)) }),
    )
  const depth = level - bed
  if (depth > 0.01)
    dimension(
      sheet,
      'deep',
      [x, y, bed],
      [x, y, level],
      stroke,
      'water',
      sheet.tell('deep.end', { depth: meters(depth) }),
    )
  else
    sheet.notes.push({
      id: 'dry',
      at: [[x, y, bed]],
      text: sheet.tell('dry.end'),
      tone: 'water',
      sign: false,
    })
}

/** A depth at each contour line, beside the dock. */
function ofContours(sheet: Sheet): void {
  const { contour, level, range, ground, mesh, dock, plane, left } = sheet.from
  if (contour <= 0 || dock.sections.length === 0) return
  const bounds = footprintOfAll(dock.sections)!
  // On the camera's side; with a cut, on the cut face, because nothing in front of it is drawn.
  const beside = left ? bounds.y1 + 1.1 : bounds.y0 - 1.1
  const y = plane ?? beside
  // The mesh continues into deep water without soundings: contours that the range does not reach are skipped.
  const deepest = mesh.xs.reduce(
    (deep, x) => (x < range.x0 || x > range.x1 ? deep : Math.max(deep, level - ground(x, y))),
    level - Math.min(ground(range.x0, y), ground(range.x1, y)),
  )
  // Only the row of the mesh that the labels stand in.
  const row = Math.max(
    0,
    mesh.ys.findLastIndex((at) => at <= y),
  )
  const long = mesh.indices.length / (mesh.ny - 1)
  const lines = contours(
    { ...mesh, indices: mesh.indices.subarray(row * long, (row + 1) * long) },
    depthSteps(deepest, contour).map((depth) => depth - level),
  )
  const found = new Map<number, Vec3[]>()
  for (const { depth, points } of lines)
    for (let i = 3; i < points.length; i += 3) {
      const [ya, yb] = [points[i - 2]! - y, points[i + 1]! - y]
      if (ya < 0 === yb < 0) continue
      const x = points[i - 3]! + ((points[i]! - points[i - 3]!) * ya) / (ya - yb)
      if (x < range.x0 || x > range.x1) continue
      found.set(depth, [...(found.get(depth) ?? []), [x, y, -depth]])
    }
  for (const [depth, at] of [...found].sort((a, b) => a[0] - b[0]))
    sheet.notes.push({
      id: `contour ${Math.round((depth + level) / contour)}`,
      at: at.slice(0, 4),
      text: sheet.tell('deep', { depth: meters(depth + level) }),
      tone: 'water',
      sign: true,
    })
}

/** Contour lines stand this far apart: a round step that gives a handful, m. */
export function contourStep(deepest: number, units: Units): number {
  const steps =
    units === 'imperial' ? [1, 2, 5, 10, 20, 50].map((feet) => feet * EXACT.foot) : [0.25, 0.5, 1, 2, 5, 10]
  return steps.find((step) => deepest / step <= 8) ?? steps.at(-1)!
}
