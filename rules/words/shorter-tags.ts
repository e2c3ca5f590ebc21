/** `zh-Hant-TW`, `zh-Hant`, `zh`: a tag, and those that it falls back to. */
export const shorterTags = (tag: string): string[] => {
  const parts = tag.split('-')
  return parts.map((_, i) => parts.slice(0, parts.length - i).join('-'))
}
