/** Arguments: values that begin with a hyphen, and each wrong one with a line of its own. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoDesign } from '../../rules/index.ts'
import { parseArguments } from '../../src/cli/args.ts'
import { Unusable } from '../../src/cli/files.ts'
import { run } from '../../src/cli/run.ts'
import { sheet } from '../../src/cli/sheet.ts'
import { ownFolder } from './support/folder.ts'

const { file } = ownFolder()
const demo = () => file('demo.json', demoDesign)
const TODAY = '2026-05-01'

describe('a value that begins with a hyphen', () => {
  it.each([
    [['--by', '-X'], '-X'],
    [['--by=-X'], '-X'],
    [['--by=--size'], '--size'],
    [['--by', '-- A. Person'], '-- A. Person'],
    [['--by', '-'], '-'],
    [['--by='], undefined],
  ])('%j is taken as it is', async (args, by) => {
    const { bytes } = await sheet([demo(), '--out', 'x.svg', ...args], TODAY)
    const text = Buffer.from(bytes).toString()
    if (by === undefined) expect(text).not.toContain('-X')
    else expect(text).toMatch(new RegExp(`>[^<]*${by}[^<]*</text>`))
  })

  it.each([
    ['-5%', '--discount: "-5%"; expected a share as 5%, or an amount as 120.00'],
    ['9'.repeat(400), `--discount: "${'9'.repeat(400)}"; expected a share as 5%, or an amount as 120.00`],
    ['-120', '--discount: "-120"; expected a share as 5%, or an amount as 120.00'],
  ])('is judged by what is wanted there: --discount %s', async (value, line) => {
    await expect(sheet([demo(), '--out', 'x.pdf', '--discount', value], TODAY)).rejects.toThrow(
      new Unusable([line]),
    )
  })

  it('is a file after --', () => {
    expect(run(['derive', '--', '-nope.json']).err).toBe(
      '-nope.json: cannot be read (ENOENT); expected a JSON file\n',
    )
  })
})

describe('wrong arguments', () => {
  it.each<[string[], string]>([
    [['derive', 'a', '--speed', 'x'], '--speed: no option; expected what leadline --help lists'],
    [['derive', 'a', '-q'], '-q: no option; expected what leadline --help lists'],
    [['derive', 'a', '--constructor'], '--constructor: no option; expected what leadline --help lists'],
    [['derive', 'a', '--csv'], '--csv: no option of derive; expected --catalog, --help, --version'],
    [['check', 'a', '--catalog', 'b'], '--catalog: no option of check; expected --help, --version'],
    [['list', 'a', '--units', 'metric', '--units', 'metric'], '--units: given twice; expected once'],
    [['list', 'a', '--csv', '--csv'], '--csv: given twice; expected once'],
    [['list', 'a', '--csv=yes'], '--csv: "yes"; expected no value'],
    [
      ['list', 'a', '--units'],
      '--units: no value; expected one (--units=VALUE for one that begins with hyphens)',
    ],
    [
      ['list', 'a', '--units', '--csv'],
      '--units: no value; expected one (--units=VALUE for one that begins with hyphens)',
    ],
    [['list', '-', '--have', '-'], '-: given twice; expected once, for it is read once'],
    [['check', '/dev/stdin', '-'], '-: given twice; expected once, for it is read once'],
    [['demo', 'a'], 'demo: 1 files; expected none'],
    [
      ['fly'],
      'fly: not a command; expected derive, list, sheet, verify, check, levels, soundings, record, demo, words (see leadline --help)',
    ],
  ])('%j: one line', (args, line) => {
    expect(run(args)).toEqual({ code: 2, out: '', err: `${line}\n` })
  })

  it('are each told', () => {
    expect(run(['list', 'a', '--speed', '--csv', '--csv']).err.split('\n')).toHaveLength(3)
  })

  it.each([
    [['--out', 'a.pdf', '--out', 'b.pdf'], '--out: given twice; expected once'],
    [['-o', 'a.pdf', '--out=b.pdf'], '--out: given twice; expected once'],
    [
      ['--out', 'a.pdf', '--by', '-o', 'b'],
      '--by: no value; expected one (--by=VALUE for one that begins with hyphens)',
    ],
  ])('of a sheet, %j', async (args, line) => {
    await expect(sheet([demo(), ...args], TODAY)).rejects.toThrow(new Unusable([line]))
  })

  it.each([`hours=${'9'.repeat(400)}`, 'hours=1000001'])(
    'no more of a service than a quote can say: %s',
    async (services) => {
      await expect(
        sheet([demo(), '--out', 'x.json', '--what', 'quote', '--services', services], TODAY),
      ).rejects.toThrow(/^--services: "hours=\d+"; expected CODE or CODE=QUANTITY/)
    },
  )
})

const SEED = Number(process.env.LEADLINE_SEED ?? 40_417)
it(`any arguments are taken, none lost, or refused with lines (seed ${SEED})`, () => {
  const words = [
    'derive',
    'list',
    'sheet',
    'check',
    'a.json',
    '-',
    '--',
    '-X',
    '-o',
    '-h',
    '--out',
    '--by',
    '--by=x',
  ]
  const word = fc.oneof(
    fc.constantFrom(...words, '--csv', '--csv=', '--have', '-vh', '--no-csv', '-oX', ''),
    fc.string(),
  )
  let taken = 0
  fc.assert(
    fc.property(fc.array(word, { maxLength: 7 }), (args) => {
      try {
        const { command, files, values } = parseArguments(args)
        taken++
        const kept = [...(command ? [command] : []), ...files, ...Object.values(values)].filter(
          (one) => one !== true,
        )
        // All that was said is there again, but for the names of options and what ends them.
        for (const value of kept) expect(args.some((arg) => arg.includes(value))).toBe(true)
        // Help is given whatever stands where the command should.
        if (command)
          expect(args.filter((arg) => arg === 'a.json').length).toBe(
            kept.filter((one) => one === 'a.json').length,
          )
      } catch (error) {
        if (!(error instanceof Unusable)) throw error
        for (const line of error.lines) expect(line).toMatch(/: .*; expected |: not a command; expected /s)
      }
    }),
    { seed: SEED, numRuns: 2000 },
  )
  expect(taken).toBeGreaterThan(100)
})

describe('--date', () => {
  it.each([
    '2026-02-30',
    '2026-02-29',
    '2100-02-29',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-01-00',
    '0000-01-01',
    '+002026-05-01',
    '2026-5-1',
    '2026-05-01T00:00',
    ' 2026-05-01',
  ])('%s is no day', async (date) => {
    await expect(sheet([demo(), '--out', 'x.svg', '--date', date], TODAY)).rejects.toThrow(
      new Unusable([`--date: "${date}"; expected a day as 2026-05-01`]),
    )
  })

  it.each(['2028-02-29', '2000-02-29', '2026-12-31'])('%s is one', async (date) => {
    const { bytes } = await sheet([demo(), '--out', 'x.csv', '--date', date], TODAY)
    expect(bytes.length).toBeGreaterThan(100)
  })
})
