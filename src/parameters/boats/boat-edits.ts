/**
 * The boats at a dock, as changes of the Design. One may keep to the lake end (`dock.boat`); the others lie at an edge that is named
 * (`dock.boats`). Here all of them are one list.
 */
import type { Design } from '../../../rules/index.ts'
import {
  berthSection,
  berthsOf,
  END_BOAT,
  freeBerths,
  type Moored,
  sideEdge,
} from '../../../rules/layout/berth.ts'
import {
  alikeBoats,
  boatKindOf,
  USUAL_BOATS,
  type UsualBoat,
  usualBoat,
} from '../../../rules/structure/strength/usual-boats.ts'

type Dock = Design['dock']
type Named = NonNullable<Dock['boats']>[number]
type AtEnd = NonNullable<Dock['boat']>
export type Boat = Pick<AtEnd, 'kind' | 'length' | 'beam' | 'height' | 'draught' | 'mass'>
export type BoatKind = UsualBoat | 'none' | 'own'
type Edge = Named['edge']

/** In the order in which they are told everywhere: the one at the lake end first. */
export const boatsOf = ({ dock: { boat, boats = [] } }: Design): readonly { id: string; boat: Boat }[] => [
  ...(boat ? [{ id: END_BOAT, boat }] : []),
  ...boats.map((one) => ({ id: one.id, boat: one })),
]

const boatOf = (design: Design, id: string): Boat | undefined =>
  boatsOf(design).find((one) => one.id === id)?.boat

/** Without an empty list. */
function withBoats(design: Design, boats: readonly Named[]): Design {
  const { boats: _, ...dock } = design.dock
  return { ...design, dock: boats.length === 0 ? dock : { ...dock, boats: [...boats] } }
}

function without(design: Design, id: string): Design {
  if (id !== END_BOAT)
    return withBoats(
      design,
      (design.dock.boats ?? []).filter((one) => one.id !== id),
    )
  const { boat: _, ...dock } = design.dock
  return { ...design, dock }
}

export function kindOf(design: Design, id: string): BoatKind {
  const boat = boatOf(design, id)
  return boat ? boatKindOf(boat) : 'none'
}

const isUsual = (kind: BoatKind, boat: Boat): kind is UsualBoat =>
  kind !== 'none' && kind !== 'own' && boat.length > 0 && alikeBoats(usualBoat(kind, boat.length), boat)

/** Are its figures others than its kind and length say? */
export function hasOwnFigures(design: Design, id: string): boolean {
  const boat = boatOf(design, id)
  const kind = kindOf(design, id)
  return boat !== undefined && kind !== 'own' && !isUsual(kind, boat)
}

/** As that kind usually is, at its most common length; where it lies is kept. `none`: it is gone. The first comes to the lake end. */
export function setKind(design: Design, id: string, kind: BoatKind): Design {
  if (kind === 'own' || kind === kindOf(design, id)) return design
  if (kind === 'none') return without(design, id)
  if (boatOf(design, id)) return setBoat(design, id, { ...USUAL_BOATS[kind], kind })
  return { ...design, dock: { ...design.dock, boat: { ...USUAL_BOATS[kind], kind, side: 'left' } } }
}

/** Some of its figures; what it is called stays, unless that changes too. */
export function setBoat(design: Design, id: string, change: Partial<Boat>): Design {
  const kind = kindOf(design, id)
  const changed = <T extends Boat>(boat: T): T => ({
    ...boat,
    ...(kind !== 'none' && kind !== 'own' && { kind }),
    ...change,
  })
  const { boat, boats } = design.dock
  if (id === END_BOAT) return boat ? { ...design, dock: { ...design.dock, boat: changed(boat) } } : design
  return boats
    ? withBoats(
        design,
        boats.map((one) => (one.id === id ? changed(one) : one)),
      )
    : design
}

/** @param length m. The other figures follow where they were the usual ones. */
export function setLength(design: Design, id: string, length: number): Design {
  const boat = boatOf(design, id)
  const kind = kindOf(design, id)
  const follows = boat && length > 0 && isUsual(kind, boat)
  return setBoat(design, id, follows ? usualBoat(kind, length) : { length })
}

/** What its kind and length usually come to. */
export function setUsualFigures(design: Design, id: string): Design {
  const boat = boatOf(design, id)
  const kind = kindOf(design, id)
  if (!boat || kind === 'none' || kind === 'own' || !(boat.length > 0)) return design
  return setBoat(design, id, usualBoat(kind, boat.length))
}

/** The side on which a boat keeps to the lake end by lying at this edge; null at any other edge. */
function endSide(placed: readonly Moored[], section: string, edge: Edge): AtEnd['side'] | null {
  return (
    (['left', 'right'] as const).find((side) => {
      const end = berthSection(placed, side)
      return end?.id === section && sideEdge(end, side) === edge
    }) ?? null
  )
}

function newId(boats: readonly Named[]): string {
  const taken = new Set(boats.map(({ id }) => id))
  let n = 1
  while (taken.has(`b${n}`)) n++
  return `b${n}`
}

/** At that edge, its middle at the edge's. At the lake end it keeps to it as the dock grows, where no other boat does. */
export function setPlace(
  design: Design,
  id: string,
  placed: readonly Moored[],
  section: string,
  edge: Edge,
): Design {
  const { boat, boats = [] } = design.dock
  const side = endSide(placed, section, edge)
  if (id === END_BOAT) {
    if (!boat) return design
    if (side) return { ...design, dock: { ...design.dock, boat: { ...boat, side } } }
    const { side: _, ...figures } = boat
    // First of them, as it was: nothing in the list moves under the hand.
    return withBoats(without(design, id), [{ ...figures, id: newId(boats), section, edge }, ...boats])
  }
  const named = boats.find((one) => one.id === id)
  if (!named) return design
  const { along: _, ...rest } = named
  if (!side || boat || named !== boats[0])
    return withBoats(
      design,
      boats.map((one) => (one === named ? { ...rest, section, edge } : one)),
    )
  const { id: __, section: ___, edge: ____, ...figures } = rest
  return withBoats({ ...design, dock: { ...design.dock, boat: { ...figures, side } } }, boats.slice(1))
}

/** One more, like the last, at the first edge that is free; the Design as it was where none is. */
export function addBoat(design: Design, placed: readonly Moored[]): Design {
  const last = boatsOf(design).at(-1)
  if (!last) return design
  const { boats = [] } = design.dock
  const { kind, length, beam, height, draught, mass } = last.boat
  const boat = { id: newId(boats), ...(kind && { kind }), length, height, draught, mass }
  const whole = beam === undefined ? boat : { ...boat, beam }
  const [free] = freeBerths(placed, whole, berthsOf(design.dock, placed))
  return free
    ? withBoats(design, [...boats, { ...whole, section: free.section.id, edge: free.edge }])
    : design
}
