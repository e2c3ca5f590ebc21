/** What is folded away is not drawn: it costs nothing while the dock is dragged. */
import { type ReactNode, useState } from 'react'

interface FoldProps {
  readonly className?: string
  /** Of a section of its own; else `summary`. */
  readonly title?: string
  readonly summary?: ReactNode
  readonly children: ReactNode
}

export function Fold({ className = '', title, summary, children }: FoldProps) {
  const [open, setOpen] = useState(false)
  return (
    <details className={className} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title === undefined ? summary : <h2>{title}</h2>}</summary>
      {open && children}
    </details>
  )
}
