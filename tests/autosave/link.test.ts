import { inflateRawSync } from 'node:zlib'
import { deflateSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { type Design, demoDesign } from '../../rules/index.ts'
import { isLink, LONGEST_LINK, linkOf, readLink } from '../../src/autosave/link.ts'

const withSoundings = (n: number): Design => ({
  ...demoDesign,
  site: {
    ...demoDesign.site,
    soundings: Array.from({ length: n }, (_, i) => ({
      distance: i,
      offset: 0,
      depth: Math.round(1e7 * Math.abs(Math.sin(i * i))) / 1e7,
    })),
  },
})

describe('a link', () => {
  it('brings back the whole design', () => {
    const design: Design = { ...demoDesign, name: 'Møllers Bucht 湖', job: { customer: 'Æ' } }
    expect(readLink(linkOf(design)!)).toMatchObject({ ok: true, value: design })
  })

  it('is raw deflate in base64url, as any other program can read', () => {
    const link = linkOf(demoDesign)!
    expect(link).toMatch(/^#leadline=[A-Za-z0-9_-]+$/)
    const bytes = Buffer.from(link.slice('#leadline='.length), 'base64url')
    expect(JSON.parse(inflateRawSync(bytes).toString('utf8'))).toEqual(demoDesign)
  })

  it('of a usual dock is short enough for any messenger', () => {
    expect(linkOf(demoDesign)!.length).toBeLessThan(1000)
  })

  it('is not made where it would be too long', () => {
    expect(linkOf(withSoundings(300))!.length).toBeLessThanOrEqual(LONGEST_LINK)
    expect(linkOf(withSoundings(5000))).toBeNull()
    expect(linkOf(withSoundings(20_000))).toBeNull()
  })

  it('that is damaged says so and never throws', () => {
    const link = linkOf(demoDesign)!
    for (const bad of [
      '#leadline=',
      '#leadline=%%%',
      '#leadline=AAAA',
      link.slice(0, -20),
      `${link.slice(0, 60)}x${link.slice(61)}`,
      '#elsewhere',
    ]) {
      const read = readLink(bad)
      expect(read.ok).toBe(false)
      if (!read.ok) expect(read.issues[0]!.message).not.toBe('')
    }
    expect(isLink('#elsewhere')).toBe(false)
  })

  it('that would unpack to a flood is refused', () => {
    const bomb = Buffer.from(deflateSync(new Uint8Array(200 * 1024 * 1024), { level: 9 })).toString(
      'base64url',
    )
    const before = process.memoryUsage().rss
    expect(readLink(`#leadline=${bomb}`).ok).toBe(false)
    expect(process.memoryUsage().rss - before).toBeLessThan(64 * 1024 * 1024)
  })
})
