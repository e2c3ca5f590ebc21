/** What the screen asks of the element that it stands in: files, links, requests. Given to it by context. */
import { createContext, useContext } from 'react'
import type { Design } from '../../rules/index.ts'
import type { PictureHandle } from '../ui/handles.ts'
import type { Offered, RequestBody } from './request-body.ts'

/** An earlier design, put aside when another took its place; `at`: when, ms since 1970. */
export interface Earlier {
  readonly design: Design
  readonly at: number
}

export interface Host {
  /** It keeps its design on this device. */
  readonly keeps: boolean
  /** It owns the fragment of the page's address. */
  readonly links: boolean
  /** Where requests go that the page does not take; null: nowhere. */
  readonly requestUrl: string | null
  /** The 3D scene, for a picture of it; null while there is none. */
  readonly picture: { current: PictureHandle | null }
  /** Address of docks to begin with; null: none. */
  readonly presets: string | null
  openFile(file: File): Promise<void>
  saveFile(): void
  copyLink(): Promise<void>
  /** The address that opens this dock; null where there is none. */
  linkTo(): Promise<string | null>
  earlier(): Promise<readonly Earlier[]>
  bringBack(design: Design): void
  /** Tells the page what is wrong with something that it gave. */
  fail(faults: readonly { readonly code: 'presets'; readonly path: string; readonly message: string }[]): void
  /** The design that another tab has saved, in the place of this one. */
  showOther(): Promise<void>
  startOver(): void
  /** The demo, in the place of the dock in hand. */
  showExample(): void
  /** Opens the dock of a link that is pasted; false where it is none. */
  openLink(address: string): Promise<boolean>
  /** Loads the page again, with the design in hand. */
  reload(): void
  /** Offers a request to the page; false: the page has taken it over. */
  offer(request: Offered): boolean
  /** The last request that was asked for here: sent again, it keeps its id. */
  asked: { readonly text: string; readonly body: RequestBody } | null
  /** Tells the page of a request that failed. */
  requestFailed(message: string): void
}

export const HostContext = createContext<Host | null>(null)

export function useHost(): Host {
  const host = useContext(HostContext)
  if (!host) throw new Error('useHost: no HostContext above this component')
  return host
}
