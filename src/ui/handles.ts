/** Typed handles through which one part of the screen uses another. Each is set by the component that owns it; passed by context. */
import { createContext, type RefObject, useContext } from 'react'

export interface PictureHandle {
  /** A PNG of the scene as it is seen, px; rejects while it is not there. */
  snapshot(width: number, height: number): Promise<Blob>
}

export interface Handles {
  /** The heading over whether the dock can be built, and what was found. */
  readonly findings: RefObject<HTMLHeadingElement | null>
  /** Papers, the quote among them. */
  readonly papers: RefObject<HTMLDetailsElement | null>
  /** Null while there is no 3D scene. */
  readonly picture: RefObject<PictureHandle | null>
}

export const HandlesContext = createContext<Handles | null>(null)

export function useHandles(): Handles {
  const handles = useContext(HandlesContext)
  if (!handles) throw new Error('useHandles: no HandlesContext above this component')
  return handles
}
