import { newId } from '../platform/new-id.ts'
import type { Host } from '../state/host.ts'
import type { RequestBody, RequestContent } from '../state/request-body.ts'

/** The body of a request. The same content keeps the id that it was first sent with. */
export function numbered(host: Pick<Host, 'asked'>, content: RequestContent): RequestBody {
  // The same wish is the same request, whatever the light is on its picture.
  const text = JSON.stringify({ ...content, picture: undefined })
  if (host.asked?.text === text) return host.asked.body
  const id = newId()
  const body: RequestBody = {
    format: 'leadline/request',
    version: 1,
    id,
    reference: id.slice(0, 8),
    at: new Date().toISOString(),
    ...content,
  }
  host.asked = { text, body }
  return body
}
