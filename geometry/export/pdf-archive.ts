/** What lets a PDF be kept for long (ISO 19005-2, PDF/A-2): what its colors mean, and what it says of itself as XMP (ISO 16684-1). */

export interface About {
  readonly title: string
  readonly author: string
  readonly subject: string
  readonly creator: string
  readonly producer: string
  /** `YYYY-MM-DDThh:mm:ss+00:00` */
  readonly date: string
}

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')

export function xmpOf({ title, author, subject, creator, producer, date }: About): string {
  const one = (text: string): string =>
    `<rdf:Alt><rdf:li xml:lang="x-default">${escaped(text)}</rdf:li></rdf:Alt>`
  return [
    '<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"',
    ' xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">',
    '<pdfaid:part>2</pdfaid:part><pdfaid:conformance>B</pdfaid:conformance>',
    '<dc:format>application/pdf</dc:format>',
    `<dc:title>${one(title)}</dc:title>`,
    `<dc:description>${one(subject)}</dc:description>`,
    `<dc:creator><rdf:Seq><rdf:li>${escaped(author)}</rdf:li></rdf:Seq></dc:creator>`,
    `<xmp:CreatorTool>${escaped(creator)}</xmp:CreatorTool><xmp:CreateDate>${date}</xmp:CreateDate>`,
    `<pdf:Producer>${escaped(producer)}</pdf:Producer>`,
    '</rdf:Description></rdf:RDF></x:xmpmeta>',
    '<?xpacket end="r"?>',
  ].join('\n')
}

/** Of sRGB (IEC 61966-2-1), its primaries adapted to D50 by the Bradford transform, as ICC profiles have them. */
const WHITE = [0.9642, 1, 0.8249]
const PRIMARIES = { r: [0.4361, 0.2225, 0.0139], g: [0.3851, 0.7169, 0.0971], b: [0.1431, 0.0606, 0.7141] }
const ADAPTED = [1.0479, 0.0229, -0.0502, 0.0296, 0.9905, -0.0171, -0.0092, 0.0151, 0.7517]
/** Its curve: exponent, then slope and offset over the break, slope under it, the break. */
const CURVE = [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045]

const bytesOf = (n: number, size: number): string =>
  Array.from({ length: size }, (_, i) => String.fromCharCode((n >>> (8 * (size - 1 - i))) & 0xff)).join('')
const u32 = (n: number): string => bytesOf(n, 4)
const fixed = (value: number): string => u32(Math.round(value * 65536))
const fixedType = (kind: string, values: readonly number[]): string =>
  `${kind}${u32(0)}${values.map(fixed).join('')}`
const said = (text: string): string =>
  `mluc${u32(0)}${u32(1)}${u32(12)}enUS${u32(2 * text.length)}${u32(28)}${[...text].map((c) => `\0${c}`).join('')}`

/** An sRGB display profile (ICC.1:2004-10), as a string of bytes. */
export function srgbProfile(): string {
  const curve = `para${u32(0)}${bytesOf(3, 2)}${bytesOf(0, 2)}${CURVE.map(fixed).join('')}`
  const data: readonly (readonly [names: readonly string[], content: string])[] = [
    [['desc'], said('sRGB')],
    [['cprt'], said('No copyright')],
    [['wtpt'], fixedType('XYZ ', WHITE)],
    [['chad'], fixedType('sf32', ADAPTED)],
    [['rXYZ'], fixedType('XYZ ', PRIMARIES.r)],
    [['gXYZ'], fixedType('XYZ ', PRIMARIES.g)],
    [['bXYZ'], fixedType('XYZ ', PRIMARIES.b)],
    [['rTRC', 'gTRC', 'bTRC'], curve],
  ]
  const count = data.reduce((sum, [names]) => sum + names.length, 0)
  let at = 128 + 4 + 12 * count
  let [table, body] = [u32(count), '']
  for (const [names, content] of data) {
    for (const name of names) table += `${name}${u32(at)}${u32(content.length)}`
    const whole = content.padEnd(Math.ceil(content.length / 4) * 4, '\0')
    body += whole
    at += whole.length
  }
  const header = [
    `${u32(at)}${u32(0)}${u32(0x04200000)}mntrRGB XYZ `,
    // Dated by its edition, so that the same papers are the same bytes.
    `${[2004, 10, 1, 0, 0, 0].map((n) => bytesOf(n, 2)).join('')}acsp${u32(0)}`,
    `${u32(0)}${u32(0)}${u32(0)}${u32(0)}${u32(0)}${u32(0)}`,
    WHITE.map(fixed).join(''),
  ].join('')
  return `${header.padEnd(128, '\0')}${table}${body}`
}
