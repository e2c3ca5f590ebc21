import type { ComponentProps } from 'react'

/** A group of the drawing hidden from screen readers: a table or list beside it says the same, better. */
export const HiddenGroup = (props: ComponentProps<'g'>) => (
  // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group takes no focus.
  <g aria-hidden="true" {...props} />
)
