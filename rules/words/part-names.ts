/**
 * A project as a reader is told it: parts, services and shapes by the names that the shop has for them in the reader's language. What is
 * told of is the same; check codes stay as they were made.
 */
import type { Catalog } from '../catalog/index.ts'
import { shopOf } from '../catalog-index.ts'
import type { Dock, Figure, Remedy } from '../dock.ts'
import type { Project } from '../project.ts'
import type { Language } from './language.ts'
import { type Named, nameIn } from './name-in.ts'

const isNamed = (value: unknown): value is Named =>
  typeof value === 'object' && value !== null && 'code' in value && 'name' in value

/** The shop or the language has other names than the catalog's own. */
const hasNames = ({ words }: Catalog, language: Language): boolean =>
  Boolean(words ?? language.words['usual-names'])

/** Whatever of it has a code and a name. */
function catalogIn(catalog: Catalog, language: Language): Catalog {
  return JSON.parse(JSON.stringify(catalog), (_, value: unknown) =>
    isNamed(value) ? { ...value, name: nameIn(catalog, value, language) } : value,
  )
}

export function dockIn(dock: Dock, catalog: Catalog, language: Language): Dock {
  if (!hasNames(catalog, language)) return dock
  const named = <T extends Named>(list: readonly T[]): T[] =>
    list.map((one) => ({ ...one, name: nameIn(catalog, one, language) }))
  const { existing } = dock
  return {
    ...dock,
    parts: named(dock.parts),
    findings: dock.findings.map((finding) =>
      finding.remedy ? { ...finding, remedy: remedyNamed(finding.remedy, catalog, language) } : finding,
    ),
    ...(existing && {
      existing: {
        ...existing,
        used: named(existing.used),
        left: named(existing.left),
        new: named(existing.new),
      },
    }),
  }
}

/** A pad is told by its name. */
export function remedyNamed<R extends Remedy>(remedy: R, catalog: Catalog, language: Language): R {
  const told = remedy.values.pad
  const pad = catalog.pads.find(({ name }) => name === told?.value)
  const values: Readonly<Record<string, Figure>> =
    told && pad
      ? { ...remedy.values, pad: { ...told, value: nameIn(catalog, pad, language) } }
      : remedy.values
  const steps = remedy.steps?.map((step) => remedyNamed(step, catalog, language))
  return { ...remedy, values, ...(steps && { steps }) }
}

export function projectIn(project: Project, language: Language): Project {
  if (!hasNames(project.catalog, language)) return project
  const catalog = catalogIn(project.catalog, language)
  return { ...project, catalog, shop: shopOf(catalog), dock: dockIn(project.dock, project.catalog, language) }
}
