/** Files written beside the page, or on it where there are no workers. */
import { describe, expect, it, vi } from 'vitest'
import { demoCatalog, demoDesign, derive, ENGLISH } from '../../rules/index.ts'
import type { Job, Told } from '../../src/documents/files/file-worker.ts'
import { makeFile, patienceOf, SilentError } from '../../src/documents/files/make-file.ts'
import { type Asked, writeFile } from '../../src/documents/files/write-file.ts'

const asked: Asked = {
  what: 'packing',
  audience: 'shop',
  dock: derive(demoDesign, demoCatalog),
  design: demoDesign,
  catalog: demoCatalog,
  options: { units: 'imperial', language: ENGLISH, size: 'letter', date: '2026-05-01', by: '' },
}
const noFonts = (): never => {
  throw new Error('no fonts are asked for')
}

/** A worker that does what it is told with a job. */
class FakeWorker extends EventTarget {
  ended = 0
  constructor(readonly work: (job: Job, tell: (told: Told) => void, worker: FakeWorker) => void) {
    super()
  }
  postMessage(job: Job): void {
    const tell = (data: Told): void => void this.dispatchEvent(new MessageEvent('message', { data }))
    queueMicrotask(() => this.work(structuredClone(job), tell, this))
  }
  terminate(): void {
    this.ended++
  }
}
const make = (worker: FakeWorker, progress: unknown[] = []) =>
  makeFile(
    'csv',
    asked,
    (...told) => progress.push(told),
    () => worker as unknown as Worker,
  )

describe('a file of a dock on a page', () => {
  it('is written in a worker, which says how far it is and is ended', async () => {
    const progress: unknown[] = []
    const worker = new FakeWorker((job, tell) => {
      tell({ progress: ['drawing', 0, 2] })
      void writeFile(job.format, job.asked, noFonts).then((bytes) => tell({ bytes }))
    })
    const bytes = await make(worker, progress)
    expect(Buffer.compare(bytes, await writeFile('csv', asked, noFonts))).toBe(0)
    expect(bytes.length).toBeGreaterThan(2000)
    expect(progress).toEqual([['drawing', 0, 2]])
    expect(worker.ended).toBe(1)
  })

  it('that cannot be made says why, and is not tried once more on the page', async () => {
    const worker = new FakeWorker((_, tell) => tell({ failed: 'the fonts did not come' }))
    await expect(make(worker)).rejects.toThrow('the fonts did not come')
    expect(worker.ended).toBe(1)
  })

  it('is written on the page where a worker does not start, or may not be made at all', async () => {
    const own = await writeFile('csv', asked, noFonts)
    const broken = new FakeWorker((_, __, worker) => worker.dispatchEvent(new Event('error')))
    expect(Buffer.compare(await make(broken), own)).toBe(0)
    expect(broken.ended).toBe(1)
    const none = makeFile(
      'csv',
      asked,
      () => {},
      () => {
        throw new DOMException('not here', 'SecurityError')
      },
    )
    expect(Buffer.compare(await none, own)).toBe(0)
  })

  it('is begun anew in a second worker where the first says nothing; where that is silent too it says so', async () => {
    vi.useFakeTimers()
    try {
      const workers: FakeWorker[] = []
      const file = makeFile(
        'csv',
        asked,
        () => {},
        () => {
          // The first one tells that it began, and no more.
          const first = workers.length === 0
          workers.push(new FakeWorker((_, tell) => first && tell({ progress: ['drawing', 0, 2] })))
          return workers.at(-1) as unknown as Worker
        },
      )
      const told = file.catch((error: unknown) => error)
      await vi.advanceTimersByTimeAsync(patienceOf(asked) - 100)
      expect(workers.map(({ ended }) => ended)).toEqual([0])
      await vi.advanceTimersByTimeAsync(200)
      expect(workers.map(({ ended }) => ended)).toEqual([1, 0])
      await vi.advanceTimersByTimeAsync(patienceOf(asked))
      expect(workers.map(({ ended }) => ended)).toEqual([1, 1])
      expect(await told).toBeInstanceOf(SilentError)
    } finally {
      vi.useRealTimers()
    }
  })

  it('is left when nobody waits for it any more: its worker is ended', async () => {
    const worker = new FakeWorker(() => {})
    const ending = new AbortController()
    const file = makeFile(
      'csv',
      asked,
      () => {},
      () => worker as unknown as Worker,
      ending.signal,
    )
    ending.abort()
    await expect(file).rejects.toThrow(/abort/i)
    expect(worker.ended).toBe(1)
  })
})
