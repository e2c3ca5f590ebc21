/** Where the water's edge is on earth, and which way the dock goes out. */
import { useId, useState } from 'react'
import { readNumber } from '../soundings-file/cell.ts'
import type { Placing } from '../soundings-file/tangent-plane.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { SOUNDINGS_FILE } from '../words/soundings-file.ts'

interface Props {
  readonly placing: Placing
  /** In meters of a grid. */
  readonly grid: boolean
  readonly change: (part: { readonly placing: Placing }) => void
}

export function PlacingFields({ placing, grid, change }: Props) {
  const { t } = useWords(SOUNDINGS_FILE)
  const most = { latitude: grid ? 1e8 : 90, longitude: grid ? 1e8 : 180, bearing: 360 }
  const field = (key: keyof Placing, label: string, digits: number) => (
    <NumberField
      label={label}
      value={Number(placing[key].toFixed(digits))}
      least={key === 'bearing' ? 0 : -most[key]}
      most={most[key]}
      set={(to) => change({ placing: { ...placing, [key]: to } })}
    />
  )
  return (
    <fieldset className="placing">
      <legend>{t('placing')}</legend>
      {field('latitude', t(grid ? 'placing.north' : 'placing.lat'), grid ? 2 : 7)}
      {field('longitude', t(grid ? 'placing.east' : 'placing.lon'), grid ? 2 : 7)}
      {field('bearing', t('placing.bearing'), 1)}
    </fieldset>
  )
}

interface NumberProps {
  readonly label: string
  readonly value: number
  readonly least: number
  readonly most: number
  readonly set: (to: number) => void
}

function NumberField({ label, value, least, most, set }: NumberProps) {
  const { t } = useWords(SOUNDINGS_FILE)
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const read = readNumber(typed ?? '0')
  const good = read.ok && read.value >= least && read.value <= most
  const take = (): void => {
    if (typed === null || !read.ok || !good) return
    set(read.value)
    setTyped(null)
  }
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={typed ?? String(value)}
        aria-invalid={!good}
        aria-describedby={`${id}-fault`}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={take}
        onKeyDown={(event) => event.key === 'Enter' && take()}
      />
      <p className="fault" id={`${id}-fault`}>
        {good ? '' : t('placing.wrong', { typed: text(typed ?? ''), example: text(String(value)) })}
      </p>
    </div>
  )
}
