/**
 * Files of a dock on a page: written beside it, in a worker, so that the page goes on meanwhile. Where a page allows no workers (another
 * origin, its policy) they are written on the page's own thread, after what is being made has been said.
 */
import type { Job, Told } from './paper-worker.ts'
import type { Asked, Format, Progress } from './write.ts'

export type Spawn = () => Worker

const spawnWorker: Spawn = () =>
  new Worker(new URL('./paper-worker.ts', import.meta.url), { type: 'module', name: 'leadline-papers' })

/** Rejects with an `Error` whose message says why it could not be made. */
export async function makeFile(
  format: Format,
  asked: Asked,
  progress: Progress,
  spawn: Spawn = spawnWorker,
): Promise<Uint8Array> {
  const written = await inWorker({ format, asked }, progress, spawn)
  if (written) return written
  const [{ writeFile }, { paperFonts }] = await Promise.all([import('./write.ts'), import('./fonts.ts')])
  return writeFile(format, asked, paperFonts, progress)
}

/** Null where there is no worker to be had; rejects where it says that the file cannot be made. */
function inWorker(job: Job, progress: Progress, spawn: Spawn): Promise<Uint8Array | null> {
  return new Promise((resolve, reject) => {
    let worker: Worker
    try {
      worker = spawn()
    } catch {
      resolve(null)
      return
    }
    const end = (): void => worker.terminate()
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      if ('progress' in data) {
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
    worker.postMessage(job)
  })
}
