/** Figures of findings and remedies: numbers, ids, codes, names and keys. Words of ours are in the language files alone. */
import type { Catalog } from '../../../rules/catalog/schema.ts'
import type { Dock, Figure } from '../../../rules/dock.ts'
import dock from '../../../rules/words/en/dock.json' with { type: 'json' }
import findings from '../../../rules/words/en/findings.json' with { type: 'json' }
import obstacles from '../../../rules/words/en/obstacles.json' with { type: 'json' }
import structure from '../../../rules/words/en/structure.json' with { type: 'json' }
import type { Law } from './law.ts'

const NUMBERS = 'm m2 m-rough fetch m/s s mm kg N Nm Pa slope share factor count deg'.split(' ')
/** Cases of loads as `rules/structure/dock/combinations.ts` names them: `D+L left`, `0.6D+W high left`, `D+P end.left lake`. */
const CASE = /^(0\.6)?D(\+[\w.]+)*( [\w.-]+)*$/
const WORDS = Object.entries({ ...findings, ...structure, ...obstacles })
const CODES = new Set(
  WORDS.flatMap(([key]) => (key.endsWith('.plain') ? [key.slice(0, -'.plain'.length)] : [])),
)
/** `name.TABLE.KEY` to its word. */
const KEYS = new Map(WORDS.filter(([key]) => key.startsWith('name.')))
/** Of ours, though files of others say them too: a language must be able to say them its own way. */
const OURS = new Set<unknown>([...KEYS].flatMap(([key, word]) => [key.split('.').slice(2).join('.'), word]))

/** Texts and keys anywhere in a file of the user's or the shop's. */
function textsIn(value: unknown, into: Set<string>): Set<string> {
  if (typeof value === 'string') into.add(value)
  else if (value !== null && typeof value === 'object')
    for (const [key, item] of Object.entries(value)) {
      into.add(key)
      textsIn(item, into)
    }
  return into
}
const ofShop = new WeakMap<Catalog, Set<string>>()
const shopTexts = (catalog: Catalog): Set<string> => {
  const known = ofShop.get(catalog) ?? textsIn(catalog, new Set())
  ofShop.set(catalog, known)
  return known
}

export const figuresHoldNoWords: Law = (of, design, catalog) => {
  const figures = of.findings.flatMap((f) =>
    [f.values, f.remedy?.values ?? {}].flatMap((values) =>
      Object.entries(values).map(([name, figure]) => ({ code: f.code, name, figure })),
    ),
  )
  if (figures.length === 0) return []
  const own = namesOf(of)
  textsIn(design, own)
  own.add(`${design.catalog?.id} ${design.catalog?.version}`).add(`${catalog.id} ${catalog.edition}`)
  const isName = (item: string): boolean => (own.has(item) || shopTexts(catalog).has(item)) && !OURS.has(item)
  const isRight = (name: string, { unit }: Figure, item: unknown): boolean => {
    if (NUMBERS.includes(unit)) return typeof item === 'number' && Number.isFinite(item)
    if (typeof item !== 'string') return false
    if (unit === 'text') return isName(item)
    if (unit === 'kind') return Object.hasOwn(dock, `kind-in-sentence.${item}`)
    if (unit === 'key') return KEYS.has(`name.${name}.${item}`)
    if (unit === 'code') return CODES.has(item)
    return unit === 'case' && CASE.test(item)
  }
  return figures.flatMap(({ code, name, figure }) =>
    [figure.value]
      .flat()
      .filter((item) => !isRight(name, figure, item))
      .map((item) => `${code}: ${name} is ${JSON.stringify(item)} ${figure.unit}`),
  )
}

/** What the engine numbers, and sections that cannot be placed. */
const namesOf = (dock: Dock): Set<string> =>
  new Set([
    ...[...dock.sections, ...dock.legs, ...dock.pairs, ...dock.joints].map(({ id }) => id),
    ...dock.placements.map(({ of }) => of),
    ...dock.findings.flatMap(({ parts }) => parts),
  ])
