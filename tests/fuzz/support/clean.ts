/** What no result may hold anywhere: a number that is none, a text that a slip of the code made. */

/** Words that only a slip writes; numbers as programs write them (a check code may hold an `e` too, without a sign). */
const SLIPS = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object |(?<![\w.-])-?\d+(\.\d+)?e[+-]\d+\b/

/**
 * Where `value` is not plain and finite: `path: what`. Texts in `given` are the user's or the shop's own, whatever they say.
 */
export function uncleanIn(value: unknown, given: ReadonlySet<string> = new Set()): string[] {
  const out: string[] = []
  const slips = [...given].filter((text) => SLIPS.test(text)).sort((a, b) => b.length - a.length)
  const isSlip = (text: string): boolean =>
    SLIPS.test(text) && SLIPS.test(slips.reduce((left, own) => left.replaceAll(own, ''), text))
  const walk = (at: unknown, path: string): void => {
    if (out.length > 20 || at === null || typeof at === 'boolean') return
    if (typeof at === 'number') {
      if (!Number.isFinite(at) || Object.is(at, -0)) out.push(`${path}: ${Object.is(at, -0) ? '-0' : at}`)
    } else if (typeof at === 'string') {
      if (/\p{Cs}/u.test(at)) out.push(`${path}: half a letter`)
      if (isSlip(at)) out.push(`${path}: "${at}"`)
    } else if (Array.isArray(at)) {
      for (let i = 0; i < at.length; i++) walk(at[i], `${path}[${i}]`)
    } else if (typeof at === 'object' && at !== undefined) {
      for (const [key, entry] of Object.entries(at)) walk(entry, `${path}.${key}`)
    } else out.push(`${path}: ${typeof at}`)
  }
  walk(value, '')
  return out
}

/** Every text of a file, its keys too. */
export function textsIn(value: unknown, into: Set<string> = new Set()): Set<string> {
  if (typeof value === 'string') into.add(value)
  else if (value !== null && typeof value === 'object')
    for (const [key, entry] of Object.entries(value)) {
      into.add(key)
      textsIn(entry, into)
    }
  return into
}
