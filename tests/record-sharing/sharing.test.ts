import { unzipSync, zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { parseRecordText } from '../../rules/record/index.ts'
import { hashOf } from '../../src/record-keeping/photos.ts'
import { codeReader, recordCodes } from '../../src/record-sharing/codes.ts'
import { readRecordFile, recordFile } from '../../src/record-sharing/file.ts'
import { isRecordLink, readRecordLink, recordLink } from '../../src/record-sharing/link.ts'
import { demoRecord, oldDock, withEntry, withNotes } from '../record-keeping/sample-record.ts'

const none = async () => null

it('a link holds a record, and a season of an old dock fits into one', () => {
  const record = withNotes(oldDock(), 20)
  const link = recordLink(record)!
  expect(isRecordLink(link)).toBe(true)
  expect(link).toMatch(/^#leadline-record=[\w-]+$/)
  expect(link.length).toBeLessThan(8000)
  const read = readRecordLink(link)
  expect(read.ok && read.value.record).toEqual(record)
})

it('a record that is too long for a link makes none', () => {
  // Ids and heights that do not repeat: nothing to be packed away.
  let long = oldDock()
  for (let i = 0; i < 60; i++)
    long = withEntry(
      long,
      {
        kind: 'note',
        text: Array.from({ length: 30 }, (_, k) => ((i * 30 + k) ** 3 * 7919).toString(36)).join(' '),
      },
      `n${i}`,
    )
  expect(recordLink(long)).toBe(null)
})

it('a link that was cut, changed or is another one says so', () => {
  const link = recordLink(withNotes(oldDock(), 3))!
  for (const wrong of [
    link.slice(0, -20),
    `${link.slice(0, 60)}A${link.slice(61)}`,
    `${link}x!`,
    '#leadline=abc',
    '',
    '#leadline-record=',
  ])
    expect(readRecordLink(wrong).ok, wrong).toBe(false)
  const cut = readRecordLink(link.slice(0, -20))
  expect(!cut.ok && cut.issues[0]!.message).toContain('damaged or cut short')
})

it('a file without photos is the JSON that the terminal reads', async () => {
  const record = withNotes(demoRecord(), 2)
  const file = await recordFile(record, none)
  expect(file.name).toMatch(/\.record\.json$/)
  const parsed = parseRecordText(await file.text())
  expect(parsed.ok && parsed.value).toEqual(record)
  const read = await readRecordFile(file)
  expect(read.ok && [read.value.record, read.value.photos]).toEqual([record, []])
})

const photo = Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919) >> 3)
const hash = hashOf(photo)
const other = 'f'.repeat(64)

it('a file with photos brings them along, and one that is not here is left out', async () => {
  const mark = { width: 4, height: 3, bytes: photo.length }
  const record = withEntry(
    oldDock(),
    {
      kind: 'note',
      text: 'Bent',
      photos: [
        { hash, ...mark },
        { hash: other, ...mark },
      ],
    },
    'n1',
  )
  const file = await recordFile(record, async (asked) => (asked === hash ? new Blob([photo]) : null))
  expect(file.name).toBe('Quillet-Cove.record.zip')
  const bytes = new Uint8Array(await file.arrayBuffer())
  expect(Object.keys(unzipSync(bytes)).sort()).toEqual([`photos/${hash}.jpg`, 'record.json'])
  const read = await readRecordFile(file)
  expect(read.ok && read.value.record).toEqual(record)
  expect(read.ok && read.value.photos).toEqual([photo])
})

it('a damaged file is told, whatever is damaged in it', async () => {
  const record = oldDock()
  const text = new TextEncoder().encode(JSON.stringify(record))
  const told = async (bytes: Uint8Array<ArrayBuffer>) => (await readRecordFile(new Blob([bytes]))).ok
  const whole = zipSync({ 'record.json': text, [`photos/${hash}.jpg`]: photo }, { level: 0 }).slice()
  expect(await told(whole)).toBe(true)
  expect(await told(whole.slice(0, 500))).toBe(false)
  expect(await told(zipSync({ 'other.json': text }).slice())).toBe(false)
  expect(await told(zipSync({ 'record.json': text.slice(0, 100) }).slice())).toBe(false)
  expect(await told(text.slice(0, 300))).toBe(false)
  expect(await told(new Uint8Array())).toBe(false)
  expect(await told(Uint8Array.of(0x50, 0x4b, 3, 4, 1, 2, 3))).toBe(false)
  // A photo that is not what it is called does not come in; the record does.
  const forged = await readRecordFile(
    new Blob([zipSync({ 'record.json': text, [`photos/${other}.jpg`]: photo }).slice()]),
  )
  expect(forged.ok && forged.value.photos).toEqual([])
})

it('codes bring a record across, from any of them; 200 entries in less than 80', () => {
  const record = withNotes(demoRecord(), 200)
  const codes = recordCodes(record)!
  expect(codes.count).toBeLessThan(80)
  const read = codeReader()
  let last: ReturnType<typeof read> = { state: 'other' }
  // Every third is seen.
  for (let i = 0; i < 1000 && last.state !== 'done'; i += 3) last = read(codes.text(i))
  expect(last.state === 'done' && last.arrived.ok && last.arrived.value.record).toEqual(record)
})

it('an archive whose entries lie over each other, or say that they are small, fills no memory', async () => {
  const record = new TextEncoder().encode(JSON.stringify(oldDock()))
  // Noughts pack to next to nothing: 4 MB each, a hundred of them, in half a megabyte.
  const zeros = new Uint8Array(4_000_000)
  const names = Array.from({ length: 60 }, (_, i) => `photos/${i.toString(16).padStart(64, '0')}.jpg`)
  const bomb = zipSync(
    { ...Object.fromEntries(names.map((name) => [name, zeros] as const)), 'record.json': record },
    { level: 9 },
  )
  expect(bomb.length).toBeLessThan(500_000)
  const before = process.memoryUsage().arrayBuffers
  const read = await readRecordFile(new Blob([bomb.slice()]))
  // With so much else no room was left for the record itself.
  expect(read.ok).toBe(false)
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(200_000_000)
  // A size that is told smaller than it is: what is over it is not unpacked.
  const liar = zipSync({
    'record.json': new TextEncoder().encode(`${JSON.stringify(oldDock())}${' '.repeat(1e6)}`),
  }).slice()
  const view = new DataView(liar.buffer)
  const central = view.getUint32(liar.length - 6, true)
  view.setUint32(central + 24, 20, true)
  view.setUint32(22, 20, true)
  expect((await readRecordFile(new Blob([liar]))).ok).toBe(false)
})
