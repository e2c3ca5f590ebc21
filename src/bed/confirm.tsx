/** A table as it was understood: what each column is, units, signs, the first rows and what they give; taken in by a button. */
import { type ReactNode, useMemo, useState } from 'react'
import type { Design } from '../../rules/index.ts'
import { UNITS } from '../soundings-file/cell.ts'
import { fitPlacing } from '../soundings-file/fit-placing.ts'
import { guessReading, type Reading } from '../soundings-file/guess.ts'
import type { Table } from '../soundings-file/table.ts'
import { missingIn, type Understood, understand } from '../soundings-file/understand.ts'
import { placingOf } from '../soundings-file/write.ts'
import { useLeadline } from '../state/store.ts'
import { LengthField } from '../ui/quantity-field.tsx'
import { Select } from '../ui/select.tsx'
import { useWords } from '../ui/use-words.ts'
import { count, text } from '../words/index.ts'
import { SOUNDINGS_FILE } from '../words/soundings-file.ts'
import { FirstRows } from './first-rows.tsx'
import { LeftOut } from './left-out.tsx'
import { PlacingFields } from './placing-fields.tsx'

interface Props {
  readonly table: Table
  /** With how many were taken in; without, where it was left. */
  readonly done: (taken?: number) => void
}

export type Mode = 'replace' | 'add'

export function Confirm({ table, done }: Props) {
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const { t, units } = useWords(SOUNDINGS_FILE)
  const [reading, setReading] = useState(() => firstReading(table, design, units))
  const known = design.site.soundings
  const [mode, setMode] = useState<Mode>(() => (known.some((s) => !s.assumed) ? 'add' : 'replace'))
  const [refused, setRefused] = useState<string | null>(null)
  const change = (part: Partial<Reading>): void => {
    setRefused(null)
    setReading(placed(table, { ...reading, ...part }))
  }
  const missing = missingIn(reading)
  const stay = useMemo(() => (mode === 'add' ? known.filter((s) => !s.assumed) : []), [mode, known])
  const understood = useMemo(() => understand(table, reading, stay), [table, reading, stay])
  const rows = understood.soundings.length
  const take = (): void => {
    const issues = edit((d) => withTaken(d, understood, stay, reading))
    if (issues[0]) setRefused(`${issues[0].path}: ${issues[0].message}`)
    else done(rows)
  }
  return (
    <div className="confirm">
      <p>
        {t(`format.${table.format}`, {
          rows: count(table.rows.length),
          mark: text(t(`mark.${table.parted ?? 'tab'}`)),
        })}{' '}
        {table.passed > 0 && t('passed', { rows: count(table.passed) })}
      </p>
      <FirstRows table={table} reading={reading} understood={understood} change={change} />
      <Choices reading={reading} change={change} />
      {reading.placing && !reading.roles.includes('distance') && (
        <PlacingFields placing={reading.placing} grid={reading.roles.includes('east')} change={change} />
      )}
      <Chosen label={t('mode')}>
        <Select
          name={t('mode')}
          value={mode}
          options={MODES}
          wordOf={(one) => t(`mode.${one}`)}
          set={setMode}
        />
      </Chosen>
      {missing && <p className="fault">{t(`missing.${missing}`)}</p>}
      <LeftOut table={table} left={understood.left} />
      {refused && (
        <p className="fault" role="alert">
          {t('refused', { why: text(refused) })}
        </p>
      )}
      <div className="actions">
        <button type="button" className="main" disabled={rows === 0} onClick={take}>
          {t('take', { rows: count(rows) })}
        </button>
        <button type="button" onClick={() => done()}>
          {t('drop')}
        </button>
      </div>
    </div>
  )
}

const MODES: readonly Mode[] = ['replace', 'add']
const SIGNS = ['down', 'up'] as const
const SIDES = ['left', 'right'] as const

/** Where the site is known on earth, that; else what the depths themselves tell. */
function firstReading(table: Table, { site }: Design, units: 'imperial' | 'metric'): Reading {
  const reading = guessReading(table, units)
  return placed(table, reading.roles.includes('lat') ? { ...reading, placing: placingOf(site) } : reading)
}

const placed = (table: Table, reading: Reading): Reading =>
  missingIn(reading) === 'placing' ? { ...reading, placing: fitPlacing(table, reading) } : reading

/** What is taken for granted gives way; so does where on earth it lies, if these say. */
function withTaken(
  design: Design,
  { soundings }: Understood,
  stay: Design['site']['soundings'],
  reading: Reading,
) {
  const { placing, roles } = reading
  const onEarth = placing !== null && !roles.includes('distance') && roles.includes('lat')
  return {
    ...design,
    site: {
      ...design.site,
      soundings: [...stay, ...soundings],
      ...(onEarth && {
        origin: { latitude: placing.latitude, longitude: placing.longitude },
        bearing: placing.bearing,
      }),
    },
  }
}

interface ChoicesProps {
  readonly reading: Reading
  readonly change: (part: Partial<Reading>) => void
}

function Choices({ reading: { unit, sign, aside, roles, surface }, change }: ChoicesProps) {
  const { t } = useWords(SOUNDINGS_FILE)
  const unitOf = (of: 'place' | 'depth') => (
    <Chosen label={t(`unit.${of}`)}>
      <Select
        name={t(`unit.${of}`)}
        value={unit[of]}
        options={UNITS}
        wordOf={(one) => t(`unit.${one}`)}
        set={(to) => change({ unit: { ...unit, [of]: to } })}
      />
    </Chosen>
  )
  return (
    <div className="choices">
      {roles.includes('distance') && unitOf('place')}
      {unitOf('depth')}
      <Chosen label={t('sign')}>
        <Select
          name={t('sign')}
          value={sign}
          options={SIGNS}
          wordOf={(one) => t(`sign.${one}`)}
          set={(to) => change({ sign: to })}
        />
      </Chosen>
      {roles.includes('offset') && roles.includes('distance') && (
        <Chosen label={t('aside')}>
          <Select
            name={t('aside')}
            value={aside}
            options={SIDES}
            wordOf={(one) => t(`side.${one}`)}
            set={(to) => change({ aside: to })}
          />
        </Chosen>
      )}
      {sign === 'up' && (
        <LengthField
          label={t('surface')}
          value={surface}
          commit={(to) => {
            change({ surface: to })
            return []
          }}
        />
      )}
    </div>
  )
}

/** A label over what it is of; the select names itself. */
const Chosen = ({ label, children }: { readonly label: string; readonly children: ReactNode }) => (
  <div className="chosen">
    <span aria-hidden="true">{label}</span>
    {children}
  </div>
)
