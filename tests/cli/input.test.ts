/** Whatever a name turns out to be, reading it ends: with the text, or with one line, in time. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { existsSync, mkdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { afterEach, describe, expect, it } from 'vitest'
import { demoDesign } from '../../rules/index.ts'
import { Unusable } from '../../src/cli/files.ts'
import { readText } from '../../src/cli/input.ts'
import { run } from '../../src/cli/run.ts'
import { ownFolder } from './support/folder.ts'

const { at, file } = ownFolder()
const TEXT = JSON.stringify(demoDesign)

let pipes = 0
const pipe = (): string => {
  const path = at(`pipe-${++pipes}`)
  execFileSync('mkfifo', [path])
  return path
}
const begun: ChildProcess[] = []
/** Begun, and about to open its pipe: what is measured is not how busy the machine is. */
async function shell(script: string): Promise<void> {
  const ready = at(`ready-${begun.length}`)
  begun.push(spawn('sh', ['-c', `exec 2>/dev/null; touch ${ready}; ${script}`], { stdio: 'ignore' }))
  while (!existsSync(ready)) await new Promise((done) => setTimeout(done, 10))
  rmSync(ready)
}
afterEach(() => {
  for (const child of begun.splice(0)) child.kill()
})

/** What was said instead of a text, and that it was said in time. */
function refusal(path: string): string {
  const start = performance.now()
  try {
    readText(path)
  } catch (error) {
    expect(performance.now() - start).toBeLessThan(2000)
    expect(error).toBeInstanceOf(Unusable)
    expect((error as Unusable).lines).toHaveLength(1)
    return (error as Unusable).message
  }
  throw new Error('read')
}

describe('is refused in time:', () => {
  it.each(['/dev/zero', '/dev/urandom', '/dev/full'])('%s', (path) => {
    expect(refusal(path)).toBe(`${path}: more than 8388608 bytes; expected no more`)
  })

  it('a named pipe that nobody writes to', () => {
    const path = pipe()
    expect(refusal(path)).toMatch(
      new RegExp(`^${path}: nothing came within 800 ms; expected a whole JSON file`),
    )
  })

  it('a named pipe that is held open and never written to', async () => {
    const path = pipe()
    await shell(`exec 3> ${path}; sleep 9`)
    expect(refusal(path)).toMatch(/nothing came within/)
  })

  it('a named pipe that never ends: fast, slow, or after a whole file', async () => {
    const [fast, slow, held] = [pipe(), pipe(), pipe()]
    await shell(`exec yes > ${fast}`)
    expect(refusal(fast)).toMatch(/more than 8388608 bytes/)
    await shell(`exec 3> ${slow}; while printf ' ' >&3; do sleep 0.1; done`)
    expect(refusal(slow)).toMatch(/no end of it within 800 ms/)
    await shell(`exec 3> ${held}; cat ${file('d.json', TEXT)} >&3; sleep 9`)
    expect(refusal(held)).toMatch(/no end of it within 800 ms/)
  })

  it('a folder', () => {
    mkdirSync(at('folder'))
    expect(refusal(at('folder'))).toBe(`${at('folder')}: a folder; expected a JSON file`)
  })

  it('a socket', async () => {
    const server = createServer().listen(at('socket'))
    await new Promise((done) => server.once('listening', done))
    expect(refusal(at('socket'))).toMatch(/: a socket or a device that is not there; expected a JSON file$/)
    server.close()
  })

  it('10 GB of nothing', () => {
    writeFileSync(at('sparse'), '')
    truncateSync(at('sparse'), 10 * 2 ** 30)
    expect(refusal(at('sparse'))).toBe(`${at('sparse')}: 10737418240 bytes; expected at most 8388608`)
    truncateSync(at('sparse'), 0)
  })

  it.each([
    ['Latin-1', Buffer.from('{"name": "M\u00fcller"}', 'latin1')],
    ['UTF-16', Buffer.from('\ufeff{}', 'utf16le')],
  ])('%s', (_, bytes) => {
    writeFileSync(at('coded.json'), bytes)
    expect(refusal(at('coded.json'))).toMatch(/: not UTF-8 text; expected a JSON file in UTF-8$/)
  })
})

describe('is read:', () => {
  it('a file, with a byte order mark or without', () => {
    expect(readText(file('plain.json', TEXT))).toBe(TEXT)
    expect(readText(file('marked.json', `\ufeff${TEXT}`))).toBe(TEXT)
  })

  it.runIf(existsSync('/proc/self/status'))('a file whose size is not told before', () => {
    expect(readText('/proc/self/status')).toMatch(/^Name:/)
  })

  it('a file of exactly the most bytes, and not of one more', () => {
    expect(readText(file('most.json', 'x'.repeat(8388608)))).toHaveLength(8388608)
    expect(refusal(file('more.json', 'x'.repeat(8388609)))).toMatch(
      /8388609 bytes; expected at most 8388608$/,
    )
  })

  it('a named pipe whose writer comes later, and in parts', async () => {
    const path = pipe()
    await shell(`sleep 0.2; cat ${file('d.json', TEXT)} > ${path}`)
    expect(readText(path)).toBe(TEXT)
    const parts = pipe()
    await shell(`exec 3> ${parts}; printf '{"a":' >&3; sleep 0.2; printf '1}' >&3`)
    expect(readText(parts)).toBe('{"a":1}')
  })
})

it('check goes on after what cannot be read, and tells of each', () => {
  const good = file('good.json', TEXT)
  mkdirSync(at('dir'))
  const files = [good, at('none.json'), at('dir'), '/dev/zero', pipe(), file('text.json', 'no'), good]
  const { code, out, err } = run(['check', ...files])
  expect(code).toBe(2)
  expect(out).toBe(`${good}: ok, a design with 5 soundings\n`.repeat(2))
  expect(
    err
      .trimEnd()
      .split('\n')
      .map((line) => line.split(':')[0]),
  ).toEqual(files.slice(1, -1))
})
