/** Which loads act together, by ASCE 7-16 2.4.1 as the combinations' own head cites it: each factor written down, none read off. */
import { describe, expect, it } from 'vitest'
import { type Combination, combinations } from '../../../rules/structure/dock/combinations.ts'

const named = (all: readonly Combination[], name: string): Combination[] => all.filter((c) => c.name === name)

describe('combinations', () => {
  it('of weather: D + W, 0.6 D + W, D + 0.75 L + 0.75 W at each level, from three sides', () => {
    const all = combinations(['low', 'today', 'high'], true, []).filter(({ weather }) => weather)
    expect(all).toHaveLength(3 * 3 * 3)
    for (const level of ['low', 'today', 'high'] as const)
      for (const toward of ['left', 'right', 'shore'] as const) {
        const at = `${level} ${toward}`
        const rest = { side: null, lean: toward }
        // The parts: the highest wave, all of the weight, nobody asked about the dock as a whole.
        expect(named(all, `D+W ${at}`)).toEqual([
          {
            ...rest,
            name: `D+W ${at}`,
            gravity: 'none',
            dead: 1,
            live: [0, 0],
            weather: { factor: 1, level, toward, waves: 'highest', moored: true },
            outside: false,
          },
        ])
        // The whole: six tenths of the weight against all of the wind, crests that lift the deck come with it.
        expect(named(all, `0.6D+W ${at}`)).toEqual([
          {
            ...rest,
            name: `0.6D+W ${at}`,
            gravity: 'none',
            dead: 0.6,
            live: [0, 0],
            weather: { factor: 1, level, toward, waves: 'tenth', moored: true, uplift: 1 },
            outside: true,
          },
        ])
        expect(named(all, `D+0.75L+0.75W ${at}`)).toEqual([
          {
            ...rest,
            name: `D+0.75L+0.75W ${at}`,
            gravity: 'full',
            dead: 1,
            live: [0.75, 0.75],
            weather: { factor: 0.75, level, toward, waves: 'highest', moored: true },
            outside: false,
          },
        ])
      }
  })

  it('of gravity: D and D + L leaning all four ways, half a deck full leaning to its side and lengthwise', () => {
    const all = combinations(['today'], false, [])
    const quiet = { dead: 1, weather: null, side: null, outside: true }
    const four = ['left', 'right', 'shore', 'lake']
    expect(named(all, 'D')).toEqual(
      four.map((lean) => ({ ...quiet, name: 'D', gravity: 'none', live: [0, 0], lean })),
    )
    expect(named(all, 'D+L')).toEqual(
      four.map((lean) => ({ ...quiet, name: 'D+L', gravity: 'full', live: [1, 1], lean })),
    )
    for (const [side, live] of [
      ['left', [1, 0]],
      ['right', [0, 1]],
    ] as const)
      expect(named(all, `D+L ${side}`)).toEqual(
        [side, 'shore', 'lake'].map((lean) => ({
          ...quiet,
          name: `D+L ${side}`,
          gravity: 'full',
          live,
          lean,
        })),
      )
    expect(all).toHaveLength(4 + 4 + 6)
  })

  it('of a load from the side: all of the weight, nobody else on the deck; a bump is over in a moment', () => {
    const sides = [
      { name: 'D+P lake', toward: 'lake', outside: false },
      { name: 'D+B right', toward: 'right', outside: true, bump: { energy: 67.5, force: 1643 } },
    ] as const
    const all = combinations(['today'], false, sides)
    const rest = { gravity: 'none', dead: 1, live: [0, 0], weather: null }
    expect(named(all, 'D+P lake')).toEqual([
      { ...rest, name: 'D+P lake', side: 0, lean: 'lake', outside: false },
    ])
    expect(named(all, 'D+B right')).toEqual([
      {
        ...rest,
        name: 'D+B right',
        side: 1,
        lean: 'right',
        outside: true,
        transient: true,
        energy: 67.5,
        force: 1643,
      },
    ])
  })
})
