/** Bolts with hexagon heads and nuts, by nominal diameter; along their own x axis with the head on the + side, unless told. */
import { type Catalog, sectionProperties } from '../../rules/index.ts'
import { clampPlate } from '../../rules/parts/clamp-plates.ts'
import type { Look } from '../types.ts'
import { legRadius, railWidth, sleeveRadius } from './fits.ts'
import type { Body } from './mesh.ts'
import { prism } from './prism.ts'
import { circle, hexagon } from './rings.ts'

type Bolt = Catalog['hardware'][number]

/** Across flats, head and nut heights over the diameter: about what hexagon bolts of these sizes have (from memory, for looks only). */
const FLATS = 1.5
const HEAD = 0.65
const NUT = 0.85

export interface BoltPlace {
  readonly diameter: number
  /** Under the head, m. */
  readonly length: number
  /** Where the underside of the head is, on the x axis. */
  readonly head: number
  /** The head is on the + side of its underside (1) or on the other (-1). */
  readonly toward: 1 | -1
  /** Where the face of the nut that is nearer the head is; null without one. */
  readonly nut: number | null
}

export function boltBodies({ diameter, length, head, toward, nut }: BoltPlace, look: Look = 'steel'): Body[] {
  const along = (ring: ReturnType<typeof circle>, a: number, b: number): Body =>
    prism({ outer: ring, from: [Math.min(a, b), 0, 0], to: [Math.max(a, b), 0, 0], up: [0, 0, 1], look })
  const hex = hexagon(FLATS * diameter)
  const bodies = [
    along(hex, head, head + toward * HEAD * diameter),
    along(circle(diameter, 6), head - toward * length, head),
  ]
  if (nut !== null) bodies.push(along(hex, nut, nut - toward * NUT * diameter))
  return bodies
}

/** A nut that still has thread under it. */
const nutAt = (wanted: number, head: number, toward: 1 | -1, { diameter, length }: Bolt): number => {
  const last = head - toward * (length - NUT * diameter)
  return toward > 0 ? Math.max(wanted, last) : Math.min(wanted, last)
}

export function hardwareBodies(catalog: Catalog, bolt: Bolt): Body[] {
  const { diameter, length } = bolt
  const place = (head: number, toward: 1 | -1, nut: number): Body[] =>
    boltBodies({ diameter, length, head, toward, nut: nutAt(nut, head, toward, bolt) })
  switch (bolt.kind) {
    case 'set-bolt': {
      // Presses on the tube from one side: its nut is fixed to the sleeve.
      const tip = legRadius(catalog)
      const nut = sleeveRadius(catalog)
      return boltBodies({ diameter, length, head: tip + length, toward: 1, nut: nut + NUT * diameter })
    }
    case 'pad-bolt': {
      // Through socket and tube where it is long enough, else pressing like a set bolt.
      const socket = sectionProperties(catalog.stock[catalog.pads[0]!.socket.stock]!).height / 2
      if (length >= 2 * socket) return place(socket, 1, -socket)
      const tip = legRadius(catalog)
      return boltBodies({ diameter, length, head: tip + length, toward: 1, nut: socket + NUT * diameter })
    }
    case 'brace-bolt': {
      const tubes = catalog.braces.map((b) => sectionProperties(catalog.stock[b.stock]!).height)
      const grip = Math.max(0, ...tubes) + 2 * clampPlate(catalog)
      return place(grip / 2, 1, -grip / 2)
    }
    case 'hook-bolt': {
      // Head in the gap, on the bracket's plate; nut inside the rail.
      const plate = bracketPlate(catalog)
      return place(-plate, -1, railWidth(catalog))
    }
    case 'bar-bolt': {
      const bar = sectionProperties(catalog.stock[catalog.hinge.bar.stock]!).width / 2
      return place(-bar, -1, railWidth(catalog))
    }
    case 'pin-bolt': {
      // Head inside the ramp's end rail, where a wrench reaches it; nut on the pin.
      const pin = catalog.hinge.pin.size[0] / 2
      return place(-railWidth(catalog), -1, pin)
    }
  }
}

/** Thickness of a hook bracket's plate, m. */
export const bracketPlate = (catalog: Catalog): number => {
  const { size } = catalog.hooks.bracket
  const room = catalog.rules.jointGap.value > 0 ? catalog.rules.jointGap.value : size[0]
  return Math.min(0.006, room / 4)
}
