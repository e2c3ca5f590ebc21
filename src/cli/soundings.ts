/** `leadline soundings`: a table of soundings as a design has them, and those of a design for others. */
import { english } from '../../rules/index.ts'
import { jsonText } from '../documents/files/visible-text.ts'
import { fitPlacing } from '../soundings-file/fit-placing.ts'
import { guessReading, type Reading } from '../soundings-file/guess.ts'
import { leftText } from '../soundings-file/left-words.ts'
import { readTable, type Table } from '../soundings-file/table.ts'
import type { Placing } from '../soundings-file/tangent-plane.ts'
import { missingIn, type Sounding, understand } from '../soundings-file/understand.ts'
import { placingOf, soundingsCsv, soundingsGeoJson } from '../soundings-file/write.ts'
import type { Arguments } from './args.ts'
import { designOf, formatOf, Unusable } from './files.ts'
import { readText } from './input.ts'
import { lines } from './lines.ts'
import { type Outcome, one, unitsOf } from './run.ts'

interface Got {
  readonly soundings: readonly Sounding[]
  readonly placing: Placing | null
  readonly told: readonly string[]
}

/** @throws Unusable */
export async function soundings({ files, values }: Arguments): Promise<Outcome> {
  if (values.csv && values.geojson)
    throw new Unusable(['--csv: given with --geojson; expected one of the two'])
  if (values.down && values.up) throw new Unusable(['--down: given with --up; expected one of the two'])
  const file = one('soundings', files, 'file of soundings or design')
  const text = readText(file)
  const given = values.place === undefined ? null : placeOf(values.place)
  const design = designIn(text)
  const got = design === null ? await ofTable(file, text, values, given) : ofDesign(file, design, given)
  const out = (): string => {
    if (values.csv) return soundingsCsv(got.soundings)
    if (!values.geojson) return jsonText(got.soundings)
    if (got.placing) return soundingsGeoJson(got.soundings, got.placing)
    throw new Unusable([`${file}: lies nowhere on earth; expected --place LATITUDE,LONGITUDE,BEARING`])
  }
  return { code: 0, out: out(), err: lines(got.told) }
}

function placeOf(typed: string): Placing {
  const [latitude, longitude, bearing, ...more] = typed
    .split(',')
    .map((part) => (part.trim() === '' ? Number.NaN : Number(part)))
  const within = (value: number | undefined, least: number, most: number): value is number =>
    value !== undefined && value >= least && value <= most
  if (
    more.length === 0 &&
    within(latitude, -90, 90) &&
    within(longitude, -180, 180) &&
    within(bearing, 0, 360)
  )
    return { latitude, longitude, bearing }
  throw new Unusable([
    `--place: "${typed}"; expected latitude, longitude and compass bearing in degrees, like 46.5,-88.4,210`,
  ])
}

/** Null where a text is no design's. */
function designIn(text: string): unknown {
  try {
    const json: unknown = JSON.parse(text)
    return formatOf(json) === 'leadline/design' ? json : null
  } catch {
    return null
  }
}

function ofDesign(file: string, input: unknown, given: Placing | null): Got {
  const { value, notices } = designOf(file, input)
  return { soundings: value.site.soundings, placing: given ?? placingOf(value.site), told: notices }
}

async function ofTable(
  file: string,
  text: string,
  values: Arguments['values'],
  given: Placing | null,
): Promise<Got> {
  const units = unitsOf(values.units)
  const read = await readTable(text)
  if (!read.ok) {
    const { why, line } = read.fault
    throw new Unusable([`${file}${line === undefined ? '' : `: line ${line}`}: ${FAULTS[why]}`])
  }
  const { table } = read
  const guessed = guessReading(table, units)
  const signed: Reading = { ...guessed, sign: values.down ? 'down' : values.up ? 'up' : guessed.sign }
  const reading: Reading = { ...signed, placing: given ?? fitPlacing(table, signed) }
  const missing = missingIn(reading)
  if (missing) throw new Unusable([`${file}: ${MISSING[missing]}`])
  const { soundings, left } = understand(table, reading)
  return {
    soundings,
    placing: reading.roles.includes('lat') ? reading.placing : given,
    told: [
      `${file}: ${howRead(table, reading)}`,
      ...left.map((item) => `${file}: ${leftText(item, table, english(units))}`),
    ],
  }
}

const FAULTS = {
  empty: 'nothing in it; expected rows with how far out and how deep',
  'too-large': 'larger than 8 MB; expected a smaller one',
  'not-xml': 'no GPX; expected a whole GPX file',
  'not-json': 'no JSON; expected a whole GeoJSON file',
  'no-points': 'no place in it; expected points or lines with depths',
  'one-column': 'one column; expected how far out and how deep, parted by tabs, commas or semicolons',
} as const
const MISSING = {
  depth: 'no column of depths; expected one with a heading like "depth"',
  place: 'no column tells where; expected distances, or latitude and longitude',
  placing: 'its depths fall no way; expected --place LATITUDE,LONGITUDE,BEARING',
} as const

/** All that was guessed, for whoever reads the log. */
function howRead({ format, parted }: Table, { roles, unit, sign, placing }: Reading): string {
  const columns = roles
    .map((role, k) => (role === 'none' ? '' : `${k + 1} ${role}`))
    .filter((part) => part !== '')
  const where =
    roles.includes('distance') || !placing
      ? `distances in ${unit.place}`
      : `edge at ${placing.latitude.toFixed(7)},${placing.longitude.toFixed(7)}, lakeward ${placing.bearing.toFixed(1)}`
  return [
    `read as ${format}${parted ? ` parted by ${parted}` : ''}`,
    `columns ${columns.join(', ')}`,
    where,
    `depths in ${unit.depth}, positive ${sign}`,
  ].join('; ')
}
