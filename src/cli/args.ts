/** A command line's arguments, by one table of what each command takes. */
import { parseArgs } from 'node:util'
import { descriptorOf } from './descriptors.ts'
import { Unusable } from './errors.ts'

export const COMMANDS = [
  'derive',
  'list',
  'sheet',
  'verify',
  'check',
  'levels',
  'soundings',
  'record',
  'demo',
  'words',
] as const
export type Command = (typeof COMMANDS)[number]

interface Option {
  readonly type: 'string' | 'boolean'
  readonly short?: string
  readonly of: readonly Command[]
  /** Names a file that is read. */
  readonly read?: true
}

const text = (...of: Command[]) => ({ type: 'string', of }) as const
const flag = (...of: Command[]) => ({ type: 'boolean', of }) as const
const OPTIONS = {
  catalog: { ...text('derive', 'list', 'sheet', 'verify', 'record'), read: true },
  have: { ...text('list'), read: true },
  csv: flag('list', 'soundings'),
  geojson: flag('soundings'),
  place: text('soundings'),
  down: flag('soundings'),
  up: flag('soundings'),
  json: flag('list', 'record'),
  units: text('list', 'sheet', 'levels', 'soundings', 'record'),
  lang: text('list', 'sheet', 'levels', 'record'),
  words: { ...text('list', 'sheet', 'levels', 'record'), read: true },
  design: { ...text('levels'), read: true },
  from: text('levels'),
  to: text('levels'),
  unit: text('levels'),
  order: text('levels'),
  at: text('levels'),
  season: text('record'),
  level: text('record'),
  keep: text('record'),
  out: { ...text('sheet', 'record'), short: 'o' },
  format: text('sheet'),
  bom: flag('sheet'),
  base: text('sheet'),
  lake: text('sheet'),
  what: text('sheet', 'record'),
  size: text('sheet', 'record'),
  date: text('sheet', 'record'),
  by: text('sheet', 'record'),
  link: text('sheet'),
  labels: text('sheet'),
  audience: text('sheet'),
  since: { ...text('sheet'), read: true },
  services: text('sheet'),
  discount: text('sheet'),
  fetched: flag('sheet'),
  untaxed: flag('sheet'),
  each: flag('sheet'),
  help: { ...flag(...COMMANDS), short: 'h' },
  version: { ...flag(...COMMANDS), short: 'v' },
} as const satisfies Readonly<Record<string, Option>>
type Name = keyof typeof OPTIONS

export interface Arguments {
  /** Undefined if there are only options. */
  readonly command: Command | undefined
  readonly files: readonly string[]
  readonly values: {
    readonly [K in Name]?: (typeof OPTIONS)[K]['type'] extends 'string' ? string : true
  }
  /** Every file that is to be read. */
  readonly inputs: readonly string[]
}

const BY_NAME: ReadonlyMap<string, Option> = new Map(Object.entries<Option>(OPTIONS))
const SHORT: ReadonlySet<string> = new Set(
  [...BY_NAME.values()].flatMap(({ short }) => (short === undefined ? [] : [`-${short}`])),
)
/** What is taken for the next option rather than for a value: `--by -X` has a value, `--by --date` has none. */
const isOption = (value: string): boolean => /^--([a-z][a-z-]*(=.*)?)?$/s.test(value) || SHORT.has(value)

/** @throws Unusable */
export function parseArguments(args: readonly string[]): Arguments {
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(
      [...BY_NAME].map(([name, { type, short }]) => [name, { type, ...(short !== undefined && { short }) }]),
    ),
    allowPositionals: true,
    strict: false,
    tokens: true,
  })
  const [named, ...files] = tokens.flatMap((token) => (token.kind === 'positional' ? [token.value] : []))
  const command = COMMANDS.find((one) => one === named)
  const values: Record<string, string | true> = {}
  const wrong: string[] = []
  for (const token of tokens) {
    if (token.kind !== 'option') continue
    const { name, rawName, value, inlineValue } = token
    const option = BY_NAME.get(name)
    if (!option) wrong.push(`${rawName}: no option; expected what leadline --help lists`)
    else if (command && !option.of.includes(command))
      wrong.push(`${rawName}: no option of ${command}; expected ${optionsOf(command)}`)
    else if (Object.hasOwn(values, name)) wrong.push(`${rawName}: given twice; expected once`)
    else if (option.type === 'boolean' && value !== undefined)
      wrong.push(`${rawName}: "${value}"; expected no value`)
    else if (option.type === 'string' && (value === undefined || (!inlineValue && isOption(value))))
      wrong.push(`${rawName}: no value; expected one (--${name}=VALUE for one that begins with hyphens)`)
    else values[name] = value ?? true
  }
  if (named !== undefined && command === undefined && !values.help)
    wrong.push(`${named}: not a command; expected ${COMMANDS.join(', ')} (see leadline --help)`)
  const inputs = [
    ...files,
    ...[...BY_NAME].flatMap(([name, { read }]) => {
      const value = values[name]
      return read && typeof value === 'string' ? [value] : []
    }),
  ]
  // A pipe can be read only once.
  const held = inputs.map((file) => descriptorOf(file, 0))
  const again = held.findIndex((one, i) => one !== null && held.indexOf(one) !== i)
  const twice = inputs[again]
  if (twice !== undefined) wrong.push(`${twice}: given twice; expected once, for it is read once`)
  if (wrong.length > 0) throw new Unusable(wrong)
  return { command, files, values: values as Arguments['values'], inputs }
}

const optionsOf = (command: Command): string =>
  [...BY_NAME].flatMap(([name, { of }]) => (of.includes(command) ? [`--${name}`] : [])).join(', ')
