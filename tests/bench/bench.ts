/** `npm run bench`: what placing, fitting and counting cost. Milliseconds are told, the ratio gates. */
import { growth, timeKit } from './measure.ts'

const MOST_GROWTH = 1.5
for (const { sections, median, least } of [timeKit(20, 2000), timeKit(400, 120), timeKit(4000, 24)])
  process.stdout.write(
    `deriveKit, ${String(sections).padStart(4)} sections: median ${median.toFixed(3)} ms, least ${least.toFixed(3)} ms (${((1000 * median) / sections).toFixed(1)} µs a section)\n`,
  )
const ratio = growth(400, 4000, 40)
process.stdout.write(`work a section, 4,000 against 400: ${ratio.toFixed(2)} (at most ${MOST_GROWTH})\n`)
if (ratio > MOST_GROWTH) process.exitCode = 1
