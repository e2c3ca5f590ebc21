/** The built command as a process: exit codes, standard streams, and what is on the disk afterwards. */
import { execFileSync, spawnSync } from 'node:child_process'
import {
  appendFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { ownFolder } from './support/folder.ts'

const ROOT = join(import.meta.dirname, '../..')
const own = ownFolder()

beforeAll(() => {
  execFileSync('npx', ['tsx', 'src/build/package/package.ts', own.at('built')], { cwd: ROOT })
}, 120_000)

let folder: string
let tried = 0
const TEXT = JSON.stringify(demoDesign)
beforeEach(() => {
  folder = own.at(`try-${++tried}`)
  mkdirSync(folder)
  writeFileSync(join(folder, 'd.json'), TEXT)
})
const text = (name: string): string => readFileSync(join(folder, name), 'utf8')

/** A line of bash in a folder with a design in it, `leadline` being the built command. */
function bash(line: string, env: Record<string, string> = {}) {
  const script = `leadline() { "${process.execPath}" "${own.at('built')}/cli.js" "$@"; }; set -o pipefail; ${line}`
  const { status, stdout, stderr } = spawnSync('bash', ['-c', script], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 60_000,
    env: { ...process.env, ...env },
    maxBuffer: 1e8,
  })
  return { code: status, out: stdout, err: stderr }
}

describe('an output that is an input', () => {
  it.each([
    ['itself', 'leadline sheet d.json --out d.json', 'd.json: is an input too'],
    ['by a link', 'ln -s d.json l.json; leadline sheet d.json --out l.json', 'l.json: is the same file as'],
    ['by its link', 'ln -s d.json l.json; leadline sheet l.json --out d.json', 'd.json: is the same file as'],
    ['by a hard link', 'ln d.json h.json; leadline sheet d.json --out h.json', 'h.json: is the same file as'],
    [
      'from standard input',
      'leadline sheet - --out d.json < d.json',
      'd.json: is the same file as the input -',
    ],
    ['by descriptor', 'leadline sheet /dev/fd/7 --out d.json 7< d.json', 'd.json: is the same file as'],
    ['added to', 'leadline list d.json >> d.json', 'standard output: is the same file as the input d.json'],
    [
      'added to, as a sheet',
      'leadline sheet d.json --out - --format csv >> d.json',
      'standard output: is the',
    ],
    ['checked into itself', 'leadline check d.json >> d.json', 'standard output: is the same file as'],
  ])('%s: refused with 2, and stays', (_, line, said) => {
    const { code, out, err } = bash(line)
    expect([code, out]).toEqual([2, ''])
    expect(err.split('\n')).toEqual([expect.stringContaining(said), ''])
    expect(err).toMatch(/; expected another file\n$/)
    expect(text('d.json')).toBe(TEXT)
  })

  it('that is the catalog, the older design or the last quote stays too', () => {
    writeFileSync(join(folder, 'shop.json'), JSON.stringify(demoCatalog))
    expect(bash('leadline sheet d.json --catalog shop.json --out shop.json').code).toBe(2)
    expect(text('shop.json')).toBe(JSON.stringify(demoCatalog))
    linkSync(join(folder, 'd.json'), join(folder, 'old.json'))
    expect(bash('leadline list d.json --have old.json --csv >> old.json').code).toBe(2)
    expect(text('old.json')).toBe(TEXT)
    expect(bash('leadline sheet d.json --what quote --out q.json --date 2026-05-01').code).toBe(0)
    const last = text('q.json')
    expect(bash('leadline sheet d.json --what quote --since q.json --out q.json').code).toBe(2)
    expect(text('q.json')).toBe(last)
  })
})

describe('what cannot be written ends with 3 and one line', () => {
  it.each([
    ['a full device', 'leadline list d.json > /dev/full', 'standard output', 'ENOSPC'],
    ['as JSON', 'leadline derive d.json > /dev/full', 'standard output', 'ENOSPC'],
    ['the demo', 'leadline demo > /dev/full', 'standard output', 'ENOSPC'],
    ['help', 'leadline --help > /dev/full', 'standard output', 'ENOSPC'],
    ['--out /dev/full', 'leadline sheet d.json --out /dev/full --format svg', '/dev/full', 'ENOSPC'],
    ['--out -', 'leadline sheet d.json --out - --format svg > /dev/full', 'standard output', 'ENOSPC'],
    [
      '--out /dev/stdout',
      'leadline sheet d.json --out /dev/stdout --format svg > /dev/full',
      '/dev/stdout',
      'ENOSPC',
    ],
    ['a reader that goes', 'leadline derive d.json | head -c 10 > /dev/null', 'standard output', 'EPIPE'],
    [
      'a paper half read',
      'leadline sheet d.json --out - --format glb | head -c 10 > /dev/null',
      'standard output',
      'EPIPE',
    ],
    ['a limit on files', 'ulimit -f 4; leadline sheet d.json --out a.pdf', 'a.pdf', 'EFBIG'],
  ])('%s', (_, line, file, reason) => {
    const { code, out, err } = bash(line)
    expect([code, out]).toEqual([3, ''])
    expect(err).toMatch(new RegExp(`^${file}: cannot be written \\(${reason}\\); expected [^\n]+\n$`))
    expect(readdirSync(folder)).toEqual(['d.json'])
  })

  it('and leaves the file that is there', () => {
    writeFileSync(join(folder, 'a.pdf'), 'old')
    const { code, err } = bash('ulimit -f 4; leadline sheet d.json --out a.pdf')
    expect(code).toBe(3)
    expect(err).toMatch(/^a\.pdf: cannot be written \(EFBIG\); .*; the file that is there is as it was\n$/)
    expect(text('a.pdf')).toBe('old')
    expect(readdirSync(folder)).toEqual(['a.pdf', 'd.json'])
  })

  it('but for a line on standard error, which nobody is told of', () => {
    expect(bash('leadline derive nope.json 2> /dev/full').code).toBe(2)
    writeFileSync(join(folder, 'e.json'), JSON.stringify({ ...demoDesign, color: 'red' }))
    expect(bash('leadline list e.json 2> /dev/full').code).toBe(0)
  })
})

it('where the folder of a paper is missing it ends with 2, and says which', () => {
  const { code, out, err } = bash('leadline sheet d.json --out no/such/dock.svg')
  expect([code, out]).toEqual([2, ''])
  expect(err).toMatch(/dock\.svg: cannot be written \(ENOENT\); expected a place that can/)
})

describe('standard streams', () => {
  it('are written the same paper as a file', () => {
    const paper = 'leadline sheet d.json --date 2026-05-01'
    expect(bash(`${paper} --out a.pdf; ${paper} --out - --format pdf > b.pdf`).code).toBe(0)
    const [file, piped] = ['a.pdf', 'b.pdf'].map((name) => readFileSync(join(folder, name)))
    expect(piped!.subarray(0, 5).toString()).toBe('%PDF-')
    expect(Buffer.compare(file!, piped!)).toBe(0)
  })

  it('a design comes from a pipe, a file, or by descriptor', () => {
    for (const line of [
      'leadline check - < d.json',
      'cat d.json | leadline check -',
      'cat d.json | leadline check /dev/stdin',
      'leadline check /dev/stdin < d.json',
      'leadline check <(cat d.json)',
      'leadline check <(sleep 1; cat d.json)',
    ])
      expect(bash(line), line).toEqual({
        code: 0,
        out: expect.stringMatching(/^[-/\w]+: ok, a design with 5 soundings\n$/),
        err: '',
      })
  })

  it('what is there already may come through a pipe too', () => {
    expect(bash('leadline list d.json --have <(cat d.json)')).toEqual({
      code: 0,
      out: 'Nothing to add: what is there is what is needed.\n',
      err: '',
    })
  })

  it('waits for who writes to standard input, and says so', () => {
    const { code, out, err } = bash('(sleep 3; cat d.json) | leadline check -')
    expect([code, out, err]).toEqual([
      0,
      '-: ok, a design with 5 soundings\n',
      '-: nothing comes yet; waiting\n',
    ])
  })

  it('/dev/stdout is what the shell made it: a log keeps its lines', () => {
    appendFileSync(join(folder, 'log'), 'before\n')
    expect(bash('leadline sheet d.json --out /dev/stdout --format csv >> log').code).toBe(0)
    expect(text('log')).toMatch(/^before\n[a-z_,]+\n/)
    const piped = bash('leadline sheet d.json --out /dev/stdout --format csv | cat')
    expect(piped).toEqual({ code: 0, out: text('log').slice('before\n'.length), err: '' })
  })

  it.each(['/dev/zero', '.', 'pipe', '<(yes)'])('%s as a design ends with 2 and one line', (input) => {
    const { code, out, err } = bash(`mkfifo pipe; leadline derive ${input}`)
    expect([code, out, err.split('\n').length]).toEqual([2, '', 2])
  })

  it.runIf(existsSync('/usr/bin/script'))('a terminal is shown what a file would hold, and no paper', () => {
    writeFileSync(join(folder, 'e.json'), JSON.stringify({ ...demoDesign, name: '\u001b[2J' }))
    const tty = (args: string) =>
      bash(`script -qec "'${process.execPath}' '${own.at('built')}/cli.js' ${args}" /dev/null < /dev/null`)
    const svg = tty('sheet e.json --out - --format svg --what quote')
    expect([svg.code, svg.out.includes('\u001b')]).toEqual([0, false])
    expect(tty('list e.json --csv').code).toBe(0)
    const pdf = tty('sheet e.json --out - --format pdf')
    expect([pdf.code, pdf.out]).toEqual([
      2,
      'standard output: a terminal; expected a file or a pipe for .pdf\r\n',
    ])
  })
})

it('a fault of the program is no dock that must not be built: 4, one line', () => {
  const { code, out, err } = bash('leadline list d.json', {
    NODE_OPTIONS: '--import data:text/javascript,Intl.NumberFormat=null',
  })
  expect([code, out]).toEqual([4, ''])
  expect(err).toMatch(/^leadline: broke \(TypeError: .*\); expected a result\n$/)
})

it('the help tells each exit code', () => {
  const { out } = bash('leadline --help')
  for (const code of ['0; ', '1 where', '2 for', '3 where', '4 for']) expect(out).toContain(code)
})
