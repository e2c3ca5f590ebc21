/** Which line of the sheet puts which piece: every placement of the dock is allotted to one line, so that the lines together are the parts list. */
import type { Shop } from '../../catalog-index.ts'
import type { Dock, Placement } from '../../dock.ts'
import { nameOf } from '../names.ts'
import { guestOf, highStep, lineId, lowSection, type Plan, panelStep, tieStep } from './plan.ts'
import type { StepPart } from './step.ts'

export interface Allotted {
  /** Pieces of a line by its id, alike ones counted together. */
  partsOf(line: string): readonly StepPart[]
  /** Ids that a line's pieces belong to, each once. */
  ownersOf(line: string): readonly string[]
  /** Extras in the order of the dock; `post`: one that goes into the ground. */
  readonly extras: readonly { readonly id: string; readonly section: string; readonly post: boolean }[]
}

export function allot(dock: Dock, shop: Shop, plan: Plan): Allotted {
  const lines = new Map<string, { parts: Map<string, StepPart & { count: number }>; owners: Set<string> }>()
  const extras = new Map<string, { id: string; section: string; post: boolean }>()
  const place = lineFinder(dock, shop, plan)
  for (const piece of dock.placements) {
    const id = place(piece)
    if (id.startsWith(lineId('extras', 'extra', ''))) {
      const post = piece.kind === 'anchor-post' || piece.kind === 'auger'
      const known = extras.get(piece.of)
      if (known) known.post ||= post
      else extras.set(piece.of, { id: piece.of, section: piece.section, post })
    }
    let line = lines.get(id)
    if (!line) {
      line = { parts: new Map(), owners: new Set() }
      lines.set(id, line)
    }
    line.owners.add(piece.of)
    const key = `${piece.kind}\n${piece.code}`
    const known = line.parts.get(key)
    if (known) known.count++
    else {
      const { kind, code } = piece
      line.parts.set(key, { kind, code, name: nameOf(shop, kind, code), count: 1 })
    }
  }
  const nothing: readonly never[] = []
  return {
    partsOf: (id) => {
      const parts = lines.get(id)?.parts
      return parts ? [...parts.values()] : nothing
    },
    ownersOf: (id) => [...(lines.get(id)?.owners ?? nothing)],
    extras: [...extras.values()],
  }
}

function lineFinder(dock: Dock, shop: Shop, plan: Plan): (piece: Placement) => string {
  const pins = Math.max(1, shop.rules.hingePins)
  const pinBolts = Math.max(1, shop.rules.pinBolts)
  // One pin is put on the ramp ashore, if there are more of them; the others when it lies in the bar.
  const early = pins > 1 ? 1 : 0
  let pinsSeen = 0
  let pinBoltsSeen = 0
  const ramp = dock.sections.find(({ role }) => role === 'ramp')?.id ?? ''
  const pinLine = (pin: number): string =>
    pin < early ? lineId(`dry.${ramp}`, 'first-pin') : lineId(`in.${ramp}`, 'pins')

  return (piece) => {
    const { kind, of, section } = piece
    const dry = `dry.${section}`
    switch (kind) {
      case 'frame':
        return lineId(dry, 'frame')
      case 'set-bolt':
        return lineId(dry, 'set-bolts')
      case 'leg':
        return lineId(dry, 'legs')
      case 'foot-pad':
      case 'pad-bolt':
        return lineId(dry, 'pads')
      case 'brace-clamp':
        return lineId(dry, 'clamps')
      case 'brace':
        return lineId(`dry.${lowSection(of, plan)}`, 'brace-low', of)
      case 'brace-bolt':
        return atLow(piece, plan)
          ? lineId(`dry.${lowSection(of, plan)}`, 'brace-low', of)
          : lineId(highStep(plan.pairs.get(of)!, plan), 'brace-high', of)
      case 'hook-bracket':
        return lineId(dry, 'hooks')
      case 'hook-bolt':
        return isHost(piece, plan) ? lineId(dry, 'hooks') : lineId(`in.${section}`, 'lock')
      case 'hinge-bar':
      case 'bar-bolt':
        return lineId(dry, 'hinge-bar')
      case 'hinge-pin':
        return pinLine(pinsSeen++)
      case 'pin-bolt':
        return pinLine(Math.floor(pinBoltsSeen++ / pinBolts))
      case 'deck-panel': {
        const on = plan.sections.get(section)!
        return lineId(panelStep(on), 'panels', section)
      }
      case 'deck-clip':
        return lineId('clips', 'clips')
      case 'leg-cap':
        return lineId('caps', 'leg-caps')
      case 'sleeve-cap':
        return lineId('caps', 'sleeve-caps')
      default: {
        const joint = plan.joints.get(of)
        return joint ? lineId(tieStep(joint, plan), 'tie', of) : lineId('extras', 'extra', of)
      }
    }
  }
}

/** A bolt at the brace's low end. */
function atLow({ of, at }: Placement, plan: Plan): boolean {
  const brace = plan.pairs.get(of)!.brace!
  return Math.abs(at[2] - brace.lowZ) <= Math.abs(at[2] - brace.highZ)
}

/** On the section that carries, of the two of a hook joint. */
function isHost({ of, section }: Placement, plan: Plan): boolean {
  const joint = plan.joints.get(of)
  return !joint || guestOf(joint, plan) !== section
}
