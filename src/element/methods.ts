/** What a page's own code asks of the element beside what stands in it: files and pictures. Comes when it is first asked for. */
import { makeFile } from '../documents/files/make-file.ts'
import { FIRST, FORMATS, fileName, MEDIA, whatOf } from '../documents/files/write-file.ts'
import { plainName } from '../platform/file-name.ts'
import { isJudged, type LeadlineState, papersAudience } from '../state/store.ts'
import type { ExportWanted } from './page-types.ts'
import type { Session } from './session.ts'

/** px */
const LARGEST = 4096

/** @throws (rejects with) a `RangeError` for what is not offered. */
export async function exportFile(wanted: ExportWanted, session: Session): Promise<File> {
  const { format, date = today(), by = '' } = wanted
  const { design, units } = session.store.getState()
  if (format === 'design')
    return new File([`${JSON.stringify(design, null, 2)}\n`], `${plainName(design.name)}.leadline.json`, {
      type: 'application/json',
    })
  if (!FORMATS.includes(format))
    throw new RangeError(`format: ${format}; expected ${FORMATS.join(', ')}, design`)
  if (!/^\d{4}-\d\d-\d\d$/.test(date)) throw new RangeError(`date: ${date}; expected as in 2026-05-01`)
  const now = await judged(session)
  const { dock, catalog, language } = now
  const audience = papersAudience(now)
  const known = whatOf(format, audience)
  const what = wanted.what ?? (format === 'csv' || format === 'json' ? 'packing' : FIRST[audience])
  if (known.length > 0 && !known.includes(what))
    throw new RangeError(`what: ${what}; expected ${known.join(', ')}`)
  const [{ addressOf }, { NO_CHOICE, wantedOf }] = await Promise.all([
    import('../documents/phone.tsx'),
    import('../documents/quote-fields.tsx'),
  ])
  const link = addressOf(session.links, now.design)
  const size = wanted.size ?? (units === 'imperial' ? 'letter' : 'a4')
  const bytes = await makeFile(
    format,
    {
      ...{ what, audience, bom: true, dock, design: now.design, catalog },
      model: { base: 'water', lake: 'none' },
      ...(audience === 'shop' && { quote: wantedOf(NO_CHOICE, catalog.services ?? []) }),
      options: { units: now.units, language, size, date, by, ...(link !== null && { link }) },
    },
    () => {},
  )
  return new File([bytes], fileName(dock, format, what), { type: MEDIA[format] })
}

/** The state once its dock is known whole, or will never be. */
const judged = ({ store }: Session): Promise<LeadlineState> =>
  new Promise((done) => {
    const look = (now: LeadlineState): void => {
      if (!isJudged(now)) return
      stop()
      done(now)
    }
    const stop = store.subscribe(look)
    look(store.getState())
  })

/** Today in local time. */
function today(): string {
  const now = new Date()
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** @throws (rejects with) a `RangeError` for a size that is none. */
export async function snapshot(
  session: Session,
  root: ShadowRoot,
  width: number,
  height: number,
): Promise<Blob> {
  for (const side of [width, height])
    if (!(Number.isInteger(side) && side >= 1 && side <= LARGEST))
      throw new RangeError(`${side}; expected whole pixels, 1 to ${LARGEST}`)
  const drawing = root.querySelector<SVGElement>('.stage svg.lake')
  if (!drawing) {
    if (!session.picture.current) throw new Error('nothing is seen of the dock now')
    return session.picture.current.snapshot(width, height)
  }
  return pictureOf(drawing, width, height)
}

const LOOKS = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-linejoin',
  'opacity',
  'display',
] as const

/** A drawing with its looks in it, which else come from sheets that a picture knows nothing of. */
async function pictureOf(drawing: SVGElement, width: number, height: number): Promise<Blob> {
  const copy = drawing.cloneNode(true) as SVGElement
  const made = copy.querySelectorAll<SVGElement>('*')
  drawing.querySelectorAll('*').forEach((one, i) => {
    const style = getComputedStyle(one)
    for (const look of LOOKS) made[i]!.style.setProperty(look, style.getPropertyValue(look))
  })
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('width', String(width))
  copy.setAttribute('height', String(height))
  const text = new XMLSerializer().serializeToString(copy)
  const url = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }))
  try {
    const image = new Image()
    image.src = url
    await image.decode()
    const canvas = document.createElement('canvas')
    Object.assign(canvas, { width, height })
    const context = canvas.getContext('2d')
    if (!context) throw new Error('the browser gives no canvas')
    // The sky behind it is its box's.
    const sky =
      getComputedStyle(drawing.parentElement ?? drawing).backgroundImage.match(/rgba?\([^)]*\)/g) ?? []
    const air = context.createLinearGradient(0, 0, 0, height)
    for (const [i, color] of sky.entries()) air.addColorStop(i / Math.max(1, sky.length - 1), color)
    context.fillStyle = air
    context.fillRect(0, 0, width, height)
    context.drawImage(image, 0, 0, width, height)
    return await new Promise<Blob>((done, failed) =>
      canvas.toBlob((blob) => (blob ? done(blob) : failed(new Error('the browser gives no picture')))),
    )
  } finally {
    URL.revokeObjectURL(url)
  }
}
