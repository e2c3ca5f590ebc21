/** Files that hold a design beside what they are about: a quote, a request. */
import type * as v from 'valibot'
import { type Issue, type Parsed, parseWith, plainOf, upgrade } from '../validation.ts'
import { parseDesign } from './parse.ts'
import type { Design } from './schema.ts'

/** Checks such a file of version 1 against its schema and its design as `parseDesign` does. Never throws. */
export function parseEnclosing<S extends v.GenericSchema<unknown, { design: unknown }>>(
  schema: S,
  format: string,
  input: unknown,
): Parsed<v.InferOutput<S> & { readonly design: Design }> {
  const file = upgrade(plainOf(input), format, 1, {})
  if (!file.ok) return file
  const parsed = parseWith(schema, file.plain, () => [])
  if (!parsed.ok) return parsed
  const design = parseDesign(parsed.value.design)
  if (!design.ok)
    return {
      ok: false,
      issues: design.issues.map((one): Issue => ({ ...one, path: `design${one.path && `.${one.path}`}` })),
    }
  return { ...parsed, notices: file.plain.notices, value: { ...parsed.value, design: design.value } }
}
