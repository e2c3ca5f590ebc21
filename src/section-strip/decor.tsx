import type { ComponentProps } from 'react'

/** A group of the drawing that says nothing to a screen reader which a table or list beside it does not say better. */
export const Decor = (props: ComponentProps<'g'>) => (
  // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group takes no focus.
  <g aria-hidden="true" {...props} />
)
