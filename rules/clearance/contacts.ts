/**
 * Contacts that are meant: what a dock's parts touch by design, and so is no clash.
 *
 * Besides those listed here by kinds: a leg in the sleeves of its own section (of that pair the sleeves alone are left out, the rails
 * are measured); legs, pads and posts on or in the ground, and the ramp on the shore (`measured` in `rules/part-kinds.ts`); hooks, ties, hinge, clips, caps, bolts and
 * extras at an edge, which fasten one part to another and are not measured.
 */
import type { Dock, Placement } from '../dock.ts'

export type Contact =
  | 'pad-on-leg'
  | 'clamp-on-leg'
  | 'brace-in-clamp'
  | 'panel-on-frame'
  | 'joined-frames'
  | 'neighboring-panels'

type Rule = (a: Placement, b: Placement, dock: Known) => boolean
interface Known {
  readonly joined: ReadonlySet<string>
  readonly legsOfPair: ReadonlyMap<string, readonly string[]>
}

const sameLeg: Rule = (a, b) => a.of === b.of
const ofPair: Rule = (pair, leg, { legsOfPair }) => legsOfPair.get(pair.of)?.includes(leg.of) ?? false
const joined: Rule = (a, b, known) => known.joined.has(`${a.section}~${b.section}`)

/** By kinds in the order of the key. */
const MEANT: Readonly<Record<string, readonly [Contact, Rule]>> = {
  'foot-pad leg': ['pad-on-leg', sameLeg],
  'brace-clamp leg': ['clamp-on-leg', ofPair],
  'brace brace-clamp': ['brace-in-clamp', (a, b) => a.of === b.of],
  'deck-panel frame': ['panel-on-frame', (a, b, known) => a.section === b.section || joined(a, b, known)],
  'frame frame': ['joined-frames', joined],
  'deck-panel deck-panel': [
    'neighboring-panels',
    (a, b, known) => a.section === b.section || joined(a, b, known),
  ],
}

/** Says of two placements of a dock whether they are meant to touch, and by what. */
export function meantContacts(dock: Dock): (a: Placement, b: Placement) => Contact | null {
  const known: Known = {
    joined: new Set(dock.joints.flatMap(({ between: [a, b] }) => [`${a}~${b}`, `${b}~${a}`])),
    legsOfPair: new Map(dock.pairs.map((pair) => [pair.id, pair.legs])),
  }
  return (a, b) => {
    const [p, q] = a.kind <= b.kind ? [a, b] : [b, a]
    const rule = MEANT[`${p.kind} ${q.kind}`]
    return rule?.[1](p, q, known) ? rule[0] : null
  }
}
