/**
 * Limits of movement: how far a deck may sag, and what people make of its sway.
 *
 * Sag: International Building Code 2018 table 1604.3, floor members, span/360 under live load and span/240 under dead and live
 * together; of a cantilever twice the overhang counts as span (footnote i, memory). That code is for buildings: here it is a choice.
 *
 * Sway: judgment, built on Sétra, Technical guide on footbridges (2006): a walker pushes sideways by 35 N once a second, and comfort
 * turns from mean to least at 0.3 m/s² sideways (memory). People notice about 0.05 m/s² (judgment). A slender dock answers about twice as
 * much as under a steady push (judgment: its own sway is as slow as a step). At once a second 0.05 m/s² is 1.3 mm to each side; so a
 * deck is not felt to move from 35 N · 2 / 1.3 mm ≈ 50 N/mm on, and feels loose under 35 N · 2 / 7.6 mm ≈ 10 N/mm.
 */

export type SagCase = 'live' | 'dead-and-live'

const SAG: Readonly<Record<SagCase, number>> = { live: 360, 'dead-and-live': 240 }

/** Most sag, m, of a span (m); `cantilever` where only one end is held. */
export const sagLimit = (span: number, under: SagCase, cantilever = false): number =>
  ((cantilever ? 2 : 1) * span) / SAG[under]

export type SwayWord = 'not-felt' | 'felt' | 'loose'

/** N/m: stiffer than the first is not felt, softer than the second feels loose. */
export const SWAY_STIFFNESS = { notFelt: 50_000, loose: 10_000 } as const

/** The push by which a deck's sway is told, N: someone leaning sideways on it (judgment). */
const SWAY_PUSH = 200

/** What people make of a deck that moves sideways by `movement` (m, without play) under `push` (N). */
export function swayWord(movement: number, push: number = SWAY_PUSH): SwayWord {
  const way = Math.abs(movement)
  const force = Math.abs(push)
  if (way * SWAY_STIFFNESS.notFelt <= force) return 'not-felt'
  return way * SWAY_STIFFNESS.loose <= force ? 'felt' : 'loose'
}
