import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive, parseRequest, verifyRequest } from '../../rules/index.ts'
import { metricCatalog } from '../support/catalogs.ts'

const { fingerprint, totals } = derive(demoDesign, demoCatalog)
const sent = {
  format: 'leadline/request',
  version: 1,
  id: '5f0d7c1e-0000-4000-8000-000000000001',
  at: '2026-05-01T12:00:00.000Z',
  design: demoDesign,
  catalog: { id: demoCatalog.id, version: demoCatalog.edition },
  fingerprint,
  totals,
  contact: { name: 'A. Example', contact: 'a@example.org', note: '' },
}
const asSent = JSON.parse(JSON.stringify(sent)) as typeof sent
const found = (changed: object, catalog = demoCatalog): string[] => {
  const parsed = parseRequest({ ...asSent, ...changed })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return verifyRequest(parsed.value, catalog).map(({ path }) => path)
}

describe('a request', () => {
  it('as it was sent is as it is worked out', () => {
    expect(found({})).toEqual([])
  })

  it.each<[string, object, string[]]>([
    ['a cent less', { totals: { ...totals, price: totals.price - 1 } }, ['totals.price']],
    ['another weight', { totals: { ...totals, mass: totals.mass + 0.1 } }, ['totals.mass']],
    ['another code', { fingerprint: { ...fingerprint, all: '0'.repeat(64) } }, ['fingerprint.all']],
    [
      'a section more than was paid for',
      { design: { ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } } },
      ['fingerprint.design', 'fingerprint.all', 'totals.price', 'totals.mass'],
    ],
    [
      'another catalog under the same name',
      { fingerprint: { ...fingerprint, catalog: 'f'.repeat(64) } },
      ['fingerprint.catalog'],
    ],
    ['another engine', { fingerprint: { ...fingerprint, engine: '0.0.1' } }, ['fingerprint.engine']],
    [
      'another design’s code',
      { fingerprint: { ...fingerprint, design: 'f'.repeat(64) } },
      ['fingerprint.design'],
    ],
    ['another coin', { totals: { ...totals, currency: 'XTS' } }, ['totals.currency']],
    ['another heaviest lift', { totals: { ...totals, heaviestLift: 1 } }, ['totals.heaviestLift']],
    ['another edition', { catalog: { ...sent.catalog, version: 'older' } }, ['catalog.version']],
  ])('with %s is told where', (_, changed, paths) => {
    expect(found(changed)).toEqual(paths)
  })

  it('may say more of who asks and what they wish, and what it says is kept', () => {
    const more = {
      contact: { ...sent.contact, email: 'a@example.org', phone: '555 0100', place: 'North side' },
      wants: ['delivery'],
      link: 'https://shop.example/dock#leadline=abc',
      picture: 'data:image/jpeg;base64,AAAA',
      reference: '5f0d7c1e',
    }
    const parsed = parseRequest({ ...asSent, ...more })
    expect(parsed.ok && parsed.value).toMatchObject(more)
  })

  it.each<[string, object, string]>([
    ['picture from elsewhere', { picture: 'https://elsewhere.example/x.jpg' }, 'picture'],
    ['picture that is a page', { picture: 'data:text/html;base64,AAAA' }, 'picture'],
    ['link that is a script', { link: 'javascript:alert(1)' }, 'link'],
  ])('with a %s is refused at its place', (_, changed, path) => {
    const parsed = parseRequest({ ...asSent, ...changed })
    expect(parsed.ok ? [] : parsed.issues.map((one) => one.path)).toEqual([path])
  })

  it('made with a catalog in which one price was lowered is told by its code and by what it comes to', () => {
    const [first, ...rest] = demoCatalog.frames
    const cheaper = { ...demoCatalog, frames: [{ ...first!, price: first!.price - 100 }, ...rest] }
    const made = derive({ ...demoDesign, dock: { ...demoDesign.dock, frame: first!.code } }, cheaper)
    const changed = {
      design: { ...demoDesign, dock: { ...demoDesign.dock, frame: first!.code } },
      fingerprint: made.fingerprint,
      totals: made.totals,
    }
    expect(found(changed)).toEqual(['fingerprint.catalog', 'fingerprint.all', 'totals.price'])
  })

  it('made with another shop’s catalog is told first of all', () => {
    expect(found({}, metricCatalog).slice(0, 2)).toEqual(['catalog.id', 'catalog.version'])
  })

  it.each<[string, object, string]>([
    ['format', { format: 'leadline/quote' }, 'format'],
    ['id', { id: '' }, 'id'],
    ['time', { at: 'yesterday' }, 'at'],
    ['price', { totals: { ...totals, price: 'free' } }, 'totals.price'],
    ['nobody', { contact: { name: '', contact: 'x' } }, 'contact.name'],
    [
      'design',
      { design: { ...demoDesign, dock: { ...demoDesign.dock, sections: 0 } } },
      'design.dock.sections',
    ],
  ])('with a %s that cannot be is refused at its place', (_, changed, path) => {
    const parsed = parseRequest({ ...asSent, ...changed })
    expect(parsed.ok ? [] : parsed.issues.map((one) => one.path)).toEqual([path])
  })
})
