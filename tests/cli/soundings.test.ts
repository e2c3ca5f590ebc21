/** `leadline soundings`: tables in, what a design has out; and back. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { demoDesign, parseDesign } from '../../rules/index.ts'
import { parseArguments } from '../../src/cli/args.ts'
import { Unusable } from '../../src/cli/errors.ts'
import { soundings } from '../../src/cli/soundings.ts'

const folder = mkdtempSync(join(tmpdir(), 'leadline-soundings-'))
afterAll(() => rmSync(folder, { recursive: true }))
const file = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
const run = (...args: string[]) => soundings(parseArguments(['soundings', ...args]))
const refused = async (...args: string[]): Promise<readonly string[]> => {
  try {
    await run(...args)
  } catch (error) {
    if (error instanceof Unusable) return error.lines
    throw error
  }
  throw new Error('not refused')
}

it('gives soundings as a design takes them, and says how it read and what it left out', async () => {
  const path = file('a.csv', 'dist ft,elev ft\n0,0\n10,-2\n20,deep\n30,-5\n')
  const { code, out, err } = await run(path)
  const got = JSON.parse(out)
  expect(code).toBe(0)
  expect(got.map((s: { distance: number; depth: number }) => [s.distance, s.depth])).toEqual([
    [0, 0],
    [3.048, 0.6096],
    [9.144, 1.524],
  ])
  expect(parseDesign({ ...demoDesign, site: { ...demoDesign.site, soundings: got } }).ok).toBe(true)
  expect(err.split('\n')).toEqual([
    `${path}: read as text parted by comma; columns 1 distance, 2 depth; distances in ft; depths in ft, positive up`,
    `${path}: Line 4: “deep” in Column 2, elev ft; expected a length like 7' 2", 86 in or 7.2 ft`,
    '',
  ])
  expect(JSON.parse((await run(path, '--down')).out)[1].depth).toBe(-0.6096)
  expect(JSON.parse((await run(file('b.csv', '0;0\n10;1'), '--units', 'metric')).out)[1].distance).toBe(10)
})

it('takes those of a design to CSV and GeoJSON and back', async () => {
  const path = file('d.json', JSON.stringify(demoDesign))
  const csv = file('d.csv', (await run(path, '--csv')).out)
  const plain = demoDesign.site.soundings.map(({ distance, offset, depth }) => ({ distance, offset, depth }))
  expect(JSON.parse((await run(csv)).out)).toEqual(plain)
  const place = '46.5,-88.4,210'
  const json = file('d.geojson', (await run(path, '--geojson', '--place', place)).out)
  expect(JSON.parse((await run(json)).out)).toEqual(plain)
  expect(await refused(path, '--geojson')).toEqual([
    `${path}: lies nowhere on earth; expected --place LATITUDE,LONGITUDE,BEARING`,
  ])
})

it('refuses what it cannot use, with the place', async () => {
  expect(await refused(file('c.txt', '1\n2\n'))).toEqual([
    expect.stringMatching(/c\.txt: line 1: one column; expected how far out and how deep/),
  ])
  expect(await refused(file('g.gpx', '<gpx><wpt>'))).toEqual([
    expect.stringMatching(/no GPX; expected a whole/),
  ])
  expect(await refused(file('b.csv', '0;0\n10;1'), '--place', '100,2')).toEqual([
    '--place: "100,2"; expected latitude, longitude and compass bearing in degrees, like 46.5,-88.4,210',
  ])
  expect(await refused(file('b.csv', '0;0\n10;1'), '--csv', '--geojson')).toEqual([
    '--csv: given with --geojson; expected one of the two',
  ])
})
