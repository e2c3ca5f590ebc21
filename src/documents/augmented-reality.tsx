/**
 * The dock on the real shore, where the device shows models so when it is handed a link to one: `rel="ar"`, an image as its only child, a
 * USDZ behind it. The link is followed as soon as the model is made, and stays for another look.
 */
import { useEffect, useRef } from 'react'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { MEDIA } from './files/write-file.ts'

export interface ArModel {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly name: string
}

export const showsModels = (): boolean => document.createElement('a').relList.supports('ar')

/** Words as an image, for such a link holds nothing else. */
const imageOf = (words: string): string => {
  const safe = words.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`)
  return `data:image/svg+xml,${encodeURIComponent(
    `<svg xmlns="http://www.w3.org/2000/svg" width="260" height="44"><rect width="260" height="44" rx="8" fill="#0f5560"/>` +
      `<text x="130" y="28" fill="#fff" font-family="system-ui,sans-serif" font-size="16" text-anchor="middle">${safe}</text></svg>`,
  )}`
}

export function ArLink({ model }: { readonly model: ArModel }) {
  const { t } = useWords(DOCUMENTS)
  const link = useRef<HTMLAnchorElement>(null)
  useEffect(() => {
    const anchor = link.current
    if (!anchor) return
    const url = URL.createObjectURL(new Blob([model.bytes], { type: MEDIA.usdz }))
    anchor.href = url
    anchor.click()
    return () => URL.revokeObjectURL(url)
  }, [model])
  return (
    // biome-ignore lint/a11y/useValidAnchor: its address is that of the model, put in when it is made.
    <a ref={link} rel="ar" download={model.name}>
      <img src={imageOf(t('ar-again'))} alt={t('ar-again')} width={260} height={44} />
    </a>
  )
}
