/** Whose paper with prices the terminal writes, and whether a quote is what it says. */
import { writeFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import { Unusable } from '../../src/cli/files.ts'
import { run } from '../../src/cli/run.ts'
import { sheet } from '../../src/cli/sheet.ts'
import { ownFolder } from './support/folder.ts'

const { at, file: written } = ownFolder()
let demo: string
beforeAll(() => {
  demo = written('demo.json', demoDesign)
})

const text = async (...args: string[]): Promise<string> =>
  Buffer.from((await sheet([demo, '--out', '-', ...args], '2026-05-01')).bytes).toString()

describe('leadline sheet --audience', () => {
  it('customer: an estimate, titled so, with what counts said, and without what binds', async () => {
    const figures = JSON.parse(await text('--format', 'json', '--what', 'estimate', '--audience', 'customer'))
    expect(figures).toMatchObject({ format: 'leadline/estimate', until: null, terms: [] })
    const csv = await text('--format', 'csv', '--what', 'estimate', '--audience', 'customer')
    expect(csv).toContain('Estimated total')
  })

  it.each([
    ['customer', 'quote'],
    ['shop', 'estimate'],
    ['crew', 'quote'],
    ['crew', 'estimate'],
  ])('%s: no %s, on paper or in figures', async (audience, what) => {
    for (const format of ['pdf', 'svg', 'csv', 'json'])
      await expect(text('--format', format, '--what', what, '--audience', audience)).rejects.toThrow(
        `--what: "${what}"; expected `,
      )
  })

  it('crew: no figures with prices', async () => {
    await expect(text('--format', 'csv', '--what', 'list', '--audience', 'crew')).rejects.toThrow(Unusable)
    expect(await text('--format', 'csv', '--what', 'packing', '--audience', 'crew')).not.toMatch(/price/)
  })

  it.each([
    ['--discount', '5%'],
    ['--services', 'delivery'],
    ['--fetched'],
    ['--untaxed'],
    ['--since', 'quote.json'],
  ])('customer: %s is refused', async (...flag) => {
    await expect(
      text('--format', 'pdf', '--what', 'estimate', '--audience', 'customer', ...flag),
    ).rejects.toThrow(`${flag[0]}: "${flag[1] ?? 'true'}"; expected none with --audience customer`)
  })

  it.each([
    ['--audience', ['--audience', 'anyone']],
    ['--services', ['--services', 'hours=9999999']],
    ['--discount', ['--discount', '99999999999999.00']],
  ])('out of range: %s is told', async (path, args) => {
    const told = await text('--format', 'json', '--what', 'quote', ...args).catch((error) => error.message)
    expect(told.startsWith(`${path}`)).toBe(true)
    expect(told).toContain('expected')
  })
})

describe('leadline verify', () => {
  it('finds a quote as it was made, and tells what was changed in one that was not', async () => {
    const made = await text('--format', 'json', '--what', 'quote', '--discount', '5%')
    const file = at('quote.json')
    writeFileSync(file, made)
    const { check, total } = JSON.parse(made)
    expect(run(['verify', file])).toEqual({
      code: 0,
      out: `${file}: as it is worked out; check code ${check.slice(0, 4)} ${check.slice(4, 8)} ${check.slice(8, 12)}\n`,
      err: '',
    })
    writeFileSync(file, JSON.stringify({ ...JSON.parse(made), total: total - 100 }))
    expect(run(['verify', file])).toEqual({
      code: 1,
      out: '',
      err: `total: ${total - 100}; expected ${total}\n`,
    })
    writeFileSync(file, JSON.stringify(demoDesign))
    expect(run(['verify', file]).code).toBe(2)
  })

  it('finds a request as it was sent, and tells what was changed in one that was not', () => {
    const { fingerprint, totals } = derive(demoDesign, demoCatalog)
    const request = {
      format: 'leadline/request',
      version: 1,
      id: 'r-1',
      at: '2026-05-01T12:00:00.000Z',
      design: demoDesign,
      catalog: { id: demoCatalog.id, version: demoCatalog.edition },
      fingerprint,
      totals,
      contact: { name: 'A. Example', contact: 'a@example.org', note: '' },
    }
    const file = at('request.json')
    writeFileSync(file, JSON.stringify(request))
    expect(run(['verify', file])).toMatchObject({ code: 0, err: '' })
    expect(run(['check', file])).toMatchObject({ code: 0, out: `${file}: ok, a request of ${request.at}\n` })
    writeFileSync(file, JSON.stringify({ ...request, totals: { ...totals, price: 1 } }))
    expect(run(['verify', file])).toEqual({
      code: 1,
      out: '',
      err: `totals.price: 1; expected ${totals.price}\n`,
    })
  })
})
