/** Rows that give nothing: where, what stands there, what was expected. */
import { leftText } from '../soundings-file/left-words.ts'
import type { Table } from '../soundings-file/table.ts'
import type { Left } from '../soundings-file/understand.ts'
import { useWords } from '../ui/use-words.ts'
import { count } from '../words/index.ts'
import { SOUNDINGS_FILE } from '../words/soundings-file.ts'

/** More are counted. */
const TOLD = 6

export function LeftOut({ table, left }: { readonly table: Table; readonly left: readonly Left[] }) {
  const { t, reader } = useWords(SOUNDINGS_FILE)
  if (left.length === 0) return null
  return (
    <div className="left-out">
      <p>{t('left', { rows: count(left.length) })}</p>
      <ul>
        {left.slice(0, TOLD).map((one) => (
          <li key={one.row.at}>{leftText(one, table, reader)}</li>
        ))}
        {left.length > TOLD && <li>{t('left.more', { rows: count(left.length - TOLD) })}</li>}
      </ul>
    </div>
  )
}
