/** A file is written whole or the old one stays, whatever fails, and never over an input. */
import { execFileSync, spawnSync } from 'node:child_process'
import * as node from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Unusable, Unwritable } from '../../src/cli/errors.ts'
import { checkOutput, type Files, write } from '../../src/cli/output.ts'
import { put } from '../../src/cli/sheet.ts'
import { ownFolder } from './support/folder.ts'

const own = ownFolder()
let folder: string
let tried = 0
beforeEach(() => {
  folder = own.at(`try-${++tried}`)
  node.mkdirSync(folder)
})
const at = (name: string): string => join(folder, name)
const text = (path: string): string => node.readFileSync(path, 'utf8')
const bytes = (content: string): Uint8Array => new TextEncoder().encode(content)
const NEW = bytes('new'.repeat(1000))

const failure = (code: string): Error => Object.assign(new Error(code), { code })
/** The file system, but for what is given. */
const but = (changes: Partial<Record<keyof Files, (...args: never[]) => unknown>>): Files =>
  ({ ...node, ...changes }) as unknown as Files

function thrown(act: () => void): Unusable | Unwritable {
  try {
    act()
  } catch (error) {
    if (error instanceof Unusable || error instanceof Unwritable) return error
    throw error
  }
  throw new Error('nothing thrown')
}

/** Half of it is on the disk, then no more. */
const fills = (code: string): Partial<Record<keyof Files, (...args: never[]) => unknown>> => {
  let calls = 0
  return {
    writeSync: (fd: number, from: Uint8Array, start: number, count: number) => {
      if (calls++ > 0) throw failure(code)
      return node.writeSync(fd, from, start, Math.ceil(count / 2))
    },
  }
}
const failing = (step: keyof Files, code: string) => ({
  [step]: () => {
    throw failure(code)
  },
})

describe('whatever fails, the old file stays, nothing is left beside it, and one line says so', () => {
  it.each([
    ['the disk is full', () => fills('ENOSPC'), 'ENOSPC', 'room for it'],
    ['a quota is used up', () => fills('EDQUOT'), 'EDQUOT', 'room for it'],
    ['the disk breaks', () => fills('EIO'), 'EIO', 'a place that can'],
    ['nothing is taken', () => ({ writeSync: () => 0 }), 'EIO', 'a place that can'],
    [
      'the folder is not ours',
      () => failing('openSync', 'EACCES'),
      'EACCES',
      'a place that you may write to',
    ],
    ['all is read-only', () => failing('openSync', 'EROFS'), 'EROFS', 'a place that you may write to'],
    [
      'the file is read-only',
      () => failing('accessSync', 'EACCES'),
      'EACCES',
      'a place that you may write to',
    ],
    [
      'its mode cannot be kept',
      () => failing('fchmodSync', 'EPERM'),
      'EPERM',
      'a place that you may write to',
    ],
    ['it does not reach the disk', () => failing('fsyncSync', 'EIO'), 'EIO', 'a place that can'],
    [
      'closing tells of a fault',
      () => ({
        closeSync: (fd: number) => {
          node.closeSync(fd)
          throw failure('ENOSPC')
        },
      }),
      'ENOSPC',
      'room for it',
    ],
    [
      'the new name is refused',
      () => failing('renameSync', 'EPERM'),
      'EPERM',
      'a place that you may write to',
    ],
  ])('%s', (_, changes, code, expected) => {
    const path = own.file(`${basename(folder)}/dock.pdf`, 'old')
    const error = thrown(() => write(path, NEW, but(changes())))
    expect(error).toBeInstanceOf(Unwritable)
    expect(error.code).toBe(3)
    expect(error.lines).toEqual([
      `${path}: cannot be written (${code}); expected ${expected}; the file that is there is as it was`,
    ])
    expect(node.readdirSync(folder)).toEqual(['dock.pdf'])
    expect(text(path)).toBe('old')
  })

  it('where there was none there is none', () => {
    const error = thrown(() => write(at('dock.pdf'), NEW, but(fills('ENOSPC'))))
    expect(error.lines).toEqual([`${at('dock.pdf')}: cannot be written (ENOSPC); expected room for it`])
    expect(node.readdirSync(folder)).toEqual([])
  })

  it('tells what failed first, though cleaning up fails too', () => {
    const error = thrown(() =>
      write(at('dock.pdf'), NEW, but({ ...fills('ENOSPC'), ...failing('unlinkSync', 'EIO') })),
    )
    expect(error.message).toMatch(/ENOSPC/)
  })

  it('on a disk that is full in truth', ({ skip }) => {
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', folder])
    if (mounted.status !== 0)
      skip('a small disk may not be mounted here; the same is tried above without one')
    try {
      node.writeFileSync(at('dock.pdf'), 'x'.repeat(40_000))
      const error = thrown(() => write(at('dock.pdf'), new Uint8Array(40_000)))
      expect([error.code, error.message]).toEqual([3, expect.stringMatching(/dock\.pdf: .*\(ENOSPC\)/)])
      expect(node.readdirSync(folder)).toEqual(['dock.pdf'])
      expect(text(at('dock.pdf'))).toBe('x'.repeat(40_000))
      expect(thrown(() => write(at('other.pdf'), new Uint8Array(40_000))).code).toBe(3)
      expect(node.readdirSync(folder)).toEqual(['dock.pdf'])
      write(at('other.pdf'), new Uint8Array(10_000))
      expect(node.statSync(at('other.pdf')).size).toBe(10_000)
    } finally {
      execFileSync('umount', [folder])
    }
  })
})

describe('a file that is written', () => {
  it('keeps its mode; a new one has the usual one', () => {
    node.writeFileSync(at('a'), 'old')
    for (const mode of [0o640, 0o600, 0o755, 0o666]) {
      node.chmodSync(at('a'), mode)
      write(at('a'), NEW)
      expect(node.statSync(at('a')).mode & 0o7777).toBe(mode)
    }
    write(at('b'), NEW)
    node.writeFileSync(at('c'), '')
    expect(node.statSync(at('b')).mode).toBe(node.statSync(at('c')).mode)
    expect(text(at('a'))).toBe('new'.repeat(1000))
  })

  it('keeps its owner where that may be set', () => {
    node.writeFileSync(at('a'), 'old')
    const given: unknown[] = []
    write(
      at('a'),
      NEW,
      but({
        statSync: (...args: Parameters<typeof node.statSync>) =>
          Object.assign(node.statSync(...args)!, { uid: 4321, gid: 1234 }),
        fchownSync: (_: number, ...ids: number[]) => {
          given.push(ids)
          throw failure('EPERM')
        },
      }),
    )
    expect(given).toEqual([[4321, 1234]])
    expect(text(at('a'))).toBe('new'.repeat(1000))
  })

  it('is the one that a link points to, there already or not; the link stays', () => {
    node.mkdirSync(at('far'))
    node.writeFileSync(at('far/a'), 'old')
    node.symlinkSync('far/a', at('link'))
    node.symlinkSync('link', at('second'))
    write(at('second'), NEW)
    node.symlinkSync('far/b', at('ahead'))
    write(at('ahead'), NEW)
    expect([text(at('far/a')), text(at('far/b'))]).toEqual(['new'.repeat(1000), 'new'.repeat(1000)])
    expect([node.readlinkSync(at('link')), node.readlinkSync(at('ahead'))]).toEqual(['far/a', 'far/b'])
    expect(node.readdirSync(at('far'))).toEqual(['a', 'b'])
  })

  it('is whole though it is taken in small parts, and not always at once', () => {
    let calls = 0
    write(
      at('a'),
      NEW,
      but({
        writeSync: (fd: number, from: Uint8Array, start: number, count: number) => {
          if (calls++ % 2 === 0) throw failure('EAGAIN')
          return node.writeSync(fd, from, start, Math.min(count, 700))
        },
      }),
    )
    expect(text(at('a'))).toBe('new'.repeat(1000))
  })

  it('may have the longest name that there is', () => {
    const name = `${'a'.repeat(251)}.pdf`
    write(at(name), NEW)
    write(at(name), NEW)
    expect(node.readdirSync(folder)).toEqual([name])
  })

  it('reaches the disk before it has its name, but on a file system that knows no such thing', () => {
    const steps: string[] = []
    const told = but({
      fsyncSync: () => {
        steps.push('disk')
        throw failure('EINVAL')
      },
      renameSync: (from: string, to: string) => {
        steps.push('name')
        node.renameSync(from, to)
      },
    })
    write(at('a'), NEW, told)
    expect(steps).toEqual(['disk', 'name'])
  })
})

describe('what is no regular file is written straight', () => {
  it('a pipe, to whoever reads it, though they come later and read slowly', () => {
    execFileSync('mkfifo', [at('pipe')])
    const into = Buffer.alloc(400_000)
    let [asked, reader, read] = [0, -1, 0]
    const drain = () => {
      read += node.readSync(reader, into, read, into.length - read, null)
    }
    // More than a pipe holds.
    write(
      at('pipe'),
      new Uint8Array(300_000).fill(65),
      but({
        openSync: (path: string, flags: number) => {
          if (++asked === 3) reader = node.openSync(path, node.constants.O_RDONLY | node.constants.O_NONBLOCK)
          return node.openSync(path, flags)
        },
        writeSync: (fd: number, from: Uint8Array, start: number, count: number) => {
          try {
            return node.writeSync(fd, from, start, count)
          } catch (error) {
            drain()
            throw error
          }
        },
      }),
    )
    drain()
    node.closeSync(reader)
    expect(into.toString('latin1', 0, read)).toBe('A'.repeat(300_000))
    expect(node.statSync(at('pipe')).isFIFO()).toBe(true)
    expect(node.readdirSync(folder)).toEqual(['pipe'])
  })

  it('but not for ever where nobody reads it', () => {
    execFileSync('mkfifo', [at('pipe')])
    const start = performance.now()
    const error = thrown(() => write(at('pipe'), NEW))
    expect(performance.now() - start).toBeLessThan(2000)
    expect(error.lines).toEqual([`${at('pipe')}: cannot be written (ENXIO); expected somebody who reads it`])
    expect(error.code).toBe(3)
  })

  it.runIf(node.existsSync('/dev/full'))('a device', () => {
    write('/dev/null', NEW)
    expect(node.statSync('/dev/null').isCharacterDevice()).toBe(true)
    expect(thrown(() => write('/dev/full', NEW)).lines).toEqual([
      '/dev/full: cannot be written (ENOSPC); expected room for it',
    ])
    node.symlinkSync('/dev/full', at('full.pdf'))
    expect(thrown(() => write(at('full.pdf'), NEW)).code).toBe(3)
  })
})

describe('a name that can be no file is an argument to mend', () => {
  const names: [string, () => string, string][] = [
    ['a folder', () => folder, 'EISDIR'],
    ['a folder by its end', () => `${at('dock.pdf')}/`, 'EISDIR'],
    ['in a folder that is not there', () => at('no/such/dock.pdf'), 'ENOENT'],
    ['in a file', () => `${own.file('file', '')}/dock.pdf`, 'ENOTDIR'],
    ['longer than names are', () => at(`${'a'.repeat(300)}.pdf`), 'ENAMETOOLONG'],
    ['none', () => '', 'ENOENT'],
    [
      'a link to itself',
      () => {
        node.symlinkSync('loop.pdf', at('loop.pdf'))
        return at('loop.pdf')
      },
      'ELOOP',
    ],
    [
      'a link to a folder that is not there',
      () => {
        node.symlinkSync('no/such/dock.pdf', at('ahead.pdf'))
        return at('ahead.pdf')
      },
      'ENOENT',
    ],
  ]
  it.each(names)('%s', (_, named, code) => {
    const path = named()
    const line = `${path || '""'}: cannot be written (${code}); expected a place that can`
    for (const act of [() => checkOutput(path, []), () => write(path, NEW)]) {
      const error = thrown(act)
      expect(error).toBeInstanceOf(Unusable)
      expect(error.lines).toEqual([line])
    }
  })
})

describe('an output that is an input is refused', () => {
  const same = (out: string, inputs: string[], files?: Files): string =>
    thrown(() => checkOutput(out, inputs, files)).message

  it('by its name, another path, a symbolic link, a hard link, a link of either', () => {
    const path = own.file(`${basename(folder)}/d.json`, 'old')
    const other = own.file(`${basename(folder)}/shop.json`, 'shop')
    node.symlinkSync('d.json', at('soft'))
    node.linkSync(path, at('hard'))
    node.symlinkSync(dirname(path), at('folder'))
    expect(same(path, [path])).toBe(`${path}: is an input too; expected another file`)
    for (const out of [`${folder}/./d.json`, at('soft'), at('hard'), at('folder/d.json')]) {
      const line = `${out}: is the same file as the input ${path}; expected another file`
      expect(same(out, [other, path])).toBe(line)
      expect(same(path, [out])).toBe(`${path}: is the same file as the input ${out}; expected another file`)
    }
    for (const out of [at('new.json'), other]) checkOutput(out, [path, at('hard')])
  })

  it('in another case, where the file system takes that for the same', () => {
    const path = own.file(`${basename(folder)}/d.json`, 'old')
    const folds = but({
      statSync: (name: string, options: never) =>
        node.statSync(join(folder, basename(name).toLowerCase()), options),
    })
    expect(same(at('D.JSON'), [path], folds)).toMatch(/D\.JSON: is the same file as the input/)
    checkOutput(at('D.JSON'), [path])
  })

  it('but a device or a pipe may be both', () => {
    checkOutput('/dev/null', ['/dev/null'])
    execFileSync('mkfifo', [at('pipe')])
    checkOutput(at('pipe'), [at('pipe')])
  })
})

it.each(['-', '/dev/stdout', '/dev/fd/1'])('no paper goes to a terminal as it is: %s', (file) => {
  const made = { code: 0, bytes: NEW, file, format: 'pdf', err: '' } as const
  expect(thrown(() => put(made, true)).message).toBe(
    'standard output: a terminal; expected a file or a pipe for .pdf',
  )
})

afterEach(() => {
  expect(node.readdirSync(process.cwd()).filter((name) => name.startsWith('.leadline-'))).toEqual([])
})
