/** What a row of a price list is: one of the parts that every dock has, something that customers add, or a service. */

/** Parts of which a shop has several sizes. */
const LISTED = ['frame', 'leg', 'brace', 'foot-pad', 'deck-panel', 'anchor-post'] as const
/** Parts of which a catalog has one of a kind, and where it stands: of hardware the entry of that kind. */
export const SLOTS = {
  'leg-cap': ['caps', 'leg'],
  'sleeve-cap': ['caps', 'sleeve'],
  'brace-clamp': ['clamp'],
  'hook-bracket': ['hooks', 'bracket'],
  tie: ['tie'],
  'hinge-bar': ['hinge', 'bar'],
  'hinge-pin': ['hinge', 'pin'],
  'deck-clip': ['decking', 'clip'],
  'set-bolt': null,
  'pad-bolt': null,
  'hook-bolt': null,
  'bar-bolt': null,
  'pin-bolt': null,
  'brace-bolt': null,
} as const
export type Slot = keyof typeof SLOTS
const SLOT_NAMES = Object.keys(SLOTS) as readonly Slot[]
export const isSlot = (kind: RowKind): kind is Slot => Object.hasOwn(SLOTS, kind)

/** What of the goods' price is asked besides, or beforehand: a share. */
const SHARES = ['tax', 'deposit'] as const
export const ROW_KINDS = [...LISTED, 'extra', 'service', 'zone', ...SHARES, ...SLOT_NAMES, 'leave'] as const
export type RowKind = (typeof ROW_KINDS)[number]
export const isShare = (kind: RowKind): boolean => SHARES.some((one) => one === kind)

/** First match of the first that fits, in the name of the row or its group. */
const SAID: readonly (readonly [RowKind, RegExp])[] = [
  ['zone', /\bzone\b|\b(?:freight|shipping|delivery)\b.*(?:\bmiles?\b|\bmi\b|\bkm\b)/],
  [
    'service',
    /\b(?:deliver|install|set-?up|take-?out|removal|winter storage|storage (?:over|fee|per)|labor|labour|hourly|per hour|hauling)|\b(?:site|measuring) visit\b|^services?$/,
  ],
  ['set-bolt', /\bset (?:bolt|screw)/],
  ['pad-bolt', /\b(?:pad|foot) bolt/],
  ['hook-bolt', /\bhook bolt/],
  ['bar-bolt', /\b(?:hinge )?bar bolt/],
  ['pin-bolt', /\bpin bolt/],
  ['brace-bolt', /\bbrace bolt/],
  ['leg-cap', /\bleg cap|\bcap for leg/],
  ['sleeve-cap', /\bsleeve cap/],
  ['brace-clamp', /\bbrace clamp/],
  ['hook-bracket', /\bhook brackets?\b|^hooks?$/],
  ['hinge-bar', /\bhinge bar/],
  ['hinge-pin', /\bhinge pin/],
  ['tie', /\btie (?:plate|bar)/],
  ['deck-clip', /\b(?:deck|panel) clip/],
  ['foot-pad', /\b(?:foot|leg|base|mud|muck) ?(?:pad|plate|shoe)/],
  ['deck-panel', /\bdeck(?:ing)? panel|\bpanel\b/],
  ['anchor-post', /\b(?:anchor|mooring|auger) (?:post|pole|pipe)/],
  ['brace', /\bbrac(?:e|es|ing)\b|\bdiagonal/],
  ['leg', /\bleg\b|\bpost leg|\bleg pipe|\bpipe leg|\bsupport pipe/],
  ['frame', /\bframe\b|\bdock section|\bsection\b/],
]

/** A size in it (`4 x 8`) is a frame's; most else that a shop sells is an extra. */
export function guessKind(name: string, group: string, share: number | null): RowKind {
  const find = (text: string): RowKind | undefined => {
    const low = text.toLowerCase()
    return SAID.find(([, said]) => said.test(low) || said.test(low.replace(/s\b/g, '')))?.[0]
  }
  if (name.trim() === '') return 'leave'
  if (share !== null && /\b(?:tax|vat|gst)\b/i.test(name)) return 'tax'
  if (share !== null && /\b(?:deposit|down payment)\b/i.test(name)) return 'deposit'
  // What is priced by the place that it goes to is freight, whatever else its name says.
  if (
    /^(?:freight|shipping|delivery)\b/i.test(group.trim()) &&
    /\bmiles?\b|\bmi\b|\bkm\b|\bzone\b|\bcounty\b/i.test(name)
  )
    return 'zone'
  return find(name) ?? find(group) ?? 'extra'
}
