import { type Check, text } from './check.ts'

/** Two sections would lie on one another. */
export const sectionsOverlap: Check = {
  code: 'sections-overlap',
  severity: 'stop',
  basis: 'Geometry',
  find: ({ joints }) =>
    joints.overlapping.map(([a, b]) => ({ parts: [a, b], values: { a: text(a), b: text(b) } })),
}
