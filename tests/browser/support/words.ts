/** The page's own sentences as patterns, so that a test asks whether a thing is said, not how it is put. */

const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** Matches the whole sentence with whatever figures it is filled with. */
export const said = (template: string): RegExp =>
  new RegExp(
    `^${template
      .split(/\{\w+\}/)
      .map(literal)
      .join('[^]+')}$`,
  )
