/** Makes files of the dock, one at a time: progress, outcome, and a way to stop. */
import { useRef, useState } from 'react'
import type { LabelGrid } from '../../geometry/paper/label-grid.ts'
import type { PaperOptions } from '../../geometry/paper/options.ts'
import { download } from '../platform/download.ts'
import { messageOf } from '../platform/error-message.ts'
import { plainName } from '../platform/file-name.ts'
import { useHost } from '../state/host.ts'
import { papersAudience, useDock, useLeadline } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { makeFile, SilentError } from './files/make-file.ts'
import { type Asked, type Format, fileName, type ModelChoice, type What } from './files/write-file.ts'
import { addressOf } from './phone.tsx'
import { type QuoteChoice, wantedOf } from './quote-fields.tsx'

/** `png`: the picture of the scene, which is taken on the page rather than made in a worker. */
export type MadeFormat = Format | 'png'

export type Making =
  | {
      readonly making: MadeFormat
      /** The paper that is being made, of several. */
      readonly at?: { readonly paper: What; readonly n: number; readonly of: number }
    }
  | { readonly made: string }
  | { readonly failed: MadeFormat; readonly why: string }
  | null

/** What is written on papers beside the dock. */
export type Written = Pick<PaperOptions, 'size' | 'date' | 'by'> & {
  readonly labels: LabelGrid | null
  readonly model: ModelChoice
  readonly choice: QuoteChoice
}

export function useMaking({ size, labels, model, date, by, choice }: Written) {
  const handles = useHandles()
  const host = useHost()
  const { t, units, language } = useWords(DOCUMENTS)
  const dock = useDock()
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const audience = useLeadline(papersAudience)
  const [state, setState] = useState<Making>(null)
  const cancel = useRef<(() => void) | null>(null)
  const make = async (
    format: Format,
    of: Asked['what'],
    take: (bytes: Uint8Array<ArrayBuffer>, name: string) => void,
  ): Promise<void> => {
    setState({ making: format })
    const ending = new AbortController()
    cancel.current = () => ending.abort()
    // Lets the status text appear before the work begins.
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
    try {
      const link = addressOf(host.links, design)
      const options = {
        ...{ units, language, size, date, by },
        ...(link !== null && { link }),
        ...(labels && { labels }),
      }
      const quote = audience === 'shop' ? wantedOf(choice, catalog.services ?? []) : null
      const priced = of === 'quote' || of === 'packet'
      if (quote && priced) (await import('./files/since.ts')).checkAsked({ ...quote, date })
      const bytes = await makeFile(
        format,
        { what: of, audience, ...(quote && { quote }), bom: true, model, dock, design, catalog, options },
        (paper, made, all) => all > 1 && setState({ making: format, at: { paper, n: made + 1, of: all } }),
        undefined,
        ending.signal,
      )
      const name = fileName(dock, format, of)
      take(bytes, name)
      setState({ made: name })
    } catch (error) {
      if (ending.signal.aborted) setState(null)
      else setState({ failed: format, why: error instanceof SilentError ? t('silent') : messageOf(error) })
    }
    cancel.current = null
  }
  /** px */
  const takePicture = async (width: number, height: number): Promise<void> => {
    setState({ making: 'png' })
    try {
      if (!handles.picture.current) throw new Error(t('picture-none'))
      const blob = await handles.picture.current.snapshot(width, height)
      const name = `${plainName(dock.name)}.png`
      download(blob, 'image/png', name)
      setState({ made: name })
    } catch (error) {
      setState({ failed: 'png', why: messageOf(error) })
    }
  }
  return { state, make, takePicture, stop: () => cancel.current?.() }
}
