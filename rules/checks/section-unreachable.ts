import { type Check, names } from './check.ts'

/** Sections whose host is not in the plan, or that hang on each other in a circle. */
export const sectionUnreachable: Check = {
  code: 'section-unreachable',
  severity: 'stop',
  basis: 'Geometry',
  find: ({ layout }) =>
    layout.unreachable.length === 0
      ? []
      : [{ parts: layout.unreachable, values: { sections: names(layout.unreachable) } }],
}
