/** Plain data, compared as it is: lists that an edit left alone are the same objects. */
export function sameDesign(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const keys = Object.keys(a)
  if (keys.length !== Object.keys(b).length) return false
  return keys.every(
    (key) =>
      Object.hasOwn(b, key) &&
      sameDesign((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  )
}
