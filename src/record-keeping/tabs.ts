/** Tabs of one site that have records under one key: each hears what another wrote. */

export interface Tabs {
  tell(record: string, what: unknown): void
  close(): void
}

interface Told {
  readonly record: string
  readonly what: unknown
}

/** `hear` gets what another tab told, unchecked. */
export function openTabs(key: string, hear: (record: string, what: unknown) => void): Tabs {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {}, close: () => {} }
  const channel = new BroadcastChannel(`leadline-records/${key}`)
  channel.addEventListener('message', ({ data }: MessageEvent<Partial<Told> | null>) => {
    if (typeof data?.record === 'string') hear(data.record, data.what)
  })
  return {
    tell: (record, what) => channel.postMessage({ record, what } satisfies Told),
    close: () => channel.close(),
  }
}
