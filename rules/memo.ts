/**
 * What follows from one value alone, worked out once and kept with that value: it goes when the value goes, and nobody else sees it.
 *
 *     const shop: Shop = { …, once: onceOf(() => shop) }
 *     shop.once(barsOf)
 */
export type Once<Of> = <T>(make: (of: Of) => T) => T

/** @param self the value; asked for only when something is worked out. `make` must be the same function each time: one of a module. */
export function onceOf<Of>(self: () => Of): Once<Of> {
  const made = new Map<unknown, unknown>()
  return <T>(make: (of: Of) => T): T => {
    if (!made.has(make)) made.set(make, make(self()))
    return made.get(make) as T
  }
}
