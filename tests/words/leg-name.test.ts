/** A leg has one name, its number and its place, wherever it is told of: never its id, never a corner. */
import { expect, it } from 'vitest'
import { demoCatalog, demoDesign, english, findingText, packingList, wordsOf } from '../../rules/index.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { legListed, legNamed, pairListed, withLegNumbers } from '../../rules/words/leg-name.ts'
import { listText } from '../../src/cli/list.ts'
import { LOADS } from '../../src/words/loads.ts'
import { reasonText } from '../../src/words/reason-text.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'

const reader = english('imperial')
const dock = deriveAtOnce(demoDesign, demoCatalog)
const tee = deriveAtOnce(
  parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, head: { shape: 'tee', sections: 2 } } }),
  demoCatalog,
)
const bare = deriveAtOnce(
  parsedDesign({
    ...demoDesign,
    dock: { ...demoDesign.dock, bracing: { none: ['s5.end'] } },
  }),
  demoCatalog,
)

it('is its number, how far out and on which side; on a head how far off the middle', () => {
  expect(legNamed(dock, 's4.end.left', reader)).toBe('Leg 7, 27 ft 4 in out, left')
  expect(legListed(dock, 's4.end.right', reader)).toBe('8: 27 ft 4 in out, right')
  expect(legListed(tee, 'h1.end.left', reader)).toMatch(/^\d+: .+ out, .+ left of the middle$/)
  expect(pairListed(dock, 's4.end')).toBe('7, 8')
  expect(legNamed(dock, 'not-there', reader)).toBe('not-there')
  const names = tee.legs.map(({ id }) => legNamed(tee, id, reader))
  expect(new Set(names).size).toBe(tee.legs.length)
})

it('is told so in the list, in what is found with figures, and in reasons', () => {
  for (const of of [dock, tee, bare]) {
    const list = listText(packingList(of, demoCatalog), of, reader)
    expect(list).toContain(legListed(of, of.legs[0]!.id, reader))
    for (const { id } of [...of.legs, ...of.pairs]) expect(list).not.toContain(id)
    for (const finding of of.findings) {
      const told = findingText(withLegNumbers(finding, of), 'text', reader)
      for (const { id } of [...of.legs, ...of.pairs]) expect(told).not.toContain(id)
    }
  }
  const braced = Object.values(dock.reasons.pairs)
    .flat()
    .filter(({ rule }) => rule === 'brace-fit')
  expect(braced.length).toBeGreaterThan(0)
  for (const reason of braced) {
    const low = String(reason.terms.find(({ key }) => key === 'low')!.value)
    expect(reasonText(reason, reader, dock)).toContain(`low end is on leg ${legNumber(dock, low)}.`)
  }
  expect(bare.findings.map(({ code }) => code)).toContain('brace-left-out')
  expect(wordsOf(LOADS, reader)('loads.pair', { legs: '7, 8' })).toBe('Legs 7, 8')
})
