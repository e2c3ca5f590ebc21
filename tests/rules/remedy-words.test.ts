/** A remedy of several steps is said in one sentence, and what a button says is what it does. */
import { describe, expect, it } from 'vitest'
import { deckDown, deckUp } from '../../rules/deck-step.ts'
import { english, formatLength, type Remedy, remedyText } from '../../rules/index.ts'

const raise = (height: number): Remedy => ({
  key: 'raise-deck',
  values: { height: { value: height, unit: 'm' } },
  patch: [{ op: 'replace', path: '/dock/deckHeight', value: height }],
})
const posts: Remedy = {
  key: 'more-posts',
  values: { posts: { value: 8, unit: 'count' } },
  patch: [{ op: 'add', path: '/dock/extras/anchor-post', value: 8 }],
}
const bumpers: Remedy = { key: 'bumpers', values: {}, patch: [] }
const together = (...steps: Remedy[]): Remedy => ({
  key: 'together',
  values: {},
  patch: steps.flatMap(({ patch }) => patch),
  steps,
})

describe('a remedy of several steps', () => {
  it('is one sentence', () => {
    const reader = english('imperial')
    expect(remedyText(together(raise(0.7239), posts), reader)).toBe(
      'Raise the deck to 2 ft 4 1/2 in and use 8 anchor posts',
    )
    expect(remedyText(together(raise(0.7239), bumpers, posts), reader)).toBe(
      'Raise the deck to 2 ft 4 1/2 in, put two bumpers where the boat ties up and use 8 anchor posts',
    )
  })
})

describe('a deck height that is proposed', () => {
  it('is a whole half inch, never on the wrong side of what it must clear', () => {
    expect(formatLength(deckUp(0.7137), english('imperial'))).toBe('2 ft 4 1/2 in')
    expect(deckUp(0.7239)).toBe(0.7239)
    expect(deckDown(0.7239)).toBe(0.7239)
    for (const height of [0.4001, 0.5, 0.6337, 1.2]) {
      expect(deckUp(height)).toBeGreaterThanOrEqual(height)
      expect(deckDown(height)).toBeLessThanOrEqual(height)
      expect(deckUp(height) - deckDown(height)).toBeCloseTo(0.0127, 6)
    }
  })
})
