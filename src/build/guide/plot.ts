/** A plot as SVG, with words and no script: lines over one axis, limits across them. */

export interface Line {
  readonly name: string
  readonly color: string
  readonly dash?: string
  readonly points: readonly (readonly [number, number])[]
  /** Where its name stands: at this point of it, and how far above. */
  readonly at: number
  readonly up: number
}

export interface Plot {
  readonly title: string
  readonly x: { readonly name: string; readonly from: number; readonly to: number; readonly step: number }
  readonly y: { readonly name: string; readonly to: number; readonly step: number }
  readonly lines: readonly Line[]
  readonly limits: readonly { readonly y: number; readonly name: string }[]
  readonly marks: readonly { readonly x: number; readonly name: string }[]
}

const WIDE = 720
const HIGH = 420
const BOX = { left: 64, right: 16, top: 40, bottom: 52 }

export function svg({ title, x, y, lines, limits, marks }: Plot): string {
  const px = (v: number): string =>
    (BOX.left + ((v - x.from) / (x.to - x.from)) * (WIDE - BOX.left - BOX.right)).toFixed(1)
  const py = (v: number): string =>
    (HIGH - BOX.bottom - (v / y.to) * (HIGH - BOX.top - BOX.bottom)).toFixed(1)
  const out: string[] = []
  const text = (at: string, tall: string, words: string, more = ''): number =>
    out.push(`<text x="${at}" y="${tall}" ${more}>${words}</text>`)
  for (let v = x.from; v <= x.to + 1e-9; v += x.step) {
    out.push(`<line x1="${px(v)}" y1="${py(0)}" x2="${px(v)}" y2="${py(y.to)}" stroke="#dde3e2"/>`)
    text(px(v), String(HIGH - BOX.bottom + 18), v.toFixed(1), 'text-anchor="middle"')
  }
  for (let v = 0; v <= y.to + 1e-9; v += y.step) {
    out.push(`<line x1="${px(x.from)}" y1="${py(v)}" x2="${px(x.to)}" y2="${py(v)}" stroke="#dde3e2"/>`)
    text(String(BOX.left - 8), String(Number(py(v)) + 4), String(v), 'text-anchor="end"')
  }
  for (const limit of limits) {
    out.push(
      `<line x1="${px(x.from)}" y1="${py(limit.y)}" x2="${px(x.to)}" y2="${py(limit.y)}" stroke="#8a5a00" stroke-dasharray="2 4"/>`,
    )
    text(String(Number(px(x.from)) + 6), String(Number(py(limit.y)) - 5), limit.name, 'fill="#8a5a00"')
  }
  for (const mark of marks) {
    out.push(
      `<line x1="${px(mark.x)}" y1="${py(0)}" x2="${px(mark.x)}" y2="${py(y.to)}" stroke="#555" stroke-dasharray="6 3"/>`,
    )
    text(String(Number(px(mark.x)) + 5), String(BOX.top + 14), mark.name, 'fill="#333"')
  }
  for (const line of lines) {
    const d = line.points
      .filter(([, v]) => v <= y.to)
      .map(([u, v], i) => `${i === 0 ? 'M' : 'L'}${px(u)} ${py(v)}`)
      .join(' ')
    const dash = line.dash ? ` stroke-dasharray="${line.dash}"` : ''
    out.push(`<path d="${d}" fill="none" stroke="${line.color}" stroke-width="2.2"${dash}/>`)
    const [u, v] = line.points[line.at]!
    text(
      px(u),
      String(Number(py(v)) - line.up),
      line.name,
      `fill="${line.color}" font-weight="600" text-anchor="middle"`,
    )
  }
  text(String(WIDE / 2), '22', title, 'text-anchor="middle" font-weight="600"')
  text(String(WIDE / 2), String(HIGH - 12), x.name, 'text-anchor="middle"')
  out.push(`<text transform="rotate(-90)" x="${-HIGH / 2}" y="16" text-anchor="middle">${y.name}</text>`)
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDE} ${HIGH}" font-family="system-ui, sans-serif" font-size="13" role="img" aria-label="${title}"><rect width="${WIDE}" height="${HIGH}" fill="#fff"/>${out.join('\n')}</svg>\n`
}
