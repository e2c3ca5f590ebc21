/** A sheet as an SVG 1.1 file: true millimeters, text as text. */
import type { Ink, Mark, Sheet, Stroke, TextMark } from '../paper/marks.ts'
import { printable, textWidth } from '../paper/text.ts'

/** Thousandths of a mm are finer than any printer. */
const n = (value: number): string => String(Math.round(value * 1000) / 1000 || 0)

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}
const escapeXml = (text: string): string => text.replace(/[&<>"']/g, (letter) => ENTITIES[letter]!)

function paint(stroke: Stroke | null, fill: Ink | null): string {
  const inside = ` fill="${fill ?? 'none'}"`
  if (!stroke) return inside
  const dash = stroke.dash ? ` stroke-dasharray="${stroke.dash.map(n).join(' ')}"` : ''
  return `${inside} stroke="${stroke.ink}" stroke-width="${n(stroke.width)}"${dash}`
}

function textOf(mark: TextMark): string {
  const text = printable(mark.text)
  if (text.trim() === '') return ''
  const [x, y] = mark.at.map(n)
  const turn = mark.angle === 0 ? '' : ` transform="rotate(${n(-mark.angle)} ${x} ${y})"`
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`
  const weight = mark.weight === 'bold' ? ' font-weight="700"' : ''
  // As wide as it was measured, whatever font the reader has.
  const width = n(textWidth(text, mark.size, mark.weight))
  return `<text x="${x}" y="${y}" font-size="${n(mark.size)}"${weight}${anchor} fill="${mark.ink}"${turn} textLength="${width}" lengthAdjust="spacingAndGlyphs">${escapeXml(text)}</text>`
}

function markOf(mark: Mark): string {
  switch (mark.kind) {
    case 'path': {
      if (mark.points.length === 0) return ''
      const d = mark.points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join('')
      return `<path d="${d}${mark.closed ? 'Z' : ''}"${paint(mark.stroke, mark.fill)}/>`
    }
    case 'circle':
      return `<circle cx="${n(mark.at[0])}" cy="${n(mark.at[1])}" r="${n(mark.radius)}"${paint(mark.stroke, mark.fill)}/>`
    case 'text':
      return textOf(mark)
    case 'image':
      return `<image x="${n(mark.at[0])}" y="${n(mark.at[1])}" width="${n(mark.width)}" height="${n(mark.height)}" preserveAspectRatio="none" xlink:href="data:image/${mark.type ?? 'png'};base64,${base64(mark.png)}"/>`
  }
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** RFC 4648, 4. Written out: Node and a browser have no call for it in common that takes bytes. */
export function base64(bytes: Uint8Array): string {
  const out: string[] = []
  for (let i = 0; i < bytes.length; i += 3) {
    const group = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0)
    const letters = [18, 12, 6, 0].map((shift) => DIGITS[(group >> shift) & 63]!)
    out.push(
      letters
        .slice(0, Math.min(4, bytes.length - i + 1))
        .join('')
        .padEnd(4, '='),
    )
  }
  return out.join('')
}

/** `title` is said to who cannot see it, and by browsers; `lang` is BCP 47. */
export function svgOf(sheet: Sheet, about: { readonly title?: string; readonly lang?: string } = {}): string {
  const [width, height] = [n(sheet.width), n(sheet.height)]
  const title = about.title ?? sheet.bookmark
  const lines = sheet.marks.map(markOf).filter(Boolean)
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"${about.lang ? ` xml:lang="${escapeXml(about.lang)}"` : ''} font-family="Roboto, Arial, Helvetica, sans-serif" stroke-linecap="butt" stroke-linejoin="round">`,
    ...(title ? [`<title>${escapeXml(printable(title))}</title>`] : []),
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...lines,
    '</svg>',
    '',
  ].join('\n')
}

/** Sheets one under the other in one file; a single one as it is. */
export function svgOfSheets(
  sheets: readonly Sheet[],
  about: { readonly title?: string; readonly lang?: string } = {},
): string {
  if (sheets.length === 1) return svgOf(sheets[0]!, about)
  const width = Math.max(0, ...sheets.map((sheet) => sheet.width))
  const height = sheets.reduce((sum, sheet) => sum + sheet.height, 0)
  let y = 0
  const inner = sheets.map((sheet) => {
    // Within the file a unit is a millimeter already.
    const own = svgOf(sheet).replace(
      /^<svg ([^>]*?)width="([\d.]+)mm" height="([\d.]+)mm"/,
      `<svg x="0" y="${n(y)}" $1width="$2" height="$3"`,
    )
    y += sheet.height
    return own.trimEnd()
  })
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" viewBox="0 0 ${n(width)} ${n(height)}"${about.lang ? ` xml:lang="${escapeXml(about.lang)}"` : ''}>`,
    ...(about.title ? [`<title>${escapeXml(printable(about.title))}</title>`] : []),
    ...inner,
    '</svg>',
    '',
  ].join('\n')
}
