/** Designs and catalogs from addresses and files: fetched, read, checked. What cannot be used comes back as faults, never as half a value. */
import {
  type Catalog,
  type Design,
  type Parsed,
  parseCatalogText,
  parseDesignText,
} from '../../rules/index.ts'

export interface Fault {
  readonly code: 'catalog' | 'design' | 'file' | 'link' | 'storage' | 'request' | 'attribute'
  /** Place in the file, as in `site.soundings[3].depth`; or the address that failed. */
  readonly path: string
  readonly message: string
}

export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] }

export const readCatalogFrom = (url: string, signal: AbortSignal): Promise<Read<Catalog>> =>
  readFrom(url, 'catalog', parseCatalogText, signal)

export const readDesignFrom = (url: string, signal: AbortSignal): Promise<Read<Design>> =>
  readFrom(url, 'design', parseDesignText, signal)

async function readFrom<T>(
  url: string,
  code: 'catalog' | 'design',
  parse: (text: string) => Parsed<T>,
  signal: AbortSignal,
): Promise<Read<T>> {
  try {
    const response = await fetch(url, { signal })
    if (!response.ok) return failed(code, url, `${response.status} ${response.statusText}`.trim())
    return faultsOf(parse(await response.text()), code)
  } catch (error) {
    return failed(code, url, error instanceof Error ? error.message : String(error))
  }
}

const failed = (code: Fault['code'], path: string, message: string): Read<never> => ({
  ok: false,
  faults: [{ code, path, message }],
})

export const faultsOf = <T>(parsed: Parsed<T>, code: Fault['code']): Read<T> =>
  parsed.ok
    ? { ok: true, value: parsed.value }
    : { ok: false, faults: parsed.issues.map(({ path, message }) => ({ code, path, message })) }
