import { type Check, text } from './check.ts'
import { startByRule } from './start-by-rule.ts'

/** Let down from the hinge, the ramp meets no ground, only a wall's face, or ground right at the hinge. */
export const rampNoBank: Check = {
  code: 'ramp-no-bank',
  severity: 'stop',
  basis: 'Geometry',
  find: (kit) =>
    kit.ramp && !kit.ramp.contact
      ? [
          {
            parts: [kit.layout.ramp!.id],
            values: { ramp: text(kit.layout.ramp!.id) },
            remedy: startByRule(kit, (other) => other.ramp?.contact != null),
          },
        ]
      : [],
}
