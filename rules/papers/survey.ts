/** The survey sheet: what is measured on the shore before there is a dock to draw, as a form to be filled in by hand. */
import { round6 } from '../numbers.ts'
import type { Units } from '../words/figures.ts'
import { EXACT } from '../words/figures.ts'
import type { PaperWord } from '../words/papers.ts'

export interface SurveyField {
  readonly label: PaperWord
  /** How it is measured or where it is read; null where the label says it. */
  readonly hint: PaperWord | null
  /** Unit printed behind the line; null for words. */
  readonly unit: 'm' | 'cm' | 'ft' | 'in' | 'deg' | 'mph' | 'm/s' | 'km' | 'mi' | 'kg' | 'lb' | null
  /** Boxes to tick instead of a line. */
  readonly choices: readonly PaperWord[]
  /** Lines to write on. */
  readonly lines: number
}

export interface SurveyPart {
  readonly title: PaperWord
  readonly fields: readonly SurveyField[]
}

export interface SurveyRow {
  /** From the water's edge, lakeward positive, m. */
  readonly distance: number
  readonly place: 'bank' | 'edge' | 'water'
}

export interface Survey {
  readonly title: PaperWord
  /** How to measure, in the order of doing it. */
  readonly how: readonly PaperWord[]
  readonly parts: readonly SurveyPart[]
  /** Over the table: where the second and third line lie, and what depths are written in. */
  readonly lines: readonly SurveyField[]
  /** Empty columns beside the distance. */
  readonly columns: readonly PaperWord[]
  readonly rows: readonly SurveyRow[]
  /** Rows without a distance, for what is measured between. */
  readonly spareRows: number
  readonly cautions: readonly PaperWord[]
}

const field = (
  label: PaperWord,
  unit: SurveyField['unit'] = null,
  hint: PaperWord | null = null,
  choices: readonly PaperWord[] = [],
  lines = 1,
): SurveyField => ({ label, hint, unit, choices, lines })

/** Meters: every 1 m. Feet: every 2 ft as far as 8 ft, where a dock mostly begins, then every 4 ft. */
function distances(units: Units): number[] {
  if (units === 'metric') return Array.from({ length: 19 }, (_, i) => i - 3)
  const feet = [-8, -4, 0, 2, 4, 6, 8]
  for (let at = 12; at <= 52; at += 4) feet.push(at)
  return feet.map((at) => round6(at * EXACT.foot))
}

const COLUMNS: readonly PaperWord[] = [
  'survey-col-depth',
  'survey-col-depth-2',
  'survey-col-depth-3',
  'survey-col-firm',
  'survey-col-bottom',
  'survey-col-notes',
]

const linesOf = (units: Units): SurveyField[] => [
  field('survey-line-2', units === 'metric' ? 'm' : 'ft', 'survey-line-hint'),
  field('survey-line-3', units === 'metric' ? 'm' : 'ft', 'survey-line-hint'),
  field(
    'survey-unit',
    null,
    null,
    units === 'metric' ? ['survey-unit-cm', 'survey-unit-m'] : ['survey-unit-ft-in', 'survey-unit-in'],
  ),
]

export function survey(units: Units): Survey {
  const long = units === 'metric' ? 'm' : 'ft'
  const short = units === 'metric' ? 'cm' : 'in'
  return {
    title: 'survey',
    how: ['survey-how-level', 'survey-how-line', 'survey-how-depth', 'survey-how-firm', 'survey-how-second'],
    parts: [
      {
        title: 'survey-job',
        fields: [
          field('survey-customer'),
          field('survey-place'),
          field('survey-date', null, 'survey-date-hint'),
          field('survey-by'),
        ],
      },
      {
        title: 'survey-levels',
        fields: [
          field('survey-mark', null, 'survey-mark-hint'),
          field('survey-mark-over', short),
          field('survey-low', short, 'survey-low-hint'),
          field('survey-high', short, 'survey-high-hint'),
        ],
      },
      {
        title: 'survey-shore',
        fields: [
          field('survey-shore-kind', null, null, ['survey-beach', 'survey-bank', 'survey-wall']),
          field('survey-bank-height', short, 'survey-bank-height-hint'),
          field('survey-bottom', null, 'survey-bottom-hint', [
            'survey-rock',
            'survey-gravel',
            'survey-sand',
            'survey-clay',
            'survey-muck',
          ]),
          field('survey-cross', short, 'survey-cross-hint'),
          field('survey-bearing', 'deg', 'survey-bearing-hint'),
        ],
      },
      {
        title: 'survey-water',
        fields: [
          field('survey-wind', units === 'metric' ? 'm/s' : 'mph', 'survey-wind-hint'),
          field('survey-wind-from', null),
          field('survey-fetch', units === 'metric' ? 'km' : 'mi', 'survey-fetch-hint'),
          field('survey-fetch-depth', long, 'survey-fetch-depth-hint'),
          field('survey-wake', short, 'survey-wake-hint'),
          field('survey-boat', long, 'survey-boat-hint'),
          field('survey-boat-draught', short),
          field('survey-boat-height', short),
        ],
      },
      {
        title: 'survey-ground',
        fields: [
          field('survey-services', null, 'survey-services-hint', [
            'survey-asked',
            'survey-marked',
            'survey-none',
          ]),
          field('survey-obstacles', null, 'survey-obstacles-hint', [], 2),
          field('survey-access', null, 'survey-access-hint', [], 2),
          field('survey-notes', null, null, [], 3),
        ],
      },
    ],
    columns: COLUMNS,
    lines: linesOf(units),
    rows: distances(units).map((distance) => ({
      distance,
      place: distance < 0 ? 'bank' : distance === 0 ? 'edge' : 'water',
    })),
    spareRows: 3,
    cautions: ['caution-cold', 'caution-services', 'caution-power'],
  }
}
