/** What follows from a value is worked out once for it, and for no other. */
import { expect, it, vi } from 'vitest'
import { demoCatalog, demoDesign, deriveKit, fingerprintOf, shopOf } from '../../rules/index.ts'
import { onceOf } from '../../rules/memo.ts'

it('is made when it is first asked for, of that value, and then given again', () => {
  const make = vi.fn((of: { readonly n: number }) => ({ twice: 2 * of.n }))
  const [one, two] = [{ n: 1 }, { n: 2 }].map((value) => onceOf(() => value))
  expect(make).not.toHaveBeenCalled()
  expect(one!(make)).toEqual({ twice: 2 })
  expect(one!(make)).toBe(one!(make))
  expect(two!(make)).toEqual({ twice: 4 })
  expect(make).toHaveBeenCalledTimes(2)
})

it('also where it comes to nothing', () => {
  const make = vi.fn(() => undefined)
  const once = onceOf(() => 1)
  once(make)
  once(make)
  expect(make).toHaveBeenCalledTimes(1)
})

it('of two catalogs neither has anything of the other', () => {
  const dearer = structuredClone(demoCatalog)
  ;(dearer.legs[0] as { price: number }).price += 1
  const [own, other] = [demoCatalog, dearer].map((catalog) => fingerprintOf(demoDesign, catalog).catalog)
  expect(own).not.toBe(other)
  expect(shopOf(demoCatalog)).toBe(shopOf(demoCatalog))
  expect(shopOf(demoCatalog)).not.toBe(shopOf(dearer))
  expect(deriveKit(demoDesign, dearer).shop).toBe(shopOf(dearer))
})
