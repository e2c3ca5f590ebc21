/** A file's whole text, whatever the name turns out to be: within a size and a time, or one line that says why not. */
import { closeSync, constants, fstatSync, openSync, readSync, writeSync } from 'node:fs'
import { isatty } from 'node:tty'
import { descriptorOf, pause } from './descriptors.ts'
import { codeOf, Unusable } from './errors.ts'
import { lines } from './lines.ts'

/** Larger files are no design, catalog or list. */
const MOST_BYTES = 8 * 1024 * 1024

/** For a named pipe or a device to give all it has, ms: there nobody may ever come. */
const PATIENCE = 800

/** Until it is said that standard input is waited for, ms. Whoever is at its other end may take longer. */
const SILENCE = 1500

/** None of them on every system. A named pipe opens at once, whether somebody writes to it or not. */
const READ = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0) | (constants.O_NOCTTY ?? 0)

const wrong = (file: string, received: string, expected: string): Unusable =>
  new Unusable([`${file || '""'}: ${received}; expected ${expected}`])

/** @throws Unusable */
export function readText(file: string): string {
  const bytes = readWhole(file)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw wrong(file, 'not UTF-8 text', 'a JSON file in UTF-8')
  }
}

function readWhole(file: string): Uint8Array {
  const held = descriptorOf(file, 0)
  let opened: number | null = null
  try {
    opened = held === null ? openSync(file, READ) : again(held)
    const from = opened ?? held!
    const stat = fstatSync(from)
    if (stat.isDirectory()) throw wrong(file, 'a folder', 'a JSON file')
    if (stat.isFile() && stat.size > MOST_BYTES)
      throw wrong(file, `${stat.size} bytes`, `at most ${MOST_BYTES}`)
    const typed = isatty(from)
    if (typed) say(`${file}: reads what is typed; the end is Ctrl-D`)
    return gather(file, from, {
      hurried: held === null && !stat.isFile() && !typed,
      // A pipe that nobody has opened for writing yet is at its end, as one that was written to is.
      mayBegin: held === null && stat.isFIFO(),
    })
  } catch (error) {
    if (error instanceof Unusable) throw error
    const code = codeOf(error)
    if (code === 'ENXIO') throw wrong(file, 'a socket or a device that is not there', 'a JSON file')
    throw wrong(file, `cannot be read (${code})`, 'a JSON file')
  } finally {
    if (opened !== null) closeSync(opened)
  }
}

/** A held pipe opened anew, so that waiting for it can be told of; null where it is none, or that does not go. */
function again(held: number): number | null {
  if (!fstatSync(held).isFIFO()) return null
  try {
    return openSync(`/dev/fd/${held}`, READ)
  } catch {
    return null
  }
}

function gather(
  file: string,
  from: number,
  { hurried, mayBegin }: { hurried: boolean; mayBegin: boolean },
): Uint8Array {
  const begun = performance.now()
  const chunks: Uint8Array[] = []
  const chunk = Buffer.allocUnsafe(1 << 16)
  let total = 0
  let told = false
  for (;;) {
    const count = readSome(from, chunk)
    if (count === 0 && !(mayBegin && total === 0)) return Buffer.concat(chunks)
    const waited = performance.now() - begun
    if (count !== null && count > 0) {
      total += count
      if (total > MOST_BYTES) throw wrong(file, `more than ${MOST_BYTES} bytes`, 'no more')
      chunks.push(Uint8Array.prototype.slice.call(chunk, 0, count))
    } else pause(5)
    if (hurried && waited > PATIENCE)
      throw wrong(
        file,
        total > 0 ? `no end of it within ${PATIENCE} ms` : `nothing came within ${PATIENCE} ms`,
        'a whole JSON file (what takes longer: through standard input)',
      )
    if (!hurried && total === 0 && !told && waited > SILENCE) {
      told = true
      say(`${file}: nothing comes yet; waiting`)
    }
  }
}

/** How many bytes came; 0 at the end, null where there are none for now. */
function readSome(from: number, into: Uint8Array): number | null {
  try {
    return readSync(from, into, 0, into.length, null)
  } catch (error) {
    if (codeOf(error) === 'EAGAIN') return null
    // Windows' word for the end of a pipe.
    if (codeOf(error) === 'EOF') return 0
    throw error
  }
}

/** At once, while the command is still waiting. */
function say(text: string): void {
  try {
    writeSync(2, lines([text]))
  } catch {
    // Nobody to tell.
  }
}
