/**
 * Scripting from a pointer that moves a sounding in the strip to every view of the real page in place: engine, strip, panel, list, and the
 * scene's ground, parts, marks and labels. Not the drawing, which follows in the browser's next frame, and not what is judged after it.
 * Told in ms; gated as a ratio to a calibration loop of the same run, for machines and their load differ.
 */
import { expect, test } from 'vitest'
import { type Design, demoDesign, parseDesign } from '../../rules/index.ts'
import { settled } from './scene-in-page.ts'
import { nextFrame, open, withBrowser } from './support/open.ts'

withBrowser()

/** Of the calibration loop, which takes about 4 ms on an ordinary core. */
const MOST_RATIO = 4
/** The first ones are not yet compiled. */
const WARM = 120
const MOVES = 180

function long(): Design {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, sections: 20 } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}

test('a sounding dragged at 20 sections is in every view within the same task', {
  timeout: 300_000,
}, async () => {
  const { page, close } = await open({ webgl: true, viewport: { width: 420, height: 500 } })
  await page.locator('leadline-dock').evaluate((e, design) => Object.assign(e, { design }) && 0, long())
  await page.locator('.stage').scrollIntoViewIfNeeded()
  await settled(page)
  await page.getByRole('button', { name: 'Keep in sight' }).click()
  await page.locator('summary', { hasText: 'The whole list' }).click()
  // The picture out of sight, as it goes with the page when it is let: it is kept up to date and not drawn, which would take the processor from what is measured.
  await page.locator('leadline-dock').evaluate((element) => {
    const { top } = element.shadowRoot!.querySelector('.strip')!.getBoundingClientRect()
    window.scrollBy(0, top + 70)
  })
  await nextFrame(page)
  const box = (await page.locator('.handle.sounding .lead').last().boundingBox())!
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  const told = await page.locator('leadline-dock').evaluate(
    async (element, { from, moves }) => {
      const root = element.shadowRoot!
      const handle = [...root.querySelectorAll('.handle.sounding')].at(-1)!
      const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)))
      const canvas = root.querySelector('canvas') as never as { leadlineScene: { frames: number } }
      const { frames } = canvas.leadlineScene
      /** Arithmetic and small objects, as scripting is. */
      const calibrate = (): number => {
        const start = performance.now()
        let sum = 0
        for (let i = 0; i < 300_000; i++) {
          const point = { x: Math.sin(i), y: Math.sqrt(i), z: i % 7 }
          sum += point.x * point.y + point.z
        }
        if (sum === 1) throw new Error('never')
        return performance.now() - start
      }
      const labels = () => [...root.querySelectorAll('.scene-label')].map((label) => label.textContent)
      /** What each view shows of the depth that is dragged. */
      const views = () => ({
        strip: handle.getAttribute('aria-valuetext'),
        legs: root.querySelector('.parts .leg')!.parentElement!.parentElement!.innerHTML,
        scene: labels().find((text) => text?.includes('deep')),
        panel: root.querySelector('.answer.what')!.textContent,
      })
      const edits: number[] = []
      const loops: number[] = []
      const late: Record<string, number> = { strip: 0, legs: 0, scene: 0, panel: 0 }
      for (let i = 0; i < moves; i++) {
        loops.push(calibrate())
        const before = views()
        const start = performance.now()
        handle.dispatchEvent(
          new PointerEvent('pointermove', {
            pointerId: 1,
            pointerType: 'mouse',
            buttons: 1,
            clientX: from.x,
            // Down and up again: each is another depth.
            clientY: from.y + 12 + 2 * ((i * 7) % 23),
            bubbles: true,
            composed: true,
          }),
        )
        // Views follow in microtasks, of React and of what stands in for it.
        for (let k = 0; k < 12; k++) await Promise.resolve()
        edits.push(performance.now() - start)
        const after = views()
        for (const view of Object.keys(late))
          if (after[view as keyof typeof after] === before[view as keyof typeof before]) late[view]!++
        await frame()
      }
      return { edits, loops, late, drawn: canvas.leadlineScene.frames - frames }
    },
    { from, moves: MOVES },
  )
  await page.mouse.up()
  const median = (list: readonly number[]) =>
    [...list.slice(WARM)].sort((a, b) => a - b)[(list.length - WARM) >> 1]!
  const [edit, loop] = [median(told.edits), median(told.loops)]
  process.stdout.write(
    `Pointer move to every view, 20 sections: ${edit.toFixed(1)} ms; calibration loop ${loop.toFixed(1)} ms; ratio ${(edit / loop).toFixed(2)}\n`,
  )
  expect(told.drawn).toBe(0)
  expect(told.late, 'moves after which a view still showed the depth before').toEqual({
    strip: 0,
    legs: 0,
    scene: 0,
    panel: 0,
  })
  expect(edit / loop).toBeLessThan(MOST_RATIO)
  await close()
})
