/** The words of the dock that views and papers share. */
import type { Corner, Severity } from '../dock.ts'
import type { Reader } from './language.ts'
import { DOCK, subject, wordOf } from './messages.ts'

/** A kind of part as a heading; the kind itself where a catalog has one of its own. */
export const kindWord = (kind: string, { language }: Pick<Reader, 'language'>): string =>
  wordOf([DOCK], `kind.${kind}`, language, kind)

/** What a corner of a section is called in the reader's language. */
export const cornerWord = (corner: Corner, { language }: Pick<Reader, 'language'>): string =>
  wordOf([DOCK], `corner.${corner}`, language, corner)

/** What a severity is called in the reader's language. */
export const severityWord = (severity: Severity, { language }: Pick<Reader, 'language'>): string =>
  wordOf([DOCK], `severity.${severity}`, language, severity)

/** What a finding or a reason rests on: its English is its key. */
export const basisIn = (basis: string, { language }: Pick<Reader, 'language'>): string =>
  wordOf([BASIS], basis, language, basis)

const BASIS = subject('basis', {})

/** What must be said wherever a dock is shown to whom may build it; what the shop says itself comes after it, never in its place. */
export const cautionsIn = (
  { language }: Pick<Reader, 'language'>,
  shop: { readonly cautions?: readonly string[] | undefined } = {},
): string[] => [
  ...Object.keys(DOCK.english)
    .filter((key) => key.startsWith('caution.'))
    .map((key) => wordOf([DOCK], key, language, key)),
  ...(shop.cautions ?? []),
]
