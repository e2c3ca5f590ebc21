/** Why a part of the page that was asked for did not come. */

/** A site that does not answer by then counts as out of reach, ms. */
const PATIENCE = 8000

/**
 * `gone`: the site answers, but no longer has this part: it was put up anew since this page was loaded, which only loading it again helps.
 * `offline`: it does not answer.
 */
export async function whyMissing(): Promise<'gone' | 'offline'> {
  const over = new AbortController()
  const timer = setTimeout(() => over.abort(), PATIENCE)
  try {
    // Any answer will do, that it is not there either: this very file may have gone too.
    await fetch(import.meta.url, { method: 'HEAD', cache: 'no-store', signal: over.signal })
    return 'gone'
  } catch {
    return 'offline'
  } finally {
    clearTimeout(timer)
  }
}
