/** The worker that writes files of a dock: one job, then it is terminated. */
import { messageOf } from '../../platform/error-message.ts'
import type { FontUrls } from './font-urls.ts'
import { paperFonts } from './fonts.ts'
import { type Asked, type Format, type Progress, writeFile } from './write-file.ts'

export interface Job {
  readonly format: Format
  readonly asked: Asked
  readonly fonts: FontUrls
}

export type Told =
  | { readonly progress: Parameters<Progress> }
  | { readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly failed: string }

const tell = (told: Told, transfer: Transferable[] = []): void => postMessage(told, { transfer })

addEventListener('message', async ({ data: { format, asked, fonts } }: MessageEvent<Job>) => {
  try {
    const bytes = await writeFile(
      format,
      asked,
      () => paperFonts(fonts),
      (...progress) => tell({ progress }),
    )
    tell({ bytes }, [bytes.buffer])
  } catch (error) {
    tell({ failed: messageOf(error) })
  }
})
