/** Where the keyboard goes on, when what had it is gone. Nothing where something has it. */
export function toHeading(heading: HTMLElement | null): void {
  const root = heading?.getRootNode()
  if (root instanceof ShadowRoot && root.activeElement === null) heading?.focus()
}
