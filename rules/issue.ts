/** What is wrong with a file, in one harmless line each: where, what was there, what was expected. */

export interface Issue {
  /** As in `site.soundings[3].depth`; empty for the whole file. */
  readonly path: string
  /** What is wrong, what was expected. */
  readonly message: string
  readonly expected: string
  readonly received: string
}

/** Something kept or mended and worth telling, such as a key that this version does not know. */
export interface Notice {
  readonly path: string
  readonly message: string
}

export const issue = (path: string, received: string, expected: string): Issue => {
  const got = readable(received)
  return { path, message: `${got}; expected ${expected}`, expected, received: got }
}

/** What would break a line, move a terminal's cursor or turn the words around it, as an escape. */
const UNSEEN = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu
const readable = (text: string): string =>
  text.replace(UNSEEN, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`)

/** A name of a file's own may be as long as the file. */
const LONGEST = 60
const cut = (text: string): string => {
  if (text.length <= LONGEST) return text
  const end = LONGEST - 3
  // Not through the middle of a letter that is two code units.
  return `${text.slice(0, /[\ud800-\udbff]/.test(text[end - 1]!) ? end - 1 : end)}…`
}

/** A value in few words, for a message. */
export function show(value: unknown): string {
  if (value === undefined) return 'missing'
  if (typeof value === 'string') return `"${cut(value)}"`
  if (typeof value === 'function') return 'a function'
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (value !== null && typeof value === 'object') return 'an object'
  return cut(String(value))
}

export type PathKey = string | number
export const pathOf = (keys: readonly PathKey[]): string =>
  keys.reduce<string>(
    (path, key) =>
      typeof key === 'number'
        ? `${path}[${key}]`
        : key.length <= LONGEST && /^[A-Za-z_$][\w$]*$/.test(key)
          ? path === ''
            ? key
            : `${path}.${key}`
          : `${path}[${readable(JSON.stringify(cut(key)))}]`,
    '',
  )
