/** A page with nothing on it but what keeps and shares records, for the tests. */
import { encode } from 'uqr'
import { beginOldDock, mergeRecords, type Said, type SeasonRecord } from '../../rules/record/index.ts'
import { openRecords, type RecordKeeper } from '../../src/record-keeping/index.ts'
import {
  codeReader,
  codesInPicture,
  keepArrived,
  readRecordFile,
  recordCodes,
  recordFile,
  watchCamera,
} from '../../src/record-sharing/index.ts'

const begin = (id: string, device: string): SeasonRecord =>
  beginOldDock({ pairs: 5, deckHeight: 0.4 }, { id, device, at: new Date().toISOString(), name: 'Old dock' })

/** The record of the tests, open. */
async function openOne(): Promise<RecordKeeper> {
  const records = await openRecords('test')
  const kept = await records.open('one')
  if (kept) return kept
  const taken = await records.take(begin('one', records.device))
  if (!taken.ok) throw new Error('not taken')
  return taken.value
}

const set = (leg: string, height: number): Said => ({
  ...{ kind: 'set', leg, stock: null, height, level: null, how: 'measured' },
})

/** Draws a square code, as a screen shows it. */
function drawCode(canvas: HTMLCanvasElement, text: string): void {
  const { data, size } = encode(text, { ecc: 'L', border: 4 })
  const unit = 5
  canvas.width = canvas.height = size * unit
  const context = canvas.getContext('2d')!
  data.forEach((row, y) => {
    row.forEach((dark, x) => {
      context.fillStyle = dark ? '#000' : '#fff'
      context.fillRect(x * unit, y * unit, unit, unit)
    })
  })
}

/** As a camera takes it: large, and with no two points alike. */
async function takePicture(width: number, height: number, seed: number): Promise<Blob> {
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  const context = canvas.getContext('2d')!
  for (let i = 0; i < 400; i++) {
    context.fillStyle = `hsl(${(i * seed * 37) % 360} 60% ${20 + ((i * 7) % 60)}%)`
    context.fillRect((i * 613 * seed) % width, (i * 389) % height, width / 9, height / 7)
  }
  return new Promise((done) => canvas.toBlob((blob) => done(blob!), 'image/jpeg', 0.9))
}

const page = {
  ...{ openRecords, openOne, begin, set, mergeRecords },
  ...{ recordCodes, codeReader, codesInPicture, watchCamera, recordFile, readRecordFile, keepArrived },
  ...{ drawCode, takePicture },
}
export type RecordPage = typeof page
Object.assign(globalThis, { keeping: page })
