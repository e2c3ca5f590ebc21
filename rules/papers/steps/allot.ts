/** Which line of the sheet puts which piece: every placement of the dock is allotted to one line, so that the lines together are the parts list. */
import type { Catalog } from '../../catalog/index.ts'
import type { Dock, Joint, Pair, Placement, Section } from '../../dock.ts'
import { nameOf } from '../names.ts'
import type { StepPart } from './step.ts'

export interface Allotted {
  /** Pieces of a line by its id, alike ones counted together. */
  partsOf(line: string): readonly StepPart[]
  /** Ids that a line's pieces belong to, each once. */
  ownersOf(line: string): readonly string[]
  /** Extras in the order of the dock; `post`: one that goes into the ground. */
  readonly extras: readonly { readonly id: string; readonly section: string; readonly post: boolean }[]
}

/** Line ids. A section's dry step is `dry.<id>`, that in the water `in.<id>`. */
export const lineId = (step: string, work: string, of?: string): string =>
  of === undefined ? `${step}/${work}` : `${step}/${work}/${of}`

export interface Plan {
  readonly joints: ReadonlyMap<string, Joint>
  readonly pairs: ReadonlyMap<string, Pair>
  readonly sections: ReadonlyMap<string, Section>
  /** Place in the order of work. */
  readonly order: ReadonlyMap<string, number>
  /** Section of a leg. */
  readonly sectionOf: ReadonlyMap<string, string>
}

export const planOf = (dock: Dock): Plan => ({
  joints: new Map(dock.joints.map((joint) => [joint.id, joint])),
  pairs: new Map(dock.pairs.map((pair) => [pair.id, pair])),
  sections: new Map(dock.sections.map((section) => [section.id, section])),
  order: new Map(dock.workOrder.map((id, i) => [id, i])),
  sectionOf: new Map(dock.legs.map((leg) => [leg.id, leg.section])),
})

/** Of several sections the one that comes last in the order of work. */
export const lastOf = (ids: readonly string[], { order }: Plan): string =>
  ids.reduce((last, id) => ((order.get(id) ?? 0) > (order.get(last) ?? 0) ? id : last))

/** The section in whose step the high end of a pair's brace is fixed: the later one of its legs. Of the standing section: when it is level. */
export function highStep(pair: Pair, plan: Plan): string {
  const last = lastOf(
    pair.legs.map((leg) => plan.sectionOf.get(leg) ?? ''),
    plan,
  )
  return plan.sections.get(last)?.role === 'standing' ? 'level' : `in.${last}`
}

/** The step in which a section's panels are laid. */
export const panelStep = ({ id, role }: Section): string => (role === 'following' ? `in.${id}` : 'level')

/** The step in which a tie is fixed: when the later of its two sections stands. */
export const tieStep = (joint: Joint, plan: Plan): string => {
  const last = lastOf(joint.between, plan)
  const section = plan.sections.get(last)
  return section ? panelStep(section) : `in.${last}`
}

export function allot(dock: Dock, catalog: Catalog, plan: Plan): Allotted {
  const lines = new Map<string, { parts: Map<string, StepPart & { count: number }>; owners: Set<string> }>()
  const extras = new Map<string, { id: string; section: string; post: boolean }>()
  const place = lineFinder(dock, catalog, plan)
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
      line.parts.set(key, { kind, code, name: nameOf(catalog, kind, code), count: 1 })
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

function lineFinder(dock: Dock, catalog: Catalog, plan: Plan): (piece: Placement) => string {
  const pins = Math.max(1, catalog.rules.hingePins.value)
  const pinBolts = Math.max(1, catalog.rules.pinBolts.value)
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

/** The section that a brace is brought on: that of the leg with its low end. */
export const lowSection = (pair: string, plan: Plan): string => {
  const brace = plan.pairs.get(pair)?.brace
  return (brace && plan.sectionOf.get(brace.low)) ?? ''
}

/** A bolt at the brace's low end. */
function atLow({ of, at }: Placement, plan: Plan): boolean {
  const brace = plan.pairs.get(of)!.brace!
  return Math.abs(at[2] - brace.lowZ) <= Math.abs(at[2] - brace.highZ)
}

/** On the section that carries: of the two of a hook joint, the one that the other hangs on. */
function isHost({ of, section }: Placement, plan: Plan): boolean {
  const joint = plan.joints.get(of)
  if (!joint) return true
  const [a, b] = joint.between
  const other = section === a ? b : a
  return plan.sections.get(other)?.on === section
}
