/**
 * Loads that are published somewhere, each by its name, and the few that are not and say so. None of these codes is written for
 * seasonal docks: they are used by analogy.
 */

import type { Wave } from '../../site/waves/dispersion.ts'
import { GAMMA } from '../../site/waves/water.ts'

const PSF = 47.880259
const POUND_FORCE = 4.4482216

export interface DeckLoad {
  readonly psf: 40 | 50 | 60
  /** Pa */
  readonly pressure: number
  readonly basis: string
}

/** Evenly spread on the deck. The first is taken where the user says nothing. */
export const DECK_LOADS: readonly DeckLoad[] = [
  { psf: 40, pressure: 40 * PSF, basis: 'IRC 2018 table R301.5, decks: 40 psf' },
  { psf: 50, pressure: 50 * PSF, basis: 'UFC 4-152-01 (2005) 7-3.3, landing floats: 50 psf' },
  {
    psf: 60,
    pressure: 60 * PSF,
    basis: 'ASCE 7-16 table 4.3-1, walkways and elevated platforms: 60 psf',
  },
]

/** A person's push at the worst corner, N: the guard load, 200 lb (IRC 2018 table R301.5; ASCE 7-16 4.5.1), by analogy. */
export const GUARD_PUSH = 200 * POUND_FORCE

/**
 * Somebody on a ladder or at the very edge, N: 300 lb on fixed ladders (ASCE 7-10 4.5.4, read in a reprint; 7-16 has the same, memory),
 * straight down.
 */
export const LADDER_LOAD = 300 * POUND_FORCE

/** How far outside of the deck's edge that one hangs, m: a ladder's standoff (judgment). */
export const LADDER_STANDOFF = 0.15

/** Pressure of wind of a speed (m/s), Pa: ASCE 7-16 eq. 26.10-1 (SI) with every factor 1. Held to the speed given: no gust in it. */
export const windPressure = (speed: number): number => 0.613 * speed ** 2

/**
 * A 3 s gust over the mean of 10 minutes: Durst's curve as in ASCE 7-16 figure C26.5-1 has 1.53 and 1.06 over the hourly mean (memory),
 * their ratio 1.44. Over open land; over water somewhat less.
 */
export const GUST = 1.53 / 1.06

/**
 * Force coefficients. Round: ASCE 7-16 figure 29.4-1 [chimneys, tanks], D√q small, slender: 1.2. Square: the same, face on: 2.0 (memory).
 * Frame edge: flat plate, as square. Boat: hull and cover beam on, 1.2; bow on, 0.6 (judgment; mooring guides lie near 1 and 0.5).
 */
export const WIND_DRAG = { round: 1.2, square: 2, edge: 2, boatBeam: 1.2, boatBow: 0.6 } as const

export interface BoatBody {
  /** m */
  readonly length: number
  /** m */
  readonly beam: number
  /** Highest point over the water, m. */
  readonly height: number
  /** m; absent as 0.3 */
  readonly draught?: number | undefined
  /** kg, loaded */
  readonly mass: number
}

/** Part of length times height that a boat's outline fills (judgment: hull, windshield, rails; a covered pontoon boat fills more). */
const BOAT_FILL = 0.7

/** Wind on a boat from the side, N, to be handed to the dock by its lines and bumpers. */
export const boatWindBeam = ({ length, height }: BoatBody, speed: number): number =>
  windPressure(speed) * WIND_DRAG.boatBeam * BOAT_FILL * length * height

/** Wind on a boat's bow or stern, N. */
export const boatWindBow = ({ beam, height }: BoatBody, speed: number): number =>
  windPressure(speed) * WIND_DRAG.boatBow * BOAT_FILL * beam * height

/**
 * What waves push a moored boat by, on the mean, N for each meter: ρ·g·H²/16 of a sea of significant height H, all of it thrown back
 * (Maruo 1960, ½·ρ·g·a² of a regular wave; memory). A small boat follows the waves up and down, and what is deeper than its draught passes
 * under it: of the wave's energy 1 − exp(−2·k·draught) is above that (deep water; that this is the part which pushes is judgment). What
 * lines take for a moment as they come tight is not in it.
 */
const boatWaves = ({ draught = 0.3 }: BoatBody, { height, k }: Wave): number =>
  ((GAMMA * height ** 2) / 16) * (1 - Math.exp(-2 * k * draught))

/** Waves on a boat's side, N. */
export const boatWavesBeam = (boat: BoatBody, wave: Wave): number => boatWaves(boat, wave) * boat.length

/** Waves on its bow or stern, N. */
export const boatWavesBow = (boat: BoatBody, wave: Wave): number => boatWaves(boat, wave) * boat.beam

/** Speed at which a small boat comes alongside, m/s (judgment: one foot a second). */
const BUMP_SPEED = 0.3

/**
 * Energy of a boat coming alongside, J: ½ m v² · Cm · Ce, with 1.5 for the water that moves along and 0.5 for a hit at the quarter
 * point that turns the boat (both ordinary values of berthing design, such as PIANC 2002; memory).
 */
export const bumpEnergy = (mass: number, speed: number = BUMP_SPEED): number =>
  0.5 * mass * speed ** 2 * 1.5 * 0.5

/** Greatest force, N, when an energy (J) is taken up by a spring (N/m): the dock where it is hit, with its bumper in a row. */
export const bumpForce = (energy: number, stiffness: number): number => Math.sqrt(2 * energy * stiffness)
