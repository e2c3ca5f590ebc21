/** A folder served over HTTP under the strict policy that the guide promises to run under; pages of the tests beside it. */
import { readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import { extname, join, normalize, resolve } from 'node:path'

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'"

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
}

export interface Posted {
  readonly path: string
  readonly body: string
  /** Of the header of that name. */
  readonly key: string | undefined
}

export interface Site {
  readonly url: string
  /** What was posted, in order. */
  readonly posted: Posted[]
  close(): Promise<void>
}

/** What answers a request at these addresses; null: never. Elsewhere it is a receipt. */
const ANSWERS: Readonly<
  Record<string, { status: number; headers?: Record<string, string>; body?: string } | null>
> = {
  refused: { status: 503 },
  broken: { status: 500, headers: { 'content-type': 'text/html' }, body: '<h1>Error</h1>' },
  empty: { status: 204 },
  page: { status: 200, headers: { 'content-type': 'text/html' }, body: '<h1>Thank you</h1>' },
  login: { status: 302, headers: { location: './bare.html' } },
  hang: null,
}

export interface ServeOptions {
  /** Added to the policy of every answer. */
  readonly policy?: string
  /** What its pages may ask. */
  readonly connect?: string
  /** Any other site may read what is here and post to it. */
  readonly shared?: boolean
}

export async function serve(
  folders: readonly string[],
  { policy = '', connect = "'self'", shared = false }: ServeOptions = {},
): Promise<Site> {
  const posted: Posted[] = []
  const server: Server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname))
    const headers = {
      'content-security-policy': POLICY.replace(/(?<=connect-src )'self'/, connect) + policy,
      'cache-control': 'no-store',
      ...(shared && { 'access-control-allow-origin': '*', 'access-control-allow-headers': '*' }),
    }
    if (request.method === 'OPTIONS') {
      response.writeHead(shared ? 204 : 405, headers).end()
      return
    }
    if (request.method === 'POST') {
      let body = ''
      for await (const piece of request) body += piece
      const key = request.headers['idempotency-key'] as string | undefined
      posted.push({ path, body, key })
      const name = path.slice(path.lastIndexOf('/') + 1)
      const answer = name in ANSWERS ? ANSWERS[name] : receipt(posted, key)
      if (answer) response.writeHead(answer.status, { ...headers, ...answer.headers }).end(answer.body)
      return
    }
    // `/slow/8000/shop.json` takes so many ms; `/slow/never/…` does not come.
    const slow = /^\/slow\/(\w+)\//.exec(path)
    if (slow?.[1] === 'never') return
    if (slow) await new Promise((done) => setTimeout(done, Number(slow[1])))
    const asked = slow ? path.slice(slow[0].length - 1) : path
    for (const folder of folders) {
      const file = join(resolve(folder), asked.endsWith('/') ? `${asked}index.html` : asked)
      if (!file.startsWith(resolve(folder))) continue
      try {
        const content = await readFile(file)
        response
          .writeHead(200, { ...headers, 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' })
          .end(content)
        return
      } catch {
        // Not in this folder: perhaps in the next.
      }
    }
    response.writeHead(404, headers).end()
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('serve: no port')
  return {
    url: `http://127.0.0.1:${address.port}`,
    posted,
    close: () =>
      new Promise((done) => {
        server.close(() => done())
        server.closeAllConnections()
      }),
  }
}

/** The same number again is the same request: it has one reference. */
function receipt(posted: readonly Posted[], key: string | undefined) {
  const keys = [...new Set(posted.map((each) => each.key))]
  return {
    status: 200,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ received: true, reference: `R-${keys.indexOf(key) + 1}` }),
  }
}
