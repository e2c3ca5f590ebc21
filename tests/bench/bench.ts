/** `npm run bench`: what placing, fitting and counting cost, and all load cases. Milliseconds are told, the ratios gate. */
import { growth, kitOf, shapingOf, standOf, time } from './measure.ts'

const MOST_GROWTH = 1.5
const say = (text: string): void => void process.stdout.write(`${text}\n`)
for (const [name, make, runs] of [
  ['deriveKit', kitOf, { 20: 2000, 400: 120, 4000: 24 }],
  ['all cases', standOf, { 20: 200, 40: 100, 120: 8 }],
  ['shaping', shapingOf, { 15: 400, 60: 200, 200: 60 }],
] as const)
  for (const [sections, times] of Object.entries(runs)) {
    const { median, least } = time(make, Number(sections), times)
    say(
      `${name}, ${sections.padStart(4)} sections: median ${median.toFixed(3)} ms, least ${least.toFixed(3)} ms (${((1000 * median) / Number(sections)).toFixed(1)} µs a section)`,
    )
  }
for (const [name, make, range, runs] of [
  ['deriveKit', kitOf, [400, 4000], { turns: 40, warm: 20 }],
  ['all cases', standOf, [20, 40], { turns: 60, warm: 20 }],
  ['shaping', shapingOf, [15, 60], { turns: 60, warm: 60 }],
] as const) {
  const ratio = growth(make, range, runs)
  say(
    `${name}, work a section, ${range[1]} against ${range[0]}: ${ratio.toFixed(2)} (at most ${MOST_GROWTH})`,
  )
  if (ratio > MOST_GROWTH) process.exitCode = 1
}
