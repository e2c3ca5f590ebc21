/**
 * Addresses of workers for pages that enforce Trusted Types: the policy `leadline` lets through what lies beside this very file and nothing
 * else. The build of the page puts it around them (`src/build/shared-worker.ts`); where a page does not allow the policy there are no workers.
 */

/** What is not yet in the compiler's DOM. */
interface Policies {
  createPolicy(
    name: string,
    rules: { createScriptURL(url: string): string },
  ): { createScriptURL(url: string): string }
}

/** The folder of the page's chunks. */
const HERE = new URL('.', import.meta.url).href

/** @throws where it lies elsewhere */
export function ownScript(url: string): string {
  const { href } = new URL(url, HERE)
  if (href.startsWith(HERE) && !/[?#]/.test(href)) return href
  throw new TypeError(`${href} is no script of ${HERE}`)
}

function makePolicy(): { createScriptURL(url: string): string } | undefined {
  try {
    return (globalThis as { readonly trustedTypes?: Policies }).trustedTypes?.createPolicy('leadline', {
      createScriptURL: ownScript,
    })
  } catch {
    // Not a policy that this page allows, or another copy of this file has made it.
    return undefined
  }
}
const policy = makePolicy()

/** A text to the compiler, as `Worker` takes it; to the browser a script address that is trusted. */
export const trustedScript = (url: URL | string): string =>
  policy?.createScriptURL(String(url)) ?? String(url)
