/** `npx tsx tests/rules/structure/bench.ts`: what the space-frame solver costs on dock-shaped frames. */
import { eighteenNodeDock, sixNodeDock } from './dock-like.ts'
import { timeBuckling, timeCase, timeFactor } from './measure-frame.ts'

for (const [name, make] of [
  ['6 nodes a section', sixNodeDock],
  ['18 nodes a section', eighteenNodeDock],
] as const) {
  const least: number[] = []
  for (const [sections, runs] of [
    [20, 400],
    [40, 300],
    [400, 40],
  ] as const) {
    const model = make(sections)
    const say = (what: string, { median, least: best }: { median: number; least: number }): void => {
      const line = `median ${median.toFixed(2)} ms, least ${best.toFixed(2)} ms`
      process.stdout.write(`${name}, ${String(sections).padStart(3)} sections, ${what.padEnd(9)} ${line}\n`)
    }
    const factor = timeFactor(model, runs)
    least.push(factor.least / sections)
    say('factoring', factor)
    say('one case', timeCase(model, runs))
    if (sections <= 40) say('buckling', timeBuckling(model, 12))
  }
  process.stdout.write(
    `${name}, factoring a section, 400 against 40: ${(least[2]! / least[1]!).toFixed(2)}\n`,
  )
}
