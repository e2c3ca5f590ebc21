/** Every case that the engine names is told in words; a name that it does not know is told as it is. */
import { expect, it } from 'vitest'
import { english, wordsOf } from '../../rules/index.ts'
import { combinations } from '../../rules/structure/dock/combinations.ts'
import { caseInWords } from '../../src/words/load-case-words.ts'
import { LOADS, type LoadWord } from '../../src/words/loads.ts'

const t = (key: LoadWord, values = {}): string => {
  if (!(key in LOADS.english)) throw new Error(`no word ${key}`)
  return wordsOf(LOADS, english('imperial'))(key, values)
}
const said = (name: string) => caseInWords(name, { t })

it('each combination of loads has words of its own, and none of its signs is left in them', () => {
  const ways = ['left', 'right', 'shore', 'lake'] as const
  const sides = ways.flatMap((toward) => [
    { name: `D+P ${toward}`, toward, outside: false },
    ...(toward === 'left' || toward === 'right'
      ? [
          { name: `D+B ${toward}`, toward, outside: true },
          { name: `D+E ${toward}`, toward, outside: true },
        ]
      : []),
    ...(toward === 'shore' ? [] : [{ name: `D+C ${toward}`, toward, outside: true }]),
  ])
  const names = new Set(combinations(['low', 'today', 'high'], true, sides).map(({ name }) => name))
  expect(names.size).toBeGreaterThan(30)
  const told = [...names].map(said)
  expect(new Set(told).size).toBe(names.size)
  for (const text of told) expect(text).not.toMatch(/[+{}]|\b[DLWPBCE]\b|0\.\d/)
})

it('where it comes from, not where it pushes to', () => {
  expect(said('D+W high left')).toBe('wind and waves from the right at high water')
  expect(said('D+W today shore')).toBe('wind and waves off the lake at today’s water')
  expect(said('D+B right')).toBe('the boat bumping in from the left')
  expect(said('D+P lake')).toBe('a shove toward the lake')
  expect(said('D+C lake')).toBe('a crowd on the end section, nobody else')
  expect(said('D+E left')).toBe('someone on a ladder at the left end corner')
})

it('a name that is none of them stays what it is', () => {
  expect(said('D+X')).toBe('D+X')
  expect(said('D+W')).toBe('D+W')
})
