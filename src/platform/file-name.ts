/** A dock's name as the name of a file, without an ending: letters and digits of any language, the rest as hyphens. */
export const plainName = (name: string): string =>
  name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'dock'
