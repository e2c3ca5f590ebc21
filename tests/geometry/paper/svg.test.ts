/** SVG files: true size, text as text, nothing that a text says becomes markup. */
import { describe, expect, it } from 'vitest'
import { base64, svgOf } from '../../../geometry/export/svg.ts'
import type { Mark, Sheet } from '../../../geometry/paper/marks.ts'

const sheet = (...marks: Mark[]): Sheet => ({ width: 215.9, height: 279.4, marks, bookmark: 'Plan & legs' })
const text = (over: object): Mark => ({
  kind: 'text',
  at: [10, 20],
  text: 'Set height',
  size: 4,
  weight: 'regular',
  anchor: 'start',
  angle: 0,
  ink: '#000000',
  ...over,
})

describe('an SVG file', () => {
  it('has the true size of the sheet in mm, and its name', () => {
    const svg = svgOf(sheet(), { lang: 'en-US' })
    expect(svg).toContain('width="215.9mm" height="279.4mm" viewBox="0 0 215.9 279.4" xml:lang="en-US"')
    expect(svg).toContain('<title>Plan &amp; legs</title>')
  })

  it('keeps text as text, escaped, turned and as wide as it was measured', () => {
    const svg = svgOf(sheet(text({ text: '<b>"A" & B\'s</b>', anchor: 'middle', angle: 90, weight: 'bold' })))
    expect(svg).toContain('&lt;b&gt;&quot;A&quot; &amp; B&#39;s&lt;/b&gt;</text>')
    expect(svg).toMatch(
      /font-weight="700" text-anchor="middle" .*transform="rotate\(-90 10 20\)" textLength="[\d.]+"/,
    )
    expect(svg).not.toContain('<b>')
  })

  it('draws lines, dashes, fills and circles', () => {
    const stroke = { width: 0.25, ink: '#123456', dash: [2, 1] } as const
    const svg = svgOf(
      sheet(
        {
          kind: 'path',
          points: [
            [0, 0],
            [10.00049, 5],
          ],
          closed: false,
          stroke,
          fill: null,
        },
        { kind: 'circle', at: [5, 5], radius: 2, stroke: null, fill: '#ff0000' },
      ),
    )
    expect(svg).toContain(
      '<path d="M0 0L10 5" fill="none" stroke="#123456" stroke-width="0.25" stroke-dasharray="2 1"/>',
    )
    expect(svg).toContain('<circle cx="5" cy="5" r="2" fill="#ff0000"/>')
  })

  it.each([0, 1, 2, 3, 4, 100])('writes %i bytes of a picture as others do', (length) => {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 37 + 200) & 255)
    expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'))
  })
})
