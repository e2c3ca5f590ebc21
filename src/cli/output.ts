/** Files are written whole or not at all: to a temporary file beside the old one, which then replaces it. */
import { randomBytes } from 'node:crypto'
import * as node from 'node:fs'
import { dirname, join, resolve, sep } from 'node:path'
import { descriptorOf, pause } from './descriptors.ts'
import { codeOf, Unusable, Unwritable } from './errors.ts'

/** What is asked of the file system. */
export type Files = Pick<
  typeof node,
  | 'accessSync'
  | 'closeSync'
  | 'fchmodSync'
  | 'fchownSync'
  | 'fstatSync'
  | 'fsyncSync'
  | 'openSync'
  | 'readlinkSync'
  | 'realpathSync'
  | 'renameSync'
  | 'statSync'
  | 'unlinkSync'
  | 'writeSync'
>

const { constants } = node

/** A name that can never be a file's is a wrong argument (exit code 2). All else is a failed write (3). */
const NO_FILE = new Set(['EISDIR', 'ELOOP', 'ENAMETOOLONG', 'ENOENT', 'ENOTDIR'])

const EXPECTED: Readonly<Record<string, string>> = {
  EACCES: 'a place that you may write to',
  EDQUOT: 'room for it',
  EFBIG: 'room for it',
  ENOSPC: 'room for it',
  EPERM: 'a place that you may write to',
  ENXIO: 'somebody who reads it',
  EPIPE: 'somebody who reads it to its end',
  EROFS: 'a place that you may write to',
}

const failure = (code: string): Error => Object.assign(new Error(code), { code })

const shown = (file: string): string => (file === '-' ? 'standard output' : file || '""')

/** What is wrong with a name, whatever is there. */
const misnamed = (file: string): string | null =>
  file === '' ? 'ENOENT' : file.endsWith('/') || file.endsWith(sep) ? 'EISDIR' : null

function fault(file: string, error: unknown, kept: boolean): Unusable | Unwritable {
  if (error instanceof Unusable || error instanceof Unwritable) return error
  // Windows' code for a pipe that nobody reads.
  const code = codeOf(error) === 'EOF' ? 'EPIPE' : codeOf(error)
  const line = `${shown(file)}: cannot be written (${code}); expected ${EXPECTED[code] ?? 'a place that can'}${
    kept ? '; the file that is there is as it was' : ''
  }`
  return NO_FILE.has(code) ? new Unusable([line]) : new Unwritable([line])
}

/**
 * Refuses an output that is one of the inputs, by whatever name, and one that cannot be a file, before any work.
 * @throws Unusable
 */
export function checkOutput(file: string, inputs: readonly string[], files: Files = node): void {
  const out = identityOf(file, 1, files)
  const input = out && inputs.find((one) => identityOf(one, 0, files) === out)
  if (input !== undefined && input !== null)
    throw new Unusable([
      `${shown(file)}: is ${input === file ? 'an input too' : `the same file as the input ${input}`}; expected another file`,
    ])
  if (descriptorOf(file, 1) !== null) return
  const code = misnamed(file) ?? (statOf(file, files)?.isDirectory() ? 'EISDIR' : parentFault(file, files))
  if (code !== null) throw fault(file, failure(code), false)
}

function parentFault(file: string, files: Files): string | null {
  const parent = statOf(dirname(targetOf(file, files)), files)
  return parent === null ? 'ENOENT' : parent.isDirectory() ? null : 'ENOTDIR'
}

/** Device and number of a regular file: the same under each of its names, through links, and in whatever case a system takes them. */
function identityOf(file: string, dash: 0 | 1, files: Files): string | null {
  try {
    const held = descriptorOf(file, dash)
    const stat =
      held === null ? files.statSync(file, { bigint: true }) : files.fstatSync(held, { bigint: true })
    return stat.isFile() ? `${stat.dev} ${stat.ino}` : null
  } catch {
    // It does not exist, so it is no input either.
    return null
  }
}

function statOf(file: string, files: Files): node.Stats | null {
  try {
    return files.statSync(file)
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null
    throw fault(file, error, false)
  }
}

/** Where a file is or would be: the end of its links, though nothing is there yet. */
function targetOf(file: string, files: Files): string {
  let at = file
  for (let links = 0; links < 40; links++) {
    try {
      at = resolve(dirname(at), files.readlinkSync(at))
    } catch {
      return at
    }
  }
  throw fault(file, failure('ELOOP'), false)
}

/**
 * Writes a file, its old content staying until all of the new is on the disk. What is no regular file (a device, a pipe) is written
 * straight. The file's mode stays, its owner where that may be set; a link goes on pointing to it.
 * @param file `-` for standard output
 * @throws Unusable where the name can be no file's; Unwritable where writing failed
 */
export function write(file: string, bytes: Uint8Array, files: Files = node): void {
  const held = descriptorOf(file, 1)
  let old: node.Stats | null = null
  try {
    const wrong = held === null ? misnamed(file) : null
    if (wrong !== null) throw failure(wrong)
    old = held === null ? statOf(file, files) : null
    if (old?.isDirectory()) throw failure('EISDIR')
    if (held !== null) writeAll(held, bytes, files)
    else if (old && !old.isFile()) straight(file, bytes, files)
    else beside(old ? files.realpathSync(file) : targetOf(file, files), old, bytes, files)
  } catch (error) {
    throw fault(file, error, old?.isFile() ?? false)
  }
}

function beside(target: string, old: node.Stats | null, bytes: Uint8Array, files: Files): void {
  // Renaming would bypass the permissions of the file itself.
  if (old) files.accessSync(target, constants.W_OK)
  // Short: the file's own name may be as long as names can be.
  const made = join(dirname(target), `.leadline-${randomBytes(6).toString('hex')}.tmp`)
  const fd = files.openSync(made, 'wx', 0o666)
  let open = true
  try {
    writeAll(fd, bytes, files)
    if (old) like(fd, old, files)
    onDisk(fd, files)
    open = false
    files.closeSync(fd)
    files.renameSync(made, target)
  } catch (error) {
    quietly(() => open && files.closeSync(fd))
    quietly(() => files.unlinkSync(made))
    throw error
  }
}

/** The first error is the one that is reported. */
function quietly(act: () => unknown): void {
  try {
    act()
  } catch {}
}

/** Before the rename: else a power cut may leave the new name with nothing in it. Some file systems know no such thing. */
function onDisk(fd: number, files: Files): void {
  try {
    files.fsyncSync(fd)
  } catch (error) {
    if (!['EINVAL', 'ENOSYS', 'ENOTSUP'].includes(codeOf(error))) throw error
  }
}

function like(fd: number, old: node.Stats, files: Files): void {
  const now = files.fstatSync(fd)
  if (now.uid !== old.uid || now.gid !== old.gid)
    // Only an administrator may give a file to somebody else.
    quietly(() => files.fchownSync(fd, old.uid, old.gid))
  // After the owner: changing that may take bits of the mode away.
  files.fchmodSync(fd, old.mode & 0o7777)
}

/** How long a named pipe may have no reader, ms. */
const PATIENCE = 800

function straight(file: string, bytes: Uint8Array, files: Files): void {
  const fd = opened(file, files)
  try {
    writeAll(fd, bytes, files)
  } finally {
    files.closeSync(fd)
  }
}

/** Not for good where nobody reads: with O_NONBLOCK a pipe without a reader is refused (ENXIO), and asked again for a while. */
function opened(file: string, files: Files): number {
  const until = performance.now() + PATIENCE
  for (;;)
    try {
      return files.openSync(
        file,
        constants.O_WRONLY | (constants.O_NONBLOCK ?? 0) | (constants.O_NOCTTY ?? 0),
      )
    } catch (error) {
      if (codeOf(error) !== 'ENXIO' || !files.statSync(file).isFIFO() || performance.now() > until)
        throw error
      pause(10)
    }
}

function writeAll(fd: number, bytes: Uint8Array, files: Files): void {
  for (let at = 0; at < bytes.length; ) {
    let count = 0
    try {
      count = files.writeSync(fd, bytes, at, bytes.length - at)
      if (count === 0) throw failure('EIO')
    } catch (error) {
      // The pipe is full: its reader is slower.
      if (codeOf(error) !== 'EAGAIN') throw error
      pause(2)
    }
    at += count
  }
}
