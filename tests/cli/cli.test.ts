/** The terminal as a person or a back end uses it: output, exit codes, one line a problem. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Papa from 'papaparse'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive, parseDesign } from '../../rules/index.ts'
import { HELP, run } from '../../src/cli/run.ts'
import metricShop from '../support/metric-shop.json' with { type: 'json' }

let folder: string
const file = (name: string, content: unknown): string => {
  const path = join(folder, name)
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content))
  return path
}
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-'))
})
afterAll(() => {
  rmSync(folder, { recursive: true })
})

const demo = () => file('demo.json', demoDesign)
const deep = () =>
  file('deep.json', {
    ...demoDesign,
    site: {
      ...demoDesign.site,
      soundings: [
        { distance: 0, depth: 0 },
        { distance: 5, depth: 3 },
        { distance: 12, depth: 6 },
        { distance: 20, depth: 8 },
      ],
    },
  })

describe('leadline derive', () => {
  it('prints the dock that the engine derives, and exits 0', () => {
    const { code, out, err } = run(['derive', demo()])
    const parsed = parseDesign(demoDesign)
    expect(JSON.parse(out)).toEqual(parsed.ok && derive(parsed.value, demoCatalog))
    expect([code, err]).toEqual([0, ''])
  })

  it('exits 1 where a stop stands, and prints the dock all the same', () => {
    const { code, out } = run(['derive', deep()])
    expect(code).toBe(1)
    expect(JSON.parse(out).findings.map((f: { severity: string }) => f.severity)).toContain('stop')
  })

  it('exits 1 where nothing but two parts in one place must not be built so', () => {
    const clashing = file('clash.json', {
      ...demoDesign,
      dock: {
        ...demoDesign.dock,
        pad: 'mud-pad-14',
        placed: [{ code: 'anchor-post', section: 's5', edge: 'left', along: 2.2 }],
      },
    })
    const { code, out } = run(['derive', clashing])
    const stops = JSON.parse(out).findings.filter((f: { severity: string }) => f.severity === 'stop')
    expect(new Set(stops.map((f: { code: string }) => f.code))).toEqual(new Set(['parts-clash']))
    expect(code).toBe(1)
  })

  it('takes another shop', () => {
    const shop = file('shop.json', metricShop)
    const design = file('metric.json', {
      ...demoDesign,
      dock: { ...demoDesign.dock, frame: metricShop.frames[0]!.code, extras: {} },
    })
    const { code, out } = run(['derive', design, '--catalog', shop])
    expect(code).toBe(0)
    expect(JSON.parse(out).totals.currency).toBe('EUR')
  })

  it.each([
    ['a missing file', () => 'nope.json', /^nope\.json: cannot be read \(ENOENT\); expected a JSON file\n$/],
    [
      'a file cut off',
      () => file('cut.json', '{"format": "lead'),
      /cut\.json: not JSON \(.*\); expected a whole JSON file\n$/,
    ],
    ['another format', () => file('x.json', { format: 'x' }), /^format: "x"; expected "leadline\/design"\n$/],
    [
      'a wrong value',
      () => file('v.json', { ...demoDesign, dock: { ...demoDesign.dock, sections: -1 } }),
      /^dock\.sections: -1; expected at least 1\n$/,
    ],
    [
      '50 MB',
      () => file('big.json', `"${'x'.repeat(50 * 1024 * 1024)}"`),
      /big\.json: 52428802 bytes; expected at most 8388608\n$/,
    ],
  ])('exits 2 on %s, with one line a problem and nothing on stdout', (_, path, line) => {
    const { code, out, err } = run(['derive', path()])
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(line)
  })

  it('tells what it kept without knowing it', () => {
    const { code, err } = run(['derive', file('extra.json', { ...demoDesign, color: 'red' })])
    expect([code, err]).toEqual([0, 'color: not known to this version; kept as it is\n'])
  })
})

describe('leadline list', () => {
  it('prints what to pack, where each leg goes, what was found and the cautions', () => {
    const { out, code } = run(['list', demo()])
    expect(code).toBe(0)
    for (const text of [
      'Quillet Cove',
      'Bag A',
      'Set bolt 1/2 in',
      '3/4 in, sleeve 0.75 turn',
      '9: 35 ft 5 in out, left',
      'Where each brace goes',
      // 401.046 kg and two posts of 10 ft, 24.682 kg.
      'Weight 969.4 lb',
      'Price $5,756.80',
      'Heaviest section',
      'Cautions',
    ])
      expect(out).toContain(text)
    // 1.699061 m = 66.892 in: 5 ft 6.9 in, to the quarter inch 5 ft 7 in.
    expect(out).toMatch(/9: 35 ft 5 in out, left +leg-7 +5 ft 7 in/)
    expect(run(['list', demo(), '--units', 'metric']).out).toMatch(/9: 10\.79 m out, left +leg-7 +1\.70 m/)
  })

  it('prints CSV that reads back as the parts list', () => {
    const { out } = run(['list', demo(), '--csv'])
    const { data, errors } = Papa.parse<Record<string, string>>(out, { header: true, skipEmptyLines: true })
    expect(errors).toEqual([])
    const parts = derive(demoDesign, demoCatalog).parts
    expect(data.map((row) => [row.kind, row.code, Number(row.quantity), Number(row.price)]).sort()).toEqual(
      parts.map((row) => [row.kind, row.code, row.quantity, row.price / 100]).sort(),
    )
  })

  it('keeps a spreadsheet from running a name as a formula', () => {
    const catalog = {
      ...structuredClone(demoCatalog),
      pads: demoCatalog.pads.map((pad) => ({ ...pad, name: '=HYPERLINK("x")' })),
    }
    const { out } = run(['list', demo(), '--csv', '--catalog', file('formula.json', catalog)])
    expect(out).toContain(`"'=HYPERLINK(""x"")"`)
    expect(out).not.toMatch(/(^|,)"?=/m)
  })

  it('prints JSON that --have takes back, with nothing to add', () => {
    const saved = file('list.json', run(['list', demo(), '--json']).out)
    expect(run(['list', demo(), '--have', saved]).out).toBe(
      'Nothing to add: what is there is what is needed.\n',
    )
  })

  it('prints what two sections more need, and what is left over of fewer', () => {
    const longer = file('longer.json', { ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } })
    const rows = JSON.parse(run(['list', longer, '--have', demo(), '--json']).out).rows
    const row = (code: string) => rows.find((r: { code: string }) => r.code === code)
    expect(row('4x8')).toMatchObject({ have: 5, need: 6, add: 1, over: 0 })
    expect(row('hook-bracket')).toMatchObject({ have: 6, need: 8, add: 2 })
    const back = JSON.parse(run(['list', demo(), '--have', longer, '--json']).out).rows
    expect(back.find((r: { code: string }) => r.code === '4x8')).toMatchObject({
      have: 6,
      need: 5,
      add: 0,
      over: 1,
    })
    expect(run(['list', longer, '--have', demo(), '--csv']).out.split('\n')[0]).toBe(
      'kind,code,name,have,need,add,over',
    )
  })
})

describe('what is there already', () => {
  const FT = 0.3048
  const withOld = (existing: object) =>
    file('owned.json', { ...demoDesign, dock: { ...demoDesign.dock, existing } })

  it('is told by the list, which packs and prices the rest', () => {
    const owned = withOld({
      sections: { '4x8': 2 },
      legs: [
        { stock: 4 * FT, count: 3 },
        { stock: 1.5, count: 1 },
      ],
    })
    const { code, out } = run(['list', owned])
    expect(code).toBe(0)
    expect(out).toMatch(/^ {2}\[ \] {4}3 +Frame 4 x 8 ft/m)
    expect(out).toContain('  2 × Frame 4 x 8 ft: s2, s1\n  2 × Leg 4 ft: 3 (s2), 4 (s2)\n')
    expect(out).toContain('Left over\n  1 × Leg 4 ft\n  1 × Leg of 4 ft 11 in (not in this catalog)\n')
    const all = JSON.parse(run(['derive', owned]).out)
    expect(out).toContain(
      `Price of what is new $${(all.existing.price / 100).toLocaleString('en', { minimumFractionDigits: 2 })}\n`,
    )
    const csv = run(['list', owned, '--csv']).out.split('\n')
    expect(csv[0]).toContain('wrench,owned')
    expect(csv.filter((row) => row.includes(',yes,'))).toHaveLength(2)
  })
  it('is what --have names, in the place of what the design says, by the same engine', () => {
    const owned = withOld({ sections: { '5x8': 9 } })
    const old = file('old.json', {
      ...demoDesign,
      dock: { ...demoDesign.dock, sections: 2, existing: { legs: [{ stock: 6 * FT, count: 3 }] } },
    })
    const deeper = file('deeper.json', {
      ...demoDesign,
      dock: { ...demoDesign.dock, deckHeight: 0.55, existing: { legs: [{ stock: 6 * FT, count: 3 }] } },
    })
    const saved = file('saved.json', run(['list', old, '--json']).out)
    for (const from of [old, saved]) {
      const rows = JSON.parse(run(['list', deeper, '--have', from, '--json']).out).rows
      // The third of 6 ft stands where 5 ft would do.
      const row = (code: string) => rows.find((r: { code: string }) => r.code === code)
      expect(row('leg-6')).toMatchObject({ have: 3, need: 3, add: 0, over: 0 })
      expect(row('leg-5')).toMatchObject({ have: 0, need: 1, add: 1 })
    }
    const rows = JSON.parse(run(['list', owned, '--have', old, '--json']).out).rows
    expect(rows.some((r: { code: string }) => r.code === '5x8')).toBe(false)
  })
})

describe('leadline check', () => {
  it('tells of each file, and exits 2 where one is wrong', () => {
    const bad = file('bad.json', { ...demoDesign, site: { ...demoDesign.site, bottom: 'lava' } })
    const good = run([
      'check',
      demo(),
      file('shop.json', metricShop),
      file('list.json', run(['list', demo(), '--json']).out),
    ])
    expect(good.code).toBe(0)
    expect(good.out.trim().split('\n')).toHaveLength(3)
    const { code, err, out } = run(['check', demo(), bad])
    expect(code).toBe(2)
    expect(out).toMatch(/demo\.json: ok/)
    expect(err).toMatch(/bad\.json: site\.bottom: "lava"; expected .*"sand"/)
  })

  it('tells of a broken packing list', () => {
    const { code, err } = run([
      'check',
      file('l.json', {
        format: 'leadline/list',
        version: 1,
        groups: [{ rows: [{ code: 'a', kind: 'leg', quantity: -1 }] }],
      }),
    ])
    expect(code).toBe(2)
    expect(err).toMatch(/groups\[0\]\.rows\[0\]\.quantity: -1; expected a whole number/)
  })
})

describe('leadline', () => {
  it('helps, and tells its version', () => {
    expect(run(['--help'])).toEqual({ code: 0, out: HELP, err: '' })
    expect(run(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/)
    expect(run([])).toEqual({ code: 2, out: '', err: HELP })
  })

  it.each([
    [['fly'], /fly: not a command/],
    [['derive'], /derive: 0 files; expected one/],
    [['list', 'a', 'b'], /list: 2 files; expected one/],
    [['derive', '--speed', 'x'], /--speed/],
    [['list', 'a', '--units', 'cubits'], /cubits/],
    [['check'], /no file/],
  ])('%j exits 2 and says why', (args, message) => {
    const { code, err } = run(args)
    expect(code).toBe(2)
    expect(err).toMatch(message)
  })

  it('writes a design to begin with, which checks', () => {
    const path = file('begin.json', run(['demo']).out)
    expect(run(['check', path]).code).toBe(0)
  })

  it('runs through npm in the checkout, from a file and from standard input', () => {
    const root = join(import.meta.dirname, '../..')
    const out = execFileSync('npm', ['run', '--silent', 'leadline', '--', 'derive', demo()], {
      cwd: root,
      encoding: 'utf8',
    })
    expect(JSON.parse(out).legs).toHaveLength(10)
    const piped = spawnSync('npm', ['run', '--silent', 'leadline', '--', 'derive', '-'], {
      cwd: root,
      encoding: 'utf8',
      input: JSON.stringify({ ...demoDesign, dock: {} }),
    })
    expect(piped.status).toBe(2)
    expect(piped.stderr).toMatch(/^dock\.deckHeight: missing/)
  })
})
