/** Where the keyboard goes on, when what had it is gone. */

/** Nothing where something has the keyboard. */
export function toHeading(within: HTMLElement | null): void {
  const root = within?.getRootNode()
  if (root instanceof ShadowRoot && root.activeElement === null)
    within?.querySelector<HTMLElement>('h2[tabindex]')?.focus()
}
