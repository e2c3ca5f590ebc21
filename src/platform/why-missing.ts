/** Why a chunk of the page did not load. */

/** A site that does not answer by then counts as out of reach, ms. */
const PATIENCE = 8000

/**
 * `gone`: the site answers but no longer has this chunk: it was deployed again since this page was loaded, and only a reload helps.
 * `offline`: it does not answer.
 */
export async function whyMissing(): Promise<'gone' | 'offline'> {
  const over = new AbortController()
  const timer = setTimeout(() => over.abort(), PATIENCE)
  try {
    // Any answer will do, even a 404: this file too may be gone.
    await fetch(import.meta.url, { method: 'HEAD', cache: 'no-store', signal: over.signal })
    return 'gone'
  } catch {
    return 'offline'
  } finally {
    clearTimeout(timer)
  }
}
