/** JSON Schema (2020-12) files from the code's own schemas, into `public/schema/`. Run by `npm run build:schemas`. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { toJsonSchema } from '@valibot/to-json-schema'
import type { GenericSchema } from 'valibot'
import { CatalogSchema } from '../../rules/catalog/schema.ts'
import { DesignSchema } from '../../rules/design/schema.ts'
import { RecordSchema } from '../../rules/record/schema.ts'
import { LanguageFileSchema } from '../../rules/words/language-file.ts'

/** File name to its JSON text. */
export function schemaFiles(): Record<string, string> {
  const make = (schema: GenericSchema, title: string): string =>
    `${JSON.stringify(
      {
        $schema: 'https://json-schema.org/draft/2020-12/schema',
        title,
        ...toJsonSchema(schema, {
          target: 'draft-2020-12',
          typeMode: 'input',
          // Quantizing changes no value that a schema could describe.
          ignoreActions: ['transform'],
        }),
      },
      null,
      2,
    )}\n`
  return {
    'design.json': make(DesignSchema, 'Leadline design'),
    'catalog.json': make(CatalogSchema, 'Leadline catalog'),
    'record.json': make(RecordSchema, 'Leadline season record'),
    'words.json': make(LanguageFileSchema, 'Leadline language'),
  }
}

export const SCHEMA_FOLDER = join(dirname(fileURLToPath(import.meta.url)), '../../public/schema')

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(SCHEMA_FOLDER, { recursive: true })
  for (const [name, text] of Object.entries(schemaFiles())) writeFileSync(join(SCHEMA_FOLDER, name), text)
}
