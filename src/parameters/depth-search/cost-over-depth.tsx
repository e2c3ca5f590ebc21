/** What each dock that was tried costs, over its depth. */
import { useWords } from '../../ui/use-words.ts'
import { DEPTH_SEARCH } from '../../words/depth-search.ts'
import { count, meters } from '../../words/index.ts'
import { keyOf } from './key.ts'
import type { Tried } from './search.ts'

const [WIDE, HIGH] = [320, 170]
const PAD = { left: 10, right: 10, top: 20, bottom: 34 } as const

export function CostOverDepth(props: {
  readonly all: readonly Tried[]
  /** The one that is offered, and what is cheapest of all. */
  readonly marked: readonly (Tried | null)[]
  readonly wanted: number
}) {
  const { all, marked, wanted } = props
  const { t, money, length } = useWords(DEPTH_SEARCH)
  const deepest = Math.max(wanted, ...all.map(({ depth }) => depth))
  const dearest = Math.max(1, ...all.map(({ price }) => price))
  const x = (depth: number): number =>
    PAD.left + (Math.max(0, depth) / Math.max(0.01, deepest)) * (WIDE - PAD.left - PAD.right)
  const y = (price: number): number => HIGH - PAD.bottom - (price / dearest) * (HIGH - PAD.top - PAD.bottom)
  const floor = HIGH - PAD.bottom
  return (
    <svg
      className="cost-over-depth"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={t('chart', { count: count(all.length), depth: meters(wanted) })}
    >
      <path className="axes" d={`M${PAD.left} ${PAD.top}V${floor}H${WIDE - PAD.right}`} />
      <path className="wanted" d={`M${x(wanted)} ${PAD.top}V${floor}`} />
      {all.map((one) => (
        <circle
          key={keyOf(one)}
          className={marked.includes(one) ? 'best' : (one.found ?? 'dearer')}
          cx={x(one.depth)}
          cy={y(one.price)}
          r={marked.includes(one) ? 5 : 2.5}
        />
      ))}
      <text x={PAD.left} y={12}>
        {`${t('chart.price')}, ${money(dearest)}`}
      </text>
      <text x={x(wanted)} y={floor + 12} textAnchor="middle">
        {length(wanted)}
      </text>
      <text x={WIDE - PAD.right} y={HIGH - 6} textAnchor="end">
        {`${t('chart.depth')}, ${length(deepest)}`}
      </text>
    </svg>
  )
}
