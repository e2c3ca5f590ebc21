/**
 * Receives what `request-url` is sent, wherever there is `fetch`'s own Request and Response: Node, or a worker runtime without it.
 * `catalog`: yours. `file(id, what)` keeps `what` under `id`, once, and resolves to what was first kept there.
 */
import { LIMITS, parseRequestText, verifyRequest } from 'leadline/rules'

const answer = (status, body) =>
  new Response(JSON.stringify(body), { status, headers: { 'content-type': 'application/json' } })

export const receiver = (catalog, file) => async (request) => {
  if (request.method !== 'POST') return answer(405, { problems: ['expected POST'] })
  if (Number(request.headers.get('content-length') ?? 0) > LIMITS.textBytes)
    return answer(413, { problems: [`expected at most ${LIMITS.textBytes} bytes`] })
  const read = parseRequestText(await request.text())
  if (!read.ok)
    return answer(422, { problems: read.issues.map(({ path, message }) => `${path}: ${message}`) })
  const { value } = read
  // What a browser sends can have been changed there: worked out again, with your own catalog and engine.
  const differs = verifyRequest(value, catalog).map(({ path, message }) => `${path}: ${message}`)
  // A customer who tries again sends the same id: it is filed once, and gets the first one's receipt.
  const kept = await file(value.id, { request: value, differs, reference: `R-${value.id.slice(0, 8)}` })
  return answer(200, { received: true, reference: kept.reference })
}
