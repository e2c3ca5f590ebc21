/** The faults that are put into sources: which, where, and that each is another text that still can be read. */
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'
import { functionsOf, mutantsOf, mutated, sampled, telling } from './mutate.ts'

/** What becomes of a text, fault by fault. */
const all = (text: string): string[] => mutantsOf('x.ts', text).map((mutant) => mutated(text, mutant))

describe('faults', () => {
  it('shift and turn comparisons', () => {
    expect(all('const a = b < c')).toEqual(['const a = b <= c', 'const a = b >= c'])
    expect(all('const a = b === c')).toEqual(['const a = b !== c'])
  })

  it('change arithmetic, and leave texts that are put together alone', () => {
    expect(all('const a = b + c * d')).toEqual(['const a = b - c * d', 'const a = b + c / d'])
    expect(all('a += b')).toEqual(['a -= b'])
    expect(all("const a = 'b' + c")).toEqual([])
  })

  it('make other numbers of numbers: the next one, a tenth more, a thousand times what only keeps rounding out', () => {
    expect(all('const a = 1')).toEqual(['const a = 2'])
    expect(all('const a = 0.5')).toEqual([`const a = ${0.5 * 1.1}`])
    expect(all('const a = 200')).toEqual([`const a = ${200 * 1.1}`])
    expect(all('const a = 1e-6')).toEqual([`const a = ${1e-6 * 1000}`])
  })

  it('decide conditions beforehand, and turn them', () => {
    expect(all('if (a) b = c')).toEqual(['if (true) b = c', 'if (false) b = c', 'if (!(a)) b = c'])
    expect(all('const a = !b')).toEqual(['const a = b'])
    expect(all('const a = b && c')).toEqual(['const a = b || c'])
    expect(all('const a = b ?? c')).toEqual(['const a = b && c'])
    expect(all('const a = true')).toEqual(['const a = false'])
  })

  it('leave out calls and what is given back, and take the least for the most', () => {
    expect(all('go()')).toEqual([';'])
    expect(all('function f() { return g }')).toEqual(['function f() { return undefined }'])
    expect(all('const f = () => g')).toEqual(['const f = () => undefined'])
    expect(all('const a = Math.min(b, c)')).toEqual(['const a = Math.max(b, c)'])
    expect(all('const a = b.filter(c)')).toEqual(['const a = b'])
    expect(all('const a = b.some(c)')).toEqual(['const a = b.every(c)'])
  })

  it('are none in types and imports', () => {
    expect(all("import { a } from './a1.ts'; type B = 1 | true; interface C { d: 2 }")).toEqual([])
    expect(all('const a: 1 | 2 = b as 1')).toEqual([])
  })

  it('know the innermost function that they are in', () => {
    const text = 'const a = 1\nfunction f() { return (x) => x < b }'
    expect(functionsOf('x.ts', text)).toHaveLength(2)
    const within = (from: string) => mutantsOf('x.ts', text).find((mutant) => mutant.from === from)!.within
    expect(within('1')).toBe(-1)
    expect(within('(x) => x < b')).toBe(0)
    expect(within('<')).toBe(1)
  })
})

describe('coverage', () => {
  it('is told by every body, and changes nothing that it gives back', () => {
    const text = 'function f(a) { const g = (b) => (c) => ({ d: a + b + c }); return g }'
    const told = telling('x.ts', text, 7)
    expect(parseSync('x.ts', told).errors).toEqual([])
    const hits = new Set<number>()
    Object.assign(globalThis, { leadlineHits: hits })
    const f = new Function(`${told}; return f`)() as (a: number) => (b: number) => (c: number) => unknown
    const g = f(1)
    expect([...hits]).toEqual([7])
    expect(g(20)(300)).toEqual({ d: 321 })
    expect([...hits]).toEqual([7, 8, 9])
  })
})

describe('a sample', () => {
  const list = Array.from({ length: 100 }, (_, i) => i)
  it('is the same for the same seed, another for another, and a longer one begins with it', () => {
    expect(sampled(list, 10, 1)).toEqual(sampled(list, 10, 1))
    expect(sampled(list, 10, 1)).not.toEqual(sampled(list, 10, 2))
    expect(sampled(list, 30, 1).slice(0, 10)).toEqual(sampled(list, 10, 1))
    expect(new Set(sampled(list, 100, 1)).size).toBe(100)
  })
})
