/** What a crest does where it reaches a dock: how fast its water moves, and by how much it presses up against a deck. */
import { blend, towardBreaking } from './breaking.ts'
import { orbit, type Wave } from './dispersion.ts'
import { BREAKING, CREST } from './limits.ts'
import { COEFFICIENTS } from './morison.ts'
import { G, GAMMA, WATER } from './water.ts'

export const crestOf = ({ height }: Wave): number => CREST * height

/**
 * Speed of the water on what a crest reaches, m/s: the orbit's at the surface in the depth that there is (Wheeler's stretching), brought
 * over to that of a wave which the depth breaks. That is the speed which the rule for breaking waves on piles stands for: its
 * ½·γ·1.75·D·(0.78·d)² is the drag, CD 1.2, of water that moves at √(0.574·g·d) from the bed to the crest at 1.546·d.
 */
export function crestSpeed(wave: Wave): number {
  const top = crestOf(wave)
  const { u } = orbit(wave, top, wave.depth + top)
  const { pile, drag } = COEFFICIENTS.round
  const broken = (G * pile * BREAKING ** 2) / (drag * (1 + CREST * BREAKING))
  return blend(u, Math.sqrt(broken * wave.depth), towardBreaking(wave.height / (BREAKING * wave.depth)))
}

/** Drag coefficient of a flat edge, face on (memory). */
const EDGE_DRAG = 2

/** Push of a crest on an upright edge that it reaches, N for each meter; `wet` is how much of the edge's height it reaches, m. */
export const onEdge = (wave: Wave, wet: number): number =>
  wet > 0 ? 0.5 * WATER * EDGE_DRAG * crestSpeed(wave) ** 2 * wet : 0

/**
 * Of the slowly varying force: F = c·γ·(crest over the deck's underside)·area, c = 1 (Douglass, Chen and Olsen, Wave Forces on Bridge
 * Decks, FHWA 2006; the coefficient from memory).
 */
const UPLIFT = 1

/**
 * And of the blow as the crest meets the underside, a fraction of a second long and on a small part of it at a time: 3 times the slow
 * part (the same; memory; Cuomo, Tirindelli and Allsop 2007, Coastal Engineering 54:657-679 measured such ratios on jetties, memory).
 * It is for what is light and near, a panel and its clips; a dock as a whole is too slow for it.
 */
export const BLOW = 3

export interface Decking {
  /** Underside of the planks over still water, m; negative where still water stands over it. */
  readonly gap: number
  /** From there to the deck's surface, m. */
  readonly rise: number
  /** Part of the deck that is open between planks, 0 to 1. */
  readonly open: number
}

/** Water that stands over the deck presses from above as much: m, from still water up to where crests begin to lift. */
const lifting = ({ gap, rise }: Decking): number => Math.max(gap, -rise)

/** ∫ of what a crest at x = 0 has over `gap`, from 0 to x; the wave comes again every length. */
function under(crest: number, k: number, gap: number, x: number): number {
  const edge = Math.acos(Math.min(1, Math.max(-1, gap / crest)))
  const whole = 2 * (crest * Math.sin(edge) - gap * edge)
  const turns = Math.round((k * x) / (2 * Math.PI))
  const phase = Math.min(edge, Math.max(-edge, k * x - 2 * Math.PI * turns))
  return (turns * whole + crest * Math.sin(phase) - gap * phase) / k
}

/**
 * Mean head of water under a deck, m, on the stretch from `from` to `to` of a wave whose crest is at 0: a wave does not lift a long
 * section evenly. The crest is as long as the deck is wide, its profile a cosine up to the crest's height (both judgment, cautious).
 */
export function meanHead(wave: Wave, deck: Decking, from: number, to: number): number {
  const crest = crestOf(wave)
  const gap = lifting(deck)
  if (!(crest > gap) || !(to > from)) return 0
  // So long a wave is even under the whole deck.
  if (wave.k * (to - from) < 1e-6) return crest - gap
  return Math.max(0, under(crest, wave.k, gap, to) - under(crest, wave.k, gap, from)) / (to - from)
}

/** Head right under the crest, m. */
export const mostHead = (wave: Wave, deck: Decking): number => Math.max(0, crestOf(wave) - lifting(deck))

/** Contraction of water through a gap with sharp edges (any text on hydraulics). */
const CONTRACTION = 0.6

/**
 * Upward on a square meter of deck under a head, Pa. It acts on the planks and not on the gaps between them; and through the gaps no more
 * stands against the planks than what drives the rising water through: v = w/(0.6·open), v²/2g, w the fastest that the surface rises,
 * πH/T. The gaps of ordinary planking hold it all; a grating does not. (The orifice equation; that it is so used here is judgment.)
 */
export function upliftPressure(wave: Wave, { open, rise }: Decking, head: number): number {
  const through = (Math.PI * wave.height) / wave.period / (CONTRACTION * open)
  const most = open > 0 ? through ** 2 / (2 * G) + rise : Number.POSITIVE_INFINITY
  return UPLIFT * GAMMA * Math.min(head, most) * (1 - open)
}
