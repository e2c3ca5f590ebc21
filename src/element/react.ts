/** `leadline/react`: the element, and its attributes in JSX (React 19, which sets properties and hears events of elements by itself). */
import type { DetailedHTMLProps, HTMLAttributes } from 'react'
import type { LeadlineDock } from './leadline-dock.ts'
import type { LeadlineAttributes, LeadlineEvents } from './page-types.ts'

export * from './index.ts'

type Heard = { [Type in keyof LeadlineEvents as `on${Type}`]?: (event: LeadlineEvents[Type]) => void }

/** What `<leadline-dock>` takes in JSX. */
export type LeadlineProps = DetailedHTMLProps<
  Omit<HTMLAttributes<LeadlineDock>, keyof LeadlineAttributes>,
  LeadlineDock
> &
  Omit<LeadlineAttributes, 'catalog' | 'design'> &
  Heard & { catalog?: unknown; design?: unknown }

declare module 'react' {
  namespace JSX {
    interface IntrinsicElements {
      'leadline-dock': LeadlineProps
    }
  }
}
