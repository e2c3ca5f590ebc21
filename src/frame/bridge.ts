/** Between an element and the page that its frame stands in, by messages: to that page alone, and only if its origin is on the list. */
import type { LeadlineDock } from '../element/leadline-dock.ts'
import type { ExportWanted, LeadlineEvents } from '../element/page-types.ts'
import { type FromPage, messageIn } from './messages.ts'

/** What a page has not answered by then is no receipt, ms: the element gives up a moment later. */
const PATIENCE = 19_000

interface Waiting {
  done(receipt: { readonly reference?: string }): void
  failed(error: Error): void
}

export function bridge(element: LeadlineDock, page: Window, origins: ReadonlySet<string>): void {
  /** The origin that has said hello. */
  let to: string | null = null
  let takes = false
  let height = 0
  const waiting = new Map<string, Waiting>()
  const tell = (type: string, rest: object = {}): void => {
    if (to !== null) page.postMessage({ leadline: 1, type, ...rest }, to)
  }
  const tellHeight = (): void => tell('height', { height })
  new ResizeObserver(() => {
    height = Math.ceil(element.getBoundingClientRect().height)
    tellHeight()
  }).observe(element)

  element.addEventListener('leadline-ready', () => tell('ready'))
  element.addEventListener('leadline-error', ({ detail }) => tell('error', { detail }))
  for (const type of ['leadline-input', 'leadline-change'] as const)
    element.addEventListener(type, ({ detail: { design, dock } }) => {
      const { fingerprint, totals, pending } = dock
      tell(type.slice('leadline-'.length), { detail: { design, fingerprint, totals, pending } })
    })
  element.addEventListener('leadline-request', (event: LeadlineEvents['leadline-request']) => {
    if (to === null || !takes) return
    event.preventDefault()
    const { receipt: _, ...detail } = event.detail
    event.detail.receipt = new Promise((done, failed) => {
      const late = setTimeout(() => failed(new Error('the page gave no receipt')), PATIENCE)
      waiting.get(detail.id)?.failed(new Error('sent again'))
      waiting.set(detail.id, {
        done: (receipt) => {
          clearTimeout(late)
          done(receipt)
        },
        failed: (error) => {
          clearTimeout(late)
          failed(error)
        },
      })
    })
    tell('request', { detail })
  })

  const answer = async (message: Extract<FromPage, { type: 'ask' }>): Promise<void> => {
    const { id } = message
    try {
      tell('answer', { id, ok: true, value: await answered(element, message) })
    } catch (error) {
      tell('answer', { id, ok: false, message: error instanceof Error ? error.message : String(error) })
    }
  }
  addEventListener('message', ({ source, origin, data }) => {
    if (source !== page || !origins.has(origin)) return
    const message = messageIn(data)
    if (!message) return
    if (message.type === 'hello') {
      to = origin
      takes = message.takes
      if (element.ready) tell('ready')
      tellHeight()
    } else if (to !== origin) return
    else if (message.type === 'set') set(element, message)
    else if (message.type === 'seen') see(element, message)
    else if (message.type === 'ask') void answer(message)
    else {
      const { id, received, reference } = message
      const one = waiting.get(id)
      waiting.delete(id)
      if (received) one?.done(reference === undefined ? {} : { reference })
      else one?.failed(new Error('the page did not take it'))
    }
  })
}

async function answered(
  element: LeadlineDock,
  message: Extract<FromPage, { type: 'ask' }>,
): Promise<unknown> {
  switch (message.what) {
    case 'reset':
      element.reset()
      return null
    case 'design':
      return element.design
    case 'snapshot':
      return element.snapshot(message.width, message.height)
    case 'export':
      // Of unknown values: what is made of them says which of them is wrong.
      return element.exportFile(message.wanted as unknown as ExportWanted)
  }
}

function set(
  element: LeadlineDock,
  { attributes = {}, design, catalog }: Extract<FromPage, { type: 'set' }>,
): void {
  for (const [name, value] of Object.entries(attributes))
    if (value === null) element.removeAttribute(name)
    else if (value !== undefined) element.setAttribute(name, value)
  if (catalog) element.catalog = catalog
  if (design) element.design = design
}

/** A frame as high as what is in it never scrolls: what stays in sight, and dialogs, go by what is seen of it. */
function see(element: LeadlineDock, { top, bottom }: Extract<FromPage, { type: 'seen' }>): void {
  element.style.setProperty('--leadline-sticky-top', `${top}px`)
  element.style.setProperty('--leadline-frame-top', `${top}px`)
  element.style.setProperty('--leadline-frame-bottom', `${bottom}px`)
}
