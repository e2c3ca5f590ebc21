/** What a request carries to the shop, and who asks. */
import type { Design, Dock } from '../../rules/index.ts'

export interface Contact {
  readonly name: string
  /** Email address or telephone number, or both, as typed. */
  readonly contact: string
  readonly note: string
  readonly email?: string
  readonly phone?: string
  /** Where the shore is, in the customer's words. */
  readonly place?: string
}

/** `leadline/request` version 1, as it is sent. */
export interface RequestBody {
  readonly format: 'leadline/request'
  readonly version: 1
  /** Sent again after an answer that was no receipt it has the same: whoever has it already takes it for one. */
  readonly id: string
  /** When it was first sent, ISO 8601 in UTC. */
  readonly at: string
  readonly design: Design
  /** `version`: the shop's own edition. */
  readonly catalog: { readonly id: string; readonly version: string }
  readonly fingerprint: Dock['fingerprint']
  readonly totals: Dock['totals']
  readonly contact: Contact
  /** The shop's own words on what is done with it, as they were shown, and whether the box beside them was ticked. */
  readonly consent?: { readonly text: string; readonly ticked: boolean }
  /** The catalog's services that are asked for, by code. */
  readonly wants?: readonly string[]
  /** Opens the dock, where the page keeps it in its address. */
  readonly link?: string
  /** A small JPEG of the view, as a data URL. */
  readonly picture?: string
  /** The number that the customer is told: the beginning of `id`. */
  readonly reference?: string
}

export type RequestContent = Omit<RequestBody, 'format' | 'version' | 'id' | 'at' | 'reference'>

/** What `leadline-request` carries; a listener that takes it over may give a receipt, at once or later. */
export interface Offered extends RequestBody {
  receipt?: unknown
}
