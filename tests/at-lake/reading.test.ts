/** What is typed at the water's edge: a plain number is never taken in silence. */
import { expect, it } from 'vitest'
import { lengthOf, readingOf, shownText } from '../../src/at-lake/reading.ts'

const INCH = 0.0254

it.each([
  ['7 1/4', 7.25],
  ['7', 7],
  ['10.5', 10.5],
  ['½', 0.5],
])('%s on a screen of feet and inches is asked about', (text, value) => {
  expect(lengthOf(text, 'depth', 'imperial')).toBeNull()
  const read = readingOf(text, 'depth', 'imperial')
  if (read.is !== 'which') throw new Error(read.is)
  const [inches, feet] = read.ways
  expect(inches.meters).toBeCloseTo(value * INCH, 9)
  expect(feet.meters).toBeCloseTo(value * 12 * INCH, 9)
  // With its unit it is read as just that.
  expect(readingOf(inches.text, 'depth', 'imperial')).toEqual({ is: 'length', meters: inches.meters })
  expect(readingOf(feet.text, 'depth', 'imperial')).toEqual({ is: 'length', meters: feet.meters })
})

it('with units, or as feet and inches, it is taken at once', () => {
  expect(lengthOf('7 1/4 in', 'depth', 'imperial')).toBeCloseTo(7.25 * INCH, 9)
  expect(lengthOf("3' 4 1/2", 'depth', 'imperial')).toBeCloseTo(40.5 * INCH, 9)
  expect(lengthOf('18 cm', 'depth', 'imperial')).toBeCloseTo(0.18, 9)
  expect(lengthOf('0', 'depth', 'imperial')).toBe(0)
})

it('in meters a decimal is meters, a whole number either', () => {
  expect(lengthOf('0.18', 'depth', 'metric')).toBeCloseTo(0.18, 9)
  expect(lengthOf('1,05', 'depth', 'metric')).toBeCloseTo(1.05, 9)
  for (const text of ['18', '7', '110']) {
    const read = readingOf(text, 'leg', 'metric')
    if (read.is !== 'which') throw new Error(read.is)
    expect(read.ways.map(({ meters }) => meters)).toEqual([Number(text) / 100, Number(text)])
  }
  expect(readingOf('18.5', 'depth', 'metric').is).toBe('which')
})

it.each([
  ['depth', '14 ft', 'large'],
  ['change', '7 ft', 'large'],
  ['down', '20 ft', 'large'],
  ['leg', '110 m', 'never'],
  ['leg', '25 ft', 'large'],
  ['frame', '25 ft', 'large'],
  ['over', '6 ft', 'large'],
  ['gap', '2 ft', 'large'],
  ['level', '12 ft', 'large'],
  ['depth', '-4 in', 'negative'],
  ['down', '-4 in', 'length'],
  ['change', '11 in', 'length'],
] as const)('%s of %s: %s', (kind, text, is) => {
  expect(readingOf(text, kind, 'imperial').is).toBe(is)
})

it('what was typed before the units were changed is shown in those of the screen', () => {
  const told = (meters: number) => `${meters} told`
  expect(shownText({ text: '0.18', value: 0.18 }, 'metric', told)).toBe('0.18')
  expect(shownText({ text: '0.18', value: 0.18 }, 'imperial', told)).toBe('0.18 told')
  expect(shownText({ text: '18 cm', value: 0.18 }, 'imperial', told)).toBe('18 cm')
  expect(shownText({ text: '7 1/4', value: null }, 'imperial', told)).toBe('7 1/4')
})
