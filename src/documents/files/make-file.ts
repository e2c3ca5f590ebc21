/**
 * Files of a dock on a page: written beside it, in a worker, so that the page goes on meanwhile. Where a page allows no workers (another
 * origin, its policy) they are written on the page's own thread, after what is being made has been said.
 */
import type { Job, Told } from './file-worker.ts'
import { FONT_URLS } from './font-urls.ts'
import type { Asked, Format, Progress } from './write-file.ts'

export type Spawn = () => Worker

const spawnWorker: Spawn = () =>
  new Worker(new URL('./file-worker.ts', import.meta.url), { type: 'module', name: 'leadline-papers' })

/**
 * How long a worker may be silent, ms: it tells of every paper and file, and of none of an ordinary dock it took three seconds here; the
 * first word waits for its code. More for each piece of a large dock: a model of 100,000 pieces took most of a minute.
 */
const PATIENCE = 30_000
const A_PIECE = 3
export const patienceOf = ({ dock }: Asked): number => PATIENCE + A_PIECE * dock.placements.length

/** Two workers, one after the other, gave no answer. */
export class SilentError extends Error {
  override readonly name = 'SilentError'
}

/**
 * Rejects with an `Error` whose message says why it could not be made: a `SilentError` where nothing answers, what `signal` was ended with
 * where nobody waits for it any more.
 */
export async function makeFile(
  format: Format,
  asked: Asked,
  progress: Progress,
  spawn: Spawn = spawnWorker,
  signal?: AbortSignal,
): Promise<Uint8Array<ArrayBuffer>> {
  const job = { format, asked, fonts: FONT_URLS }
  // A silent worker is terminated, and a second one tries again.
  let written = await inWorker(job, progress, spawn, signal)
  if (written === 'silent') written = await inWorker(job, progress, spawn, signal)
  if (written === 'silent') throw new SilentError('two workers gave no answer')
  if (written) return written
  const [{ writeFile }, { paperFonts }] = await Promise.all([import('./write-file.ts'), import('./fonts.ts')])
  signal?.throwIfAborted()
  return writeFile(format, asked, () => paperFonts(FONT_URLS), progress)
}

/** Null where there is no worker to be had; rejects where it says that the file cannot be made. */
function inWorker(
  job: Job,
  progress: Progress,
  spawn: Spawn,
  signal: AbortSignal | undefined,
): Promise<Uint8Array<ArrayBuffer> | null | 'silent'> {
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted()
    let worker: Worker
    try {
      worker = spawn()
    } catch {
      resolve(null)
      return
    }
    let silence: ReturnType<typeof setTimeout> | undefined
    const wait = (): void => {
      clearTimeout(silence)
      silence = setTimeout(() => {
        end()
        resolve('silent')
      }, patienceOf(job.asked))
    }
    const stopped = (): void => {
      end()
      reject(signal!.reason)
    }
    const end = (): void => {
      clearTimeout(silence)
      signal?.removeEventListener('abort', stopped)
      worker.terminate()
    }
    signal?.addEventListener('abort', stopped)
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      if ('progress' in data) {
        wait()
        progress(...data.progress)
        return
      }
      end()
      if ('bytes' in data) resolve(data.bytes)
      else reject(new Error(data.failed))
    })
    worker.addEventListener('error', (event) => {
      event.preventDefault()
      end()
      resolve(null)
    })
    wait()
    worker.postMessage(job)
  })
}
