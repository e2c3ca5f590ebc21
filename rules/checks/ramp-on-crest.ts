import { type Check, meters } from './check.ts'

/** The ramp rests on a wall's edge or a break of the bank, not on its end. */
export const rampOnCrest: Check = {
  code: 'ramp-on-crest',
  severity: 'note',
  basis: 'Geometry',
  find: ({ ramp, layout }) =>
    ramp?.contact?.onEdge
      ? [{ parts: [layout.ramp!.id], values: { at: meters(ramp.contact.x), step: meters(ramp.step) } }]
      : [],
}
