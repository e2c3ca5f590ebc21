/** Designs, catalogs, lists and languages from files: every fault with its place. */
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  type Catalog,
  type Design,
  demoCatalog,
  ENGLISH,
  type Issue,
  type Language,
  languageOf,
  type Parsed,
  parseCatalog,
  parseDesign,
} from '../../rules/index.ts'
import { againstEnglish, parseLanguage } from '../../rules/words/language-file.ts'
import { shorterTags } from '../../rules/words/shorter-tags.ts'
import { messageOf } from '../platform/error-message.ts'
import { ENGLISH_WORDS } from '../words/english.ts'
import { Unusable } from './errors.ts'
import { readText } from './input.ts'

export { Unusable }

/** @throws Unusable */
export function readJson(file: string): unknown {
  const text = readText(file)
  try {
    return JSON.parse(text)
  } catch (error) {
    throw new Unusable([`${file}: not JSON (${messageOf(error)}); expected a whole JSON file`])
  }
}

/** What a file says it is; undefined where it says nothing. */
export const formatOf = (input: unknown): unknown =>
  typeof input === 'object' && input !== null && 'format' in input ? input.format : undefined

/** Issues as lines: `PATH: what is wrong; expected …`; the file's own name where the fault is the whole file. */
export const issueLines = (file: string, issues: readonly Issue[]): string[] =>
  issues.map(({ path, message }) => `${path === '' ? file : path}: ${message}`)

export interface Read<T> {
  readonly value: T
  /** What was kept and is worth telling. */
  readonly notices: readonly string[]
}

export const readDesign = (file: string): Read<Design> => designOf(file, readJson(file))

/** The design in what was read of a file. */
export function designOf(file: string, input: unknown): Read<Design> {
  const parsed = parseDesign(input)
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return { value: parsed.value, notices: parsed.notices.map(({ path, message }) => `${path}: ${message}`) }
}

/** The catalog named, or the demo shop's. */
export function readCatalog(file: string | undefined): Read<Catalog> {
  if (file === undefined) return { value: demoCatalog, notices: [] }
  const parsed = parseCatalog(readJson(file))
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return { value: parsed.value, notices: parsed.notices.map(({ path, message }) => `${path}: ${message}`) }
}

/** The language of the file named; else the shipped one of that tag, or of the language that it is of; else English. */
export function readLanguage({
  words,
  lang,
}: {
  readonly words?: string | undefined
  readonly lang?: string | undefined
}): Language {
  if (words !== undefined) return languageIn(words)
  if (lang === undefined || lang === 'en') return ENGLISH
  const shipped = readdirSync(SHIPPED).flatMap((file) =>
    file.endsWith('.json') ? [file.slice(0, -'.json'.length)] : [],
  )
  const plain = languageOf(lang)
  if (plain.tag.split('-')[0] === 'en' && /^en\b/i.test(lang)) return plain
  const tag = shorterTags(plain.tag).find((one) => shipped.includes(one))
  if (tag === undefined)
    throw new Unusable([
      `--lang: "${lang}"; expected ${['en', ...shipped].join(', ')}, or a file with --words`,
    ])
  return languageOf(lang, languageIn(fileURLToPath(new URL(`${tag}.json`, SHIPPED))).words)
}

function languageIn(file: string): Language {
  const parsed = checkedLanguage(readJson(file))
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return parsed.value
}

/** Two folders up in the sources and in the package. */
const SHIPPED = new URL('../../public/words/', import.meta.url)

/** A language and what it lacks against English. */
export function checkedLanguage(input: unknown): Parsed<Language> {
  const parsed = parseLanguage(input)
  if (!parsed.ok) return parsed
  const { issues, notices } = againstEnglish(parsed.value, ENGLISH_WORDS)
  return issues.length > 0 ? { ok: false, issues } : { ...parsed, notices: [...parsed.notices, ...notices] }
}
