/** A shop's logo: read where it can be, said where it cannot, and never what a paper fails by. */
import { zlibSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { pdfOf } from '../../../geometry/export/pdf.ts'
import { svgOfSheets } from '../../../geometry/export/svg.ts'
import { logoMark, logoOf } from '../../../geometry/paper/logo.ts'
import { paperFrom } from '../../../geometry/paper/paper-of.ts'
import { quotePaper } from '../../../geometry/sheets/quote.ts'
import {
  assessKit,
  type Catalog,
  demoCatalog,
  demoDesign,
  deriveKit,
  english,
  fingerprintOf,
  parseCatalog,
  projectOf,
} from '../../../rules/index.ts'
import { paperFonts } from '../../../src/cli/fonts.ts'
import metric from '../../support/metric-shop.json' with { type: 'json' }

const PNG = metric.shop.logo
/** Gray, 1 x 1 (made by a program of the usual kind). */
const JPEG =
  'data:image/jpeg;base64,/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAgGBgcGBQgHBwcJCQgKDBQNDAsLDBkSEw8UHRofHh0aHBwgJC4nICIsIxwcKDcpLDAxNDQ0Hyc5PTgyPC4zNDL/wAALCAABAAEBAREA/8QAHwAAAQUBAQEBAQEAAAAAAAAAAAECAwQFBgcICQoL/8QAtRAAAgEDAwIEAwUFBAQAAAF9AQIDAAQRBRIhMUEGE1FhByJxFDKBkaEII0KxwRVS0fAkM2JyggkKFhcYGRolJicoKSo0NTY3ODk6Q0RFRkdISUpTVFVWV1hZWmNkZWZnaGlqc3R1dnd4eXqDhIWGh4iJipKTlJWWl5iZmqKjpKWmp6ipqrKztLW2t7i5usLDxMXGx8jJytLT1NXW19jZ2uHi4+Tl5ufo6erx8vP09fb3+Pn6/9oACAEBAAA/APn+v//Z'
const withShop = (shop: Catalog['shop']): Catalog => ({ ...demoCatalog, shop })
const read = (logo: string) => logoOf(withShop({ logo }))

const bytesIn = (uri: string): Buffer => Buffer.from(uri.slice(uri.indexOf(',') + 1), 'base64')
const uriOf = (bytes: Uint8Array): string => `data:image/png;base64,${Buffer.from(bytes).toString('base64')}`
const changed = (at: number): string => {
  const bytes = Buffer.from(bytesIn(PNG))
  bytes[at]! ^= 0xff
  return uriOf(bytes)
}

function paperWith(logo: string) {
  const catalog = withShop({ logo })
  const project = projectOf(demoDesign, catalog, assessKit(deriveKit(demoDesign, catalog)))
  return quotePaper(
    paperFrom(project, { ...english('imperial'), size: 'letter', date: '2026-05-01', by: '' }),
  )
}
const pdfLength = (logo: string): number =>
  pdfOf([paperWith(logo)], paperFonts(), { date: '2026-05-01' }).length

describe('a logo', () => {
  it('is read as it is, PNG or JPEG, and keeps its proportions', () => {
    expect(read(PNG)).toMatchObject({ type: 'png', width: 96, height: 36 })
    expect(read(JPEG)).toMatchObject({ type: 'jpeg', width: 1, height: 1 })
    const png = read(PNG)
    if (png === null || typeof png === 'string') throw new Error('not read')
    expect(Buffer.compare(Buffer.from(png.bytes), bytesIn(PNG))).toBe(0)
    const { width, height } = logoMark(png, [46, 17])
    expect([width / height, Math.max(width / 46, height / 17)]).toEqual([96 / 36, 1])
  })

  it('stands on the quote, and in the files that are written of it', () => {
    const images = (logo: string) => paperWith(logo).sheets[0]!.marks.filter(({ kind }) => kind === 'image')
    expect(images(PNG)).toHaveLength(1)
    expect(images(JPEG)).toHaveLength(1)
    expect(svgOfSheets(paperWith(JPEG).sheets)).toContain('data:image/jpeg;base64,/9j/')
    expect(pdfLength(JPEG)).toBeGreaterThan(pdfLength('') + 200)
    expect(pdfLength(PNG)).toBeGreaterThan(pdfLength('') + 200)
  })

  it.each([
    ['no data', 'logo.png'],
    ['another kind', 'data:image/svg+xml;base64,PHN2Zy8+'],
    ['a script', 'data:text/html;base64,PHNjcmlwdD4='],
    ['no image', uriOf(Buffer.from('not an image, but long enough to look like one'))],
    ['one cut off', uriOf(bytesIn(PNG).subarray(0, 200))],
    ['a JPEG cut off', JPEG.slice(0, 300)],
    ['one with a byte changed in its head', changed(18)],
    ['one with a byte changed in its picture', changed(60)],
    ['a JPEG called PNG', JPEG.replace('jpeg', 'png')],
  ])('that is %s is said, and the paper is made without it', (_, logo) => {
    const why = read(logo)
    expect(why).toMatch(/expected a PNG/)
    const paper = paperWith(logo)
    const words = paper.sheets[0]!.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(
      ' ',
    )
    expect(words).toContain("The catalog's logo is not shown")
    expect(paper.sheets[0]!.marks.some(({ kind }) => kind === 'image')).toBe(false)
    expect(pdfLength(logo)).toBeGreaterThan(1000)
  })

  it('of pixels that are not there is not read, though its parts are whole', () => {
    const crcOf = (bytes: Buffer): number => {
      let sum = ~0
      for (const byte of bytes) {
        sum ^= byte
        for (let k = 0; k < 8; k++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1
      }
      return ~sum >>> 0
    }
    const chunk = (name: string, data: Uint8Array): Buffer => {
      const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
      const [long, crc] = [Buffer.alloc(4), Buffer.alloc(4)]
      long.writeUInt32BE(data.length)
      crc.writeUInt32BE(crcOf(body))
      return Buffer.concat([long, body, crc])
    }
    const png = (width: number, rows: Uint8Array): string => {
      const head = Buffer.alloc(13)
      head.writeUInt32BE(width, 0)
      head.writeUInt32BE(2, 4)
      head.set([8, 0, 0, 0, 0], 8)
      return uriOf(
        Buffer.concat([
          bytesIn(PNG).subarray(0, 8),
          chunk('IHDR', head),
          chunk('IDAT', zlibSync(rows)),
          chunk('IEND', new Uint8Array()),
        ]),
      )
    }
    expect(read(png(3, new Uint8Array(8)))).toMatchObject({ width: 3, height: 2 })
    expect(read(png(3, new Uint8Array(7)))).toMatch(/expected a PNG/)
    expect(read(png(3, Uint8Array.of(9, 0, 0, 0, 0, 0, 0, 0)))).toMatch(/expected a PNG/)
    expect(read(png(3000, new Uint8Array(6002)))).toMatch(/at most 2000/)
  })
})

describe('how the papers speak of a shop', () => {
  it('changes no check code; what the shop sells it for does', () => {
    const code = (catalog: Catalog) => fingerprintOf(demoDesign, catalog).all
    const { shop: _, ...without } = demoCatalog
    expect(code(withShop({ name: 'Another', logo: PNG, deposit: 0.9 }))).toBe(code(demoCatalog))
    expect(code(without)).toBe(code(demoCatalog))
    expect(code({ ...demoCatalog, quote: { ...demoCatalog.quote, days: 31 } })).not.toBe(code(demoCatalog))
  })

  it('names only services that the catalog has', () => {
    const parsed = parseCatalog({ ...demoCatalog, shop: { brings: ['delivery', 'by-air'] } })
    expect(parsed.ok).toBe(false)
    expect(!parsed.ok && parsed.issues[0]).toMatchObject({ path: 'shop.brings[1]' })
    expect(parseCatalog(demoCatalog).ok).toBe(true)
  })
})
