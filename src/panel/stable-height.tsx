/** Keeps its height while what is in it is worked out anew: what stands below it does not jump while the hand is on it. */
import { type ReactNode, useRef } from 'react'

interface HoldProps {
  /** What is in it is whole. */
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
