/** What a page's own code is told by the element, for its compiler. */
import type { PaperSize } from '../../geometry/paper/marks.ts'
import type { Design, Dock } from '../../rules/index.ts'
import type { Figures, Format, What } from '../documents/files/write-file.ts'
import type { Offered } from '../state/request-body.ts'
import type { Fault } from './sources.ts'

/** The attributes of `<leadline-dock>`, as `public/guide/embed.md` tells them. */
export interface LeadlineAttributes {
  catalog?: string | undefined
  design?: string | undefined
  units?: 'imperial' | 'metric' | undefined
  lang?: string | undefined
  words?: string | undefined
  theme?: 'light' | 'dark' | 'auto' | undefined
  mode?: 'full' | 'compact' | 'waterside' | undefined
  'storage-key'?: string | undefined
  link?: boolean | '' | undefined
  'request-url'?: string | undefined
  audience?: 'customer' | 'shop' | 'crew' | undefined
  start?: 'questions' | 'example' | undefined
  'hide-price'?: boolean | '' | undefined
  presets?: string | undefined
  loading?: 'lazy' | 'eager' | undefined
}

/** What the element tells, by the name of the event. */
export interface LeadlineEvents {
  'leadline-ready': CustomEvent<null>
  'leadline-input': CustomEvent<{ readonly design: Design; readonly dock: Dock }>
  'leadline-change': CustomEvent<{ readonly design: Design; readonly dock: Dock }>
  /** Cancelable: a listener that takes it calls `preventDefault()`. */
  'leadline-request': CustomEvent<Offered>
  'leadline-error': CustomEvent<Fault>
}

declare global {
  interface HTMLElementEventMap extends LeadlineEvents {}
}

/** A file that `exportFile` of the element is to make. */
export interface ExportWanted {
  /** `design`: what _File, Save_ gives. */
  readonly format: Format | 'design'
  /** Of PDF and SVG the paper, of CSV and JSON the figures; absent: what the audience came for, and the packing list. */
  readonly what?: What | Figures
  /** On papers, as in `2026-05-01`; absent: today. */
  readonly date?: string
  readonly size?: PaperSize
  /** Who made it, on papers. */
  readonly by?: string
}
