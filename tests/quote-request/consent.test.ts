/** A shop's own words on what is done with a request: told in the customer's language, sent as they were shown, and found where they are others. */
import { describe, expect, it } from 'vitest'
import {
  type Catalog,
  demoCatalog,
  demoDesign,
  derive,
  parseCatalog,
  parseRequest,
  verifyRequest,
} from '../../rules/index.ts'
import { consentIn } from '../../src/quote-request/consent-text.ts'

const TEXT = 'We keep what you send for a year, to make your quote.'
const shop = (consent: object): Catalog => {
  const parsed = parseCatalog({ ...demoCatalog, shop: { ...demoCatalog.shop, consent } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}
const own = shop({
  text: TEXT,
  tick: true,
  web: 'https://shop.example/privacy',
  languages: { fr: 'Un an.', 'de-AT': 'Ein Jahr.' },
})

describe('the text', () => {
  it('is in the language of the page where the shop has it, else as it stands', () => {
    const text = (lang: string) => consentIn(own, lang)?.text
    expect([text('en'), text('fr'), text('fr-CA'), text('de-AT'), text('de'), text('toString')]).toEqual([
      TEXT,
      'Un an.',
      'Un an.',
      'Ein Jahr.',
      TEXT,
      TEXT,
    ])
    expect(consentIn(own, 'en')).toEqual({ text: TEXT, tick: true, web: 'https://shop.example/privacy' })
    expect(consentIn(demoCatalog, 'en')).toBe(null)
    expect(consentIn(shop({ text: TEXT }), 'en')).toEqual({ text: TEXT, tick: false, web: null })
  })

  it.each([
    [{ text: '' }, 'shop.consent.text'],
    [{ text: 'x'.repeat(2001) }, 'shop.consent.text'],
    [{ text: TEXT, tick: 'yes' }, 'shop.consent.tick'],
    [{ text: TEXT, web: 'javascript:alert(1)' }, 'shop.consent.web'],
    [{ text: TEXT, languages: { fr: '' } }, 'shop.consent.languages.fr'],
  ])('%j is refused at its place', (consent, path) => {
    const parsed = parseCatalog({ ...demoCatalog, shop: { consent } })
    expect(parsed.ok ? [] : parsed.issues.map((one) => one.path)).toEqual([path])
  })

  it('changes no check code: no dock hangs on it', () => {
    expect(derive(demoDesign, own).fingerprint).toEqual(derive(demoDesign, demoCatalog).fingerprint)
  })
})

describe('a request', () => {
  const { fingerprint, totals } = derive(demoDesign, demoCatalog)
  const found = (consent: object | undefined, catalog: Catalog): string[] => {
    const parsed = parseRequest({
      ...{
        format: 'leadline/request',
        version: 1,
        id: 'r-1',
        at: '2026-05-01T12:00:00.000Z',
        design: demoDesign,
      },
      ...{ catalog: { id: demoCatalog.id, version: demoCatalog.edition }, fingerprint, totals },
      contact: { name: 'A. Example', contact: 'a@example.org', note: '' },
      ...(consent && { consent }),
    })
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    return verifyRequest(parsed.value, catalog).map(({ path }) => path)
  }

  it.each<[object | undefined, Catalog, string[]]>([
    [{ text: TEXT, ticked: true }, own, []],
    [{ text: 'Un an.', ticked: true }, own, []],
    [{ text: TEXT, ticked: false }, own, ['consent.ticked']],
    [{ text: 'Do as you like.', ticked: true }, own, ['consent.text']],
    [undefined, own, ['consent']],
    [{ text: TEXT, ticked: false }, shop({ text: TEXT }), []],
    [undefined, demoCatalog, []],
    [{ text: 'Something.', ticked: true }, demoCatalog, []],
  ])('%j: what the shop did not ask is told', (consent, catalog, paths) => {
    expect(found(consent, catalog)).toEqual(paths)
  })
})
