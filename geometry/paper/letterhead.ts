/** Whose paper it is, over a paper for customers: the shop's name and logo at the left, where it is to be found at the right. */
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { moved, paragraph, textLine } from './blocks.ts'
import { type Block, block, together } from './flow.ts'
import { logoMark, logoOf } from './logo.ts'
import type { PaperOf } from './paper-of.ts'
import { GRAY, SIZE } from './style.ts'

/** Of the logo, mm. */
const LARGEST = [46, 17] as const

/** @param width mm */
export function letterhead({ catalog, options }: PaperOf, width: number): Block[] {
  const t = wordsOf(PAPERS, options)
  const { shop } = catalog
  const logo = logoOf(catalog)
  const image = logo !== null && typeof logo !== 'string' ? logoMark(logo, LARGEST) : null
  const inset = image ? image.width + 4 : 0
  const half = width / 2
  const name = together(
    paragraph(shop?.name ?? catalog.name, half - inset, { size: SIZE.heading, weight: 'bold', before: 0 }),
  )
  const found = [
    ...(shop?.address ?? []),
    ...(shop?.phone ? [t('quote-phone', { phone: shop.phone })] : []),
    shop?.mail,
    shop?.web,
  ].filter((one) => one !== undefined && one !== '')
  const where = together(
    found.map((one) => textLine(one!, half - 6, { size: SIZE.small, ink: GRAY, anchor: 'end' })),
  )
  const height = Math.max(name.height, where.height, image?.height ?? 0)
  return [
    block(height, (x, y) => [
      ...(image ? moved([image], x, y + (height - image.height) / 2) : []),
      ...name.marks(x + inset, y + (image ? (height - name.height) / 2 : 0)),
      ...where.marks(x + width - (half - 6), y),
    ]),
    ...(typeof logo === 'string'
      ? paragraph(t('quote-logo', { why: logo }), width, { size: SIZE.tiny, ink: GRAY, before: 0.8 })
      : []),
    block(3, () => []),
  ]
}
