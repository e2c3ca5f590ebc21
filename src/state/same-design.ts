/** Deep equality of plain data. Fast after an edit: what the edit did not touch is the same object. */
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
