/**
 * For the build: leaves the hatch patterns by name out of the DXF writer, which every build of it has otherwise, a quarter of its
 * bytes. The drawing's hatching is lines that it says itself.
 */
import type { Plugin } from 'vite'

const PATTERN =
  /^(?:const \w+ = new HatchPattern\("\w+"\);|\w+\.add\(\{\n\tlineAngle[\s\S]*?^\}\);|PredefinedHatchPatterns\.set\([^\n]*\);)\n/gm

export const withoutPatterns = (code: string): string => code.replace(PATTERN, '')

export const trimDxf: Plugin = {
  name: 'leadline:trim-dxf',
  apply: 'build',
  enforce: 'pre',
  transform: {
    filter: { id: /\/@tarikjabiri\/dxf\/lib\/index\.mjs$/ },
    handler: (code) => ({ code: withoutPatterns(code), map: null }),
  },
}
