/** How often each finding is raised on ordinary docks. */
import { assess, type Catalog, deriveKit, type Finding, type Severity } from '../../../rules/index.ts'
import { ordinaryDock, SCENES, type Scene, type Wanted } from './ordinary-docks.ts'

/** Docks with this code, by the severity that it had. */
export type Raised = Readonly<Partial<Record<Severity, number>>>

export interface Cell extends Wanted {
  readonly docks: number
  /** Docks with a `warn` or a `stop`, and with a `stop`; and how many of them by the catalog's id. */
  readonly warned: number
  readonly stopped: number
  readonly byCatalog: Readonly<Record<string, { readonly docks: number; readonly warned: number }>>
  /** By code, those most often raised first. */
  readonly codes: Readonly<Record<string, Raised>>
}

export interface Counted {
  readonly runs: number
  readonly cells: readonly Cell[]
}

export const CELLS: readonly Wanted[] = (Object.keys(SCENES) as Scene[]).flatMap((scene) =>
  [0, 2, 4].flatMap((posts) => [false, true].map((boat) => ({ scene, posts, boat }))),
)

const weighs = (findings: readonly Finding[], ...severities: readonly Severity[]): boolean =>
  findings.some(({ severity }) => severities.includes(severity))

/** Seeds 0 to runs − 1, from one catalog after the other: the same docks in every cell but for posts, boat and scene. */
export function countCell(wanted: Wanted, runs: number, catalogs: readonly Catalog[]): Cell {
  const codes: Record<string, Partial<Record<Severity, number>>> = {}
  const byCatalog: Record<string, { docks: number; warned: number }> = {}
  let warned = 0
  let stopped = 0
  for (let seed = 0; seed < runs; seed++) {
    const catalog = catalogs[seed % catalogs.length]!
    // Which remedies help does not count here, and takes most of the time.
    const kit = deriveKit(ordinaryDock(seed, wanted, catalog), catalog)
    const { findings } = assess(kit, { remedies: false })
    const told = weighs(findings, 'warn', 'stop')
    const shop = byCatalog[catalog.id] ?? { docks: 0, warned: 0 }
    byCatalog[catalog.id] = { docks: shop.docks + 1, warned: shop.warned + (told ? 1 : 0) }
    if (told) warned++
    if (weighs(findings, 'stop')) stopped++
    // A code counts once for a dock, however many parts it is about.
    for (const key of new Set(findings.map(({ code, severity }) => `${code} ${severity}`))) {
      const [code, severity] = key.split(' ') as [string, Severity]
      codes[code] = { ...codes[code], [severity]: (codes[code]?.[severity] ?? 0) + 1 }
    }
  }
  const most = (raised: Raised): number => Object.values(raised).reduce((sum, n) => sum + n, 0)
  return {
    ...wanted,
    docks: runs,
    warned,
    stopped,
    byCatalog,
    codes: Object.fromEntries(
      Object.entries(codes).sort(([a, x], [b, y]) => most(y) - most(x) || (a < b ? -1 : 1)),
    ),
  }
}

export const countAll = (runs: number, catalogs: readonly Catalog[]): Counted => ({
  runs,
  cells: CELLS.map((wanted) => countCell(wanted, runs, catalogs)),
})
