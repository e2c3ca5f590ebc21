/**
 * Papers as one PDF file (ISO 32000-1): text as text in embedded fonts that hold only the letters used, lines as lines, bookmarks, tagged,
 * with what PDF/A-2b asks for. The same papers, fonts and date give the same bytes.
 */
import { jsPDF } from 'jspdf'
import type {
  CircleMark,
  Ink,
  Mark,
  Paper,
  PathMark,
  Point,
  Sheet,
  Stroke,
  Tag,
  TextMark,
  Weight,
} from '../paper/marks.ts'
import { printable, textWidth } from '../paper/text.ts'
import { srgbProfile, xmpOf } from './pdf-archive.ts'
import { ARTIFACT, type Tagging, tagging, type Writer } from './pdf-tags.ts'

/** TrueType files. */
export interface PaperFonts {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

export interface PdfOptions {
  /** Told in the file as the day that it was made, `YYYY-MM-DD`. */
  readonly date: string
  /** What the papers are of: the dock's name. */
  readonly name?: string
}

/** Points of 1/72 in, to a mm. */
const K = 72 / 25.4
/** Hundredths of a point, 0.004 mm, are finer than any printer; more digits make files larger and slower to make. */
const n = (value: number): string => String(Math.round(value * 100) / 100 || 0)

export function pdfOf(
  papers: readonly Paper[],
  fonts: PaperFonts,
  options: PdfOptions,
): Uint8Array<ArrayBuffer> {
  const sheets = papers.flatMap((paper) => paper.sheets)
  const [first] = sheets
  if (!first) throw new RangeError('no sheet to write')
  const doc = new jsPDF({
    ...formatOf(first),
    unit: 'mm',
    compress: true,
    putOnlyUsedFonts: true,
    floatPrecision: 3,
  })
  const names = addFonts(doc, fonts, sheets)
  const tags = tagging(doc.internal as unknown as Writer)
  describe(doc, papers, options, tags)
  let page = 0
  for (const paper of papers) {
    // A single paper's own name is the file's.
    const parent =
      papers.length > 1 ? doc.outline.add(null, told(paper.title), { pageNumber: page + 1 }) : null
    for (const sheet of paper.sheets) {
      if (page > 0) doc.addPage(formatOf(sheet).format, formatOf(sheet).orientation)
      page++
      if (sheet.bookmark !== null) doc.outline.add(parent, told(sheet.bookmark), { pageNumber: page })
      draw(doc, sheet, names, tags, `${paper.title}, ${sheet.bookmark ?? page}`)
    }
  }
  const bytes = new Uint8Array(doc.output('arraybuffer'))
  // The library writes the version that it is content with; tags and what PDF/A asks for are of this one.
  bytes.set([...VERSION].map((letter) => letter.charCodeAt(0)))
  return identified(bytes)
}

const VERSION = '%PDF-1.7'

const formatOf = (sheet: {
  width: number
  height: number
}): { format: [number, number]; orientation: 'p' | 'l' } => ({
  format: [sheet.width, sheet.height],
  orientation: sheet.width > sheet.height ? 'l' : 'p',
})

function describe(doc: jsPDF, papers: readonly Paper[], { date, name }: PdfOptions, tags: Tagging): void {
  const [first] = papers
  const about = (of: (paper: Paper) => string): string =>
    told([...new Set(papers.map(of))].filter(Boolean).join(' · '))
  const titles = about(({ title }) => title)
  const own = {
    title: name === undefined ? titles : told(papers.length > 1 ? name : `${name}: ${first!.title}`),
    subject: about(({ subject }) => subject),
    author: about(({ author }) => author),
    creator: 'Leadline',
  }
  doc.setProperties(own)
  // The library cannot date past 2037: later years are written as 2037.
  const [year = '', month = '01', day = '01'] = date.split('-')
  const told37 = Number(year) > 2037 ? '2037' : year
  doc.setCreationDate(`D:${told37}${month}${day}120000+00'00'`)
  doc.setFileId(NO_ID)
  doc.viewerPreferences({ DisplayDocTitle: true })
  doc.setDisplayMode('fullpage', 'continuous', papers.length > 1 ? 'UseOutlines' : null)
  const { version } = jsPDF as unknown as { version: string }
  doc.addMetadata(
    xmpOf({ ...own, producer: `jsPDF ${version}`, date: `${told37}-${month}-${day}T12:00:00+00:00` }),
    true,
  )
  catalogued(doc, papers, first!.lang, tags)
}

/** Not among the library's types: what it tells of while it writes. */
interface Internal extends Writer {
  readonly events: {
    subscribe(name: string, call: (told: { objId: number; pageNumber: number }) => void): void
  }
}

/** What the file's catalog and its pages name: the structure, the language, the meaning of colors, what pages are called. */
function catalogued(doc: jsPDF, papers: readonly Paper[], lang: string, tags: Tagging): void {
  const { events, write, newObjectDeferred, newObjectDeferredBegin } = doc.internal as unknown as Internal
  const pages: number[] = []
  let [tree, profile] = [0, 0]
  events.subscribe('putPage', ({ objId, pageNumber }) => {
    pages[pageNumber - 1] = objId
    write(`/StructParents ${pageNumber - 1}`)
    write('/Tabs /S')
  })
  events.subscribe('postPutResources', () => {
    tree = tags.objects(pages, hex)
    profile = newObjectDeferred()
    newObjectDeferredBegin(profile, true)
    const data = srgbProfile()
    write(`<</N 3/Length ${data.length}>>`)
    for (const line of ['stream', data, 'endstream', 'endobj']) write(line)
  })
  events.subscribe('putCatalog', () => {
    write(`/Lang ${hex(lang)}`)
    write('/MarkInfo <</Marked true>>')
    write(`/StructTreeRoot ${tree} 0 R`)
    write(
      `/OutputIntents [<</Type/OutputIntent/S/GTS_PDFA1/OutputConditionIdentifier (sRGB)/Info (sRGB)/DestOutputProfile ${profile} 0 R>>]`,
    )
    let at = 0
    const labels = papers.map(({ title, sheets }) => {
      const label = `${at} <</S/D${papers.length > 1 ? `/P ${hex(`${title} `)}` : ''}>>`
      at += sheets.length
      return label
    })
    write(`/PageLabels <</Nums [${labels.join(' ')}]>>`)
  })
}

/** A text string of the file, UTF-16. */
const hex = (text: string): string =>
  `<FEFF${Array.from({ length: text.length }, (_, i) => text.charCodeAt(i).toString(16).padStart(4, '0'))
    .join('')
    .toUpperCase()}>`

/** Text of the file's own entries. Letters with a byte that a PDF string takes for the end of a line are told by their parts. */
const told = (text: string): string =>
  [...printable(text)]
    .map((letter) => {
      const code = letter.charCodeAt(0)
      const ends = code > 0xff && [0x0a, 0x0d].some((end) => code >> 8 === end || (code & 0xff) === end)
      return ends ? letter.normalize('NFD') : letter
    })
    .join('')

/** Names of the fonts in the file: with the tag of a subset, made of the letters that it holds (ISO 32000-1, 9.6.4). */
function addFonts(doc: jsPDF, fonts: PaperFonts, sheets: Paper['sheets']): Record<Weight, string> {
  const added = (weight: Weight): string => {
    const letters = new Set<string>()
    for (const { marks } of sheets)
      for (const mark of marks)
        if (mark.kind === 'text' && mark.weight === weight)
          for (const letter of printable(mark.text)) letters.add(letter)
    const tag = hashOf(new Uint16Array([...letters].sort().map((letter) => letter.charCodeAt(0))))
    const name = `${tagOf(tag[0]!)}+Roboto-${weight === 'bold' ? 'Bold' : 'Regular'}`
    const file = `${weight}.ttf`
    doc.addFileToVFS(file, binary(fonts[weight]))
    doc.addFont(file, name, 'normal')
    return name
  }
  return { regular: added('regular'), bold: added('bold') }
}

const tagOf = (hash: number): string =>
  Array.from({ length: 6 }, (_, i) => String.fromCharCode(65 + (Math.floor(hash / 26 ** i) % 26))).join('')

function binary(bytes: Uint8Array): string {
  const parts: string[] = []
  for (let i = 0; i < bytes.length; i += 8192) parts.push(String.fromCharCode(...bytes.subarray(i, i + 8192)))
  return parts.join('')
}

/** Writes marks onto the page that was added last. What is set already is not set again. */
function draw(
  doc: jsPDF,
  { marks, height }: Sheet,
  names: Record<Weight, string>,
  tags: Tagging,
  title: string,
): void {
  const tagOf = tagsOf(marks, title)
  tags.page()
  // Not among the library's types: a line of the page's own content.
  const { write } = doc.internal as unknown as { write: (line: string) => void }
  let line = ''
  let inside = ''
  const xy = ([x, y]: readonly [number, number]): string => `${n(x * K)} ${n((height - y) * K)}`
  const paint = (stroke: Stroke | null, fill: Ink | null): void => {
    if (stroke) {
      const dash = stroke.dash?.map((part) => n(part * K)).join(' ') ?? ''
      const next = `${inkOf(stroke.ink)} RG ${n(stroke.width * K)} w [${dash}] 0 d`
      if (next !== line) write(next)
      line = next
    }
    if (fill) {
      const next = `${inkOf(fill)} rg`
      if (next !== inside) write(next)
      inside = next
    }
  }
  write('1 j 0 J')
  for (const mark of marks) {
    if (mark.kind === 'text' && printable(mark.text).trim() === '') continue
    tags.to(tagOf(mark))
    switch (mark.kind) {
      case 'path':
        if (mark.points.length === 0 || !(mark.stroke || mark.fill)) break
        paint(mark.stroke, mark.fill)
        write(pathOf(mark, xy))
        break
      case 'circle':
        if (!(mark.stroke || mark.fill)) break
        paint(mark.stroke, mark.fill)
        write(circleOf(mark, xy))
        break
      case 'text':
        textOf(doc, mark, names)
        inside = ''
        break
      case 'image':
        doc.addImage(
          mark.png,
          mark.type === 'jpeg' ? 'JPEG' : 'PNG',
          ...mark.at,
          mark.width,
          mark.height,
          undefined,
          'FAST',
        )
        break
    }
  }
  tags.done()
}

/** What each mark is part of. A sheet that says nothing of that is a picture, named by its title, with texts on it. */
function tagsOf(marks: readonly Mark[], title: string): (mark: Mark) => Tag {
  const drawn: Tag | null = marks.some(({ tag }) => tag) ? null : { role: 'Figure', alt: title }
  return (mark) => {
    if (mark.tag) return mark.tag.role === 'Artifact' ? ARTIFACT : mark.tag
    if (mark.kind === 'text') return mark.behind ? ARTIFACT : { role: 'P' }
    return drawn ?? (mark.kind === 'image' ? { role: 'Figure', alt: title } : ARTIFACT)
  }
}

/** Thousandths tell all 256 steps of an ink apart. */
const inkOf = (ink: Ink): string =>
  [1, 3, 5]
    .map((i) => String(Math.round((Number.parseInt(ink.slice(i, i + 2), 16) / 255) * 1000) / 1000))
    .join(' ')

type Place = (point: readonly [number, number]) => string

const operatorOf = ({ stroke, fill }: PathMark | CircleMark, closed: boolean): string =>
  stroke ? (fill ? (closed ? 'b' : 'B') : closed ? 's' : 'S') : 'f'

function pathOf(mark: PathMark, xy: Place): string {
  const box = boxOf(mark)
  // Half as long where there are thousands, as in a phone's code.
  if (box) {
    const corners = `${xy(box[0])} ${xy(box[1])}`.split(' ')
    const [x0, y0, x1, y1] = corners.map(Number) as [number, number, number, number]
    return `${x0} ${y0} ${n(x1 - x0)} ${n(y1 - y0)} re ${operatorOf(mark, true)}`
  }
  const lines = mark.points.map((point, i) => `${xy(point)} ${i === 0 ? 'm' : 'l'}`)
  return `${lines.join(' ')} ${operatorOf(mark, mark.closed)}`
}

/** Opposite corners of an upright rectangle that is filled alone; else null. */
function boxOf({ points, closed, stroke }: PathMark): readonly [Point, Point] | null {
  const [a, b, c, d] = points
  if (points.length !== 4 || !closed || stroke || !a || !b || !c || !d) return null
  return a[1] === b[1] && b[0] === c[0] && c[1] === d[1] && d[0] === a[0] ? [a, c] : null
}

/** Of the length of a quarter's handles: the curve is a circle to 0.03 % (common practice, no published source). */
const HANDLE = 0.5523

function circleOf(mark: CircleMark, xy: Place): string {
  const [x, y] = mark.at
  const r = mark.radius
  const at = (a: number, b: number): string => xy([x + a * r, y + b * r])
  const h = HANDLE
  return [
    `${at(1, 0)} m`,
    `${at(1, h)} ${at(h, 1)} ${at(0, 1)} c`,
    `${at(-h, 1)} ${at(-1, h)} ${at(-1, 0)} c`,
    `${at(-1, -h)} ${at(-h, -1)} ${at(0, -1)} c`,
    `${at(h, -1)} ${at(1, -h)} ${at(1, 0)} c`,
    operatorOf(mark, true),
  ].join(' ')
}

function textOf(doc: jsPDF, mark: TextMark, names: Record<Weight, string>): void {
  const text = printable(mark.text)
  if (text.trim() === '') return
  const back =
    mark.anchor === 'start' ? 0 : textWidth(text, mark.size, mark.weight) * (mark.anchor === 'end' ? 1 : 0.5)
  const turn = (mark.angle * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  doc.setFont(names[mark.weight], 'normal')
  doc.setFontSize(Math.round(mark.size * K * 1000) / 1000)
  doc.setTextColor(mark.ink)
  const place: [number, number] = [mark.at[0] - back * cos, mark.at[1] + back * sin]
  doc.text(text, ...place, mark.angle === 0 ? {} : { angle: mark.angle })
}

const NO_ID = '0'.repeat(32)

/** Puts the file's id in: made of all the rest of it. */
function identified(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const id = [...hashOf(bytes)]
    .map((part) => part.toString(16).padStart(8, '0'))
    .join('')
    .toUpperCase()
  const tail = binary(bytes.subarray(-400))
  for (let at = tail.indexOf(NO_ID); at >= 0; at = tail.indexOf(NO_ID, at + 1))
    for (let i = 0; i < id.length; i++) bytes[bytes.length - tail.length + at + i] = id.charCodeAt(i)
  return bytes
}

/** Four times 32 bits that tell contents apart (multiply and rotate, as in hash tables); no secret rests on them. */
function hashOf(values: Uint8Array | Uint16Array): Uint32Array {
  const state = new Uint32Array([0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344])
  for (let i = 0; i < values.length; i++) {
    const k = i & 3
    const mixed = Math.imul(state[k]! ^ values[i]! ^ state[(k + 1) & 3]!, 0x9e3779b1)
    state[k] = (mixed << 13) | (mixed >>> 19)
  }
  for (let i = 0; i < 16; i++) {
    const k = i & 3
    const mixed = Math.imul(state[k]! ^ (state[(k + 3) & 3]! >>> 15), 0x85ebca6b)
    state[k] = mixed ^ (mixed >>> 13)
  }
  return state
}
