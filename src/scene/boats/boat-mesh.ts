/** A boat as a mesh: its hull lofted from the stations that all pictures share, and what makes it look like one of its kind. */
import { type Hull, hullOf } from '../../../geometry/boats.ts'
import type { Berth } from '../../../rules/layout/berth.ts'
import { drawHull } from './hull.ts'
import { BLACK, type BoatMesh, GRAY, type Pen, penFor } from './pen.ts'
import { drawPontoon } from './pontoon.ts'

export const emptyMesh = (): BoatMesh => ({ positions: [], normals: [], paints: [], berths: [], indices: [] })

/** Adds a boat to a mesh, as it floats: elevations over the water. */
export function addBoat(mesh: BoatMesh, berth: Berth): void {
  const hull = hullOf(berth.boat)
  const pen = penFor(mesh, berth)
  if (hull.shape === 'pontoon') drawPontoon(pen, hull)
  else drawHull(pen, hull)
  drawMotor(pen, hull)
}

/** An outboard: cowl, leg, and down to all of the draught. */
function drawMotor(pen: Pen, { stations, length, draught, height, beam, shape }: Hull): void {
  const stern = stations[0]!.along
  const room = stern + length / 2
  const half = Math.min(0.16, beam * 0.07) * (shape === 'fishing' ? 0.8 : 1)
  const top = shape === 'pontoon' ? height * 0.45 : stations[0]!.sheer - 0.1
  pen.box([-length / 2, -half, top - 0.06], [stern, half, top + half * 2.2], BLACK, half * 0.35)
  pen.box([stern - room * 0.62, -half * 0.32, -draught * 0.85], [stern - room * 0.3, half * 0.32, top], GRAY)
  pen.box(
    [stern - room * 0.95, -half * 0.32, -draught * 0.82],
    [stern - room * 0.1, half * 0.32, -draught * 0.6],
    BLACK,
  )
  pen.box(
    [stern - room * 0.7, -half * 0.1, -draught],
    [stern - room * 0.35, half * 0.1, -draught * 0.8],
    BLACK,
  )
}
