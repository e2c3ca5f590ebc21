/**
 * Eight fixed scenes against kept pictures, at most 0.3 % of pixels differing. Labels are left out: letters differ between machines, and
 * what they say is tested as data. `UPDATE_SCENES=1` keeps the pictures of this run; look at them before they are committed.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import pixelmatch from 'pixelmatch'
import { PNG } from 'pngjs'
import { expect, it } from 'vitest'
import type { Wanted } from './scene-page.ts'
import { openScenes, type PageOptions, withScenes } from './scene-support.ts'

withScenes()

const KEPT = join(import.meta.dirname, '__scenes__')
/** Where this run's pictures and their differences are left to be looked at. */
const SEEN = 'node_modules/.cache/leadline/scenes'
const SIZE = [480, 300] as const
const MOST = 0.003

const SCENES: readonly (readonly [name: string, wanted: Wanted, options?: PageOptions])[] = [
  ['from-the-shore', {}],
  ['from-the-lake-a-leg-picked', { view: { view: 'lake', selection: 's5.end.right' } }],
  ['from-the-end-a-brace-picked', { view: { view: 'end', selection: 's5.end' } }],
  [
    'from-above-a-t-on-gravel',
    {
      site: { bottom: 'gravel' },
      dock: { sections: 4, head: { shape: 'tee', sections: 4 } },
      view: { view: 'above' },
    },
  ],
  ['under-water', { view: { view: 'under' } }],
  ['cut-open-at-high-water', { view: { view: 'lake', cut: true, waterLevel: 0.25 } }],
  ['at-dusk', { dock: { head: { shape: 'left', sections: 2 } }, view: { theme: 'dark' } }],
  [
    'at-a-wall-on-rock-with-findings',
    {
      site: { shore: { kind: 'wall', height: 0.5 }, bottom: 'rock' },
      dock: { ramp: false },
      view: { view: 'lake' },
    },
  ],
]

async function picture(wanted: Wanted, options: PageOptions = {}): Promise<PNG> {
  const [width, height] = SIZE
  const { page, close } = await openScenes([{ ...wanted, size: SIZE }], { ...options, width, height })
  // Alive before it is compared: a lost context would be a picture too.
  expect(await page.evaluate(() => scenes.shown[0]!.canvas().getContext('webgl2')!.isContextLost())).toBe(
    false,
  )
  // Findings come after the first picture, and color what they are about.
  await page.evaluate(async () => {
    scenes.judge(0)
    await scenes.settled(0)
    document.querySelector<HTMLElement>('.scene-labels')!.style.display = 'none'
  })
  const shot = PNG.sync.read(await page.screenshot())
  await close()
  const tones = new Set<number>()
  for (let i = 0; i < shot.data.length; i += 4)
    tones.add((shot.data[i]! >> 3) * 32 + (shot.data[i + 2]! >> 3))
  expect(tones.size, 'not flat').toBeGreaterThan(100)
  return shot
}

function differing(a: PNG, b: PNG, diff: PNG): number {
  expect([a.width, a.height]).toEqual([b.width, b.height])
  return pixelmatch(a.data, b.data, diff.data, a.width, a.height, { threshold: 0.1 }) / (a.width * a.height)
}

const read = (file: string): PNG => PNG.sync.read(readFileSync(file))
const write = (file: string, png: PNG): void => writeFileSync(file, PNG.sync.write(png, { deflateLevel: 9 }))

for (const [name, wanted, options] of SCENES)
  it(`looks as kept: ${name}`, async () => {
    const now = await picture(wanted, options)
    const file = join(KEPT, `${name}.png`)
    mkdirSync(SEEN, { recursive: true })
    write(join(SEEN, `${name}.png`), now)
    if (process.env.UPDATE_SCENES) {
      mkdirSync(KEPT, { recursive: true })
      write(file, now)
      return
    }
    expect(existsSync(file), `${file} is there`).toBe(true)
    const diff = new PNG({ width: now.width, height: now.height })
    const share = differing(read(file), now, diff)
    if (share > MOST) write(join(SEEN, `${name}.difference.png`), diff)
    expect(share, `share of differing pixels; see ${SEEN}`).toBeLessThanOrEqual(MOST)
  })

it('a leg 5 cm deeper is more than the difference that is let pass', async () => {
  const file = join(KEPT, 'from-the-end-a-brace-picked.png')
  const [, wanted] = SCENES[2]!
  const soundings = [
    { distance: -3, offset: 0, depth: -0.9 },
    { distance: 0, offset: 0, depth: 0 },
    { distance: 4, offset: 0, depth: 0.5 },
    { distance: 8, offset: 0, depth: 0.9 },
    { distance: 12, offset: 0, depth: 1.45 },
  ]
  const other = await picture({ ...wanted, site: { soundings } })
  expect(differing(read(file), other, new PNG({ width: other.width, height: other.height }))).toBeGreaterThan(
    MOST,
  )
})
