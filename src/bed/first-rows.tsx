/** The first rows of a table: over each column what it is taken for, beside each row what it gives. */

import { type Reading, ROLES } from '../soundings-file/guess.ts'
import { columnName } from '../soundings-file/left-words.ts'
import type { Table } from '../soundings-file/table.ts'
import type { Sounding, Understood } from '../soundings-file/understand.ts'
import { Select } from '../ui/select.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters, text } from '../words/index.ts'
import { SOUNDINGS_FILE } from '../words/soundings-file.ts'

interface Props {
  readonly table: Table
  readonly reading: Reading
  readonly understood: Understood
  readonly change: (part: Partial<Reading>) => void
}

const SHOWN = 8

export function FirstRows({ table, reading, understood, change }: Props) {
  const { t, reader } = useWords(SOUNDINGS_FILE)
  const { roles } = reading
  const named = (k: number): string => columnName(table, k, reader)
  const set = (k: number, to: Reading['roles'][number]): void =>
    // Each is one column's alone.
    change({ roles: roles.map((role, i) => (i === k ? to : role === to ? 'none' : role)) })
  return (
    <section className="first-rows" aria-label={t('table')}>
      <table>
        <thead>
          <tr>
            <th scope="col">{t(table.format === 'text' ? 'line' : 'point')}</th>
            {roles.map((role, k) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns are known by their order alone.
              <th scope="col" key={k}>
                <span>{named(k)}</span>
                <Select
                  name={named(k)}
                  value={role}
                  options={ROLES}
                  wordOf={(one) => t(`role.${one}`)}
                  set={(to) => set(k, to)}
                />
              </th>
            ))}
            <th scope="col">{t('gives')}</th>
          </tr>
        </thead>
        <tbody>
          {table.rows.slice(0, SHOWN).map((row, i) => (
            <tr key={row.at}>
              <td>{row.at}</td>
              {roles.map((_, k) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns are known by their order alone.
                <td key={k}>{row.cells[k] ?? ''}</td>
              ))}
              <td>
                <Gives sounding={understood.first[i] ?? null} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Gives({ sounding }: { readonly sounding: Sounding | null }) {
  const { t } = useWords(SOUNDINGS_FILE)
  if (!sounding) return <em>{t('gives.none')}</em>
  const { distance, offset, depth } = sounding
  const place = t(depth < 0 ? 'gives.height' : 'gives.depth', {
    distance: meters(distance),
    depth: meters(Math.abs(depth)),
  })
  const side = text(t(offset > 0 ? 'side.left' : 'side.right'))
  return offset === 0
    ? place
    : t('gives.aside', { place: text(place), offset: meters(Math.abs(offset)), side })
}
