/** What color says of use: green is fine, orange means something, and the order is read without color. */
import { describe, expect, it } from 'vitest'
import { bandOf } from '../../src/utilization/utilization-band.ts'
import { colorOf } from '../../src/utilization/utilization-colors.ts'

/** Degrees around the color wheel: red 0, orange 30, yellow 45 to 60, green 75 and more. */
function hue([r, g, b]: readonly [number, number, number]): number {
  const most = Math.max(r, g, b)
  const span = most - Math.min(r, g, b)
  const sixth = most === r ? (g - b) / span : most === g ? 2 + (b - r) / span : 4 + (r - g) / span
  return sixth * 60
}

/** Relative luminance (WCAG 2.2). */
const luminance = (color: readonly [number, number, number]): number => {
  const [r, g, b] = color.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [
    number,
    number,
    number,
  ]
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}
const uses = Array.from({ length: 101 }, (_, i) => i / 100)

describe('colors of use', () => {
  it('are green to 60 %, then yellow, orange at 85 % and red at all of it', () => {
    for (const use of uses.filter((u) => u <= 0.6)) expect(hue(colorOf(use))).toBeGreaterThan(70)
    const yellow = hue(colorOf(0.7))
    expect(yellow).toBeGreaterThan(40)
    expect(yellow).toBeLessThan(60)
    expect(Math.abs(hue(colorOf(0.85)) - 28)).toBeLessThan(5)
    for (const use of uses.filter((u) => u < 0.8)) expect(hue(colorOf(use))).toBeGreaterThan(33)
    expect(hue(colorOf(1))).toBeLessThan(10)
  })

  it('get darker all the way, and what is over is darkest', () => {
    const light = [...uses.map((use) => luminance(colorOf(use))), luminance(colorOf(1.01))]
    light.slice(1).forEach((now, i) => {
      expect(now).toBeLessThan(light[i]!)
    })
  })

  it('change where the words do', () => {
    expect([0.6, 0.61, 0.85, 0.86, 1, 1.01].map(bandOf)).toEqual([
      'little',
      'some',
      'some',
      'much',
      'much',
      'over',
    ])
  })
})
