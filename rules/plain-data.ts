/**
 * Anything that a host hands over, as plain data of its own: what JSON can say, in objects and lists that nobody else holds. Read once,
 * so a getter or a proxy cannot say one thing to the check and another to the engine. Never throws, and takes a bounded time.
 *
 * Texts hold no half of a surrogate pair (RFC 8785, which check codes go by, has none), no control characters (XML has none, and a
 * terminal obeys them) and nothing that turns the direction of the words around it. They are mended and that is told, not refused: they
 * come from names cut in the middle of a letter or copied out of a page, and whoever opens such a link can do nothing about it.
 * What only a program can make, such as a number that is none, is refused with its place: to guess what was meant could lose it.
 */
import { type Issue, issue, type Notice, type PathKey, pathOf, show } from './issue.ts'

export interface Plain {
  readonly value: unknown
  /** Nothing can be made of the input: the schema need not be asked. */
  readonly faults: readonly Issue[]
  /** Values that JSON has not, left where they are: a schema that knows their place says better what belongs there. */
  readonly odd: readonly Issue[]
  /** Texts that were mended. */
  readonly notices: readonly Notice[]
}

/** The most issues that one answer lists: enough to mend a file by, never a flood. */
export const MOST_ISSUES = 50
const MOST = {
  depth: 40,
  /** Twenty thousand soundings of two dozen values each. */
  values: 500_000,
  /** Five times the longest list of any file of ours: what checks an entry tells of each. */
  list: 100_000,
  /** As of a file. */
  characters: 8 * 1024 * 1024,
  notices: 100,
} as const

/** They could reach an object's prototype. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype'])

/** Anything that `mended` may have to mend. */
const SUSPECT = /[^\P{Cc}\t\n\r]|[\ud800-\udfff\u202a-\u202e\u2066-\u2069\ufffe\uffff]/u
const UNFIT = /[^\P{Cc}\t\n\r]|[\p{Cs}\ufffe\uffff]/gu
const TURNING = /[\u202a-\u202e\u2066-\u2069]/g

/** What no place of the input may lead to. */
class Fault extends Error {
  readonly issue: Issue
  constructor(keys: readonly PathKey[], received: string, expected: string) {
    super(received)
    this.issue = issue(pathOf(keys), received, expected)
  }
}

export function plainOf(input: unknown): Plain {
  const copier = new Copier()
  const { faults, odd, notices } = copier
  try {
    return { value: copier.copyOf(input), faults, odd, notices }
  } catch (error) {
    // A getter that throws, a proxy that was revoked: what they throw may itself be anything.
    const fault =
      error instanceof Fault
        ? error.issue
        : issue(pathOf(copier.keys), 'cannot be read', 'plain data as in a JSON file')
    return { value: null, faults: [...faults, fault], odd, notices }
  }
}

/** One reading of one input: where it is, what it has found, how much it has read. */
class Copier {
  /** Of the place that is being read. */
  readonly keys: PathKey[] = []
  readonly faults: Issue[] = []
  readonly odd: Issue[] = []
  readonly notices: Notice[] = []
  /** Objects that this place lies within. */
  readonly #above: unknown[] = []
  #values = 0
  #characters = 0

  /** Throws a `Fault` where nothing can be made of it. */
  copyOf(value: unknown): unknown {
    const { keys } = this
    if (++this.#values > MOST.values) throw new Fault(keys, `more than ${MOST.values} values`, 'fewer')
    if (typeof value === 'string') return this.#textOf(value)
    // JSON has no -0.
    if (typeof value === 'number') return Number.isFinite(value) ? value + 0 : this.#oddOf(value, 'a number')
    if (value === null || typeof value === 'boolean') return value
    if (typeof value !== 'object') return this.#oddOf(value, 'a value as in a JSON file')
    if (this.#above.includes(value)) throw new Fault(keys, 'an object within itself', 'plain data')
    if (keys.length > MOST.depth) throw new Fault(keys, 'nested too deeply', `at most ${MOST.depth} levels`)
    this.#above.push(value)
    const copy = Array.isArray(value) ? this.#listOf(value) : this.#objectOf(value)
    this.#above.pop()
    return copy
  }

  #isFull(): boolean {
    return this.faults.length + this.odd.length >= MOST_ISSUES
  }

  #tell(message: string): void {
    if (this.notices.length < MOST.notices) this.notices.push({ path: pathOf(this.keys), message })
  }

  #textOf(text: string): string {
    this.#characters += text.length
    if (this.#characters > MOST.characters)
      throw new Fault(this.keys, `more than ${MOST.characters} characters`, 'a shorter text')
    if (!SUSPECT.test(text)) return text
    const shown = text.replace(UNFIT, '\ufffd')
    if (shown !== text) this.#tell('letters that cannot be shown; \ufffd stands in their place')
    const straight = shown.replace(TURNING, '')
    if (straight !== shown) this.#tell('marks that turn the direction of text; taken out')
    return straight
  }

  /** A value that JSON has not; where a list has nothing at all, too. */
  #oddOf(value: unknown, expected: string): unknown {
    this.odd.push(issue(pathOf(this.keys), show(value), expected))
    return value
  }

  #listOf(list: readonly unknown[]): unknown[] {
    const { length } = list
    if (length > MOST.list) throw new Fault(this.keys, show(list), `at most ${MOST.list} entries`)
    const copy: unknown[] = []
    for (let i = 0; i < length && !this.#isFull(); i++) {
      this.keys.push(i)
      copy.push(this.copyOf(list[i]))
      this.keys.pop()
    }
    return copy
  }

  #objectOf(object: object): Record<string, unknown> {
    const { keys, faults } = this
    const copy: Record<string, unknown> = {}
    // Of a class of its own (a Date, a Map), from this page or another frame: its data is not in its keys.
    const parent = Object.getPrototypeOf(object)
    if (parent !== null && Object.getPrototypeOf(parent) !== null)
      throw new Fault(keys, 'an object of a class', 'plain data as in a JSON file')
    for (const given of Object.keys(object)) {
      if (this.#isFull()) break
      const key = this.#textOf(given)
      keys.push(key)
      if (FORBIDDEN.has(key)) faults.push(issue(pathOf(keys), 'key not allowed', 'another name'))
      else if (Object.hasOwn(copy, key)) faults.push(issue(pathOf(keys), 'a second time', 'keys that differ'))
      else {
        const entry = (object as Record<string, unknown>)[given]
        // As in JSON, an entry that is undefined is not there.
        if (entry !== undefined) copy[key] = this.copyOf(entry)
      }
      keys.pop()
    }
    return copy
  }
}
