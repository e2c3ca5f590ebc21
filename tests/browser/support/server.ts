/** A folder served over HTTP under the strict policy that the README promises to run under; pages of the tests beside it. */
import { readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import { extname, join, normalize, resolve } from 'node:path'

export const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'"

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
}

export interface Site {
  readonly url: string
  /** What was posted, in order. */
  readonly posted: { readonly path: string; readonly body: string }[]
  close(): Promise<void>
}

export async function serve(folders: readonly string[]): Promise<Site> {
  const posted: { path: string; body: string }[] = []
  const server: Server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname))
    const headers = { 'content-security-policy': POLICY, 'cache-control': 'no-store' }
    if (request.method === 'POST') {
      let body = ''
      for await (const piece of request) body += piece
      posted.push({ path, body })
      response.writeHead(path.endsWith('/refused') ? 503 : 200, headers).end()
      return
    }
    for (const folder of folders) {
      const file = join(resolve(folder), path.endsWith('/') ? `${path}index.html` : path)
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
    close: () => new Promise((done) => server.close(() => done())),
  }
}
