/** What findings and remedies say, and the words of the dock that views and papers share. */
import type { Corner, Finding, Remedy, Severity } from '../dock.ts'
import type { Reader } from './language.ts'
import { DOCK, FINDINGS, fill, type Subject, subject, templateOf, wordOf } from './messages.ts'

/**
 * What a finding says: `plain` for a homeowner, `text` with its figures; its code where nobody has words for it.
 * @param more words of what is found later (`structure-words.ts`)
 */
export function findingIn(
  { code, values }: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  reader: Reader,
  more: readonly Subject[] = [],
): string {
  const template = templateOf([FINDINGS, ...more], `${code}.${form}`, reader.language)
  return template === undefined ? code : fill(template, values, reader, more)
}

export function remedyIn({ key, values }: Remedy, reader: Reader, more: readonly Subject[] = []): string {
  const template = templateOf([FINDINGS, ...more], `remedy.${key}`, reader.language)
  return template === undefined ? key : fill(template, values, reader, more)
}

/** A kind of part as a heading; the kind itself where a catalog has one of its own. */
export const kindWord = (kind: string, { language }: Pick<Reader, 'language'>): string =>
  wordOf([DOCK], `kind.${kind}`, language, kind)

export const cornerWord = (corner: Corner, { language }: Pick<Reader, 'language'>): string =>
  wordOf([DOCK], `corner.${corner}`, language, corner)

export const severityWord = (severity: Severity, { language }: Pick<Reader, 'language'>): string =>
  wordOf([DOCK], `severity.${severity}`, language, severity)

/** What a finding or a reason rests on: its English is its key. */
export const basisIn = (basis: string, { language }: Pick<Reader, 'language'>): string =>
  wordOf([BASIS], basis, language, basis)

const BASIS = subject('basis', {})

/** What must be said wherever a dock is shown to whom may build it. */
export const cautionsIn = ({ language }: Pick<Reader, 'language'>): string[] =>
  Object.keys(DOCK.english)
    .filter((key) => key.startsWith('caution.'))
    .map((key) => wordOf([DOCK], key, language, key))
