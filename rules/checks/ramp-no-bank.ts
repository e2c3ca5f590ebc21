import { type Check, startByRule, text } from './check.ts'

/** Let down from the hinge, the ramp meets no ground. */
export const rampNoBank: Check = {
  code: 'ramp-no-bank',
  severity: 'stop',
  basis: 'Geometry',
  find: (kit) =>
    kit.ramp && !kit.ramp.contact
      ? [{ parts: [kit.layout.ramp!.id], values: { ramp: text(kit.layout.ramp!.id) }, remedy: startByRule(kit) }]
      : [],
}
