/** What the screen asks of the element that it stands in: files, links, requests. Given to it by context. */
import { createContext, useContext } from 'react'
import type { Design } from '../../rules/index.ts'
import type { Earlier } from './keep.ts'

export interface Contact {
  readonly name: string
  /** Email address or telephone number, as typed. */
  readonly contact: string
  readonly note: string
}

export interface Host {
  /** It keeps its design on this device. */
  readonly keeps: boolean
  /** It owns the fragment of the page's address. */
  readonly links: boolean
  openFile(file: File): Promise<void>
  saveFile(): void
  copyLink(): Promise<void>
  earlier(): Promise<readonly Earlier[]>
  bringBack(design: Design): void
  startOver(): void
  /** @throws (rejects) where the request was to be sent and could not be. */
  request(contact: Contact): Promise<'sent' | 'handed'>
}

export const HostContext = createContext<Host | null>(null)

export function useHost(): Host {
  const host = useContext(HostContext)
  if (!host) throw new Error('useHost: no HostContext above this component')
  return host
}
