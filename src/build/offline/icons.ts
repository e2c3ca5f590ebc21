/** For the build: the icons of the demo site that phones ask for as pictures of points, drawn from its SVG files. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Resvg } from '@resvg/resvg-js'

/** File, what it is drawn from, its width in px. */
const ICONS = [
  ['icon-180.png', 'icon-full.svg', 180],
  ['icon-192.png', 'icon.svg', 192],
  ['icon-512.png', 'icon.svg', 512],
  ['icon-full-512.png', 'icon-full.svg', 512],
] as const

/** @param folder with the SVG files */
export const icons = (folder: string): readonly (readonly [name: string, png: Buffer])[] =>
  ICONS.map(([name, from, width]) => {
    const svg = readFileSync(join(folder, from), 'utf8')
    return [name, new Resvg(svg, { fitTo: { mode: 'width', value: width } }).render().asPng()]
  })
