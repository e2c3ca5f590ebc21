/** Designs and catalogs from addresses and files: fetched, read, checked. What cannot be used comes back as faults, never as half a value. */
import {
  type Catalog,
  type Design,
  LIMITS,
  type Parsed,
  parseDesign,
  parseDesignText,
} from '../../rules/index.ts'
import { type Plain, plainOf } from '../../rules/validation.ts'
import { messageOf } from '../platform/error-message.ts'
import { within } from '../platform/time-limit.ts'

export interface Fault {
  readonly code:
    | 'catalog'
    | 'design'
    | 'file'
    | 'link'
    | 'storage'
    | 'request'
    | 'start'
    | 'words'
    | 'presets'
  /** Place in the file, as in `site.soundings[3].depth`; or the address that failed. */
  readonly path: string
  readonly message: string
}

/** What a page gave by attribute or property: a value, an address, or something that can be neither. */
export type Given<T> =
  | { readonly value: T }
  | { readonly url: string }
  | { readonly faults: readonly Fault[] }

/** The same of a catalog. A value is copied at once, and checked when it is put to use: most pages give none, and what checks it comes with the first. */
export type GivenCatalog = { readonly plain: Plain } | { readonly url: string }

/** An address that has not answered in full by then is given up, ms. */
export const LONGEST = 20_000

export type Read<T> =
  | {
      readonly ok: true
      readonly value: T /** What was mended or is not known, a line each. */
      readonly notices: readonly string[]
    }
  | { readonly ok: false; readonly faults: readonly Fault[] }

const catalogReader = () => import('./catalog-reader.ts')

export async function readCatalog(given: GivenCatalog, signal: AbortSignal): Promise<Read<Catalog>> {
  if ('url' in given)
    return readFrom(
      given.url,
      'catalog',
      async (text) => (await catalogReader()).parseCatalogText(text),
      signal,
    )
  const read = await catalogReader().then(
    ({ parsePlainCatalog }) => faultsOf(parsePlainCatalog(given.plain), 'catalog'),
    (error) => failed('catalog', '', messageOf(error)),
  )
  // Told after whoever put the element in has had time to add listeners.
  if (!read.ok) await new Promise((done) => setTimeout(done))
  return read
}

export const readDesignFrom = (url: string, signal: AbortSignal): Promise<Read<Design>> =>
  readFrom(url, 'design', parseDesignText, signal)

/** A file that the user chose. One too large to be a design is not read into memory. */
export async function readDesignFile(file: File): Promise<Read<Design>> {
  if (file.size > LIMITS.textBytes)
    return failed('file', file.name, `${file.size} bytes; expected at most ${LIMITS.textBytes}`)
  try {
    return faultsOf(parseDesignText(await file.text()), 'file')
  } catch (error) {
    // Moved or changed since it was chosen, or not readable for this user.
    return failed('file', file.name, messageOf(error))
  }
}

export async function readFrom<T>(
  url: string,
  code: 'catalog' | 'design' | 'words',
  parse: (text: string) => Parsed<T> | Promise<Parsed<T>>,
  over: AbortSignal,
): Promise<Read<T>> {
  const stop = new AbortController()
  over.addEventListener('abort', () => stop.abort(), { once: true })
  try {
    const answer = async (): Promise<Read<T>> => {
      const [response, { limitedText }] = await Promise.all([
        fetch(url, { signal: stop.signal }),
        import('../platform/limited-text.ts'),
      ])
      if (!response.ok) return failed(code, url, `${response.status} ${response.statusText}`.trim())
      return faultsOf(await parse(await limitedText(response, LIMITS.textBytes)), code)
    }
    return await within(LONGEST, answer())
  } catch (error) {
    stop.abort()
    return failed(code, url, messageOf(error))
  }
}

/** A property's value: text is an address, as the attribute of that name; anything else is to be the thing itself. */
export function givenDesign(value: unknown): Given<Design> | null {
  if (value === null || value === undefined) return null
  if (typeof value === 'string') return { url: value }
  const read = faultsOf(parseDesign(value), 'design')
  return read.ok ? { value: read.value } : { faults: read.faults }
}

export function givenCatalog(value: unknown): GivenCatalog | null {
  if (value === null || value === undefined) return null
  return typeof value === 'string' ? { url: value } : { plain: plainOf(value) }
}

/** A fault as one line of text. */
export const lineOf = ({ path, message }: { readonly path: string; readonly message: string }): string =>
  path === '' ? message : `${path}: ${message}`

const failed = (code: Fault['code'], path: string, message: string): Read<never> => ({
  ok: false,
  faults: [{ code, path, message }],
})

export const faultsOf = <T>(parsed: Parsed<T>, code: Fault['code']): Read<T> =>
  parsed.ok
    ? { ok: true, value: parsed.value, notices: parsed.notices.map(lineOf) }
    : { ok: false, faults: parsed.issues.map(({ path, message }) => ({ code, path, message })) }
