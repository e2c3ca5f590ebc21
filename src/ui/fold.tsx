/** What is folded away is not drawn: it costs nothing while the dock is dragged. */
import { type ReactNode, type RefObject, useEffect, useRef, useState } from 'react'

interface FoldProps {
  readonly className?: string
  readonly id?: string
  /** The heading, if it is a section of its own; else `summary`. */
  readonly title?: string
  readonly summary?: ReactNode
  /** Unfolded when printed: nobody can unfold paper. */
  readonly print?: boolean
  /** For whoever opens it from elsewhere. */
  readonly handle?: RefObject<HTMLDetailsElement | null>
  readonly children: ReactNode
}

export function Fold({ className = '', id, title, summary, print = false, handle, children }: FoldProps) {
  const [open, setOpen] = useState(false)
  const own = useRef<HTMLDetailsElement>(null)
  const details = handle ?? own
  useEffect(() => {
    if (!print) return
    let before = false
    const show = (unfolded: boolean): void => {
      if (details.current) details.current.open = unfolded
      setOpen(unfolded)
    }
    const begin = (): void => {
      before = details.current?.open ?? false
      show(true)
    }
    const end = (): void => show(before)
    addEventListener('beforeprint', begin)
    addEventListener('afterprint', end)
    return () => {
      removeEventListener('beforeprint', begin)
      removeEventListener('afterprint', end)
    }
  }, [print, details])
  return (
    <details
      className={className}
      part="fold"
      ref={details}
      {...(id === undefined ? {} : { id })}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary part="fold-title">{title === undefined ? summary : <h2>{title}</h2>}</summary>
      {open && children}
    </details>
  )
}
