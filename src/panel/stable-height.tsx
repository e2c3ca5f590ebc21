/** Keeps its height while its content is recomputed, so that what is below does not jump during a drag. */
import { type ReactNode, useRef } from 'react'

interface HoldProps {
  /** True when its content is complete. */
  readonly whole: boolean
  /** Only to be looked at. */
  readonly inert?: boolean
  readonly children: ReactNode
}

export function StableHeight({ whole, inert = false, children }: HoldProps) {
  const box = useRef<HTMLDivElement>(null)
  const before = useRef(whole)
  const height = useRef(0)
  // Read once, as it begins: what is on the screen is still what was whole.
  if (before.current && !whole) height.current = box.current?.offsetHeight ?? 0
  before.current = whole
  return (
    <div ref={box} inert={inert} style={whole ? {} : { minBlockSize: `${height.current}px` }}>
      {children}
    </div>
  )
}
